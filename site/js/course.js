// What the learner has played: kept in this browser, one entry for each case, and nothing else of them. No DOM.
// Every change begins from what is kept now, so that two tabs lose nothing of each other's.
import {playOf} from "./result-code.js";
import {isTable} from "./tables.js";

/** Number of the form in which plays are kept; one made by a newer page is left alone. */
export const FORMAT = 1;

export const SEEDS = [1, 999_999];
const NAME = "course";
const ID = /^[a-z0-9](?:[a-z0-9-]{0,58}[a-z0-9])?$/;
const MOST_RESULTS = 20;
const MOST_MOVES = 40;

/** @typedef {{seed: number|null, moves: object[], results: object[]}} Entry  seed null: the case's own */

/** Whether a value is a seed. */
export const isSeed = (value) => Number.isInteger(value) && value >= SEEDS[0] && value <= SEEDS[1];

/** Another seed than the one before. */
export function drawSeed(before = null, random = Math.random) {
  const drawn = SEEDS[0] + Math.floor(random() * SEEDS[1]);
  return drawn === before ? (drawn % SEEDS[1]) + 1 : drawn;
}

/**
 * @param {{get: (name: string) => any, set: (name: string, value: any) => void}} kept of kept.js
 */
export function createCourse(kept) {
  function read() {
    const data = kept.get(NAME);
    return data?.format === FORMAT && isTable(data.cases) ? data.cases : {};
  }

  function change(id, deed) {
    const newer = kept.get(NAME)?.format > FORMAT;
    if (newer || !ID.test(id)) return;
    const cases = {...read()};
    const next = deed(entryOf(cases[id]));
    if (next) cases[id] = next;
    else delete cases[id];
    kept.set(NAME, {format: FORMAT, cases});
  }

  return {
    /** What is kept of a case; an empty entry where nothing usable is. */
    of: (id) => entryOf(read()[id]),
    /** Every entry by the case's id, those of cases that nobody knows here too. */
    get all() {
      return Object.fromEntries(Object.entries(read()).map(([id, entry]) => [id, entryOf(entry)]));
    },
    /** A play has come so far. */
    moved: (id, seed, moves) => change(id, (entry) => ({...entry, seed, moves})),
    /** A play is at its end; the same end twice counts once, with its last points. */
    finished: (id, result) => change(id, (entry) => {
      const others = entry.results.filter(({code}) => playOf(code) !== playOf(result.code));
      return {...entry, results: [...others, result].slice(-MOST_RESULTS)};
    }),
    forget: (id) => change(id, () => null),
    forgetAll: () => kept.set(NAME, {format: FORMAT, cases: {}}),
  };
}

/** An entry made only of what can be used. */
function entryOf(data) {
  const {seed = null, moves = [], results = []} = isTable(data) ? data : {};
  return {
    seed: isSeed(seed) ? seed : null,
    moves: Array.isArray(moves) && moves.length <= MOST_MOVES && moves.every(isTable) ? moves : [],
    results: Array.isArray(results) ? results.filter((one) => isTable(one) && typeof one.code === "string") : [],
  };
}

/** How far a case has come: "new", "begun" or "done"; a finished one that is played again counts as done. */
export function stageOf({moves, results}) {
  if (results.length) return "done";
  return moves.length ? "begun" : "new";
}

/** Whether there is a play that can be gone on with. */
export const halfPlayed = ({moves}) => moves.length > 0 && moves.at(-1).do !== "decide";
