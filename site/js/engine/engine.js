// Keeps order between the page and the worker: latest wins, time limits, restart.
import {EngineError, Superseded} from "./errors.js";
export {EngineError, Superseded};

/** Version of the messages; Python's `door` holds the same number. */
export const PROTOCOL = 1;

const LIMITS = {answer: 8000, boot: 60000}; // [ms]

/**
 * @param {() => Worker} startWorker makes a new worker
 * @param {object} [options]
 * @param {{answer?: number, boot?: number}} [options.limits] time limits; boot counts anew at every sign of progress [ms]
 * @param {(boot: {stage: string, done?: number, total?: number, error?: EngineError}) => void} [options.onBoot]
 * @param {{set: Function, clear: Function}} [options.timers] for tests
 */
export function createEngine(startWorker, {limits = {}, onBoot = () => {}, timers = realTimers} = {}) {
  const limit = {...LIMITS, ...limits};
  const flying = new Map(); // channel → ask that was sent, at most one
  const waiting = new Map(); // channel → newest ask not yet sent
  let nextId = 1;
  let worker = null;
  let stage = "off"; // off | starting | ready | failed
  let bootTimer = null;

  function start() {
    stop();
    stage = "starting";
    armBoot();
    try {
      const mine = startWorker();
      worker = mine;
      mine.onmessage = ({data}) => worker === mine && receive(data ?? {});
      mine.onerror = (event) => worker === mine && workerBroke(event);
      mine.onmessageerror = mine.onerror;
    } catch (error) {
      bootFailed(String(error?.message ?? error));
    }
  }

  function stop() {
    timers.clear(bootTimer);
    worker?.terminate();
    worker = null;
    stage = "off";
  }

  function armBoot() {
    timers.clear(bootTimer);
    bootTimer = timers.set(() => bootFailed("the start took too long"), limit.boot);
  }

  function receive(data) {
    if (data.boot) onBootMessage(data.boot);
    else if (typeof data.reply === "string") onReply(data.reply);
  }

  function onBootMessage(boot) {
    if (stage === "ready" && boot.stage === "failed") return restart("crash", boot.text); // it died at work
    if (stage !== "starting") return; // a late word of progress never undoes "ready" or "failed"
    if (boot.stage === "failed") return bootFailed(boot.text, boot.detail);
    if (boot.stage === "ready") {
      timers.clear(bootTimer);
      stage = "ready";
      onBoot(boot);
      for (const channel of [...flying.keys(), ...waiting.keys()]) sendNext(channel);
      return;
    }
    armBoot();
    onBoot(boot);
  }

  function bootFailed(text = "", detail = "") {
    const error = new EngineError({code: "start-up", text, detail});
    stop();
    stage = "failed";
    for (const job of everyJob()) job.reject(error);
    flying.clear();
    waiting.clear();
    onBoot({stage: "failed", error});
  }

  function workerBroke(event) {
    event.preventDefault?.();
    const text = event.message ?? "the worker broke";
    if (stage === "starting") bootFailed(text);
    else restart("crash", text);
  }

  /** End the worker and start another; each ask that was in flight is tried once more, quietly. */
  function restart(code, text) {
    for (const [channel, job] of flying) {
      timers.clear(job.timer);
      flying.delete(channel);
      if (waiting.has(channel)) job.reject(new Superseded());
      else if (job.tries > 1) job.reject(new EngineError({code, text}));
      else waiting.set(channel, job);
    }
    start();
    onBoot({stage: "restart", code});
  }

  function sendNext(channel) {
    if (stage !== "ready" || flying.has(channel)) return;
    const job = waiting.get(channel);
    if (!job) return;
    waiting.delete(channel);
    flying.set(channel, job);
    job.tries += 1;
    job.timer = timers.set(() => restart("timeout", `no answer within ${limit.answer} ms`), limit.answer);
    worker.postMessage({ask: JSON.stringify({v: PROTOCOL, id: job.id, kind: job.kind, body: job.body})});
  }

  function onReply(text) {
    const reply = parse(text);
    const entry = [...flying].find(([, job]) => job.id === reply?.id);
    if (!entry) return; // its asker has gone
    const [channel, job] = entry;
    timers.clear(job.timer);
    flying.delete(channel);
    if (reply.v !== PROTOCOL) job.reject(new EngineError({code: "stale", text: `version ${reply.v}, not ${PROTOCOL}`}));
    else if (reply.ok) job.resolve(reply.body);
    else job.reject(new EngineError(reply.error));
    sendNext(channel);
  }

  const everyJob = () => {
    const jobs = [...flying.values(), ...waiting.values()];
    for (const job of jobs) timers.clear(job.timer);
    return jobs;
  };

  start();
  return {
    /**
     * Ask Python something.
     *
     * @param {string} kind which question
     * @param {object} body its content, SI or file units as the door says
     * @param {string} [channel] only the newest ask of a channel is kept; the one in flight still answers
     * @returns {Promise<object>} the reply's body
     * @throws {EngineError} what Python, the clock or a crash reported
     * @throws {Superseded} when a newer ask took its place before it was sent
     */
    ask(kind, body, channel = kind) {
      return new Promise((resolve, reject) => {
        if (stage === "failed") return reject(new EngineError({code: "start-up"}));
        waiting.get(channel)?.reject(new Superseded());
        waiting.set(channel, {id: nextId++, kind, body, resolve, reject, tries: 0, timer: null});
        sendNext(channel);
      });
    },
    /** Forget what a channel has asked: another plant was opened. */
    drop(channel) {
      for (const jobs of [flying, waiting]) {
        timers.clear(jobs.get(channel)?.timer);
        jobs.get(channel)?.reject(new Superseded());
        jobs.delete(channel);
      }
    },
    /** Start again after a failed start. */
    again: start,
    get stage() {
      return stage;
    },
  };
}

const realTimers = {set: (f, ms) => setTimeout(f, ms), clear: (t) => clearTimeout(t)};

function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
