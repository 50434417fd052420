// The control valve with its handwheel on a rising stem, and the check valve.

import {makeSlider} from "../lib/drag.js";
import {el, px, say, set, setAll, show} from "../lib/svg.js";

const TRAVEL = 22; // [px] how far the stem rises from shut to fully open
const VAPOUR = [[0.35, 0.1, 1.6], [0.6, -0.35, 2], [0.8, 0.4, 1.7], [1.05, -0.1, 2.2], [1.35, 0.25, 1.6], [1.6, -0.2, 1.3]]; // behind the seat of a valve that chokes
const PULL = 90; // [px] drag from shut to fully open; longer than the travel, for a steady hand

/** Where stem and handwheel stand above the body at an opening 0 … 1. No DOM. */
export function stemGeometry(opening, size) {
  const wheel = -(size + 16 + TRAVEL * opening);
  return {wheel, stem: `M0,${px(-size * 0.4)}V${px(wheel)}`, plug: 0.9 * size * (1 - opening)};
}

/**
 * @param {Document} document
 * @param {{x: number, y: number, size: number}} place  size = half the length of the body [px]
 * @param {{label: string, send: function, read: () => object}} about
 */
export function createValve(document, {x, y, size, letters = 1}, {label, send, read}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const h = 0.62 * size;
  const stem = make("path", {class: "stem"});
  const wheel = make("g", {class: "handwheel"},
    make("ellipse", {rx: size * 0.95, ry: 5}), make("ellipse", {class: "hub", rx: 3.5, ry: 2}),
    make("path", {d: `M${px(-size * 0.95)},0H${px(size * 0.95)}M${px(-size * 0.45)},-4.2L${px(size * 0.45)},4.2M${px(size * 0.45)},-4.2L${px(-size * 0.45)},4.2`}));
  const ghost = make("line", {class: "stem-ghost", x1: px(-size * 0.95), x2: px(size * 0.95)});
  const body = make("path", {class: "valve-body", d: `M${-size},${px(-h)}L${size},${px(h)}V${px(-h)}L${-size},${px(h)}Z`});
  const fill = make("path", {class: "valve-plug"});
  const text = make("text", {class: "valve-text middle", y: px(h + (size > 15 ? 21 : 4 + 13 * letters))});
  const vapour = make("g", {class: "bubbles"}, ...VAPOUR.map(([bx, by, r]) => make("circle", {cx: px(bx * size), cy: px(by * h), r})));
  const node = make("g", {class: "control valve", "data-part": "valve", transform: `translate(${px(x)},${px(y)})`},
    make("path", {class: "bonnet", d: `M-5,${px(-0.3 * size)}V${px(-size - 4)}H5V${px(-0.3 * size)}`}),
    ghost, stem, body, fill, vapour, wheel, text,
    make("rect", {class: "hit", x: -Math.max(18, size), y: px(-size - 52), width: 2 * Math.max(18, size), height: px(size + 52 + h)}));
  const describe = makeSlider({
    node, key: "valve.opening", label, send, read,
    move: (start, from, to) => start + (from.y - to.y) / PULL,
  });
  return {
    node,
    update({opening, before, off, shown, chokes = false}) {
      const {wheel: up, stem: path, plug} = stemGeometry(opening, size);
      set(wheel, "transform", `translate(0,${px(up)})`);
      set(stem, "d", path);
      set(fill, "d", `M${px(-plug)},${px(-0.62 * plug)}L${px(plug)},${px(0.62 * plug)}V${px(-0.62 * plug)}L${px(-plug)},${px(0.62 * plug)}Z`);
      const old = before === null ? null : px(stemGeometry(before, size).wheel);
      setAll(ghost, {y1: old, y2: old, display: old === null || Math.abs(before - opening) < 0.005 ? "none" : null});
      show(vapour, chokes);
      say(text, off ? "" : shown);
      set(node, "class", `control valve${off ? " removed" : ""}${opening === 0 ? " shut" : ""}`);
      describe();
    },
  };
}

const LIFTED = -62, AJAR = -16; // [degrees] of the flap

/** A check valve in section: its flap hangs shut, is lifted by the flow, hangs ajar on a worn seat, or is stuck. */
export function createCheck(document, {x, y, size, part}, label) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const h = 0.78 * size;
  const flap = make("path", {class: "flap", d: `M0,0L0,${px(1.72 * h)}`});
  const stuck = make("path", {class: "stuck-mark", d: `M${px(0.3 * size)},${px(0.1 * h)}l${px(0.5 * size)},${px(0.6 * h)}m0,${px(-0.6 * h)}l${px(-0.5 * size)},${px(0.6 * h)}`});
  const node = make("g", {class: "check", role: "img", "data-part": part, transform: `translate(${px(x)},${px(y)})`},
    make("rect", {class: "check-body", x: -size, y: px(-h), width: 2 * size, height: px(2 * h), rx: 2}),
    make("path", {class: "seat", d: `M${px(-0.45 * size)},${px(-h)}v${px(0.55 * h)}M${px(-0.45 * size)},${px(h)}v${px(-0.55 * h)}`}),
    make("g", {transform: `translate(${px(-0.38 * size)},${px(-0.86 * h)})`}, flap, make("circle", {class: "hinge", r: 1.8})), stuck);
  return {
    node,
    update({open, off, says, stuck: isStuck = false, passing = false}) {
      set(flap, "transform", `rotate(${open || isStuck ? LIFTED : passing ? AJAR : 0})`);
      show(stuck, isStuck);
      set(node, "class", `check ${open ? "open" : "closed"}${off ? " removed" : ""}${isStuck || (passing && !open) ? " faulty" : ""}`);
      set(node, "aria-label", `${label}: ${says}`);
    },
  };
}
