// What a plant has besides supply, pumps, valve, line and delivery. A table that is not there is not fitted. No DOM.

const has = (table) => Boolean(table?.fitted);

/**
 * @param {object} plant
 * @returns {{relief: boolean, back: boolean, branch: boolean, burst: boolean, filter: boolean, second: boolean,
 *   summit: boolean, control: boolean}} `back` is the return line; what stands in the line is gone with it
 */
export function fittedOf(plant) {
  const on = plant.discharge.attached;
  return {
    relief: has(plant.relief),
    back: has(plant.return_line),
    branch: on && has(plant.branch),
    burst: on && has(plant.burst),
    filter: on && has(plant.filter),
    second: on && has(plant.second_line),
    summit: on && has(plant.summit),
    control: on && has(plant.control),
  };
}

/** Whether anything at all is fitted besides the plain plant. */
export const anyFitted = (plant) => Object.values(fittedOf(plant)).some(Boolean);

/** How many lanes lie below the line: those back to the supply share no height, the one to the second user is beside them. */
export function lanesOf(plant) {
  const {relief, back, branch} = fittedOf(plant);
  return Math.max(Number(relief) + Number(back), Number(branch));
}

/** Share of the discharge line that is full, 0 … 1. */
export const filledOf = ({discharge}) => discharge.filled ?? 1;

/** The model of the pump of this number (0 or 1): that of its own, or the first one's; none where the plant's file has its points. */
const modelOf = (pump, index) => (index > 0 ? pump.second?.model : undefined) ?? pump.model;

/**
 * What both pumps are drawn as: as the engine says, and until it has spoken of this pump, as its catalogue does.
 * @returns {[string, string]} each radial, mixed, axial, gear, lobe or screw
 */
export function pumpKinds({plant: {pump}, answer, catalogue}) {
  return [0, 1].map((index) => {
    const model = modelOf(pump, index);
    const said = answer?.plant && modelOf(answer.plant.pump, index) === model ? answer.state?.machines?.[index]?.kind : null;
    const listed = model ? catalogue?.pumps?.find(({id}) => id === model)?.kind : pump.displacement?.kind;
    return said ?? listed ?? "radial";
  });
}

/** What state a pump is in: worn, trimmed, stopped up, turned the wrong way. */
export function conditionOf({pump}, index) {
  const own = index > 0 ? pump.second ?? {} : pump;
  return {
    worn: (own.wear_percent ?? 0) / 100,
    trim: (own.trim_percent ?? 100) / 100,
    blocked: (own.blocked_percent ?? 0) / 100,
    wrong: own.rotation === "wrong",
  };
}

const STEP = 0.05;

/**
 * How large two pumps are drawn, the larger of them 1: by the cube root of what one turn carries at best efficiency,
 * which is how a pump's diameter goes.
 * @returns {[number, number]}
 */
export function pumpSizes(answer) {
  const turns = (answer?.state?.machines ?? []).map((m) => (m.best_efficiency_flow > 0 && m.speed > 0 ? Math.cbrt(m.best_efficiency_flow / m.speed) : NaN));
  if (turns.length < 2 || !turns.every(Number.isFinite)) return [1, 1];
  const largest = Math.max(...turns);
  return turns.map((turn) => Math.max(0.7, Math.round(turn / largest / STEP) * STEP));
}
