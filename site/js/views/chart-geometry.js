// Head over flow: where curves, marks and ticks lie. No DOM.

import {between, decimals, linearScale, roundTicks, roundTop, tickStep} from "../lib/scale.js";
import {linePath} from "../lib/shape.js";
import {px} from "../lib/svg.js";

const MARGIN = {left: 46, right: 14, top: 46, bottom: 40};
const [LEAST_HEAD, IDLE_HEAD] = [1e-3, 10]; // [m] where no curve comes above the one, the axis goes to the other
const DOTS = 12; // marks along the machine's curve

const largest = (values) => values.reduce((most, value) => (Number.isFinite(value) && value > most ? value : most), -Infinity);

/** Ends of both axes for the answers on the sheet. SI. */
export function chartDomain(answers, curvesShown = true) {
  const kept = answers.filter(Boolean);
  if (!kept.length) return {flow: [0, 0.02], head: [0, 50]};
  const flow = largest(kept.flatMap(({curves, duty}) => [curves.flow.at(-1), 1.05 * duty.flow]));
  const back = Math.min(0, ...kept.flatMap(({curves, duty}) => [curves.flow[0], 1.05 * duty.flow])); // a load that pushes back through the pump
  // the first rows stand at no flow, where a check valve holds what the load asks; or the first is far below no flow
  const asked = kept.flatMap(({curves, duty}) => [...curves.load.slice(0, 2), between(curves.flow, curves.load, 0), duty.head]).filter(Number.isFinite);
  const answered = largest(kept.flatMap(({curves, duty}) => [...curves.station, ...curves.machine, 1.05 * duty.head]));
  const low = Math.min(0, ...(curvesShown ? asked : kept.map(({duty}) => duty.head)));
  const top = Math.max(answered, ...asked);
  return {flow: [back, flow], head: [low, 1.1 * (top > LEAST_HEAD ? top : IDLE_HEAD)]};
}

/**
 * Scales and ticks for a sheet, with round ends in shown units.
 * @param {{width: number, height: number}} size
 * @param {{flow: [number, number], head: [number, number]}} domain  SI; `head` is whatever stands upright
 * @param {object} units
 * @param {string} [upright]  its quantity
 */
export function chartAxes({width, height}, domain, units, upright = "head") {
  const plot = {left: MARGIN.left, right: width - MARGIN.right, top: MARGIN.top, bottom: height - MARGIN.bottom};
  const across = axis("flow", domain.flow, [plot.left, plot.right], Math.max(3, Math.round(width / 75)), units, false);
  const up = axis(upright, domain.head, [plot.bottom, plot.top], Math.max(3, Math.round(height / 60)), units, true);
  return {plot, x: across.scale, y: up.scale, xTicks: across.ticks, yTicks: up.ticks, flow: across.ends, head: up.ends};
}

function axis(quantity, ends, places, count, units, rounded) {
  const shown = ends.map((end) => units.value(quantity, end));
  const [low, high] = rounded ? roundTop(...shown, count) : shown;
  const shownScale = linearScale([low, high], places);
  const digits = decimals(tickStep(low, high, count));
  const ticks = roundTicks(low, high, count).map((at) => ({place: shownScale(at), text: at.toFixed(digits).replace("-", "−")}));
  const si = [low, high].map((end) => units.si(quantity, end));
  return {scale: linearScale(si, places), ticks, ends: si};
}

/** Path of one curve; a column of nulls after its first value is a wall at no flow, such as a shut valve. */
export function curvePath({flow, heads}, {x, y, plot}) {
  if (heads.length > 1 && heads.slice(1).every((head) => !Number.isFinite(head))) {
    const foot = Number.isFinite(heads[0]) ? y(heads[0]) : plot.bottom;
    return `M${px(x(Math.max(0, flow[0])))},${px(foot)}V${px(plot.top)}`;
  }
  return linePath(flow.map((at, i) => (Number.isFinite(heads[i]) ? [x(at), y(heads[i])] : [NaN, NaN])));
}

/** Dots along the machine's curve, evenly on the sheet, so that one that is nearly upright has them too. */
export function dotsPath({flow, heads}, {x, y, plot}) {
  const points = flow.map((at, i) => [x(at), Number.isFinite(heads[i]) ? y(heads[i]) : NaN]).filter((point) => onSheet(point, plot));
  const far = points.map(([a, b], i) => (i ? Math.hypot(a - points[i - 1][0], b - points[i - 1][1]) : 0));
  const length = far.reduce((sum, step) => sum + step, 0);
  let path = "", gone = 0, next = 0;
  points.forEach(([a, b], i) => {
    for (gone += far[i]; next <= gone + 1e-6 && length > 0; next += length / DOTS) {
      const back = far[i] > 0 ? Math.max(0, (gone - next) / far[i]) : 0;
      const [c, d] = points[Math.max(0, i - 1)];
      path += `M${px(a + (c - a) * back)},${px(b + (d - b) * back)}h.01`;
    }
  });
  return path;
}

const onSheet = ([, b], {top, bottom}) => b > top - 1 && b < bottom + 1;

/** What both curves say at a flow. SI; null where a curve does not reach. */
export function readAt({flow, load, station}, at) {
  return {flow: at, asked: between(flow, load, at), answered: between(flow, station, at)};
}

const WORDS = {width: 100, height: 34}; // [px] two lines beside the duty point

/**
 * Where the words beside the duty point cover least of the curves.
 * @param {[number, number]} point   the duty point on the sheet
 * @param {[number, number][]} drawn points of all curves on the sheet
 * @param {number} [wide]  of the longer line [px]
 */
export function dutyWords([x, y], {plot}, drawn, wide = WORDS.width) {
  const around = [0, 12, 26].flatMap((far) => [[12 + far, -40], [14 + far, 8], [-12 - far, 8], [-12 - far, -40], [14, -40 - far], [-14, 8 + far], [14, 8 + far]]);
  const places = around.map(([dx, dy]) => ({
    anchor: dx > 0 ? "start" : "end",
    left: x + dx - (dx > 0 ? 0 : wide), top: y + dy, x: x + dx, y: y + dy + 13,
  }));
  const inside = ({left, top}) => left >= plot.left && left + wide <= plot.right + 4 && top >= plot.top - 6 && top + WORDS.height <= plot.bottom;
  const covered = ({left, top}) => drawn.filter(([a, b]) => a > left - 2 && a < left + wide && b > top && b < top + WORDS.height).length;
  const fitting = places.filter(inside);
  return (fitting.length ? fitting : places).reduce((best, one) => (covered(one) < covered(best) ? one : best));
}

/** Points of a curve on the sheet, close enough together to find what lies over it. */
export function sampled({flow, heads}, {x, y, plot}) {
  const points = [];
  for (let at = plot.left; at <= plot.right; at += 4) {
    const head = between(flow, heads, x.invert(at));
    if (head !== null) points.push([at, y(head)]);
  }
  return points;
}
