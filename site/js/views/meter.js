// The instruments that are not dials: a flow meter with a straight scale, an
// ammeter with a quarter-circle scale, a tachometer that counts.

import {clampedScale, decimals, roundTicks, tickStep} from "../lib/scale.js";
import {arcPath, polar} from "../lib/shape.js";
import {el, placed, px, say, set, show} from "../lib/svg.js";
import {describeMeter} from "./gauge.js";

const SWEEP = [-48, 48]; // degrees from straight up

/** Tick places along a scale, with the texts of the long ones. No DOM. */
export function scaleMarks(range, places, room) {
  const at = clampedScale(range, places);
  const longest = String(Math.round(Math.max(...range.map(Math.abs)))).length;
  const count = Math.max(1, Math.min(5, Math.floor(room / (8 * longest + 14))));
  const step = tickStep(...range, count);
  const digits = decimals(step);
  return {
    at,
    major: roundTicks(...range, count).map((value) => ({place: at(value), text: value.toFixed(digits)})),
    minor: roundTicks(...range, 5 * count).map((value) => ({place: at(value)})),
  };
}

/** A flow meter: straight scale with a running pointer, and large digits. */
export function createFlowMeter(document, {x, y, width, key, scale: by = 1, letters = 1}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const [from, to, line] = [14, width - 14, 44];
  const scale = make("g");
  const pointer = make("path", {class: "meter-pointer", d: `M0,${line - 1}l-6,-9h12z`});
  const ghost = make("path", {class: "meter-ghost", d: `M0,${line - 1}l-6,-9h12z`});
  const label = make("text", {class: "part-label", x: 10, y: 17});
  const reading = make("tspan", {class: width < 150 ? "meter-reading medium" : "meter-reading"});
  const unit = make("tspan", {class: "meter-unit", dx: 4});
  const digits = make("text", {x: width - 10, y: 25, class: "end"}, reading, unit);
  const node = make("g", {class: "meter", role: "meter", "data-reading": key, "data-part": key, transform: placed(x, y, by)},
    make("rect", {class: "meter-case", width, height: 70, rx: 3}), scale, ghost, pointer, label, digits);
  node.style.setProperty("--numeral", String(letters));
  let drawn = "", marks = null;
  return {
    node,
    update(data) {
      if (drawn !== `${data.range}`) {
        marks = scaleMarks(data.range, [from, to], (width - 28) / letters);
        scale.replaceChildren(...straightScale(make, marks, from, to, line));
        drawn = `${data.range}`;
      }
      slide(pointer, data.value, marks);
      slide(ghost, data.ghost, marks);
      say(label, data.label);
      tell(node, reading, unit, data);
    },
  };
}

/** Digits and unit, for eye and ear. */
function tell(node, reading, unit, data) {
  say(reading, data.text);
  say(unit, data.unit);
  set(node, "class", data.off ? "meter off-scale" : "meter");
  describeMeter(node, data);
}

function straightScale(make, {major, minor}, from, to, line) {
  const tick = (length) => ({place}) => make("line", {class: "tick-minor", x1: px(place), x2: px(place), y1: line, y2: line + length});
  return [
    make("line", {class: "tick-major", x1: from, x2: to, y1: line, y2: line}),
    ...minor.map(tick(4)), ...major.map(tick(8)),
    ...major.map(({place, text}) => make("text", {class: "dial-numeral", x: px(place), y: line + 20}, text)),
  ];
}

function slide(node, value, {at}) {
  show(node, value !== null);
  if (value !== null) set(node, "transform", `translate(${px(at(value))},0)`);
}

