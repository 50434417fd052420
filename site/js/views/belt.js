// What turns a pump, where it shows: the belt to a motor under it, and the mark of a relay that trips.

import {clamp} from "../lib/scale.js";
import {el, px, set, show} from "../lib/svg.js";

const PULLEY = 0.3; // of the pump's radius, of both pulleys where the ratio is 1
const LEAST = 0.15, MOST = 0.34;

/**
 * The two pulleys and the straight runs of the belt between them, the pump's shaft at the origin. [px]
 * @param {number} r  of the pump
 * @param {number} ratio  speed of the pump over that of the motor
 */
export function beltOf(r, ratio) {
  const [pump, motor] = [PULLEY / Math.sqrt(ratio), PULLEY * Math.sqrt(ratio)].map((size) => clamp(size, LEAST, MOST) * r);
  const y = r + motor + 3;
  const s = (pump - motor) / y; // of the angle at which the runs leave the pulleys
  const c = Math.sqrt(1 - s * s);
  const runs = [-1, 1].map((side) => `M${px(side * pump * c)},${px(pump * s)}L${px(side * motor * c)},${px(y + motor * s)}`).join("");
  return {pump, motor, y, runs};
}

const OPENED = "M-4.5,2h2.5l4.5,-5M2,2h2.5"; // a contact that stands open
const SQUEAL = "m0,-4q3,4 0,8m4,-10q5,6 0,12";

/** Belt and mark of one pump. @returns {{node: Element, update: (state: object) => void}} */
export function createBelt(document, r) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const [runs, pump, motor, squeal] = [make("path", {class: "belt-runs"}), make("circle", {class: "pulley"}), make("circle", {class: "pulley motor"}), make("path", {class: "belt-squeal"})];
  const belt = make("g", {class: "belt"}, runs, pump, motor, squeal);
  const mark = make("g", {class: "tripped", transform: `translate(${px(-r - 4)},${px(0.8 * r)})`},
    make("circle", {class: "tripped-ring", r: 8}), make("path", {class: "tripped-contact", d: OPENED}));
  return {
    node: make("g", {class: "turned-by"}, belt, mark),
    update({fitted = false, ratio = 1, slips = false, trips = false}) {
      show(belt, fitted);
      show(mark, trips);
      set(belt, "class", `belt${slips ? " slips" : ""}`);
      if (!fitted) return;
      const {pump: a, motor: b, y, runs: d} = beltOf(r, ratio);
      set(runs, "d", d);
      set(pump, "r", px(a));
      set(motor, "r", px(b));
      set(motor, "cy", px(y));
      set(squeal, "d", slips ? `M${px(b + 3)},${px(y)}${SQUEAL}` : "");
    },
  };
}
