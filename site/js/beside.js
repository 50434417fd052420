// A rig that the view holds besides the present one: its answer, asked on a channel of its own.
import {Superseded} from "./engine/errors.js";
import {same} from "./history.js";
import {CURVE_POINTS} from "./rig.js";

/**
 * @param {object} p
 * @param {object} p.engine of engine.js
 * @param {object} p.store of state.js
 * @param {"beside"|"yesterday"} [p.name] under which name the view holds it, as {plant, edits}; its channel's too
 * @param {{got: object|null}} p.rig of rig.js: what was just in sight need not be asked for again
 * @param {() => void} p.onChange something new to paint
 */
export function createBeside({engine, store, rig, onChange, name = "beside"}) {
  let wanted = null; // {plant, edits}
  let got = null; // {answer, for}
  let error = null;

  async function ask() {
    const mine = wanted;
    try {
      const answer = await engine.ask("answer", {...mine, curve_points: CURVE_POINTS}, name);
      if (mine === wanted) [got, error] = [{answer, for: mine}, null];
    } catch (problem) {
      if (problem instanceof Superseded || mine !== wanted) return;
      error = problem;
    }
    onChange();
  }

  function look() {
    const next = store.state.view[name] ?? null;
    if (same(next, wanted)) return;
    wanted = next;
    error = null;
    engine.drop(name);
    const known = [rig.got, got].find((one) => one && next && !one.second && same(one.for, next));
    got = known ?? null;
    if (next && !known) ask();
  }

  store.subscribe(look);
  look();
  return {
    /** Ask again what failed for want of an engine. */
    again: () => wanted && !got && ask(),
    /** @returns {{rig: object, answer: object|null, error: object|null}|null} null where nothing is kept */
    get kept() {
      return wanted && {rig: wanted, answer: got?.answer ?? null, error};
    },
  };
}
