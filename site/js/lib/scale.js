// Scales and round ticks, in the few forms that the drawings use.

import {scaleLinear} from "../vendor/d3/d3.js";

/**
 * A straight scale from `domain` to `range`; also beyond both. A domain without length lies in the middle.
 * Every curve goes through one at every answer, so it is no more than its formula.
 */
export function linearScale([a, b], [c, d]) {
  const scale = (x) => (a === b ? (c + d) / 2 : c + ((x - a) / (b - a)) * (d - c));
  scale.invert = (y) => (c === d ? (a + b) / 2 : a + ((y - c) / (d - c)) * (b - a));
  scale.domain = () => [a, b];
  return scale;
}

/** A straight scale that stays within `range`. */
export function clampedScale(domain, range) {
  const scale = linearScale(domain, range);
  const [low, high] = [Math.min(...range), Math.max(...range)];
  return (x) => clamp(scale(x), low, high);
}

/** Round numbers between `low` and `high`, about `count` of them. An axis that stays asks for the same ones again and again. */
export const roundTicks = remembered((low, high, count = 6) => Object.freeze(scaleLinear().domain([low, high]).ticks(count)));

/** The step between round ticks, 0 where there are fewer than two. */
export function tickStep(low, high, count = 6) {
  const ticks = roundTicks(low, high, count);
  return ticks.length > 1 ? ticks[1] - ticks[0] : 0;
}

/** `[low, high]` widened to round ends. */
const roundDomain = remembered((low, high, count = 6) => Object.freeze(scaleLinear().domain([low, high]).nice(count).domain()));

/** `[low, high]` with a round upper end; a lower end at zero or just below stays where it is. */
export const roundTop = (low, high, count = 6) => [low, roundDomain(Math.min(0, low), high, count)[1]];

/** Decimals that a round tick of this step needs. */
export function decimals(step) {
  if (!(step > 0)) return 0;
  return Math.min(6, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
}

/** `value` kept between `low` and `high`. */
export const clamp = (value, low, high) => Math.min(high, Math.max(low, value));

/**
 * The value of a column at `x`, straight between its points.
 * @param {number[]} xs  rising
 * @param {(number|null)[]} ys  null where there is no value
 * @returns {number|null} null outside the column and beside a gap
 */
export function between(xs, ys, x) {
  const last = xs.length - 1;
  if (last < 0 || !(x >= xs[0] && x <= xs[last])) return null;
  let i = 1;
  while (i < last && xs[i] < x) i++;
  const [a, b] = [ys[i - 1], ys[i]];
  if (last === 0) return ys[0];
  if (a === null || b === null || a === undefined || b === undefined) return null;
  const span = xs[i] - xs[i - 1];
  return span > 0 ? a + ((b - a) * (x - xs[i - 1])) / span : b;
}

const REMEMBERED = 200;

/** The same function of numbers, which keeps its latest results. */
function remembered(work) {
  const results = new Map();
  return (...numbers) => {
    const key = numbers.join();
    if (!results.has(key)) {
      if (results.size >= REMEMBERED) results.clear();
      results.set(key, work(...numbers));
    }
    return results.get(key);
  };
}
