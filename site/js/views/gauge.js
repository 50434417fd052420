// A dial gauge drawn from plain data. Knows nothing of pumps, Python or state.

import {clampedScale, decimals, roundTicks, tickStep} from "../lib/scale.js";
import {arcPath, polar} from "../lib/shape.js";
import {el, placed, px, say, set, setAll, show} from "../lib/svg.js";

/**
 * @typedef {object} GaugeData
 * @property {string} label         "Discharge"
 * @property {string} unit          "bar"
 * @property {[number, number]} range  ends of the dial, in `unit`
 * @property {number|null} value    in `unit`; null when there is nothing to show
 * @property {number|null} [ghost]  last committed value, drawn as a thin mark
 * @property {boolean} [day]        that is yesterday's value, drawn as a hollow pointer
 * @property {string} text          the reading's digits, without its unit
 * @property {null|"low"|"high"} off  the pointer is against its stop
 * @property {boolean} [hunting]    the pointer swings about the reading
 * @property {boolean} [moves]      and may be drawn so
 * @property {boolean} [removed]    the line it sits on is taken off
 * @property {string} says          the whole reading in words
 */

const SWEEP = [-125, 125]; // degrees from straight up, clockwise
const SWING = 5; // degrees to each side of a hunting pointer
const BEAT = 9; // [rad/s] of its swinging
const NUMERAL = 12; // [px] height of the numerals on the dial

/**
 * Where everything goes on a dial of radius `r` about (0, 0), its numerals so many times larger than usual; `turn` says how far the needle turns for a value,
 * null where there is none. No DOM.
 */
export function gaugeGeometry({range}, r, letters = 1) {
  const scale = clampedScale(range, SWEEP);
  const turn = (value) => (Number.isFinite(value) ? scale(value) : null);
  const step = tickStep(...range, numeralCount(range, r, letters));
  const places = decimals(step);
  const major = roundTicks(...range, numeralCount(range, r, letters));
  const minor = roundTicks(...range, 5 * Math.max(1, major.length - 1)).filter((at) => !isNear(at, major, step));
  return {
    turn,
    major: major.map((at) => ({at, text: at.toFixed(places).replace("-", "−"), turn: turn(at)})),
    minor: minor.map((at) => ({at, turn: turn(at)})),
    unit: unitPlace(major.map((at) => ({turn: turn(at), text: at.toFixed(places)})), r, letters),
    zero: range[0] < 0 && range[1] > 0 ? turn(0) : null,
  };
}

const isNear = (at, ticks, step) => ticks.some((tick) => Math.abs(tick - at) < 0.05 * step);

/** Where the unit stands: below the hub, where no needle comes, in the middle between the numerals at both ends. */
function unitPlace(numerals, r, letters) {
  const room = [-0.55 * r, 0.55 * r];
  for (const {turn, text} of numerals.filter((one) => Math.abs(one.turn) > 100)) {
    const side = Math.sign(turn);
    const inner = Math.abs(numeralPlace(turn, text, r, letters)[0]) - 0.31 * NUMERAL * letters * text.length;
    room[side < 0 ? 0 : 1] = side * Math.min(0.55 * r, inner);
  }
  return [(room[0] + room[1]) / 2, 0.41 * r];
}

/** Long numerals stand farther in. */
const numeralPlace = (turn, text, r, letters) => polar(0, 0, r - 12 - letters * (6 + Math.max(0, 2.2 * (text.length - 2))), turn);

/** How many numerals fit round the dial without touching. */
export function numeralCount(range, r, letters = 1) {
  const arc = (Math.PI * (SWEEP[1] - SWEEP[0]) * (r - 20)) / 180;
  const room = (count) => {
    const ticks = roundTicks(...range, count);
    const digits = decimals(tickStep(...range, count));
    const longest = Math.max(...ticks.map((at) => at.toFixed(digits).length));
    return ticks.length * (0.62 * NUMERAL * letters * longest + 8);
  };
  return [6, 5, 4, 3].find((count) => room(count) <= arc) ?? 2;
}

/**
 * A dial to be placed in any drawing.
 * @returns {{node: SVGGElement, update: (data: GaugeData) => void, advance: (seconds: number) => boolean}}
 */
