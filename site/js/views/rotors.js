// What turns inside a pump, cut open: an impeller, a propeller, or the rotors of a displacement pump.

import {el, px, set, show} from "../lib/svg.js";

const turn = (radius, angle) => `${px(radius * Math.cos(angle))},${px(radius * Math.sin(angle))}`;

/** Points of a wheel's edge between two radii, `teeth` times around. */
function toothed(inner, outer, teeth, share = 0.5) {
  const points = [];
  for (let i = 0; i < teeth; i++) {
    const [at, step] = [(2 * Math.PI * i) / teeth, (2 * Math.PI) / teeth];
    for (const [radius, part] of [[inner, 0], [outer, 0.2], [outer, 0.2 + 0.6 * share], [inner, 0.4 + 0.6 * share]]) points.push(turn(radius, at + part * step));
  }
  return `M${points.join("L")}Z`;
}

/** Three smooth lobes. */
function lobed(r) {
  const points = Array.from({length: 48}, (_, i) => turn(r * (0.72 + 0.28 * Math.cos((3 * 2 * Math.PI * i) / 48)), (2 * Math.PI * i) / 48));
  return `M${points.join("L")}Z`;
}

const BLADES = {
  /** Swept back against the turning. */
  radial: (r, a) => `M${turn(0.2 * r, a)}Q${turn(0.46 * r, a - 0.12)} ${turn(0.6 * r, a - 0.85)}`,
  mixed: (r, a) => `M${turn(0.2 * r, a)}Q${turn(0.42 * r, a - 0.5)} ${turn(0.6 * r, a - 0.5)}L${turn(0.6 * r, a - 0.1)}Q${turn(0.4 * r, a)} ${turn(0.2 * r, a)}Z`,
  axial: (r, a) => `M${turn(0.18 * r, a)}Q${turn(0.5 * r, a - 0.75)} ${turn(0.62 * r, a - 0.35)}Q${turn(0.6 * r, a + 0.2)} ${turn(0.18 * r, a + 0.3)}Z`,
};
const COUNT = {radial: 6, mixed: 5, axial: 4};

/** A wheel whose middle is at (0, y). */
function wheel(document, y, name, ...children) {
  const turning = el(document, "g", {class: name}, ...children);
  const node = el(document, "g", {transform: y ? `translate(0,${px(y)})` : null}, turning);
  return {node, turning};
}

const WORN = 0.3; // share of wear from which a gap is drawn at its widest

/** Gaps that wear has opened around what turns: wider as more slips back. */
const leakOf = (gaps, r) => (worn) => {
  for (const gap of gaps) {
    show(gap, worn > 0);
    set(gap, "stroke-width", px(r * (0.03 + 0.09 * Math.min(1, worn / WORN))));
  }
};

const ring = (document, y, radius) => el(document, "circle", {class: "gap", cy: px(y), r: px(radius)});

/** Sector that stopped-up passages take. */
function clogPath(r, share) {
  const end = 2 * Math.PI * Math.min(0.999, share);
  return `M${turn(0.2 * r, 0)}L${turn(0.6 * r, 0)}A${px(0.6 * r)},${px(0.6 * r)} 0 ${share > 0.5 ? 1 : 0} 1 ${turn(0.6 * r, end)}L${turn(0.2 * r, end)}Z`;
}

function impeller(document, kind, r) {
  const blades = Array.from({length: COUNT[kind]}, (_, i) => el(document, "path", {class: `blade ${kind}`, d: BLADES[kind](r, (i * 2 * Math.PI) / COUNT[kind])}));
  const clog = el(document, "path", {class: "clog", d: ""});
  const sized = el(document, "g", {}, el(document, "circle", {class: "disc", r: px(0.6 * r)}), ...blades, clog, el(document, "circle", {class: "eye", r: px(0.17 * r)}));
  const {node, turning} = wheel(document, 0, "impeller", sized);
  const gaps = [ring(document, 0, 0.66 * r)];
  return {node: el(document, "g", {}, ...gaps, node), leak: leakOf(gaps, r), wheels: [[turning, 1]], sized, clog: (share) => (share > 0 ? clogPath(r, share) : ""), clogged: clog};
}

function pair(document, r, name, path, offset) {
  const [a, b] = [-0.42 * r, 0.42 * r].map((y, i) => wheel(document, y, "impeller",
    el(document, "path", {class: `rotor ${name}`, d: path, transform: i ? `rotate(${offset})` : null}), el(document, "circle", {class: "eye", r: px(0.1 * r)})));
  const gaps = [-0.42 * r, 0.42 * r].map((y) => ring(document, y, 0.52 * r));
  return {node: el(document, "g", {}, ...gaps, a.node, b.node), leak: leakOf(gaps, r), wheels: [[a.turning, 1], [b.turning, -1]]};
}

/** A spindle seen from the side: its thread runs along it, and is cut off where the housing ends. */
function spindle(document, r) {
  const [pitch, half, high] = [0.45 * r, 0.82 * r, 0.34 * r];
  const threads = Array.from({length: 6}, (_, i) => `M${px((i - 1.5) * pitch)},${px(2 * high)}L${px((i - 1) * pitch)},0`).join("");
  const run = el(document, "path", {class: "blade thread", d: threads});
  const window = el(document, "svg", {x: px(-half), y: px(-high), width: px(2 * half), height: px(2 * high)}, run);
  const gaps = [-1, 1].map((side) => el(document, "line", {class: "gap", x1: px(-half), x2: px(half), y1: px(side * (high + 0.05 * r)), y2: px(side * (high + 0.05 * r))}));
  const node = el(document, "g", {class: "impeller"}, ...gaps,
    el(document, "rect", {class: "disc", x: px(-half), y: px(-high), width: px(2 * half), height: px(2 * high), rx: 3}), window,
    el(document, "line", {class: "blade", x1: px(-half), x2: px(half), y1: 0, y2: 0}));
  return {node, leak: leakOf(gaps, r), wheels: [], slide: (degrees) => `translate(${px((((degrees % 360) + 360) % 360) / 360 * pitch)},0)`, run};
}

/** @returns {{node: SVGGElement, wheels: [SVGElement, number][]}} wheels with the way they turn */
export function createRotors(document, kind, r) {
  if (kind === "gear") return pair(document, r, "gear", toothed(0.3 * r, 0.5 * r, 9), 20);
  if (kind === "lobe") return pair(document, r, "lobe", lobed(0.48 * r), 60);
  if (kind === "screw") return spindle(document, r);
  return impeller(document, kind, r);
}
