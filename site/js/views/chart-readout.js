// Reading both curves at any flow: with a pointer, a finger or the arrow keys.

import {clamp} from "../lib/scale.js";
import {el, px, say, set, setAll, show} from "../lib/svg.js";
import {readAt} from "./chart-geometry.js";

const STEPS = 50; // arrow keys cross the chart in so many steps

/** How the head chart is read. */
const HEADS = {
  quantity: "head", id: "draw-readout",
  read: ({curves}, flow) => {
    const {asked, answered} = readAt(curves, flow);
    return [asked, answered];
  },
};

/**
 * @param {SVGSVGElement} svg
 * @param {Document} document
 * @param {{left: number, right: number, top: number, bottom: number}} plot
 * @param {function} words
 * @param {object} [how]  what is read: its quantity, the beginning of its words' ids,
 *   and `read(answer, flow)`, what the load's curve and the machine's hold there
 */
export function createReadout(svg, document, plot, words, {quantity, id, read} = HEADS) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const line = make("line", {class: "readout-line", y1: plot.top, y2: plot.bottom});
  const asked = make("circle", {class: "readout-load", r: 4});
  const answered = make("circle", {class: "readout-machine", r: 4});
  const text = make("text", {class: "readout-text end", x: plot.right, y: plot.top - 10});
  const hit = make("rect", {class: "hit", x: plot.left, y: plot.top, width: plot.right - plot.left, height: plot.bottom - plot.top});
  const node = make("g", {class: "control readout", role: "slider", tabindex: 0, "aria-label": words(id)}, line, asked, answered, text, hit);
  let axes = null, answer = null, units = null, at = null;

  const draw = () => {
    const shown = at !== null && answer !== null;
    for (const part of [line, text]) show(part, shown);
    const flow = at ?? answer?.duty.flow ?? null;
    const values = answer ? read(answer, flow) : null;
    place(asked, shown ? values[0] : null);
    place(answered, shown ? values[1] : null);
    if (!values) return;
    setAll(node, {"aria-valuemin": 0, "aria-valuemax": 100, "aria-valuenow": Math.round((100 * (flow - axes.flow[0])) / (axes.flow[1] - axes.flow[0]))});
    set(node, "aria-valuetext", words(`${id}-says`, figures(flow, values)));
    if (!shown) return;
    setAll(line, {x1: px(axes.x(at)), x2: px(axes.x(at))});
    say(text, words(`${id}-short`, figures(flow, values)));
  };
  const place = (dot, head) => {
    const inside = Number.isFinite(head) && head >= axes.head[0] && head <= axes.head[1];
    show(dot, inside);
    if (inside) setAll(dot, {cx: px(axes.x(at)), cy: px(axes.y(head))});
  };
  const figures = (flow, [load, machine]) => ({
    flow: units.full("flow", flow), load: units.full(quantity, load), machine: units.full(quantity, machine),
  });

  const move = (flow) => {
    at = flow === null || !axes ? null : clamp(flow, ...axes.flow);
    draw();
  };
  const pointed = (event) => {
    const box = svg.getBoundingClientRect();
    const x = ((event.clientX - box.left) * svg.viewBox.baseVal.width) / box.width;
    if (axes) move(axes.x.invert(x));
  };
  node.addEventListener("pointermove", pointed);
  node.addEventListener("pointerdown", pointed);
  node.addEventListener("pointerleave", () => document.activeElement !== node && move(null));
  node.addEventListener("blur", () => move(null));
  node.addEventListener("keydown", (event) => {
    if (event.key === "Escape") return move(null);
    const next = keyed(event.key, at ?? answer?.duty.flow ?? 0, axes?.flow);
    if (next === null || !answer) return;
    event.preventDefault();
    move(next);
  });
  return {
    node,
    update(nextAxes, nextAnswer, nextUnits) {
      [axes, answer, units] = [nextAxes, nextAnswer, nextUnits];
      show(node, Boolean(answer));
      draw();
    },
  };
}

/** The flow after a key, or null for a key that means nothing here. */
export function keyed(key, at, [low, high] = [0, 1]) {
  const step = (high - low) / STEPS;
  const places = {
    ArrowRight: at + step, ArrowUp: at + step, ArrowLeft: at - step, ArrowDown: at - step,
    PageUp: at + 5 * step, PageDown: at - 5 * step, Home: low, End: high,
  };
  return key in places ? clamp(places[key], low, high) : null;
}
