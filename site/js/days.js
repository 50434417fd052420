// What the engine says of the remembered day and today together, asked whenever either stands still as another, and
// now and then while time runs.
import {Superseded} from "./engine/errors.js";
import {same} from "./history.js";

const CHANNEL = "days";
const APART = 2000; // [ms] between two asks while time runs: the worker has its steps to make

/** What today's ask holds besides: it is the second look at yesterday's instruments, and a gauge that is shut off keeps what it showed. */
export function secondLook(answer) {
  if (!answer) return null;
  const gauges = answer.shown.filter(({id}) => id.startsWith("gauge-")).map(({id, value, low, high}) => [id, {value, low, high}]);
  return {look: 1, before: Object.fromEntries(gauges)};
}

/** Calls `ask` whenever that has become another. */
export function whenOther(part, ask) {
  let last = part();
  return () => same(part(), last) || ((last = part()), ask());
}

/**
 * @param {object} p
 * @param {object} p.engine of engine.js
 * @param {object} p.store of state.js; `view.yesterday` is {plant, edits} of the remembered day
 * @param {() => void} p.onChange something new to paint
 * @param {{status: string, moment: object|null}} [p.clock] of clock.js: while it is on, today is what stands at its moment
 * @param {() => number} [p.now] for tests [ms]
 */
export function createDays({engine, store, onChange, clock = {status: "off", moment: null}, now = () => performance.now()}) {
  let wanted = null; // {yesterday, today}
  let got = null; // {answer, for}
  let error = null;
  let asked = -Infinity; // when, last [ms]
  let flying = false;

  async function ask() {
    const mine = wanted;
    [asked, flying] = [now(), true];
    try {
      const answer = await engine.ask("days", mine, CHANNEL);
      if (mine === wanted) [got, error] = [{answer, for: mine}, null];
    } catch (problem) {
      if (problem instanceof Superseded || mine !== wanted) return;
      error = problem;
    }
    flying = false;
    onChange();
  }

  function look() {
    if (store.live) return; // the hand has not let go
    const {plant, edits, view: {yesterday, hidden}} = store.state;
    const passing = wanted?.moment && clock.status === "running" && same([plant, edits, yesterday], [wanted.today.plant, wanted.today.edits, wanted.yesterday]);
    if (passing && (flying || now() - asked < APART)) return; // one after another
    const next = yesterday && !hidden ? {yesterday, today: {plant, edits}, ...(clock.moment && {moment: clock.moment})} : null;
    if (same(next, wanted)) return;
    wanted = next;
    flying = false; // what is on its way is nobody's any more
    error = null;
    engine.drop(CHANNEL);
    if (next && !same(got?.for, next)) ask();
  }

  store.subscribe(look);
  look();
  return {
    /** The clock has gone on. */
    look,
    /** Ask again what failed for want of an engine. */
    again: () => wanted && error && ask(),
    /** @returns {{answer: object|null, fresh: boolean, error: object|null}|null} null where no day is remembered; an answer that is not fresh is the last one */
    get kept() {
      const known = wanted && got && same(got.for.yesterday, wanted.yesterday);
      return wanted && {answer: known ? got.answer : null, fresh: Boolean(known) && same(got.for, wanted) && !store.live, error};
    },
  };
}
