// A pump cut open: its casing and what turns in it.

import {el, px, set, show} from "../lib/svg.js";
import {createBelt} from "./belt.js";
import {casingPath} from "./casing.js";
import {createRotors} from "./rotors.js";

/** The turning is drawn this many times slower: at most one turn a second at 4500 1/min. */
export const SLOWED = 75;

/** How fast the impeller is drawn to turn. [degrees per second] for a speed [rad/s] */
export const shownTurning = (speed) => ((speed / SLOWED) * 180) / Math.PI;

/** Bubbles where liquid boils at the inlet of the pump. */
const BUBBLES = [[-0.62, -0.18, 2.4], [-0.46, 0.16, 1.8], [-0.8, 0.12, 1.6], [-0.3, -0.28, 2], [-0.28, 0.04, 1.4], [-0.95, -0.1, 1.3]];

/** Arc with a head, against the way the hands of a clock go. */
const backArrow = (r) => `M${px(0.62 * r)},${px(1.02 * r)}A${px(1.2 * r)},${px(1.2 * r)} 0 0 0 ${px(1.14 * r)},${px(-0.1 * r)}m-5,6l5,-7l6,6`;

/**
 * @param {Document} document
 * @param {{x: number, y: number, r: number, floor: number, below: number}} place  `below`: most that its foot stands under it [px]
 * @param {{label: string, pick: () => void, tag: string, kind: string}} about
 */
export function createPump(document, {x, y, r, floor, below = r + 48}, {label, pick, tag, narrow, kind = "radial"}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const outlet = (narrow ? 0.22 : 0.4) * r;
  const rotors = createRotors(document, kind, r);
  const bubbles = make("g", {class: "bubbles"}, ...BUBBLES.map(([bx, by, size]) => make("circle", {cx: px(bx * r), cy: px(by * r), r: size})));
  const belt = createBelt(document, r);
  const back = make("path", {class: "back-arrow", d: backArrow(r)});
  const node = make("g", {class: "control pump", role: "button", tabindex: 0, "data-control": tag, "data-part": tag, transform: `translate(${px(x)},${px(y)})`},
    make("path", {class: "plinth", d: plinth(r, floor - y, below)}),
    make("path", {class: "casing", d: casingPath(kind, r, outlet)}),
    make("path", {class: "flange", d: `M${px(r + 3)},${px(-r - 3)}v${px(outlet + 6)}`}),
    rotors.node, belt.node, bubbles, back, make("circle", {class: "hit", r: px(r + 2)}));
  node.addEventListener("click", pick);
  node.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    pick();
  });
  let turned = 0, turning = 0;
  return {
    node,
    update({speed, turns, says, condition: {worn = 0, trim = 1, blocked = 0, wrong = false} = {}, boiling = false, standing = false, drive = {}}) {
      turning = turns ? shownTurning(speed) * (wrong ? -1 : 1) : 0;
      set(node, "aria-label", `${label}. ${says}`);
      set(node, "class", `control pump${speed ? " running" : ""}${standing ? " standing" : ""}`);
      show(bubbles, boiling);
      belt.update(drive);
      show(back, wrong || speed < 0);
      rotors.leak(worn);
      if (!rotors.sized) return;
      set(rotors.sized, "transform", trim === 1 ? null : `scale(${px(Math.min(1.15, trim))})`);
      set(rotors.clogged, "d", rotors.clog(blocked));
    },
    /** Turn on by a time; false when it stands. */
    advance(seconds) {
      if (!turning) return false;
      turned = (turned + turning * seconds) % 360;
      for (const [wheel, way] of rotors.wheels) set(wheel, "transform", `rotate(${px(way * turned)})`);
      if (rotors.slide) set(rotors.run, "transform", rotors.slide(turned));
      return true;
    },
  };
}

function plinth(r, down, below) {
  const foot = Math.max(r + 4, Math.min(down, below));
  return `M${px(-0.45 * r)},${px(0.6 * r)}L${px(-0.75 * r)},${px(foot)}M${px(0.45 * r)},${px(0.6 * r)}L${px(0.75 * r)},${px(foot)}M${px(-r)},${px(foot)}H${px(r)}`;
}
