// Which way a number went.

const SMALL = 0.005; // a change below half a per cent is none

/** "up", "down" or "same", relative to the greater of the two. */
export function trend(before, after) {
  const scale = Math.max(Math.abs(before), Math.abs(after));
  if (scale === 0 || Math.abs(after - before) < SMALL * scale) return "same";
  return after > before ? "up" : "down";
}
