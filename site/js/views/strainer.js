// The strainer in the suction line; its mesh is darker as it is stopped up.

import {el, px, set} from "../lib/svg.js";
import {foulShare} from "./symbols.js";

const CLEAN = 2; // [-] a loss coefficient up to which a strainer counts as clean

/** @param {[number, number]} at */
export function createStrainer(document, [x, y], narrow) {
  const s = narrow ? 7 : 11;
  const mesh = [-0.5, 0, 0.5].map((at) => `M${px(at * s)},${-s}V${s}`).join("");
  const cake = el(document, "rect", {class: "cake", x: -s, y: -s, height: 2 * s, width: 0});
  const node = el(document, "g", {class: "strainer", "data-part": "strainer", role: "group", transform: `translate(${px(x)},${px(y)})`},
    el(document, "rect", {class: "strainer-body", x: -s, y: -s, width: 2 * s, height: 2 * s}), cake, el(document, "path", {class: "strainer-mesh", d: mesh}));
  return {
    node,
    update({k, says}) {
      set(cake, "width", px(2 * s * foulShare(k / CLEAN - 1)));
      set(node, "aria-label", says);
    },
  };
}
