// Asks Python for the rig's answer whenever the state changes, and keeps the newest and the one before.
import {Superseded} from "./engine/errors.js";
import {same} from "./history.js";
import {createLateness} from "./lateness.js";
import {groupOf} from "./views/control-table.js";

/** Points of each curve that the page asks for. */
export const CURVE_POINTS = 60;
const CHANNEL = "rig";

/**
 * @param {object} p
 * @param {object} p.engine of engine.js
 * @param {object} p.store of state.js
 * @param {() => void} p.onChange something new to paint
 * @param {(error: object) => void} p.onTrouble a failure that belongs to no control
 * @param {() => object|null} [p.day] what an ask holds besides where a day is remembered
 * @param {object} [p.timers] for tests
 */
export function createRig({engine, store, onChange, onTrouble, day = () => null, timers}) {
  const wait = createLateness(onChange, timers);
  let got = null; // {answer, for: {plant, edits}}
  let settled = null; // answer of the last committed state
  let previous = null; // the committed answer before the present change: the ghost
  let error = null;
  let moving = false;

  async function ask() {
    const {plant, edits} = store.state;
    try {
      const second = day();
      const answer = await wait.until(engine.ask("answer", {plant, edits, curve_points: CURVE_POINTS, ...second}, CHANNEL));
      got = {answer, for: {plant, edits}, second: second !== null};
      error = null;
      onTrouble(null);
      if (!store.live && same({plant, edits}, here())) settled = answer;
      onChange();
    } catch (problem) {
      if (problem instanceof Superseded) return;
      error = problem.rule ? problem : null; // said beside its control, where that is in sight
      if (!groupOf(problem.where ?? "") && problem.code !== "start-up") onTrouble(problem);
      onChange();
    }
  }

  const here = () => ({plant: store.state.plant, edits: store.state.edits});
  let rest = here(); // the last state that stood still

  /** A change made before any answer has come still shows where it began. */
  async function askBefore({plant, edits}) {
    try {
      const answer = await engine.ask("answer", {plant, edits, curve_points: CURVE_POINTS}, "before");
      if (previous) return;
      previous = answer;
      onChange();
    } catch {
      // the ghost is missing, nothing else: the present state's own ask tells of trouble
    }
  }

  store.subscribe((state, what) => {
    if (["view", "beside", "remember"].includes(what)) return;
    if ((what === "undo" || what === "redo") && !moving && same(rest, here())) return; // only what stands beside it came or went
    if (what === "open" || what === "load") {
      engine.drop(CHANNEL);
      engine.drop("before");
      previous = settled = null;
    } else if (what === "preview" ? !moving : !moving || what !== "commit") {
      previous = settled ?? previous;
      if (!previous && !same(rest, here())) askBefore(rest);
    }
    moving = what === "preview";
    if (!moving) rest = here();
    ask();
  });

  return {
    ask,
    get got() {
      return got;
    },
    get previous() {
      return previous;
    },
    /** Whether the present state has been without an answer for long. */
    get late() {
      return wait.late;
    },
    get error() {
      return error;
    },
  };
}
