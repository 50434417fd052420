// What Python says of a play: asked for when the play has gone on, latest wins; the story comes from a file while Python is still loading.
import {playKey} from "./case-parts.js";

const MOST_DRAWS = 12; // seeds that are tried before a case is called one that cannot be drawn

/**
 * @param {object} deps {document, ask, send}
 * @param {{changed: () => void, settled: () => void}} on  changed: there is something else to show; settled: Python has answered the play in hand
 */
export function createLoad({document, ask, send}, on) {
  let view = null; // what Python, or the file made with the site, said last
  let shown = null; // key of the play that `view` is of
  let asked = null; // key of the play that was asked for last
  let trouble = null;
  let draws = 0;

  async function load(model) {
    const key = playKey(model);
    asked = key;
    trouble = null;
    readOpening(key, model);
    let answer = null;
    try {
      answer = await ask("case", {case: model.case, moves: model.moves, seed: model.seed});
    } catch (error) {
      if (key !== asked || error.name === "Superseded") return;
      if (drawsAgain(error, model)) return;
      trouble = error;
      return on.changed();
    }
    if (key === asked) settle(key, answer);
  }

  function settle(key, answer) {
    view = answer;
    shown = key;
    draws = 0;
    on.settled();
  }

  /** With some seeds what an author claims is lost in the instruments' scatter: another one is drawn, unseen. */
  function drawsAgain(error, {seed, moves}) {
    if (error.code !== "file" || seed === null || moves.length > 0 || draws >= MOST_DRAWS) return false;
    draws += 1;
    send({type: "draw"});
    return true;
  }

  /** The story as it was computed when the site was built; its absence does no harm. */
  async function readOpening(key, model) {
    const {case: id, moves, seed, ready} = model;
    if (ready || view || typeof id !== "string" || !known(model)) return;
    try {
      const response = await fetch(new URL(`cases/${encodeURIComponent(id)}.json`, document.baseURI));
      const opening = response.ok ? (await response.json()).view : null;
      if (!opening || view || key !== asked || (seed ?? opening.seed) !== opening.seed) return;
      view = opening;
      if (moves.length === 0) shown = key;
      on.changed();
    } catch {
      // offline or not built: Python will say it all
    }
  }

  return {
    load,
    forget: () => { view = shown = null; },
    /** Whether this play is the one that was asked for last. */
    has: (model) => playKey(model) === asked,
    waiting: () => asked !== null && asked !== shown,
    get view() { return view; },
    get trouble() { return trouble; },
  };
}

/** Of what nobody knows there is no file to be asked for. */
function known({case: which, catalogue}) {
  const cases = catalogue?.cases ?? [];
  return cases.length === 0 || cases.some(({id}) => id === which);
}
