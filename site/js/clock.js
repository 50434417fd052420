// Lets time run in the rig: one step after another, each from the moment that the last answer ended with.
// Never two in flight, and none is ever dropped for a newer one; a step that a broken worker lost is asked again
// by the engine, from the same moment.
import {Superseded} from "./engine/errors.js";
import {same} from "./history.js";
import {CURVE_POINTS} from "./rig.js";
import {createTrend} from "./trend.js";

/** Times faster than real time that it can run at. */
export const RATES = Object.freeze([1, 10, 100]);

const CHANNEL = "clock";
const BEAT = 100; // [ms] between two steps
const CALM_BEAT = 500; // [ms] where less motion is asked for
const LONGEST = 500; // [ms] of real time that one step makes up for: a device that is slower lets plant time lag
const PEEK = 1e-4; // [s] the shortest step: shows a moment without going on from it
const CURVES = 1000; // [ms] after which curves are asked for again; levels move slowly
const LAG = 0.75; // share of the wanted pace below which it is told

/**
 * @param {object} p
 * @param {object} p.engine of engine.js
 * @param {object} p.store of state.js
 * @param {() => void} p.onChange something new to paint
 * @param {(error: object|null) => void} p.onTrouble a failure that belongs to no control
 * @param {() => void} [p.onRest] it has come to rest or was left: a good time to keep it
 * @param {() => boolean} [p.away] nobody can see the rig: time stands still
 * @param {() => boolean} [p.calm] less motion is asked for
 * @param {{set: Function, clear: Function, now: () => number}} [p.timers] for tests
 */
