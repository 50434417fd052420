// An upright vessel in section: walls, liquid, the mark of its surface. The
// surface can be dragged, and reached by keys.

import {makeSlider} from "../lib/drag.js";
import {clamp} from "../lib/scale.js";
import {el, px, say, set, setAll, show} from "../lib/svg.js";

const LETTER = 9.5; // [px] width of a digit of the level

/** Where the parts of a vessel lie. No DOM. */
export function vesselGeometry({x, width, top, bottom, letters = 1}, surface, ghost) {
  const at = clamp(surface, top, bottom);
  const shadow = Number.isFinite(ghost) && ghost < at && ghost > at - 22; // the old surface would cross the text
  const above = !shadow && (at - top > 20 * letters || bottom - at < 22 * letters);
  return {
    liquid: {x: x + 1, y: at, width: width - 2, height: Math.max(0, bottom - at)},
    surface: at,
    ghost: Number.isFinite(ghost) && Math.abs(ghost - at) > 1.5 ? clamp(ghost, top, bottom) : null,
    text: above ? at - 5 : at + 4 + 11 * letters,
    mark: width < 80 ? "" : `M${px(x + width - 22)},${px(at - 9)}h10l-5,8z`,
    below: width < 80 ? "" : [4, 7].map((down, i) => `M${px(x + width - 21 + 2 * i)},${px(at + down)}h${8 - 4 * i}`).join(""),
  };
}

/** The least step of a level: the power of ten at or below a thirtieth of what it can move, from 0.01 to 10. [m] */
export function levelStep(low, high) {
  const span = Math.max(high - low, 1e-6);
  return clamp(10 ** Math.floor(Math.log10(span / 30)), 0.01, 10);
}

/**
 * @param {Document} document
 * @param {object} place  {x, width, top, bottom, intake?} [px], `y(height)` and `height(y)` between metres and pixels
 * @param {object} words  {label, surface, key, closed, part}
 * @param {{send: function, read: () => object}} door  what the surface slider tells and asks
 */
export function createVessel(document, place, {label, surface: surfaceName, key, closed, part}, {send, read}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const {x, width, top, bottom} = place;
  const liquid = make("rect", {class: "liquid"});
  const ghost = make("line", {class: "level-ghost", x1: x + 2, x2: x + width - 2});
  const line = make("line", {class: "level-line", x1: x + 1, x2: x + width - 1});
  const mark = make("path", {class: "level-mark"});
  const below = make("path", {class: "level-below"});
  const text = make("text", {class: "level-text", x: x + 5});
  const gas = make("text", {class: "gas-text", x: x + width / 2, y: px(top + 3 + 11 * (place.letters ?? 1))});
  const hit = make("rect", {class: "hit", x: x - 2, width: width + 16, height: 44});
  const knob = make("g", {class: "knob"}, make("circle", {r: 8}), make("path", {d: "M-3,-1.5l3,-3l3,3M-3,1.5l3,3l3,-3"}));
  const slider = make("g", {class: "control level"}, hit, line, mark, below, text, knob);
  const vortex = make("path", {class: "vortex"});
  const node = make("g", {class: "vessel", "data-part": part, role: "group", "aria-label": label}, liquid, vortex, ghost,
    make("path", {class: "wall", d: walls(place, closed)}),
    make("path", {class: "slab", d: place.grounded ? "" : slab(place)}),
    make("text", {class: "part-label middle", x: x + width / 2, y: place.labelY}, label), gas, slider);
  const lettersEnd = (said) => 5 + LETTER * (place.letters ?? 1) * said.length;
  const describe = makeSlider({
    node: slider, key, label: surfaceName, send, read,
    move: (start, from, to) => place.height(place.y(start) + to.y - from.y),
  });
  return {
    node,
    update({surface, before, off, gasText, text: full, bare, sucks = false}) {
      const shown = lettersEnd(full) > width ? bare : full; // the unit stands at the ruler too
      const at = vesselGeometry(place, place.y(surface), before === null ? NaN : place.y(before));
      setAll(liquid, at.liquid);
      setAll(line, {y1: px(at.surface), y2: px(at.surface)});
      show(ghost, at.ghost !== null);
      if (at.ghost !== null) setAll(ghost, {y1: px(at.ghost), y2: px(at.ghost)});
      set(vortex, "d", sucks && place.intake ? funnel(place.intake, at.surface) : "");
      set(mark, "d", lettersEnd(shown) < width - 24 ? at.mark : "");
      set(below, "d", at.below);
      setAll(text, {y: px(at.text), class: at.text > at.surface ? "level-text under" : "level-text"});
      say(text, shown);
      set(hit, "y", px(at.surface - 22));
      set(knob, "transform", `translate(${px(x + width)},${px(at.surface)})`);
      say(gas, closed && at.surface - top > 34 ? gasText : "");
      set(node, "class", off ? "vessel removed" : "vessel");
      describe();
    },
  };
}

/** Air drawn down from the surface to where the suction line begins. */
function funnel([x, y], surface) {
  const [top, low] = [px(surface), px(Math.max(surface + 6, y - 2))];
  const middle = px((surface + Math.max(surface + 6, y - 2)) / 2);
  return `M${px(x - 12)},${top}Q${px(x - 2)},${middle} ${px(x)},${low}Q${px(x + 2)},${middle} ${px(x + 12)},${top}Z`;
}

function walls({x, width, top, bottom}, closed) {
  const [left, right] = [px(x), px(x + width)];
  if (!closed) return `M${left},${px(top)}V${px(bottom)}H${right}V${px(top)}`;
  return `M${left},${px(top)}V${px(bottom)}H${right}V${px(top)}C${right},${px(top - 14)} ${left},${px(top - 14)} ${left},${px(top)}Z`;
}

/** The ledge that it stands on, hatched as in a section. */
function slab({x, width, bottom}) {
  let path = `M${px(x - 5)},${px(bottom + 2)}H${px(x + width + 5)}`;
  for (let at = x; at <= x + width + 4; at += 9) path += `M${px(at)},${px(bottom + 2)}l-5,6`;
  return path;
}
