// The charts beside the head chart: what each draws over the flow of one pump, and between which ends. No DOM.

import {between} from "../lib/scale.js";
import {chartDomain} from "./chart-geometry.js";

const known = Number.isFinite;
const most = (values) => values.reduce((top, value) => (known(value) && value > top ? value : top), 0);

/**
 * One chart. `curves` names columns of the answer, `of` the side each belongs to; `points` gives the values that
 * stand at the duty flow of a pump; `level` a line across; `from` the flows that are marked: for NPSH those from which on
 * the first pump loses 3 % of its head, and from which on there is less than twice what it needs, null where none is.
 */
export const FLOW_CHARTS = Object.freeze({
  npsh: {
    quantity: "head",
    curves: [{column: "npsh_available", of: "load"}, {column: "npsh_required", of: "machine"}],
    points: ({npsh_available: offered, npsh_required: needed}) => [offered, needed],
    level: () => null,
    from: ({curves: {npsh}}) => [npsh?.begins ?? null, npsh?.bubbles_surely ?? null],
    top: npshTop,
  },
  power: {
    quantity: "power",
    curves: [{column: "power", of: "machine"}],
    points: ({shaft_power: power}) => [power],
    level: ({state}) => state.machines[0]?.rated_power ?? null,
    from: () => [],
    top: (answer) => most([...(answer.curves.power ?? []), answer.state.machines[0]?.rated_power, ...pointsOf(answer, FLOW_CHARTS.power).map(({values}) => values[0])]),
  },
});

/** Far beyond its last point a pump's required NPSH means nothing: it would press all else to the floor. */
function npshTop(answer) {
  const {npsh_available: offered = [], npsh_required: needed = []} = answer.curves;
  const points = pointsOf(answer, FLOW_CHARTS.npsh).flatMap(({values}) => values);
  const matters = most([...offered, ...points]);
  return Math.min(Math.max(most(needed), matters), matters > 0 ? 2 * matters : Infinity);
}

/**
 * What stands at the flow of each pump; pumps that do the same are one.
 * @returns {{flow: number, values: (number|null)[]}[]}
 */
export function pointsOf({state}, {points}) {
  const all = state.machines.map((machine) => ({flow: machine.flow, values: points(machine).map((value) => (known(value) ? value : null))}));
  return all.filter((one, i) => !all.slice(0, i).some(({flow, values}) => flow === one.flow && `${values}` === `${one.values}`));
}

/** Ends of both axes, SI: the flow's are those of the head chart, so that one stands over the other. */
export function flowDomain(answers, chart) {
  const kept = answers.filter(Boolean);
  const tops = kept.map((answer) => chart.top(answer));
  const lows = kept.flatMap((answer) => pointsOf(answer, chart).flatMap(({values}) => values).filter(known));
  return {flow: chartDomain(kept).flow, head: [Math.min(0, ...lows), 1.1 * Math.max(1e-3, ...tops)]};
}

/** What the curves hold at a flow, in the order of the table; null where one does not reach. */
export const readCurves = ({curves}, chart, at) =>
  chart.curves.map(({column}) => (curves[column] ? between(curves.flow, curves[column], at) : null));

const KEY = 46; // [px] a key's line and what is left free beside it
const LEGEND_LETTER = 8.2; // [px] width of a letter of its words

/** How far from the left each key of a legend stands. [px] */
export const legendPlaces = (texts) =>
  texts.map((_, i) => texts.slice(0, i).reduce((sum, text) => sum + KEY + LEGEND_LETTER * text.length, 0));