export function createClock({engine, store, onChange, onTrouble, onRest = () => {}, away = () => false, calm = () => false, timers = realTimers}) {
  const trend = createTrend();
  let status = "off"; // off | running | paused
  let rate = RATES[0];
  let moment = null; // the last one that time has got to; null before the first
  let began = null; // {moment, for}: the first look, from which whatever a hand has set since is on its way
  let got = null; // {answer, for: {plant, edits}}
  let steps = 0; // single ones still to be made
  let flying = false;
  let turn = 0; // another plant's replies are not ours
  let timer = null;
  let sent = 0; // when the last step was
  let drawn = -Infinity; // when curves were last asked for
  let pace = 1; // of plant time, to what is wanted
  let late = []; // vessels whose surface a hand has set while a step was on its way
  let stale = false; // a hand has done something that the picture does not show yet
  let refused = null; // a rig that Python will not have

  const rig = () => ({plant: store.state.plant, edits: store.state.edits});

  /** One step; a peek lets the moment stand. */
  async function ask(span, {peek = false} = {}) {
    const [mine, of, from] = [turn, rig(), timers.now()];
    const curves = !got || !same(got.for, of) || from - drawn >= CURVES;
    if (curves) drawn = from;
    sent = from;
    flying = true;
    stale = false;
    late = [];
    try {
      const before = moment ?? (began && !same(began.for, of) ? began.moment : null);
      const answer = await engine.ask("step", {...of, ...(before && {moment: before}), span, curve_points: curves ? CURVE_POINTS : 0}, CHANNEL);
      if (mine === turn) take(answer, of, peek);
    } catch (problem) {
      if (mine === turn && !(problem instanceof Superseded)) fail(problem, of);
    }
    if (mine !== turn) return;
    flying = false;
    onChange();
    next();
  }

  function take(answer, of, peek) {
    const time = peek ? (moment?.time[0] ?? 0) : answer.time;
    got = {answer: {...answer, time, curves: answer.curves ?? got?.answer.curves ?? null}, for: of};
    refused = null;
    onTrouble(null);
    began ??= {moment: answer.moment, for: of};
    if (!peek) moment = surfacesForgotten(answer.moment, late);
    if (!peek || trend.record.rows.length === 0) trend.add(time, answer.shown, peek ? [] : answer.events);
    if (!peek && status === "paused") onRest();
  }

  function fail(problem, of) {
    if (problem.where?.startsWith("body.moment")) return off(); // kept by another build: it means nothing here
    refused = of;
    pause();
    if (!problem.rule && problem.code !== "start-up") onTrouble(problem);
  }

  /** Whatever is due: a single step, the next of a run, or a look at what a hand has changed. */
  function next() {
    timers.clear(timer);
    timer = null;
    if (status === "off" || flying) return;
    if (!got || (status === "paused" && steps === 0)) {
      const now = rig();
      if (!same(refused, now) && (stale || !(got && same(got.for, now)))) ask(PEEK, {peek: true});
      return;
    }
    if (steps > 0) {
      steps -= 1;
      ask(rate);
    } else if (!away()) timer = timers.set(run, Math.max(0, beat() - (timers.now() - sent)));
  }

  const beat = () => (calm() ? CALM_BEAT : BEAT);

  function run() {
    timer = null;
    if (status !== "running" || flying || away()) return;
    const passed = timers.now() - sent;
    const made = Math.min(passed, LONGEST);
    pace = 0.8 * pace + 0.2 * (made / passed);
    ask((rate * made) / 1000);
  }

  /** Time that went by while nothing ran is not made up for. */
  function afresh() {
    [sent, pace] = [timers.now(), 1];
    next();
  }

  function start() {
    if (status === "off") {
      trend.clear();
      forget();
    }
    refused = null;
    status = "running";
    afresh();
    onChange();
  }

  function pause() {
    if (status === "off") return;
    status = "paused";
    steps = 0;
    timers.clear(timer);
    next();
    onRest();
    onChange();
  }

  function off() {
    if (status === "off") return;
    status = "off";
    forget();
    onRest();
    onChange();
  }

  function forget() {
    turn += 1;
    timers.clear(timer);
    if (flying) engine.drop(CHANNEL);
    [moment, began, got, refused, steps, flying, stale, drawn] = [null, null, null, null, 0, false, false, -Infinity];
  }

  store.subscribe((state, what) => {
    if (status === "off") return;
    const other = what === "open" || what === "load" || (got && !same(got.for.plant, state.plant));
    if (other) {
      trend.clear();
      off();
    } else if (status === "running" && !timer && !flying) afresh();
    else next();
  });

  return {
    start,
    pause,
    off,
    /** Go on by as many seconds as the rate says, once. */
    step() {
      if (status === "off") start();
      if (status === "running") pause();
      refused = null;
      steps += 1;
      next();
    },
    setRate(to) {
      if (!RATES.includes(to)) throw new RangeError(`no such rate: ${to}`);
      [rate, pace] = [to, 1];
      onChange();
    },
    /** Whether anybody can see the rig may have changed. */
    look: () => status === "running" && afresh(),
    /** A hand has set these keys, perhaps to what they were: a level that time has moved goes back there all the same. */
    touched(keys) {
      const names = ["supply", "delivery"].filter((name) => keys.includes(`${name}.surface_m`));
      if (status === "off" || names.length === 0) return;
      late = [...late, ...names];
      stale = true;
      if (moment) moment = surfacesForgotten(moment, names);
    },
    /** The engine has been started again. */
    again() {
      refused = null;
      next();
    },
    /** @returns {{answer: object, for: object}|null} the newest moment's answer while the clock is on */
    get got() {
      return status === "off" ? null : got;
    },
    get status() {
      return status;
    },
    /** Where time has got to; null where it is off, and before its first step. */
    get moment() {
      return status === "off" ? null : moment;
    },
    /** What the page shows of it. */
    get shown() {
      return {status, rate, time: got?.answer.time ?? moment?.time[0] ?? 0, lags: status === "running" && pace < LAG, record: trend.record};
    },
    /** Plain data to keep between visits; null where it is off. */
    get kept() {
      return status === "off" || !moment ? null : {...rig(), rate, moment, trend: trend.kept()};
    },
    /** Take over what was kept, paused, where it belongs to the rig in sight. */
    restore(kept) {
      if (!kept?.moment || !RATES.includes(kept.rate) || !same({plant: kept.plant, edits: kept.edits}, rig())) return;
      forget();
      ({rate, moment} = kept);
      trend.restore(kept.trend);
      status = "paused";
      next();
    },
  };
}

/** A vessel's moment says where its surface was set; with another height there, the plant's own counts as set anew. */
function surfacesForgotten(moment, names) {
  const level = ({bottom_m: bottom, volume, area_m2: area}) => bottom + volume[0] / area;
  return {...moment, ...Object.fromEntries(names.map((name) => [name, {...moment[name], surface_m: level(moment[name])}]))};
}

const realTimers = {set: (f, ms) => setTimeout(f, ms), clear: (t) => clearTimeout(t), now: () => performance.now()};
