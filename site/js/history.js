// Undo and redo over anything, by value. Pure: every function returns a new history.

const LONGEST = 200;

/** A history that holds one moment. */
export const begin = (present) => Object.freeze({past: Object.freeze([]), present, future: Object.freeze([])});

/** Take a step; a step to the same thing is none. */
export function step(history, present) {
  if (same(history.present, present)) return history;
  const past = [...history.past, history.present].slice(-LONGEST);
  return Object.freeze({past: Object.freeze(past), present, future: Object.freeze([])});
}

/** One step back, where there is one. */
export function undo({past, present, future}) {
  if (!past.length) return {past, present, future};
  return Object.freeze({past: past.slice(0, -1), present: past.at(-1), future: [present, ...future]});
}

/** One step forward again, where there is one. */
export function redo({past, present, future}) {
  if (!future.length) return {past, present, future};
  return Object.freeze({past: [...past, present], present: future[0], future: future.slice(1)});
}

/** Whether two plain values say the same; the order of keys does not count. */
export const same = (a, b) => JSON.stringify(ordered(a)) === JSON.stringify(ordered(b));

function ordered(value) {
  if (Array.isArray(value)) return value.map(ordered);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.keys(value).sort().map((key) => [key, ordered(value[key])]));
}
