// Makes the parts that are fitted besides the plain plant. What they show comes later.

import {middleOf} from "../lib/shape.js";
import {el, px} from "../lib/svg.js";
import {createController} from "./controller.js";
import {createPipe} from "./pipe.js";
import {createArrow, createBasin, createBurst, createFilter, createHandValve, createLabel, createRelief} from "./symbols.js";
import {createCrest} from "./summit.js";

/**
 * @returns {{[part: string]: {node: SVGElement, pipe?: object, …}}} by the name of the part; `over` stands over the line, not below it
 */
export function buildAside({document}, plan) {
  const {aside} = plan;
  const make = {
    relief: lane, "return-line": lane, branch: user, "second-line": plain, burst, filter, summit, controller,
  };
  return Object.fromEntries(Object.entries(aside).map(([part, place]) => [part, make[part](document, place, part, plan)]));
}

/** A part's group: what a pointer finds and a screen reader names. */
export function partGroup(document, part, ...children) {
  return el(document, "g", {class: "part", "data-part": part, role: "group"}, ...children.filter(Boolean));
}

/** A broad unseen band along a run, for a fingertip. */
const reach = (document, run) => el(document, "path", {class: "reach", d: `M${run.map(([x, y]) => `${px(x)},${px(y)}`).join("L")}`});

function line(document, {run, width, bore, arrow}) {
  return {pipe: createPipe(document, run, {width, bore}), arrow: createArrow(document, arrow ?? middleOf(run), width), reach: reach(document, run)};
}

function lane(document, place, part) {
  const {pipe, arrow, reach: band} = line(document, {...place, arrow: middleOf(place.run.slice(1))});
  const valve = part === "relief" ? createRelief(document, place.at, place.size) : createHandValve(document, place.at, place.size, true);
  const label = createLabel(document, place.label);
  return {node: partGroup(document, part, band, pipe.node, arrow.node, valve.node, label.node), pipe, arrow, valve, label};
}

function user(document, place, part) {
  const {pipe, arrow, reach: band} = line(document, place);
  const valve = createHandValve(document, place.at, place.size, place.upright);
  const [label, opening] = [createLabel(document, place.label), createLabel(document, place.opening)];
  const node = partGroup(document, part, band, createBasin(document, place.basin), pipe.node, arrow.node, valve.node, label.node, opening.node);
  return {node, pipe, arrow, valve, label, opening};
}

function plain(document, place, part) {
  const {pipe, arrow, reach: band} = line(document, place);
  return {node: partGroup(document, part, band, pipe.node, arrow.node), pipe, arrow};
}

function burst(document, place, part) {
  const {at, down} = place;
  const hole = createBurst(document, place);
  const hit = el(document, "rect", {class: "reach-box", x: px(at[0] - 13), y: px(at[1] - 12), width: 26, height: px(down + 12)});
  return {node: partGroup(document, part, hit, hole.node), hole, over: true};
}

function filter(document, {at, size}, part, plan) {
  const body = createFilter(document, at, size);
  const label = plan.narrow ? null : createLabel(document, {x: at[0], y: at[1] + 1.2 * size + 15, middle: true});
  return {node: partGroup(document, part, body.node, label?.node), body, label, over: true};
}

function summit(document, place, part) {
  const crest = createCrest(document, place);
  return {node: partGroup(document, part, reach(document, place.crest), crest.node), crest, over: true};
}

function controller(document, place, part) {
  const box = createController(document, place);
  return {node: partGroup(document, part, box.node), box, over: true};
}
