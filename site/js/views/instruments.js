// From an answer's readings to what each instrument draws. No DOM.

const BAR = 1e5; // [Pa]
const HOUR = 3600; // [s]

/** Which quantity each instrument shows, and the words for it. */
const INSTRUMENTS = {
  "gauge-suction": {quantity: "pressure", label: "draw-gauge-suction", range: (plant) => bars(plant.gauges?.suction)},
  "gauge-discharge": {quantity: "pressure", label: "draw-gauge-discharge", range: (plant) => bars(plant.gauges?.discharge)},
  "gauge-after-valve": {quantity: "pressure", label: "draw-gauge-after-valve", range: (plant) => bars(plant.gauges?.after_valve)},
  "flow-meter": {quantity: "flow", label: "draw-flow-meter", range: (plant) => [0, plant.meters.flow_range_m3h / HOUR]},
  "ammeter-1": {quantity: "current", label: "draw-ammeter-1", range: amperes},
  "ammeter-2": {quantity: "current", label: "draw-ammeter-2", range: amperes},
  "tachometer-1": {quantity: "speed", label: "draw-tachometer-1", range: () => [0, 480]},
  "tachometer-2": {quantity: "speed", label: "draw-tachometer-2", range: () => [0, 480]},
  "controller-output": {quantity: "output", label: "draw-control-output", range: () => [0, 1]},
};

const bars = (gauge) => (gauge?.range_bar ?? [0, 6]).map((end) => end * BAR);

function amperes(plant) {
  return [0, plant.meters.current_range_a ?? 20];
}

const STOPS = {low: "<", high: ">"}; // a pointer at its stop says only that

const SWINGS = ["pressure", "flow", "current"]; // the pointers of these swing where vapour or air goes through a pump

/**
 * Everything one instrument needs to draw itself, in shown units.
 * @returns {{label: string, unit: string, range: [number, number], value: number|null,
 *   ghost: number|null, day: boolean, text: string, off: null|"low"|"high", hunting: boolean, moves: boolean, says: string}}
 */
export function instrument(id, {answer, previous, yesterday = null, units, plant, turning}, words) {
  const {quantity, label, range} = INSTRUMENTS[id];
  const reading = find(answer, id);
  const ends = reading ? [reading.low, reading.high] : range(plant);
  const before = find(previous, id);
  const value = reading?.value ?? null;
  const off = reading?.off_scale ?? null;
  const full = units.full(quantity, value, ends[1] - ends[0]);
  const says = value === null ? words("draw-no-reading") : off ? words("draw-off-scale", {reading: full})
    : hunting(answer, quantity, reading) ? words("draw-hunting", {reading: full}) : full;
  const swings = hunting(answer, quantity, reading);
  const sign = swings ? "≈" : STOPS[off] ?? "";
  return {
    label: words(label),
    unit: units.symbol(quantity),
    range: ends.map((end) => units.value(quantity, end)),
    value: value === null ? null : units.value(quantity, value),
    ghost: before?.value === null || before?.value === undefined ? null : units.value(quantity, before.value),
    day: Boolean(yesterday),
    text: value === null ? "–" : `${sign}${units.text(quantity, value, ends[1] - ends[0])}`,
    off,
    hunting: swings,
    moves: turning,
    says: yesterday && before ? words("draw-two-days", {today: says, yesterday: units.full(quantity, before.value, ends[1] - ends[0])}) : says,
  };
}

const hunting = (answer, quantity, reading) => Boolean(answer?.state?.hunting) && reading !== null && reading.value !== null && !reading.off_scale && SWINGS.includes(quantity);

const find = (answer, id) => answer?.shown?.find((reading) => reading.id === id) ?? null;