export function createDial(document, {x, y, r, key, scale: by = 1, letters = 1}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const scale = make("g", {class: "dial-scale"});
  const ghost = make("path", {class: "dial-ghost", d: `M0,${px(-r + 3)}L-3.5,${px(-r - 4)}L3.5,${px(-r - 4)}Z`});
  const day = make("path", {class: "dial-day", d: `M-3.4,${px(0.12 * r)}L3.4,${px(0.12 * r)}L2,${px(11 - r)}L-2,${px(11 - r)}Z`});
  const needle = make("path", {class: "dial-needle", d: `M-1.7,${px(0.16 * r)}L1.7,${px(0.16 * r)}L0.5,${px(6 - r)}L-0.5,${px(6 - r)}Z`});
  const reading = make("text", {class: "dial-reading", y: px(0.76 * r)});
  const unit = make("text", {class: "dial-unit"});
  const off = make("path", {class: "dial-off"});
  const band = make("path", {class: "dial-band", d: arcPath(0, 0, r - 13, -SWING, SWING)});
  const node = make("g", {class: "dial", transform: placed(x, y, by), role: "meter", "data-reading": key, "data-part": key},
    make("circle", {class: "dial-bezel", r}), make("circle", {class: "dial-face", r: px(r - 3)}),
    scale, band, unit, ghost, day, off, needle, make("circle", {class: "dial-hub", r: 3.5}), reading);
  node.style.setProperty("--numeral", String(letters));
  let drawn = "", places = null, turn = null, swings = false, time = 0;
  return {
    node,
    update(data) {
      if (drawn !== `${data.range}`) {
        places = gaugeGeometry(data, r, letters);
        scale.replaceChildren(...ticks(make, places, r, letters));
        setAll(unit, {x: px(places.unit[0]), y: px(places.unit[1])});
        drawn = `${data.range}`;
      }
      turn = places.turn(data.value);
      swings = Boolean(data.hunting && data.moves && turn !== null);
      point(needle, turn);
      point(band, data.hunting ? turn : null);
      point(ghost, data.day ? null : places.turn(data.ghost));
      point(day, data.day ? places.turn(data.ghost) : null);
      say(reading, data.text);
      say(unit, data.unit);
      show(off, Boolean(data.off));
      if (data.off) set(off, "d", stopArrow(data.off, r));
      set(node, "class", `dial${data.off ? " off-scale" : ""}${data.removed ? " removed" : ""}`);
      describeMeter(node, data);
    },
    /** Swing on by a time; false when the pointer stands. */
    advance(seconds) {
      if (!swings) return false;
      time += seconds;
      point(needle, turn + SWING * 0.6 * (Math.sin(BEAT * time) + 0.6 * Math.sin(2.3 * BEAT * time)));
      return true;
    },
  };
}

/** What a screen reader hears of a meter. */
export function describeMeter(node, {label, range, value, says}) {
  setAll(node, {
    "aria-label": label, "aria-valuemin": plain(range[0]), "aria-valuemax": plain(range[1]),
    "aria-valuenow": plain(value ?? range[0]), "aria-valuetext": says,
  });
}

/** A number without an exponent, which is not allowed in these attributes. */
const plain = (value) => Number(value.toFixed(6)) || 0;

function point(node, turn) {
  show(node, turn !== null);
  if (turn !== null) set(node, "transform", `rotate(${px(turn)})`);
}

function ticks(make, {major, minor, zero}, r, letters) {
  const mark = (turn, kind, length) => {
    const [a, b] = [polar(0, 0, r - 5, turn), polar(0, 0, r - 5 - length, turn)];
    return make("line", {class: kind, x1: px(a[0]), y1: px(a[1]), x2: px(b[0]), y2: px(b[1])});
  };
  const numeral = ({turn, text}) => {
    const [x, y] = numeralPlace(turn, text, r, letters);
    return make("text", {class: "dial-numeral", x: px(x), y: px(y + 4 * letters)}, text);
  };
  return [
    make("path", {class: "dial-arc", d: arcPath(0, 0, r - 5, ...SWEEP)}),
    ...minor.map(({turn}) => mark(turn, "tick-minor", 3.5)),
    ...major.map(({turn}) => mark(turn, "tick-major", 6.5)),
    ...(zero === null ? [] : [mark(zero, "tick-zero", 9)]),
    ...major.map(numeral),
  ];
}

function stopArrow(side, r) {
  const turn = side === "high" ? SWEEP[1] + 4 : SWEEP[0] - 4;
  const tip = polar(0, 0, r - 7, turn + (side === "high" ? 12 : -12));
  const [a, b] = [polar(0, 0, r - 12, turn), polar(0, 0, r - 2, turn)];
  return `M${px(a[0])},${px(a[1])}L${px(b[0])},${px(b[1])}L${px(tip[0])},${px(tip[1])}Z`;
}

/**
 * One dial as a drawing of its own.
 * @param {HTMLElement} host
 * @param {{document: Document}} deps
 * @returns {{update: (data: GaugeData) => void, remove: () => void}}
 */
export function createGauge(host, {document}) {
  const dial = createDial(document, {x: 60, y: 60, r: 54, key: "gauge"});
  const label = el(document, "text", {class: "part-label middle", x: 60, y: 132});
  const svg = el(document, "svg", {class: "drawing-svg gauge", viewBox: "0 0 120 138"}, dial.node, label);
  host.append(svg);
  return {
    update(data) {
      dial.update(data);
      say(label, data.label);
      set(svg, "data-origin", data.origin ?? "live");
    },
    remove: () => svg.remove(),
  };
}
