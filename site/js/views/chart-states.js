// On the head chart: the other states in which a plant may be, where a pump's curve rises somewhere.

import {px, say, set, show} from "../lib/svg.js";

const LASTS = 5.5, FALLS = 4; // [px] half the mark

/** A filled diamond for each state that lasts, a cross for each that does not; the one that is there has the dot. */
export function statePaths(possible, {x, y}) {
  const paths = {lasts: "", falls: ""};
  for (const {flow, head, lasts, there} of possible ?? []) {
    const [a, b] = [x(flow), y(head)];
    if (there) continue;
    if (lasts) paths.lasts += `M${px(a)},${px(b - LASTS)}l${LASTS},${LASTS}l${-LASTS},${LASTS}l${-LASTS},${-LASTS}Z`;
    else paths.falls += `M${px(a - FALLS)},${px(b - FALLS)}l${2 * FALLS},${2 * FALLS}M${px(a + FALLS)},${px(b - FALLS)}l${-2 * FALLS},${2 * FALLS}`;
  }
  return paths;
}

/** All states in words, one after the other; nothing where there is but one. */
export function statesSaid(possible, units, words) {
  if (!possible) return "";
  const each = possible.map(({flow, head, lasts, there}) => words(there ? "draw-state-there" : lasts ? "draw-state-lasts" : "draw-state-falls", {
    flow: units.full("flow", flow), head: units.full("head", head),
  }));
  return ` ${words("draw-states-say", {count: possible.length, states: each.join("; ")})}`;
}

/**
 * @param {boolean} short  whether there is room for the marks alone in the legend
 * @returns {{node: SVGElement, legend: SVGElement, update: (axes: object, possible: object[]|undefined) => void}}
 */
export function createStates(make, words, short) {
  const lasts = make("path", {class: "state-lasts"}), falls = make("path", {class: "state-falls"});
  const text = make("text", {class: "legend-states", x: 37, y: 16});
  const legend = make("g", {transform: "translate(9,18)"},
    make("path", {class: "state-lasts", d: statePaths([{flow: 12, head: 12, lasts: true}], PLAIN).lasts}),
    make("path", {class: "state-falls", d: statePaths([{flow: 28, head: 12, lasts: false}], PLAIN).falls}), text);
  say(text, short ? "" : words("draw-other-states"));
  return {
    node: make("g", {}, lasts, falls),
    legend,
    update(axes, possible) {
      const paths = statePaths(possible, axes);
      set(lasts, "d", paths.lasts);
      set(falls, "d", paths.falls);
      show(legend, Boolean(possible));
    },
  };
}

const PLAIN = {x: (at) => at, y: (at) => at};
