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
    const {plant, edits, view: {hidden}} = store.state;
    try {
      const second = hidden ? {} : day();
      const answer = await wait.until(hidden ? askShown() : engine.ask("answer", {plant, edits, curve_points: CURVE_POINTS, ...second}, CHANNEL));
      got = {answer, for: {plant, edits}, second: second !== null};
      error = null;
      onTrouble(null);
      if (!hidden && !store.live && same({plant, edits, hidden}, here())) settled = answer;
      onChange();
    } catch (problem) {
      if (problem instanceof Superseded) return;
      error = problem.rule ? problem : null; // said beside its control, where that is in sight
      if (!groupOf(problem.where ?? "") && problem.code !== "start-up") onTrouble(problem);
      onChange();
    }
  }

  /** Nothing but what can be read: with something hidden the true state never comes to the page. */
  async function askShown() {
    const {plant, edits, view: {hidden, yesterday}} = store.state;
    return {...(await engine.ask("shown", {plant, edits, hidden, ...(yesterday && {yesterday})}, CHANNEL)), covered: true};
  }

  const here = () => ({plant: store.state.plant, edits: store.state.edits, hidden: store.state.view.hidden});
  let rest = here(); // the last state that stood still

  /** A change made before any answer has come still shows where it began. */
  async function askBefore({plant, edits}) {
    try {
      const answer = await engine.ask("answer", {plant, edits, curve_points: CURVE_POINTS}, "before");
      if (previous || store.state.view.hidden) return;
      previous = answer;
      onChange();
    } catch {
      // the ghost is missing, nothing else: the present state's own ask tells of trouble
    }
  }

  store.subscribe((state, what) => {
    if (["view", "beside", "remember"].includes(what)) return;
    if ((what === "undo" || what === "redo") && !moving && same(rest, here())) return; // only what stands beside it came or went
    if (["open", "load", "hide", "happen"].includes(what) || state.view.hidden !== rest.hidden) {
      engine.drop(CHANNEL);
      engine.drop("before");
      previous = settled = null;
    } else if (what === "preview" ? !moving : !moving || what !== "commit") {
      previous = settled ?? previous;
      if (!previous && !state.view.hidden && !same(rest, here())) askBefore(rest);
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
