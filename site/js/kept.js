// What the browser keeps between visits: the last state, units and theme.
// Storage may be refused (private windows, third-party frames): then we go on in memory and say so.

const PREFIX = "loadfirst:";

/** @param {() => Storage} open gives the storage; it may throw */
export function createKept(open = () => globalThis.localStorage) {
  const memory = new Map();
  let storage = null;
  try {
    storage = open();
    storage.setItem(`${PREFIX}try`, "1");
    storage.removeItem(`${PREFIX}try`);
  } catch {
    storage = null;
  }
  return {
    /** Whether anything outlives this page. */
    get lasting() {
      return storage !== null;
    },
    /** The plain value kept under a name; null where there is none or it is damaged. */
    get(name) {
      try {
        return JSON.parse(storage ? storage.getItem(PREFIX + name) : (memory.get(name) ?? "null"));
      } catch {
        return null;
      }
    },
    /** Keep a plain value. */
    set(name, value) {
      const text = JSON.stringify(value);
      memory.set(name, text);
      try {
        storage?.setItem(PREFIX + name, text);
      } catch {
        storage = null; // full or withdrawn
      }
    },
  };
}
