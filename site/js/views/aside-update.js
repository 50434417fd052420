// What the parts besides the plain plant show for a state: flows, openings, faults, and the same in words.

import {set} from "../lib/svg.js";
import {filledOf} from "./fitted.js";
import {instrument} from "./instruments.js";

/** Kinds of notes in an answer, each with the place it is about. */
export const noted = (answer, kind, where) => (answer?.notes ?? []).some((note) => note.kind === kind && (where === undefined || note.where === where));

const flowOf = (answer, name) => answer?.state?.aside?.[name] ?? 0;

/** What goes on behind the lines back to the supply. [m³/s] */
export const flowBehind = (answer) => {
  const total = answer?.state?.station?.flow ?? 0;
  return total - flowOf(answer, "relief") - flowOf(answer, "return-line");
};

/** What the discharge line itself carries to the delivery, the second line's share aside. [m³/s] */
export const flowOfLine = (answer) => (answer?.state?.flow ?? 0) - flowOf(answer, "second-line");

/** What is said of each part, and what it draws. */
const PARTS = {
  relief(part, {answer, plant: {relief}, units, turning, hidden}, words, plan) {
    const flow = flowOf(answer, "relief");
    const lifted = noted(answer, "relief-lifted");
    const blocked = relief.state === "blocked";
    const passing = relief.state === "passing";
    const state = words(`draw-relief-${blocked ? "blocked" : lifted ? "lifted" : passing && flow ? "passing" : "shut"}`);
    part.valve.update({lifted, blocked, passing: passing && flow > 0});
    run(part, flow, turning);
    const named = plan.narrow ? state : words("draw-short", {part: words("draw-relief"), state});
    part.label.update(hidden ? words("draw-relief") : named); // whether it has lifted, nobody may see
    return flow > 0 ? words("draw-relief-flow", {state, flow: units.full("flow", flow)}) : words("draw-relief-says", {state});
  },
  "return-line"(part, {answer, plant, units, turning}, words, plan) {
    const flow = flowOf(answer, "return-line");
    const opening = opened(plant.return_line.opening, units, words);
    part.valve.update(plant.return_line.opening);
    run(part, flow, turning);
    part.label.update(plan.narrow ? short(plant.return_line.opening, units, words) : words("draw-short", {part: words("draw-return"), state: opening}));
    return words("draw-return-says", {opening, flow: units.full("flow", flow)});
  },
  branch(part, {answer, plant, units, turning}, words) {
    const flow = flowOf(answer, "branch-line");
    const opening = opened(plant.branch.opening, units, words);
    part.valve.update(plant.branch.opening);
    run(part, flow, turning);
    part.label.update(words("draw-branch"));
    part.opening.update(short(plant.branch.opening, units, words));
    return words(flow < 0 ? "draw-branch-back" : "draw-branch-says", {opening, flow: units.full("flow", Math.abs(flow))});
  },
  "second-line"(part, {answer, units, turning}, words) {
    const flow = flowOf(answer, "second-line");
    run(part, flow, turning);
    return words("draw-second-says", {flow: units.full("flow", flow)});
  },
  burst(part, {answer, units}, words) {
    const flow = flowOf(answer, "burst");
    part.hole.update({share: flow / (answer?.state?.flow_scale || 1)});
    return words("draw-burst-says", {flow: units.full("flow", flow)});
  },
  filter(part, {plant: {filter}}, words) {
    part.body.update(filter.fouling ?? 0); // what it has caught may be unknown
    part.label?.update(words("draw-filter"));
    return filter.fouling > 0 ? words("draw-filter-fouled", {times: filter.fouling}) : words("draw-filter-clean");
  },
  summit(part, {answer, plant: {summit}}, words) {
    const gas = answer?.state ? noted(answer, "siphon-broken") || noted(answer, "not-primed") || noted(answer, "not-reached", "summit") : !summit.primed;
    part.crest.update({gas});
    return words(gas ? "draw-summit-gas" : "draw-summit-full");
  },
  controller(part, model, words) {
    const {answer, plant, units} = model;
    const {of = "", on, mode} = plant.control;
    const kind = ["flow", "pressure", "level"].find((name) => of.includes(name)) ?? "flow";
    const drive = on === "drive";
    const output = answer?.state?.control?.output;
    const shown = Number.isFinite(output) ? units.full("output", output) : "–";
    const automatic = mode !== "manual";
    const lost = noted(answer, "control-lost") || noted(answer, "control-hunts");
    const reading = instrument("controller-output", model, words);
    part.box.update({short: words(`draw-control-${kind}`), shown, reading, automatic, lost});
    return words("draw-control-says", {kind, on: drive ? "drive" : "valve", mode: automatic ? "automatic" : "manual", output: shown});
  },
};

/** Marks that move, and an arrow that points where it goes. */
function run({pipe, arrow}, flow, moves) {
  pipe.update({flow, moves});
  arrow.update(flow);
}

const opened = (opening, units, words) => (opening === 0 ? words("draw-shut") : words("draw-open", {opening: units.full("opening", opening)}));

const short = (opening, units, words) => (opening === 0 ? words("draw-shut") : units.full("opening", opening));

/** Show all of them. */
export function updateAside(aside, plan, model, words) {
  for (const name in aside) {
    const says = PARTS[name](aside[name], model, words, plan);
    set(aside[name].node, "aria-label", model.hidden ? words("draw-no-reading") : says); // nobody knows its flow then
  }
}

/** What the two lines of the plain plant are called: with their flow, and how far the one to the delivery is full. */
export function nameLines({suction, discharge}, {answer, plant, units}, words) {
  const flow = (value) => (Number.isFinite(value) ? units.full("flow", value) : words("draw-no-reading"));
  const filled = filledOf(plant);
  set(suction, "aria-label", words("draw-suction-line", {flow: flow(answer?.state?.station?.flow)}));
  const says = {flow: flow(answer?.state?.flow), share: units.full("opening", filled)};
  set(discharge, "aria-label", words(filled < 1 ? "draw-line-filling" : "draw-discharge-line", says));
}
