// A centrifugal pump cut open: spiral casing, impeller with backward blades.

import {el, px, set} from "../lib/svg.js";

const BLADES = 6;
/** The turning is drawn this many times slower: at most one turn a second at 4500 1/min. */
export const SLOWED = 75;

/** How fast the impeller is drawn to turn. [degrees per second] for a speed [rad/s] */
export const shownTurning = (speed) => ((speed / SLOWED) * 180) / Math.PI;

/** Outline of the casing about (0, 0), its outlet pointing right at the top. */
function casingPath(r, outlet) {
  const points = [];
  for (let angle = -60; angle <= 270; angle += 6) {
    const radius = r * (0.72 + (0.28 * (angle + 60)) / 330);
    const turn = (angle * Math.PI) / 180;
    points.push(`${px(radius * Math.cos(turn))},${px(radius * Math.sin(turn))}`);
  }
  return `M${points.join("L")}H${px(r + 3)}V${px(outlet - r)}H${px(0.5 * r)}Z`;
}

/** One blade, swept back against the turning. */
function bladePath(r, index) {
  const start = (index * 2 * Math.PI) / BLADES;
  const at = (radius, turn) => `${px(radius * Math.cos(start + turn))},${px(radius * Math.sin(start + turn))}`;
  return `M${at(0.2 * r, 0)}Q${at(0.46 * r, -0.12)} ${at(0.6 * r, -0.85)}`;
}

/**
 * @param {Document} document
 * @param {{x: number, y: number, r: number, floor: number}} place
 * @param {{label: string, pick: () => void, tag: string}} about
 */
export function createPump(document, {x, y, r, floor}, {label, pick, tag}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const outlet = 0.4 * r;
  const blades = Array.from({length: BLADES}, (_, i) => make("path", {class: "blade", d: bladePath(r, i)}));
  const wheel = make("g", {class: "impeller"},
    make("circle", {class: "disc", r: px(0.6 * r)}), ...blades, make("circle", {class: "eye", r: px(0.17 * r)}));
  const node = make("g", {class: "control pump", role: "button", tabindex: 0, "data-control": tag, transform: `translate(${px(x)},${px(y)})`},
    make("path", {class: "plinth", d: plinth(r, floor - y)}),
    make("path", {class: "casing", d: casingPath(r, outlet)}),
    make("path", {class: "flange", d: `M${px(r + 3)},${px(-r - 3)}v${px(outlet + 6)}`}),
    wheel, make("circle", {class: "hit", r: r + 2}));
  node.addEventListener("click", pick);
  node.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    pick();
  });
  let turned = 0, turning = 0;
  return {
    node,
    update({speed, turns, says}) {
      turning = turns ? shownTurning(speed) : 0;
      set(node, "aria-label", `${label}. ${says}`);
      set(node, "class", speed > 0 ? "control pump running" : "control pump");
    },
    /** Turn on by a time; false when it stands. */
    advance(seconds) {
      if (!turning) return false;
      turned = (turned + turning * seconds) % 360;
      set(wheel, "transform", `rotate(${px(turned)})`);
      return true;
    },
  };
}

function plinth(r, down) {
  const foot = Math.max(r + 4, Math.min(down, r + 48));
  return `M${px(-0.45 * r)},${px(0.6 * r)}L${px(-0.75 * r)},${px(foot)}M${px(0.45 * r)},${px(0.6 * r)}L${px(0.75 * r)},${px(foot)}M${px(-r)},${px(foot)}H${px(r)}`;
}
