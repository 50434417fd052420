// The head–flow chart: what the load asks, what the machine answers, and where they meet.

import {createFigure, hostSize} from "../lib/figure.js";
import {el, px, say, set, setAll, show} from "../lib/svg.js";
import {createFrame} from "./chart-frame.js";
import {chartDomain, curvePath, dotsPath, dutyWords, sampled} from "./chart-geometry.js";
import {createStates, statesSaid} from "./chart-states.js";
import {createReadout} from "./chart-readout.js";

const BESIDE = 136; // [px] where the machine's keys begin, clear of the load's and of the mark of other states
const HEAVY = 12; // the hollow mark counts as much as so many points of a curve

/**
 * @param {HTMLElement} host
 * @param {{document: Document, words: function}} deps
 * @returns {{update: (model: object) => void, remove: () => void}}
 */
export function create(host, {document, words}) {
  return createFigure(host, document, "chart", {
    size: () => hostSize(host, document, {width: 328, height: 330, least: [240, 250]}),
    build: (svg, _, size) => build(svg, size, document, words),
  });
}

function build(svg, size, document, words) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const frame = createFrame(svg, size, "head");
  const line = (kind) => make("path", {class: kind});
  const parts = {
    frame, guides: line("duty-guide"), oldLoad: line("ghost-curve ghost-load"), oldMachine: line("ghost-curve"),
    load: line("load-curve"), single: line("single-curve"), machine: line("machine-curve"), dots: line("machine-dots"),
    before: make("circle", {class: "duty-before", r: 5.5}), duty: make("circle", {class: "duty", r: 5.5}),
    dutyHead: make("text", {class: "duty-text"}), dutyFlow: make("text", {class: "duty-text"}),
    states: createStates(make, words, size.width < 290),
    legend: buildLegend(make, words, size.width < 290), readout: createReadout(svg, document, frame.plot, words),
  };
  frame.curves.append(parts.guides, parts.oldLoad, parts.oldMachine, parts.single, parts.load, parts.machine, parts.dots);
  parts.legend.node.append(parts.states.legend);
  svg.append(parts.before, parts.states.node, parts.duty, parts.dutyFlow, parts.dutyHead, parts.legend.node, parts.readout.node);
  set(svg, "role", "group");
  return {update: (model) => update(svg, parts, model, words)};
}

function buildLegend(make, words, short) {
  const load = make("text", {class: "legend-load", x: 40, y: 16}, short ? words("draw-asks") : words("draw-load-curve"));
  const machine = make("g", {transform: `translate(${short ? 92 : BESIDE},0)`},
    make("path", {class: "machine-curve", d: "M0,12h28"}), make("path", {class: "machine-dots", d: "M7,12h.01M21,12h.01"}),
    make("text", {class: "legend-machine", x: 34, y: 16}, short ? words("draw-answers") : words("draw-machine-curve")));
  const single = make("g", {transform: `translate(${short ? 92 : BESIDE},18)`},
    make("path", {class: "single-curve", d: "M0,12h28"}), make("text", {class: "legend-single", x: 34, y: 16}, words("draw-single-curve")));
  return {node: make("g", {class: "legend"}, make("path", {class: "load-curve", d: "M6,12h28"}), load, machine, single), single};
}

function update(svg, parts, model, words) {
  const {answer, previous, yesterday, units, curves = true} = model;
  const axes = parts.frame.update(chartDomain([answer, previous], curves), units);
  updateCurves(parts, axes, answer, previous, curves);
  updateDuty(parts, axes, model);
  parts.states.update(axes, curves ? answer?.state.possible : undefined);
  show(parts.legend.node, curves);
  parts.readout.update(axes, curves ? answer : null, units);
  const met = ({duty}) => ({flow: units.full("flow", duty.flow), head: units.full("head", duty.head)});
  const said = answer ? words("draw-chart-says", met(answer)) + statesSaid(answer.state.possible, units, words) : words("draw-chart-empty");
  set(svg, "aria-label", yesterday && previous ? words("draw-chart-two-days", {today: said, ...met(previous)}) : said);
}

function updateCurves(parts, axes, answer, previous, shown) {
  const {load, single, machine, dots, oldLoad, oldMachine, legend} = parts;
  for (const node of [load, machine, dots]) show(node, shown && Boolean(answer));
  for (const node of [oldLoad, oldMachine]) show(node, shown && Boolean(previous));
  const two = shown && answer?.state.machines.length > 1;
  for (const node of [single, legend.single]) show(node, Boolean(two));
  if (answer && shown) {
    const {flow} = answer.curves;
    set(load, "d", curvePath({flow, heads: answer.curves.load}, axes));
    set(machine, "d", curvePath({flow, heads: answer.curves.station}, axes));
    set(dots, "d", dotsPath({flow, heads: answer.curves.station}, axes));
    if (two) set(single, "d", curvePath({flow, heads: answer.curves.machine}, axes));
  }
  const place = `${axes.flow} ${axes.head}`;
  if (previous && shown && (oldLoad.drawnFor !== place || oldLoad.drawnOf !== previous)) { // once for a whole drag
    Object.assign(oldLoad, {drawnFor: place, drawnOf: previous});
    set(oldLoad, "d", curvePath({flow: previous.curves.flow, heads: previous.curves.load}, axes));
    set(oldMachine, "d", curvePath({flow: previous.curves.flow, heads: previous.curves.station}, axes));
  }
}

function updateDuty({duty, before, guides, dutyFlow, dutyHead}, axes, {answer, previous, units, curves = true}) {
  for (const node of [duty, guides, dutyFlow, dutyHead]) show(node, Boolean(answer));
  show(before, Boolean(previous));
  if (previous) setAll(before, {cx: px(axes.x(previous.duty.flow)), cy: px(axes.y(previous.duty.head))});
  if (!answer) return;
  const [x, y] = [axes.x(answer.duty.flow), axes.y(answer.duty.head)];
  setAll(duty, {cx: px(x), cy: px(y)});
  set(guides, "d", `M${axes.plot.left},${px(y)}H${px(x)}V${axes.plot.bottom}`);
  const {flow, load, station, machine} = answer.curves;
  const drawn = curves ? [load, station, machine].flatMap((heads) => sampled({flow, heads}, axes)) : [];
  const hollow = previous ? Array(HEAVY).fill([axes.x(previous.duty.flow), axes.y(previous.duty.head)]) : [];
  const place = dutyWords([x, y], axes, [...drawn, ...hollow]);
  setAll(dutyFlow, {x: px(place.x), y: px(place.y), "text-anchor": place.anchor});
  setAll(dutyHead, {x: px(place.x), y: px(place.y + 16), "text-anchor": place.anchor});
  say(dutyFlow, units.full("flow", answer.duty.flow));
  say(dutyHead, units.full("head", answer.duty.head));
}
