// What stands on the charts of NPSH and power, as words. No DOM.

import {FLOW_CHARTS, pointsOf} from "./flow-chart-table.js";

/** @returns {{axis: string, lines: [string, string], level: string, from: string[], says: string}} */
export function flowChartWords(name, {answer, units}, words) {
  const axis = answer?.state.machines.length > 1 ? words("draw-flow-each", {unit: units.symbol("flow")}) : units.symbol("flow");
  if (!answer) return {axis, lines: ["", ""], level: "", from: [], says: words("draw-flow-chart-empty")};
  return {axis, level: "", from: [], ...SAYS[name](answer, units, words)};
}

const FROM = ["draw-npsh-from", "draw-npsh-bubbles"]; // in the order of the table

const SAYS = {npsh: npshWords, power: powerWords};

function npshWords(answer, units, words) {
  const [{flow, values: [offered, needed]}] = pointsOf(answer, FLOW_CHARTS.npsh);
  const args = {flow: units.full("flow", flow), available: units.full("head", offered), required: units.full("head", needed)};
  const says = [words(offered === null ? "draw-npsh-says-alone" : "draw-npsh-says", args), ...marksSaid(answer.curves.npsh, units, words)].join(" ");
  const margin = offered === null ? "" : words(offered < needed ? "draw-npsh-short" : "draw-npsh-margin", {head: units.full("head", Math.abs(offered - needed))});
  return {
    lines: [words("draw-npsh-needs", args), margin],
    from: FLOW_CHARTS.npsh.from(answer).map((at, i) => (at === null ? "" : words(FROM[i], {flow: units.full("flow", at)}))),
    says,
  };
}

/** Where along the flow bubbles are likely, head is lost, and no more passes. */
function marksSaid(marks, units, words) {
  return ["bubbles_surely", "begins", "boils"].filter((name) => Number.isFinite(marks?.[name])).map((name) => words(`draw-npsh-${name}`, {flow: units.full("flow", marks[name])}));
}

function powerWords(answer, units, words) {
  const {flow, shaft_power: power, current, rated_power: rated} = answer.state.machines[0];
  const args = {flow: units.full("flow", flow), power: units.full("power", power), current: units.full("current", current), rated: units.full("power", rated ?? null)};
  return {
    lines: [args.power, args.current],
    level: rated ? words("draw-power-level", args) : "",
    says: words(rated ? "draw-power-says" : "draw-power-says-alone", args),
  };
}
