// How a slider's handle runs over a range: evenly, or along round numbers where the range spans decades. No DOM.
import {clamp} from "../lib/scale.js";

const ROUND = [1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3, 3.2, 3.6, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 9];
const WIDE = 20; // an end this many times the usual value is out of an even slider's reach
const exact = (value) => Number(value.toPrecision(10));

/**
 * @typedef {object} Track
 * @property {number} min,max,step  of the native slider
 * @property {(place: number) => number} value  at a place of the handle
 * @property {(value: number) => number} place  of a value
 * @property {(value: number, by: number) => number} next  one step up (1) or down (-1)
 */

/** Every step of the handle is the same step of the value. @returns {Track} */
export function evenTrack(low, high, step) {
  return {
    min: low, max: high, step,
    value: (place) => place,
    place: (value) => value,
    next: (value, by) => clamp(exact((Math.round(value / step) + by) * step), low, high),
  };
}

/** The handle goes from one round number to the next. @returns {Track} */
export function ladderTrack(low, high, least) {
  const rungs = ladder(low, high, least);
  const last = rungs.length - 1;
  const place = (value) => rungs.reduce((best, rung, i) => (Math.abs(rung - value) < Math.abs(rungs[best] - value) ? i : best), 0);
  return {
    min: 0, max: last, step: 1, place,
    value: (at) => rungs[clamp(Math.round(at), 0, last)],
    next: (value, by) => (by > 0 ? rungs.find((rung) => rung > value) : rungs.findLast((rung) => rung < value)) ?? rungs[by > 0 ? last : 0],
  };
}

/** Both ends, nought where it lies between them, and the round numbers of at least the size `least` between. */
export function ladder(low, high, least) {
  const up = rounds(Math.max(low, least), high);
  const down = rounds(Math.max(-high, least), -low).map((size) => -size).reverse();
  const nought = low <= 0 && high >= 0 ? [0] : [];
  return [...new Set([low, ...down, ...nought, ...up, high])].sort((a, b) => a - b);
}

function rounds(from, to) {
  const found = [];
  for (let power = Math.floor(Math.log10(from)); from > 0 && 10 ** power <= to; power++) {
    found.push(...ROUND.map((digit) => exact(digit * 10 ** power)).filter((value) => value >= from && value <= to));
  }
  return found;
}

/** The track that suits a range and the size that is usual there. @returns {Track} */
export function trackFor(low, high, usual) {
  const size = Math.abs(usual) || 1;
  const wide = low > 0 ? high / low > WIDE : (high - low) / size > WIDE;
  if (!wide) return evenTrack(low, high, 10 ** Math.floor(Math.log10((high - low) / 100)));
  return ladderTrack(low, high, 10 ** Math.floor(Math.log10(size)) / 100);
}
