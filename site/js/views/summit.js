// The top of a line that goes over a summit: full of liquid, or with air or vapour in it.

import {el, px, set, show} from "../lib/svg.js";

/** Where the gas stands: under the upper wall of the crest, and down the far leg. No DOM. */
export function pocketRuns({crest: [[x1, y], [x2]], foot, width}) {
  const up = y - 0.22 * width;
  const fall = foot > y ? Math.min(foot - 8, y + 0.6 * (foot - y)) : y;
  return {crest: `M${px(x1 + 0.9 * width)},${px(up)}H${px(x2 - 0.3 * width)}`, leg: `M${px(x2)},${px(y + 0.5 * width)}V${px(fall)}`};
}

/** @param {{crest: number[][], foot: number, width: number}} place */
export function createCrest(document, place) {
  const {crest, leg} = pocketRuns(place);
  const [[x1, y], [x2]] = place.crest;
  const pocket = el(document, "g", {class: "pocket"},
    el(document, "path", {class: "pocket-gas", d: crest, "stroke-width": px(0.56 * place.width)}),
    el(document, "path", {class: "pocket-gas", d: leg, "stroke-width": px(0.56 * place.width)}));
  const mark = el(document, "path", {class: "summit-mark", d: `M${px((x1 + x2) / 2)},${px(y - place.width / 2 - 3)}l-4,-6h8z`});
  const node = el(document, "g", {class: "summit"}, pocket, mark);
  return {
    node,
    update({gas}) {
      show(pocket, gas);
      set(node, "class", gas ? "summit broken" : "summit");
    },
  };
}
