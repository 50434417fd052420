// The one state of the page, and what can happen to it. No DOM, no Python.
import * as history from "./history.js";
import {FORMAT} from "./share.js";

/** A state with nothing changed. */
export function firstState(plant, view = {}) {
  return freeze({format: FORMAT, plant, edits: {}, view: {curves: true, place: "rig", ...view}});
}

/**
 * @param {object} first state to begin with, as `firstState` or `share.decode` give it
 * @returns the store; `subscribe(f)` calls f(state, what) after each change,
 *   what ∈ "preview" | "commit" | "cancel" | "undo" | "redo" | "reset" | "open" | "view" | "load" |
 *   "beside" | "remember" | "exchange" | "hide" | "happen"
 */
export function createStore(first) {
  let state = freeze(first);
  let steps = history.begin(rigOf(state));
  let pending = null; // edits of a drag under way
  const listeners = new Set();

  function become(next, what) {
    state = freeze(next);
    for (const listener of listeners) listener(state, what);
    return state;
  }

  /** Put the present of the history into the state. */
  function settle(what, view = state.view) {
    const {plant, edits, ...remembered} = steps.present;
    const shown = {...view};
    for (const name of REMEMBERED) {
      delete shown[name];
      if (remembered[name]) shown[name] = remembered[name];
    }
    pending = null;
    return become({format: FORMAT, plant, edits, view: shown}, what);
  }

  /** One step of the history to another rig, to another one beside it, or to both. */
  function step(part) {
    steps = history.step(steps, {...steps.present, ...part});
  }

  function commit(edits = {}) {
    const all = {...pending, ...edits};
    step({edits: without({...steps.present.edits, ...all})});
    return settle("commit");
  }

  return {
    get state() {
      return state;
    },
    /** Whether a drag is under way. */
    get live() {
      return pending !== null;
    },
    get canUndo() {
      return steps.past.length > 0;
    },
    get canRedo() {
      return steps.future.length > 0;
    },
    /** Show these edits while a hand is on the control; nothing is remembered yet. */
    preview(edits) {
      pending = {...pending, ...edits};
      return become({...state, edits: without({...steps.present.edits, ...pending})}, "preview");
    },
    /** The hand let go: one step of the history. An edit of `undefined` goes back to the plant's own value. */
    commit,
    /** The drag was given up. */
    cancel: () => (pending ? settle("cancel") : state),
    undo() {
      if (pending) commit(); // a drag under way is the step that is undone
      steps = history.undo(steps);
      return settle("undo");
    },
    redo() {
      steps = history.redo(steps);
      return settle("redo");
    },
    /** Back to the plant as its file has it; can be undone. */
    reset() {
      step({edits: {}});
      return settle("reset");
    },
    /** Another plant, an id or a whole one; can be undone. A remembered day is that of the plant that is left. */
    open(plant, view = {}) {
      step({plant, edits: {}, yesterday: null, hidden: null, told: null});
      return settle("open", {...state.view, ...view});
    },
    /** Keep a rig beside the present one, or null for none; can be undone, and moves nothing else. */
    keepBeside(beside) {
      if (pending) commit();
      step({beside});
      return settle("beside");
    },
    /** Remember a rig as yesterday's, or forget it with null; can be undone, and moves nothing else. */
    remember(yesterday) {
      if (pending) commit();
      step({yesterday, told: null});
      return settle("remember");
    },
    /** Something happens out of sight: only its veil is known here. The rig as it stood is yesterday's, unless a day is remembered. */
    hide(hidden) {
      if (pending) commit();
      step({hidden, told: null, yesterday: steps.present.yesterday ?? {plant: steps.present.plant, edits: steps.present.edits}});
      return settle("hide");
    },
    /** A cause happens in the open, or what was hidden comes to light: {cause, size, unit} with the edits it makes; `day` is the rig before it, if not as it was set. */
    happen(edits, told, day) {
      if (pending) commit();
      const {plant, edits: before, yesterday} = steps.present;
      step({edits: without({...before, ...edits}), hidden: null, told, yesterday: yesterday ?? day ?? {plant, edits: before}});
      return settle("happen");
    },
    /** Both rigs of a comparison become others: {plant, edits} each; can be undone in one. */
    exchange({now, beside}) {
      if (pending) commit();
      step({...now, beside});
      return settle("exchange");
    },
    /** Change how things are shown; no step of the history. */
    show: (view) => become({...state, view: {...state.view, ...view}}, "view"),
    /** Take over a whole state, from a link; can be undone. */
    load(next) {
      steps = history.step(steps, rigOf(next));
      return settle("load", next.view);
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/**
 * What the view may hold besides: rigs {plant, edits}, one kept for a comparison and yesterday's; the veil of a
 * hidden cause; and one that happened in the open.
 */
const REMEMBERED = ["beside", "yesterday", "hidden", "told"];

/** What the history remembers: the rig, and what the view holds besides. */
const rigOf = ({plant, edits, view}) => ({plant, edits, ...Object.fromEntries(REMEMBERED.map((name) => [name, view?.[name] ?? null]))});

const without = (edits) => Object.fromEntries(Object.entries(edits).filter(([, value]) => value !== undefined));

function freeze(value) {
  if (value !== null && typeof value === "object" && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(freeze);
  }
  return value;
}

/** A plant with edits put in, as Python will do it: dotted keys into a copy. */
export function withEdits(plant, edits) {
  const copy = structuredClone(plant);
  for (const [path, value] of Object.entries(edits)) {
    const keys = path.split(".");
    const last = keys.pop();
    let part = copy;
    for (const key of keys) part = part[key] ??= {};
    part[last] = value;
  }
  return copy;
}

/** What stands under a dotted key; undefined where there is nothing. */
export const at = (plant, path) => path.split(".").reduce((part, key) => part?.[key], plant);
