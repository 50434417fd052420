// Lines and arcs as path texts. No DOM.

import {line} from "../vendor/d3/d3.js";
import {px} from "./svg.js";

/** A point at `radius` from the centre; `turn` in degrees from straight up, clockwise. */
export function polar(x, y, radius, turn) {
  const angle = ((turn - 90) * Math.PI) / 180;
  return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
}

/** Path of an arc about (x, y) from one turn to another, clockwise. [degrees from straight up] */
export function arcPath(x, y, radius, from, to) {
  const [a, b] = [polar(x, y, radius, from), polar(x, y, radius, to)];
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  return `M${px(a[0])},${px(a[1])}A${px(radius)},${px(radius)} 0 ${large} 1 ${px(b[0])},${px(b[1])}`;
}

/** Path through points; it breaks where either coordinate is null. */
export function linePath(points) {
  return straight(points) ?? "";
}

const straight = line((p) => px(p[0]), (p) => px(p[1]))
  .defined(([x, y]) => Number.isFinite(x) && Number.isFinite(y));

/** Path through points with every corner rounded, like a bent pipe. */
export function bentPath(points, radius) {
  if (points.length < 2) return "";
  let path = `M${px(points[0][0])},${px(points[0][1])}`;
  for (let i = 1; i < points.length - 1; i++) path += corner(points[i - 1], points[i], points[i + 1], radius);
  const end = points[points.length - 1];
  return `${path}L${px(end[0])},${px(end[1])}`;
}

function corner(before, at, after, radius) {
  const into = Math.hypot(at[0] - before[0], at[1] - before[1]);
  const out = Math.hypot(after[0] - at[0], after[1] - at[1]);
  const r = Math.min(radius, into / 2, out / 2);
  if (!(r > 0)) return "";
  const start = [at[0] + ((before[0] - at[0]) * r) / into, at[1] + ((before[1] - at[1]) * r) / into];
  const end = [at[0] + ((after[0] - at[0]) * r) / out, at[1] + ((after[1] - at[1]) * r) / out];
  return `L${px(start[0])},${px(start[1])}Q${px(at[0])},${px(at[1])} ${px(end[0])},${px(end[1])}`;
}

const reach = ([[x, y], [u, v]]) => Math.hypot(u - x, v - y);

/** Neighbouring points of a run, two by two. */
export const stretches = (points) => points.slice(1).map((to, i) => [points[i], to]);

/** The first part of a run of points, by its share of the length; at least a trace of it. */
export function firstShare(points, share) {
  const parts = stretches(points);
  let left = Math.max(0.001, Math.min(1, share)) * parts.reduce((sum, part) => sum + reach(part), 0);
  const run = [points[0]];
  for (const [from, to] of parts) {
    const length = reach([from, to]);
    const by = length > left ? left / length : 1;
    run.push([from[0] + by * (to[0] - from[0]), from[1] + by * (to[1] - from[1])]);
    if (length >= left) break;
    left -= length;
  }
  return run;
}

/** The middle of the longest stretch of a run, and which way it goes there. [degrees from straight right, clockwise] */
export function middleOf(points) {
  const [from, to] = stretches(points).reduce((most, part) => (reach(part) > reach(most) ? part : most));
  const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  return {x: (from[0] + to[0]) / 2, y: (from[1] + to[1]) / 2, turn, length: reach([from, to])};
}

/**
 * Move labels apart so that neighbours keep a distance, as little as possible.
 * @param {number[]} wished  positions, in any order
 * @param {number} gap       least distance between two
 * @param {number} low,high  ends that the labels stay within, if they fit
 * @returns {number[]} positions in the order of `wished`
 */
export function spread(wished, gap, low, high) {
  const order = wished.map((at, i) => ({at, i})).sort((a, b) => a.at - b.at);
  let floor = low;
  for (const label of order) floor = (label.at = Math.max(label.at, floor)) + gap;
  let ceiling = high;
  for (const label of order.reverse()) ceiling = (label.at = Math.min(label.at, ceiling)) - gap;
  const places = new Array(wished.length);
  for (const label of order) places[label.i] = label.at;
  return places;
}
