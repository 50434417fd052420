// A worker that tests steer by hand, and a clock that does not run by itself.

/** Records what it was asked; `say` makes it speak. */
export function fakeWorker() {
  return {
    asks: [],
    ended: false,
    postMessage({ask}) {
      this.asks.push(JSON.parse(ask));
    },
    terminate() {
      this.ended = true;
    },
    say(data) {
      this.onmessage({data});
    },
    ready() {
      this.say({boot: {stage: "ready"}});
    },
    reply(ask, body) {
      this.say({reply: JSON.stringify({v: 1, id: ask.id, ok: true, body})});
    },
    refuse(ask, error) {
      this.say({reply: JSON.stringify({v: 1, id: ask.id, ok: false, error})});
    },
  };
}

/** Timers that fire when `pass(ms)` says so. */
export function fakeTimers() {
  const alarms = new Map();
  let now = 0;
  let next = 1;
  return {
    set(run, ms) {
      alarms.set(next, {run, at: now + ms});
      return next++;
    },
    clear: (id) => alarms.delete(id),
    now: () => now,
    pass(ms) {
      now += ms;
      for (const [id, {run, at}] of [...alarms]) {
        if (at > now || !alarms.has(id)) continue;
        alarms.delete(id);
        run();
      }
    },
  };
}

/** How a promise ended, without waiting for one that has not. */
export async function outcome(promise) {
  const open = Symbol("open");
  const turn = new Promise((resolve) => setImmediate(resolve, open));
  try {
    const value = await Promise.race([promise, turn]);
    return value === open ? {open: true} : {value};
  } catch (reason) {
    return {reason};
  }
}
