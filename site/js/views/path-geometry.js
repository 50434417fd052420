// Head and pressure along the way of the liquid: where the lines lie. No DOM.

import {decimals, linearScale, roundTicks, roundTop, tickStep} from "../lib/scale.js";
import {linePath} from "../lib/shape.js";
import {G} from "../units.js";

const SHORT = 0.55; // room of a step without length, against the mean of the pipes

/** Which places get a name below the drawing, and which word; the first two of a machine share one. */
export const NAMED = {
  "supply-surface": "draw-supply", "suction": "draw-pump", "after-valve": "draw-valve-short", "delivery-surface": "draw-delivery",
};

/**
 * Places across the sheet: steps without length (pump, valve) get a little
 * room, pipes the rest by the square root of their length, so that a short
 * suction line can be seen beside a long discharge line.
 * @param {{distance: number}[]} path
 * @returns {number[]} 0 … 1
 */
export function pathPlaces(path) {
  if (path.length < 2) return path.map(() => 0.5);
  const lengths = path.slice(1).map(({distance}, i) => Math.sqrt(Math.max(0, distance - path[i].distance)));
  const long = lengths.filter((length) => length > 0);
  const mean = long.length ? long.reduce((sum, length) => sum + length, 0) / long.length : 1;
  const room = lengths.map((length) => Math.max(length, SHORT * mean));
  const whole = room.reduce((sum, length) => sum + length, 0);
  let at = 0;
  return [0, ...room.map((length) => (at += length) / whole)];
}

/** Everything to draw for one answer's path, in a sheet of `width` × `height`. */
export function pathGeometry({path, density}, before, units, {width, height}) {
  const plot = {left: 46, right: width - 14, top: 30, bottom: height - 26};
  const across = linearScale([0, 1], [plot.left, plot.right]);
  const all = [...path, ...(before?.path ?? [])];
  const heights = all.flatMap(({height: h, head}) => [h, head]).filter(Number.isFinite);
  const shown = [Math.min(0, ...heights), Math.max(1, ...heights)].map((head) => units.value("head", head));
  const count = Math.max(3, Math.round(height / 55));
  const [low, high] = roundTop(...shown, count);
  const y = linearScale([units.si("head", low), units.si("head", high)], [plot.bottom, plot.top]);
  const digits = decimals(tickStep(low, high, count));
  const ticks = roundTicks(low, high, count).map((at) => ({place: y(units.si("head", at)), text: at.toFixed(digits).replace("-", "−")}));
  return {plot, ticks, ...lines(path, density, across, y), ghost: before ? linePath(headPoints(before.path, across, y)) : null};
}

const headPoints = (path, across, y) => pathPlaces(path).map((at, i) => [across(at), Number.isFinite(path[i].head) ? y(path[i].head) : NaN]);

function lines(path, density, across, y) {
  const places = pathPlaces(path).map(across);
  const point = (value) => path.map((one, i) => [places[i], Number.isFinite(value(one)) ? y(value(one)) : NaN]);
  const pressed = ({height, pressure}) => (Number.isFinite(pressure) ? height + pressure / (density * G) : NaN);
  const [pipe, grade] = [point(({height}) => height), point(pressed)];
  const from = path.findIndex(({place}) => place === "suction");
  const head = headPoints(path, across, y);
  return {
    pipe: linePath(pipe), head: linePath(head), grade: linePath(grade),
    machine: from >= 0 && head[from + 1] ? linePath(head.slice(from, from + 2)) : "",
    between: bands(pipe, grade),
    gaps: pipe.filter((_, i) => !Number.isFinite(path[i].pressure)),
    names: path.map(({place}, i) => ({place, x: places[i]})).filter(({place}) => place in NAMED),
  };
}

/** The area between the pipe and the pressure line, stretch by stretch. */
function bands(pipe, grade) {
  let d = "";
  for (let i = 1; i < pipe.length; i++) {
    const corners = [pipe[i - 1], pipe[i], grade[i], grade[i - 1]];
    if (corners.every(([, y]) => Number.isFinite(y))) d += `${linePath(corners)}Z`;
  }
  return d;
}
