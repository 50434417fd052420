// Tells when an answer is long in coming, so that nobody takes the readings in sight for it.
import {Superseded} from "./engine/errors.js";

const LATE = 1000; // [ms] common practice: longer, and people wonder whether anything happens

/**
 * @param {() => void} onLate
 * @param {{set: Function, clear: Function}} [timers] for tests
 */
export function createLateness(onLate, timers = {set: (f, ms) => setTimeout(f, ms), clear: (t) => clearTimeout(t)}) {
  let open = 0; // asks without an answer
  let timer = null;
  let late = false;

  function begin() {
    open += 1;
    timer ??= timers.set(() => {
      late = true;
      onLate();
    }, LATE);
  }

  function end(answered) {
    open -= 1;
    if (!answered && open > 0) return;
    timers.clear(timer);
    timer = null;
    late = false;
    if (open > 0) {
      open -= 1; // the newer ones wait anew
      begin();
    }
  }

  return {
    /** The same promise; its ask counts until it is answered. One that was replaced is no answer. */
    until(promise) {
      begin();
      promise.then(() => end(true), (problem) => end(!(problem instanceof Superseded)));
      return promise;
    },
    get late() {
      return late;
    },
  };
}