/** An ammeter: quarter-circle scale over a small case, digits below. */
export function createAmmeter(document, {x, y, width, key, scale: by = 1, letters = 1}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const r = Math.min(58, 0.62 * width); // the pivot lies under the skirt
  const [cx, cy] = [width / 2, r + 15];
  const scale = make("g");
  const needle = make("line", {class: "meter-needle", y1: -8, y2: 4 - r});
  const ghost = make("line", {class: "meter-ghost-line", y1: 8 - r, y2: -1 - r});
  const day = make("path", {class: "dial-day", d: `M-2.4,-8L2.4,-8L2.4,${px(5 - r)}L-2.4,${px(5 - r)}Z`});
  const hands = make("g", {transform: `translate(${px(cx)},${cy})`}, ghost, day, needle);
  const reading = make("tspan", {class: "meter-reading small"});
  const unit = make("tspan", {class: "meter-unit", dx: 3});
  const node = make("g", {class: "meter", role: "meter", "data-reading": key, "data-part": key, transform: placed(x, y, by)},
    make("rect", {class: "meter-case", width, height: 84, rx: 3}), scale, hands,
    make("rect", {class: "meter-skirt", x: 1, y: 58, width: width - 2, height: 25, rx: 2}),
    make("text", {class: "middle", x: cx, y: 76}, reading, unit));
  node.style.setProperty("--numeral", String(letters));
  let drawn = "", marks = null;
  return {
    node,
    update(data) {
      if (drawn !== `${data.range}`) {
        marks = scaleMarks(data.range, SWEEP, (1.5 * r) / letters);
        scale.replaceChildren(...roundScale(make, marks, cx, cy, r));
        drawn = `${data.range}`;
      }
      swing(needle, data.value, marks);
      swing(ghost, data.day ? null : data.ghost, marks);
      swing(day, data.day ? data.ghost : null, marks);
      tell(node, reading, unit, data);
    },
  };
}

function swing(node, value, {at}) {
  show(node, value !== null);
  if (value !== null) set(node, "transform", `rotate(${px(at(value))})`);
}

function roundScale(make, {major, minor}, x, y, r) {
  const tick = (length) => ({place}) => {
    const [a, b] = [polar(x, y, r, place), polar(x, y, r + length, place)];
    return make("line", {class: "tick-minor", x1: px(a[0]), y1: px(a[1]), x2: px(b[0]), y2: px(b[1])});
  };
  const numeral = ({place, text}) => {
    const [tx, ty] = polar(x, y, r - 10, place);
    return make("text", {class: "dial-numeral", x: px(tx), y: px(ty + 4)}, text);
  };
  return [make("path", {class: "dial-arc", d: arcPath(x, y, r, ...SWEEP)}),
    ...minor.map(tick(3)), ...major.map(tick(6)), ...major.map(numeral)];
}

/** A tachometer: digits in a counter window; beside a remembered day also both speeds along its lower edge. */
export function createTachometer(document, {x, y, width, key, scale: by = 1}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const reading = make("tspan", {class: `meter-reading ${width < 90 ? "tight" : "small"}`});
  const unit = make("tspan", {class: "meter-unit", dx: width < 90 ? 2 : 3});
  const [line, mark] = [20.5, "l-3.5,5h7z"]; // below the digits, within the case
  const pointer = make("path", {class: "meter-pointer", d: `M0,${line}${mark}`});
  const day = make("path", {class: "meter-ghost", d: `M0,${line}${mark}`});
  const marks = make("g", {}, day, pointer);
  const node = make("g", {class: "meter", role: "meter", "data-reading": key, "data-part": key, transform: placed(x, y, by)},
    make("rect", {class: "meter-case", width, height: 28, rx: 3}),
    make("rect", {class: "meter-window", x: 3, y: 3, width: width - 6, height: 22, rx: 2}),
    make("text", {class: "middle", x: width / 2, y: 19}, reading, unit), marks);
  return {
    node,
    update(data) {
      show(marks, data.day);
      if (data.day) {
        const places = {at: clampedScale(data.range, [6, width - 6])};
        slide(pointer, data.value, places);
        slide(day, data.ghost, places);
      }
      tell(node, reading, unit, data);
    },
  };
}
