// Head and pressure along the path of the liquid, from surface to surface.

import {createFigure, hostSize} from "../lib/figure.js";
import {el, px, say, set, show} from "../lib/svg.js";
import {NAMED, pathGeometry} from "./path-geometry.js";

/**
 * @param {HTMLElement} host
 * @param {{document: Document, words: function}} deps
 * @returns {{update: (model: object) => void, remove: () => void}}
 */
export function create(host, {document, words}) {
  return createFigure(host, document, "path", {
    size: () => hostSize(host, document, {width: 540, height: 200, least: [280, 110]}),
    build: (svg, _, size) => build(svg, size, document, words),
  });
}

function build(svg, size, document, words) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const line = (kind) => make("path", {class: kind});
  const parts = {
    grid: make("g"), between: line("pressure-band"), ghost: line("ghost-curve"), pipe: line("path-pipe"),
    grade: line("path-grade"), head: line("path-head"), machine: line("path-machine"), names: make("g"),
    gaps: make("g"), unit: make("text", {class: "axis-title", x: 6, y: 18}),
    empty: make("text", {class: "middle axis-title", x: size.width / 2, y: size.height / 2}, words("draw-path-empty")),
  };
  svg.append(parts.grid, parts.between, parts.ghost, parts.grade, parts.head, parts.machine, parts.pipe, parts.names, parts.gaps, parts.unit, parts.empty,
    legend(make, words, size.width));
  set(svg, "role", "img");
  return {update: (model) => update(svg, parts, model, size, words, make)};
}

function legend(make, words, width) {
  const wide = width > 420;
  const at = [0, 74, 206];
  const kinds = [["path-head", "draw-path-head"], ["path-grade", "draw-path-grade"], ["path-pipe", "draw-path-pipe"]];
  const entries = kinds.map(([kind, word], i) => make("g", {transform: `translate(${at[i]},0)`},
    make("path", {class: kind, d: "M0,13h22"}), make("text", {x: 28, y: 17}, words(word))));
  return make("g", {class: "legend", transform: `translate(${wide ? width - 276 : 32},0)`}, ...entries);
}

const essence = (answer) => answer && {path: answer.state.path, density: answer.state.liquid.density};

function update(svg, parts, {answer, previous, units}, size, words, make) {
  const {grid, names, gaps, unit, empty, ...lines} = parts;
  for (const node of [...Object.values(lines), gaps]) show(node, Boolean(answer));
  show(empty, !answer);
  say(unit, units.symbol("head"));
  set(svg, "aria-label", answer ? describe(answer, words) : words("draw-no-reading"));
  if (!answer) return;
  const places = pathGeometry(essence(answer), essence(previous), units, size);
  for (const name of ["between", "pipe", "grade", "head", "machine", "ghost"]) set(lines[name], "d", places[name]);
  updateGrid(grid, places, make);
  updateNames(names, places, words, make, size);
  updateGaps(gaps, places, make);
}

/** The picture in a sentence, and where it has gaps. */
function describe({state}, words) {
  const pumps = state.machines.length;
  const dark = state.path.filter(({pressure}) => pressure === null).map(({place}) => words(`place-${place}`, {pumps}));
  const gaps = dark.length ? words("draw-path-gaps", {places: dark.join(words("comma"))}) : "";
  return `${words("draw-path-says")} ${gaps}`.trim();
}

/** Where the pressure is unknown, a question mark stands over the pipe. */
function updateGaps(group, {gaps}, make) {
  const key = gaps.map(([x, y]) => `${px(x)},${px(y)}`).join();
  if (key === group.drawnFor) return;
  group.drawnFor = key;
  group.replaceChildren(...gaps.map(([x, y]) => make("text", {class: "path-gap middle", x: px(x), y: px(y - 7)}, "?")));
}

function updateGrid(grid, {ticks, plot}, make) {
  const key = ticks.map(({place, text}) => `${text}@${px(place)}`).join();
  if (key === grid.drawnFor) return;
  grid.drawnFor = key;
  grid.replaceChildren(...ticks.flatMap(({place, text}) => [
    make("line", {class: "grid-line", x1: plot.left, x2: plot.right, y1: px(place), y2: px(place)}),
    make("text", {class: "tick-text end", x: plot.left - 6, y: px(place + 4)}, text)]));
}

function updateNames(group, {names, plot}, words, make, {height}) {
  const key = names.map(({place, x}) => `${place}@${px(x)}`).join();
  if (key === group.drawnFor) return;
  group.drawnFor = key;
  group.replaceChildren(...names.map(({place, x}, i) => {
    const anchor = i === 0 ? "" : i === names.length - 1 && x > plot.right - 30 ? " end" : " middle";
    return make("text", {class: `path-name${anchor}`, x: px(anchor ? x : x - 8), y: height - 8}, words(NAMED[place]));
  }));
}
