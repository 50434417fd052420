// The casing of a pump, for each kind: its inlet at the left on the shaft's height, its outlet to the right at the top. No DOM.

import {px} from "../lib/svg.js";

/** Spiral about (0, 0). */
function spiral(r, outlet) {
  const points = [];
  for (let angle = -60; angle <= 270; angle += 6) {
    const radius = r * (0.72 + (0.28 * (angle + 60)) / 330);
    const turn = (angle * Math.PI) / 180;
    points.push(`${px(radius * Math.cos(turn))},${px(radius * Math.sin(turn))}`);
  }
  return `M${points.join("L")}H${px(r + 3)}V${px(outlet - r)}H${px(0.5 * r)}Z`;
}

/** Round all the way, as around a propeller. */
function round(r, outlet) {
  const s = 0.82 * r;
  const y = outlet - r;
  return `M${px(-0.1 * r)},${px(-Math.sqrt(s * s - 0.01 * r * r))}L${px(0.15 * r)},${px(-r)}H${px(r + 3)}V${px(y)}H${px(Math.sqrt(s * s - y * y))}A${px(s)},${px(s)} 0 1 1 ${px(-0.1 * r)},${px(-Math.sqrt(s * s - 0.01 * r * r))}Z`;
}

/** A figure of eight around two rotors, with a nozzle at the top. */
function eight(r, outlet) {
  const [w, h] = [0.56 * r, 0.42 * r];
  return `M${px(-w)},${px(-h)}A${px(w)},${px(w)} 0 0 1 0,${px(-h - w)}L${px(0.1 * r)},${px(-r)}H${px(r + 3)}V${px(outlet - r)}H${px(w)}V${px(h)}A${px(w)},${px(w)} 0 0 1 ${px(-w)},${px(h)}Z`;
}

/** A long box around a spindle. */
function box(r, outlet) {
  return `M${px(-0.95 * r)},${px(-0.46 * r)}H${px(0.35 * r)}V${px(-r)}H${px(r + 3)}V${px(outlet - r)}H${px(0.95 * r)}V${px(0.46 * r)}H${px(-0.95 * r)}Z`;
}

const PATHS = {gear: eight, lobe: eight, screw: box, axial: round};

/** Outline of the casing about (0, 0). */
export const casingPath = (kind, r, outlet) => (PATHS[kind] ?? spiral)(r, outlet);
