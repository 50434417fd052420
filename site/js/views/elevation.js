// What a drawing office adds to a picture: the ruler of heights, the floor, and
// the lift from surface to surface as a dimension.

import {roundTicks, decimals, tickStep} from "../lib/scale.js";
import {el, px, say, set, setAll, show} from "../lib/svg.js";

/** Round heights for the ruler, in shown units, at least `apart` pixels from each other. No DOM. */
function rulerTicks({y, low, high}, value, back, apart = 22) {
  const [from, to] = [value(low), value(high)];
  const count = Math.max(2, Math.min(8, Math.floor((y(low) - y(high)) / 40)));
  const places = decimals(tickStep(from, to, count));
  const ticks = [];
  for (const at of roundTicks(from, to, count)) {
    const place = y(back(at));
    if (!ticks.length || ticks[ticks.length - 1].place - place >= apart) ticks.push({place, text: at.toFixed(places).replace("-", "−")});
  }
  return ticks;
}

/** The ruler at the left edge. */
export function createRuler(document, {heights, columns, narrow, width, height, ruled, letters}) {
  const ticks = el(document, "g");
  const unit = el(document, "text", {class: "ruler-text end", x: px(columns.ruler - 2), y: px(12 * letters)});
  const x = px(columns.ruler + 1);
  const floor = heights.y(0);
  const onSheet = floor > 0 && floor < height;
  const scale = [el(document, "line", {class: "ruler-line", x1: x, x2: x, y1: px(heights.y(heights.high)), y2: px(heights.y(heights.low))}), ticks, unit];
  const node = el(document, "g", {class: "ruler"}, ...(ruled ? scale : []),
    el(document, "path", {class: "floor", d: onSheet ? floorPath(px(columns.ruler + 2), width - (narrow ? 2 : 4), floor) : ""}));
  let drawn = "";
  return {
    node,
    update(units) {
      if (!ruled || (units.id === drawn && drawn)) return;
      drawn = units.id;
      const places = rulerTicks(heights, (h) => units.value("height", h), (h) => units.si("height", h), 22 * letters);
      ticks.replaceChildren(...places.flatMap(({place, text}) => [
        el(document, "line", {class: "ruler-line", x1: x - 4, x2: x, y1: px(place), y2: px(place)}),
        el(document, "text", {class: "ruler-text end", x: x - 6, y: px(place + 4)}, text)]));
      say(unit, units.symbol("height"));
    },
  };
}

function floorPath(from, to, y) {
  let path = `M${from},${px(y)}H${to}`;
  for (let at = from + 8; at < to; at += 14) path += `M${at},${px(y)}l-5,6`;
  return path;
}

/** The lift, surface to surface, beside the riser. */
export function createLift(document, {columns, heights, narrow, line, up, lanes, letters = 1}) {
  const over = line.box ? 98 : 64; // [px] handwheel, and a controller above it
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const wall = columns.supply.x + columns.supply.width;
  const x = narrow ? columns.free - 10 : wall + 20;
  const crossesRuler = !narrow && x - 8 - WORDS * letters < columns.ruler + 4;
  const lower = make("line", {class: "lift-extension", x1: wall, x2: x + 5});
  const upper = make("line", {class: "lift-extension", x1: x - 5, x2: columns.delivery.x});
  const dimension = make("path", {class: "lift-line"});
  const text = make("text");
  const node = make("g", {class: "lift"}, lower, upper, dimension);
  return {
    node, text, // the words lie over everything else
    update({from, to, rim, shown, visible}) {
      show(node, visible);
      show(text, visible);
      const [a, b] = [heights.y(from), heights.y(to)];
      setAll(lower, {y1: px(a), y2: px(a)});
      setAll(upper, {y1: px(b), y2: px(b)});
      const sign = b < a ? 1 : -1;
      const heads = Math.abs(a - b) > 18 ? `M${x - 3},${px(a - 8 * sign)}L${x},${px(a)}L${x + 3},${px(a - 8 * sign)}M${x - 3},${px(b + 8 * sign)}L${x},${px(b)}L${x + 3},${px(b + 8 * sign)}` : "";
      set(dimension, "d", `M${x},${px(a)}V${px(b)}${heads}`);
      setAll(text, liftText(x, a, b, narrow, {pipe: line.outY, suction: line.y, over, up: up || crossesRuler, lanes}, heights.y(rim)));
      say(text, shown);
    },
  };
}

const WORDS = 86; // [px] length of the lift in words
const CLEAR = 14; // [px] from the middle of the suction line
const LONG = 42; // [px] half of the words' length

/** Beside the supply: level below the suction line where that is free, else along the dimension, clear of the line. */
function fallText(x, from, to, suction, lanes) {
  const below = Math.max(from, suction + CLEAR);
  if (!lanes && to - below > 16) return {class: "lift-text", x: px(x + 8), y: px((below + to) / 2 + 5), transform: null};
  const middle = (from + to) / 2 + 4;
  const y = Math.abs(middle - suction) < LONG + CLEAR && from < suction ? suction - CLEAR - LONG : middle;
  return {class: "lift-text middle", x: 0, y: 0, transform: `translate(${px(x - 7)},${px(y)}) rotate(-90)`};
}

/** Where the words of the lift find room: level beside the line, or along it where a pipe comes down. */
export function liftText(x, from, to, narrow, {pipe, suction, over, up, lanes}, rim) {
  const middle = (from + to) / 2 + 4;
  if (!narrow && to > from) return fallText(x, from, to, suction, lanes);
  if (up) return {class: "lift-text middle", x: 0, y: 0, transform: `translate(${px(x - 7)},${px(middle)}) rotate(-90)`};
  const near = narrow && (middle > pipe ? middle - pipe < 64 : pipe - middle < over); // pumps and handwheel would lie under the words
  const clear = narrow ? Infinity : rim - 34; // the vessel and its name are beside the line
  const y = !near ? Math.min(middle, clear) : to < pipe - over - 26 ? pipe - over : from > pipe + 60 ? pipe + 52 : middle;
  return {class: "lift-text end", x: x - 8, y: px(y), transform: null};
}
