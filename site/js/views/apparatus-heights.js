// From heights above the floor to places on the sheet. To one scale where that
// leaves every vessel large enough to read; else the vessels get more room than
// the stretches between them, and the ruler beside shows it. No DOM.

/**
 * @typedef {object} Room
 * @property {number} from,to  heights [m]
 * @property {number} least    room it needs on the sheet [px]
 */

/**
 * A rising, continuous map of heights.
 * @param {number[]} heights  every height that must lie on the sheet [m]
 * @param {Room[]} rooms      stretches that need a least room
 * @param {number} bottom,top places of the lowest and the highest [px], y grows downward
 * @returns {{y: (h: number) => number, height: (y: number) => number, low: number, high: number}}
 */
export function heightMap(heights, rooms, bottom, top) {
  const knots = knotsOf([...heights, ...rooms.flatMap(({from, to}) => [from, to])]);
  const lengths = knots.slice(1).map((h, i) => h - knots[i]);
  const least = lengths.map((length, i) => leastRoom(knots[i], knots[i + 1], rooms));
  const given = share(lengths, least, bottom - top);
  const places = [bottom];
  for (const room of given) places.push(places[places.length - 1] - room);
  return {
    y: (h) => follow(knots, places, h),
    height: (y) => follow([...places].reverse(), [...knots].reverse(), y),
    low: knots[0], high: knots[knots.length - 1],
  };
}

function knotsOf(heights) {
  const sorted = [...new Set(heights.filter(Number.isFinite))].sort((a, b) => a - b);
  return sorted.length > 1 ? sorted : [sorted[0] ?? 0, (sorted[0] ?? 0) + 1];
}

function leastRoom(low, high, rooms) {
  const covering = rooms.filter(({from, to}) => from <= low && to >= high && to > from);
  return Math.max(0, ...covering.map(({from, to, least}) => (least * (high - low)) / (to - from)));
}

/** Share `total` so that each gets at least its least and the rest goes by length, at one scale. */
export function share(lengths, least, total) {
  const needed = least.reduce((sum, room) => sum + room, 0);
  if (needed >= total) return least.map((room) => (room * total) / needed);
  let [low, high] = [0, total / Math.max(...lengths) + 1e-9]; // [px/m]; the longest alone may fill the sheet
  for (let i = 0; i < 60; i++) {
    const scale = (low + high) / 2;
    const used = lengths.reduce((sum, length, k) => sum + Math.max(least[k], length * scale), 0);
    if (used > total) high = scale;
    else low = scale;
  }
  return lengths.map((length, k) => Math.max(least[k], length * low));
}

/** Straight between knots, and on beyond the ends at the scale of the last stretch. */
function follow(xs, ys, x) {
  let i = 1;
  while (i < xs.length - 1 && x > xs[i]) i++;
  const span = xs[i] - xs[i - 1];
  return span > 0 ? ys[i - 1] + ((ys[i] - ys[i - 1]) * (x - xs[i - 1])) / span : ys[i];
}
