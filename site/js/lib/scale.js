// Scales and round ticks, in the few forms that the drawings use.

import {scaleLinear} from "../vendor/d3/d3.js";

/** A straight scale from `domain` to `range`; also beyond both. */
export const linearScale = (domain, range) => scaleLinear().domain(domain).range(range);

/** A straight scale that stays within `range`. */
export const clampedScale = (domain, range) => linearScale(domain, range).clamp(true);

/** Round numbers between `low` and `high`, about `count` of them. */
export const roundTicks = (low, high, count = 6) => scaleLinear().domain([low, high]).ticks(count);

/** The step between round ticks, 0 where there are fewer than two. */
export function tickStep(low, high, count = 6) {
  const ticks = roundTicks(low, high, count);
  return ticks.length > 1 ? ticks[1] - ticks[0] : 0;
}

/** `[low, high]` widened to round ends. */
const roundDomain = (low, high, count = 6) => scaleLinear().domain([low, high]).nice(count).domain();

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
