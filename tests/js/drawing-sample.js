// A plant and an answer as they come through the door, for tests of the drawings. The numbers
// are invented and only need to fit together where a test says so.

/** A plant with every key that a drawing reads; `edits` are dotted keys. */
export function samplePlant(edits = {}) {
  const plant = {
    title: "Test plant",
    supply: {surface_m: 2, bottom_m: 0, top_m: 4, gas_bar: 0},
    suction: {length_m: 4, bore_mm: 102, strainer_k: 0.8},
    pump: {centre_m: 0.5, arrangement: "single"},
    drive: {supply_hz: 50, frequency_hz: 50, poles: 2},
    check: {fitted: true, k: 2},
    valve: {opening: 0.6},
    discharge: {attached: true, bore_mm: 80},
    delivery: {surface_m: 14, bottom_m: 12, top_m: 16, gas_bar: 0, outlet_m: null},
    gauges: {suction: {height_m: 0.5, range_bar: [-1, 1.5]}, discharge: {height_m: 1.25, range_bar: [0, 6]}, after_valve: {height_m: -3, range_bar: [0, 6]}},
    meters: {flow_range_m3h: 100, current_range_a: 25, speed_range_rpm: 6000},
  };
  for (const [key, value] of Object.entries(edits)) {
    const [table, name] = key.split(".");
    plant[table][name] = value;
  }
  return plant;
}

/** An answer for a plant: 36 m³/h at 30 m. */
export function sampleAnswer(plant = samplePlant(), {flow = 0.01, head = 30} = {}) {
  const pumps = plant.pump.arrangement === "single" ? 1 : 2;
  const reading = (id, quantity, value, low, high) => ({id, quantity, value, low, high, accuracy: 0, off_scale: null});
  const flows = Array.from({length: 21}, (_, i) => i * 0.001);
  return {
    plant, converged: true,
    state: {
      flow, station: {flow, head}, liquid: {density: 1000},
      machines: Array.from({length: pumps}, (_, i) => ({name: `pump-${i + 1}`, flow: flow / (plant.pump.arrangement === "side-by-side" ? 2 : 1), speed: 300})),
      path: [
        {place: "supply-surface", distance: 0, height: 2, head: 2, pressure: 0},
        {place: "suction", distance: 4, height: 0.5, head: 1.9, pressure: 13729},
        {place: "discharge", distance: 4, height: 0.5, head: 31.9, pressure: 307929},
        {place: "delivery-surface", distance: 124, height: 14, head: 14, pressure: 0},
      ],
      balance: {pressure_head: 29.8, height: 0, velocity_head: 0.2, answer: head},
    },
    shown: [
      reading("gauge-suction", "pressure", 13000, -1e5, 1.5e5), reading("gauge-discharge", "pressure", 3e5, 0, 6e5),
      reading("gauge-after-valve", "pressure", 1.5e5, 0, 6e5), reading("flow-meter", "flow", flow, 0, 100 / 3600),
      ...Array.from({length: pumps}, (_, i) => [reading(`ammeter-${i + 1}`, "current", 9, 0, 25), reading(`tachometer-${i + 1}`, "speed", 300, 0, 628)]).flat(),
    ],
    stack: [{block: "lift", head: 12}, {block: "pipe", head: 5}, {block: "valve", head: head - 17}],
    curves: {flow: flows, load: flows.map((q) => 12 + 1.8e5 * q * q), machine: flows.map((q) => 40 - 1e5 * q * q), station: flows.map((q) => 40 - 1e5 * q * q)},
    duty: {flow, head}, notes: [],
  };
}
