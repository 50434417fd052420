// Every kind of note that an answer may bring: its rank, whether it warns, what its numbers are. No DOM.

/** Places on the suction side; what boils at all others does the pump no harm. */
const BEFORE_PUMP = ["supply-surface", "supply-outlet", "suction"];

/**
 * What is most urgent comes first; `caution` says whether the real plant needs a warning. Where the place matters,
 * `at` says at which of them, and `id` names the words, if they are not those of the kind.
 */
export const KINDS = Object.freeze([
  {kind: "burst", caution: true},
  {kind: "pressure-limit", caution: true},
  {kind: "relief-behind", caution: true},
  {kind: "pumps-backward", caution: true},
  {kind: "nothing-comes", caution: true},
  {kind: "runs-dry", caution: true},
  {kind: "stalled", caution: true},
  {kind: "turning-backward", caution: true},
  {kind: "line-off", caution: true},
  {kind: "not-reached", caution: false},
  {kind: "dead-headed", caution: true},
  {kind: "held-shut", caution: true},
  {kind: "reverse-flow", caution: true},
  {kind: "start-hangs", caution: true},
  {kind: "belt-slips", caution: true},
  {kind: "trips", caution: true},
  {kind: "overload", caution: true},
  {kind: "suction-dry", caution: true},
  {kind: "suction-boils", caution: true},
  {kind: "npsh-short", caution: true},
  {kind: "npsh-not-counted", caution: false},
  {kind: "below-vapour-pressure", caution: true, at: (place) => BEFORE_PUMP.includes(place)},
  {kind: "below-vapour-pressure", id: "below-vapour-pressure-behind", caution: true, at: (place) => !BEFORE_PUMP.includes(place)},
  {kind: "vortex", caution: false},
  {kind: "bubbles", caution: true},
  {kind: "no-relief", caution: true},
  {kind: "relief-lifted", caution: true},
  {kind: "current-over-limit", caution: true},
  {kind: "control-lost", caution: false, at: (place) => !place.endsWith("level")},
  {kind: "control-lost", id: "control-lost-level", caution: true, at: (place) => place.endsWith("level")},
  {kind: "control-hunts", caution: false},
  {kind: "current-limited", caution: false},
  {kind: "choked", caution: true},
  {kind: "siphon-broken", caution: true},
  {kind: "not-primed", caution: false},
  {kind: "line-filling", caution: true},
  {kind: "not-supplied", caution: false},
  {kind: "backflow", caution: false},
  {kind: "standing", caution: false},
  {kind: "low-voltage", caution: false},
  {kind: "phase-lost", caution: true},
  {kind: "beyond-curve", caution: false},
  {kind: "other-speed", caution: false},
  {kind: "pressure-undefined", caution: false},
  {kind: "outside-rule", caution: false},
  {kind: "more-than-one-state", caution: false},
  {kind: "held-level", caution: false},
]);

/** The quantity of each fact, by its name. */
const FACTS = {
  flow: "flow", last_flow: "flow", head: "head", missing: "head", available: "head", required: "head", lost: "head", enough: "flow", above: "head", needed: "head", shaft_power: "power",
  rated_power: "power", load: "efficiency", pressure: "pressure", vapour_pressure: "pressure", limit: "pressure", set: "pressure",
  torque: "torque", speed: "speed", measured_speed: "speed", rise: "head", against: "head", drop: "pressure", most: "pressure", height: "height", filled: "opening",
  current: "current", usual_current: "current", setting: "current", after: "time", voltage: "opening", heat: "power",
  output: "output", wanted_flow: "flow", wanted_pressure: "pressure", wanted_height: "height", draw: "flow", frequency: "frequency", asked: "frequency",
  least_flow: "flow", most_flow: "flow",
};

/** Whatever a controller measures, its words speak of a reading and of what is wanted of it. */
const CONTROLLED = ["flow", "pressure", "height"];

/** What a rule's limit is a limit of; others are bare numbers. */
const LIMITS = {flow: "flow", head: "head", diameter: "efficiency", fraction: "efficiency", viscosity: "kinematic"};

/** Facts whose sign the sentence says in words. */
const REVERSED = ["reverse-flow", "backflow", "turning-backward", "pumps-backward", "nothing-comes"];

/** The facts of a note, SI, as the reader's text. */
export function worded({kind, facts, rule}, units) {
  const [name, limit] = (rule ?? "").split(".");
  const shown = Object.entries(facts).map(([key, value]) => {
    const quantity = ["got", "low", "high"].includes(key) && rule ? LIMITS[limit] : FACTS[key];
    const size = ["flow", "speed"].includes(key) && REVERSED.includes(kind) ? Math.abs(value) : value;
    return [key, quantity ? units.full(quantity, size) : plain(size)];
  });
  const own = CONTROLLED.find((name) => `wanted_${name}` in facts);
  const said = Object.fromEntries(shown);
  if (own) Object.assign(said, {reading: said[own] ?? "–", wanted: said[`wanted_${own}`]});
  if ("enough" in facts) said.curable = facts.enough > 0 ? "yes" : "no";
  return {...said, ...(rule ? {rule: name, held: facts.held ? "yes" : "no"} : {})};
}

/** A number without a unit, in three digits. */
const plain = (value) => String(Number(Number(value).toPrecision(3)));
