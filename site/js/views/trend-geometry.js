// Where everything of the trend strip goes: a lane for each instrument, one axis of time for all. No DOM.

import {clamp, decimals, linearScale, roundTicks, tickStep} from "../lib/scale.js";
import {linePath} from "../lib/shape.js";
import {px} from "../lib/svg.js";
import {thinned} from "../trend.js";
import {timeTicks} from "./plant-time.js";

export const LANE = 76; // [px] height of a lane
const [TITLE, FOOT] = [20, 4]; // [px] of it above and below its plot
const AXIS = 24; // [px] below all lanes
const LEFT = 52, RIGHT = 10; // [px]
const LEAST_SPAN = 0.05; // of the dial: what the last digit does is no trend
const ROOM = 0.08; // of the span, above and below

export const stripHeight = (count) => count * LANE + AXIS;

export const plotOf = (width) => ({left: LEFT, right: width - RIGHT});

/** The part of the record that is looked at: the last `span` seconds, or all of it. */
export function windowOf({rows}, span = null) {
  if (!rows.length) return {from: 0, to: 1};
  const to = rows.at(-1).time;
  const from = span === null ? rows[0].from : Math.max(rows[0].from, to - span);
  return {from, to: Math.max(to, from + 1)};
}

/**
 * @param {object} record of trend.js
 * @param {object} p
 * @param {string[]} p.ids instruments, from the top
 * @param {number|null} p.span as in `windowOf` [s]
 * @param {number} p.width of the sheet [px]
 * @param {object} p.units the reader's
 */
export function stripGeometry(record, {ids, span, width, units}) {
  const {from, to} = windowOf(record, span);
  const {left, right} = plotOf(width);
  const x = linearScale([from, to], [left, right]);
  const first = Math.max(0, record.rows.findIndex(({time}) => time >= from) - 1); // a line comes in from the left
  const rows = thinned(record.rows.slice(first), (to - from) / (right - left));
  const {step, ticks} = timeTicks(from, to, (right - left) / 80);
  return {
    from, to, x, left, right,
    bottom: ids.length * LANE,
    times: ticks.map((at) => ({at, x: x(at)})),
    tenths: step < 1,
    lanes: ids.map((id, n) => lane(record, rows, id, n * LANE, x, units)),
    events: record.events.filter(({time}) => time >= from && time <= to).map((event) => ({...event, x: x(event.time)})),
  };
}

function lane({columns}, rows, id, top, x, units) {
  const at = columns.findIndex((column) => column.id === id);
  const {quantity, low, high} = columns[at];
  const shown = (value) => (Number.isFinite(value) ? units.value(quantity, value) : null);
  const domain = domainOf(rows.flatMap((row) => [shown(row.low[at]), shown(row.high[at])]), shown(low), shown(high));
  const y = linearScale(domain, [top + LANE - FOOT, top + TITLE]);
  const marks = roundTicks(...domain, 3);
  const places = decimals(tickStep(...domain, 3));
  const left = x.domain()[0];
  const point = (time, value) => [x(Math.max(time, left)), value === null ? null : y(value)];
  return {
    id, quantity, top, domain, y,
    plot: [top + TITLE, top + LANE - FOOT],
    ticks: marks.map((mark) => ({y: y(mark), text: mark.toFixed(places).replace("-", "−")})),
    line: linePath(rows.map((row) => point(row.time, shown(row.values[at])))),
    band: rows.map((row) => bar(x(Math.max(row.time, left)), shown(row.low[at]), shown(row.high[at]), y)).join(""),
  };
}

/** From the lowest to the highest of a row that is more than one reading. */
function bar(x, low, high, y) {
  if (low === null || high === null || Math.abs(y(low) - y(high)) < 0.5) return "";
  return `M${px(x)},${px(y(low))}V${px(y(high))}`;
}

/** The ends of a lane: what was read, with some room; never so narrow that the last digits fill it. */
export function domainOf(values, low, high) {
  const found = values.filter(Number.isFinite);
  const least = LEAST_SPAN * Math.abs(high - low) || 1;
  const [a, b] = found.length ? [Math.min(...found), Math.max(...found)] : [low, high];
  const span = Math.max(least, (b - a) * (1 + 2 * ROOM));
  const middle = (a + b) / 2;
  return [middle - span / 2, middle + span / 2];
}

/** The place among the rows of the reading nearest to a time; -1 where there is none. */
export function nearest(rows, time) {
  let [low, high] = [0, rows.length - 1];
  if (high < 0) return -1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (rows[middle].time <= time) low = middle;
    else high = middle;
  }
  return Math.abs(rows[high].time - time) < Math.abs(rows[low].time - time) ? high : low;
}

/** The time of the reading that a key leads to from another, or null for a key that means nothing here. */
export function keyedTime(key, rows, at, {from, to}) {
  const inside = rows.filter(({time}) => time >= from && time <= to);
  if (!inside.length) return null;
  const here = nearest(inside, at);
  const far = Math.max(1, Math.round(inside.length / 20));
  const places = {
    ArrowRight: here + 1, ArrowUp: here + 1, ArrowLeft: here - 1, ArrowDown: here - 1,
    PageUp: here + far, PageDown: here - far, Home: 0, End: inside.length - 1,
  };
  return key in places ? inside[clamp(places[key], 0, inside.length - 1)].time : null;
}
