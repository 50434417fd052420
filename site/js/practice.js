// Puzzles made for practice: which is whose, and those made here before, kept in this browser with their files. No DOM.
import {isSeed} from "./course.js";
import {LEVELS} from "./course-order.js";
import {sum} from "./result-code.js";
import {isTable} from "./tables.js";

const NAME = "practice";
const MOST = 30; // puzzles that are kept
const LONGEST_TITLE = 80; // as of every case: a link may bring any file
const FILE = /^practice(?:-(first-steps|operator|engineer))?-([1-9]\d{0,5})$/;

/** @typedef {{seed: number, level: string|null}} Wish  the number that a puzzle was made from, and the level that was wished for; without one it was drawn */

export const isWish = (value) => isTable(value) && Object.keys(value).sort().join() === "level,seed" && isSeed(value.seed)
  && (value.level === null || LEVELS.includes(value.level));

/** The wish that a result's case was made for, by the name that the engine gave its file; null where it was none. */
export function wishOf(name) {
  const [, level = null, seed] = String(name).match(FILE) ?? [];
  return seed ? {seed: Number(seed), level} : null;
}

/** What a number that somebody typed says: a seed, null where nothing is typed, undefined where it cannot be one. */
export function typedSeed(text) {
  const plain = text.replace(/[\s.,’']/g, "");
  if (!plain) return null;
  return /^\d{1,6}$/.test(plain) && isSeed(Number(plain)) ? Number(plain) : undefined;
}

/** The title that stands in a file made by the engine; its name where there is none. */
export function titleOf({name, text}) {
  try {
    return JSON.parse(text.match(/^title = ("(?:[^"\\\n]|\\.)*")$/m)[1]).slice(0, LONGEST_TITLE);
  } catch {
    return name.replace(/\.toml$/i, "");
  }
}

/**
 * What a play is kept under: a packaged case's id, and for a puzzle made for practice one that no other text has.
 * @param {object} view of the state
 * @returns {string|null} null for a file of somebody's own, whose plays stay in the state alone
 */
export function playId({case: which, practice}) {
  if (typeof which === "string") return which;
  if (!which || !practice) return null;
  return [NAME, practice.level, practice.seed, sum(which.text)].filter((part) => part !== null).join("-");
}

/**
 * @param {{get: (name: string) => any, set: (name: string, value: any) => void}} kept of kept.js
 */
export function createPractice(kept) {
  let known = null; // read once for each text that is kept: a page that is painted often asks often

  const read = () => (known ??= (Array.isArray(kept.get(NAME)) ? kept.get(NAME) : []).filter(isEntry));

  function write(all) {
    known = all;
    kept.set(NAME, all);
  }

  return {
    /** {id, file: {name, text}, practice: Wish} each, the newest first. */
    get all() {
      return read();
    },
    /** The puzzle in sight is kept, unless it is already. Returns ids of those that had to go for it. */
    keep(view) {
      const id = playId(view);
      known = null; // another tab may have made some
      if (!view.practice || !id || read().some((one) => one.id === id)) return [];
      const all = [{id, file: view.case, practice: view.practice}, ...read()];
      write(all.slice(0, MOST));
      return all.slice(MOST).map((one) => one.id);
    },
    forget(id) {
      known = null;
      write(read().filter((one) => one.id !== id));
    },
    forgetAll: () => write([]),
  };
}

/** An entry that can be used; a damaged one is left out. */
const isEntry = (one) => isTable(one) && isTable(one.file) && typeof one.file.name === "string" && typeof one.file.text === "string"
  && isWish(one.practice) && one.id === playId({case: one.file, practice: one.practice});
