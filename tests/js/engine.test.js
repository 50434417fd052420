import assert from "node:assert/strict";
import {test} from "node:test";
import {EngineError, Superseded, createEngine} from "../../site/js/engine/engine.js";
import {fakeTimers, fakeWorker, outcome} from "./fake-worker.js";

const LIMITS = {answer: 1000, boot: 5000};

function setUp() {
  const workers = [];
  const boots = [];
  const timers = fakeTimers();
  const start = () => (workers.push(fakeWorker()), workers.at(-1));
  const engine = createEngine(start, {limits: LIMITS, onBoot: (boot) => boots.push(boot), timers});
  return {engine, workers, boots, timers};
}

test("what is asked before Python is ready is sent when it is", async () => {
  const {engine, workers: [worker]} = setUp();
  const asked = engine.ask("answer", {n: 1});
  assert.equal(worker.asks.length, 0);
  worker.ready();
  assert.deepEqual(worker.asks, [{v: 1, id: 1, kind: "answer", body: {n: 1}}]);
  worker.reply(worker.asks[0], "yes");
  assert.equal(await asked, "yes");
});

test("dragging a slider: one ask flies, the newest waits, the rest are dropped", async () => {
  const {engine, workers: [worker]} = setUp();
  worker.ready();
  const asked = [1, 2, 3, 4].map((n) => engine.ask("answer", {n}));
  const ends = Promise.allSettled(asked);
  assert.equal(worker.asks.length, 1);
  worker.reply(worker.asks[0], "old");
  assert.deepEqual(worker.asks[1].body, {n: 4});
  worker.reply(worker.asks[1], "new");
  const [first, second, third, last] = await ends;
  assert.equal(first.value, "old"); // the gauge moves while the slider does
  for (const dropped of [second, third]) assert.ok(dropped.reason instanceof Superseded);
  assert.equal(last.value, "new");
});

test("five hundred asks in one burst cost two answers", async () => {
  const {engine, workers: [worker]} = setUp();
  worker.ready();
  const ends = Promise.allSettled(Array.from({length: 500}, (_, n) => engine.ask("answer", {n})));
  worker.reply(worker.asks[0], 0);
  worker.reply(worker.asks[1], 499);
  assert.equal((await ends).at(-1).value, 499);
  assert.equal(worker.asks.length, 2);
});

test("channels do not overtake each other", async () => {
  const {engine, workers: [worker]} = setUp();
  worker.ready();
  const rig = engine.ask("answer", {}, "rig");
  const story = engine.ask("case", {}, "case");
  assert.equal(worker.asks.length, 2);
  worker.reply(worker.asks[1], "story");
  worker.reply(worker.asks[0], "rig");
  assert.deepEqual(await Promise.all([rig, story]), ["rig", "story"]);
});

test("an error of Python arrives with its place, rule and facts", async () => {
  const {engine, workers: [worker]} = setUp();
  worker.ready();
  const asked = engine.ask("answer", {});
  worker.refuse(worker.asks[0], {code: "input", where: "valve.opening", got: 1.4, rule: "range", facts: {low: 0, high: 1}, text: "…"});
  const {reason} = await outcome(asked);
  assert.ok(reason instanceof EngineError);
  assert.deepEqual([reason.code, reason.where, reason.got, reason.facts], ["input", "valve.opening", 1.4, {low: 0, high: 1}]);
});

test("an ask that takes too long ends the worker and is tried once more", async () => {
  const {engine, workers, boots, timers} = setUp();
  workers[0].ready();
  const asked = engine.ask("answer", {n: 1});
  timers.pass(LIMITS.answer);
  assert.ok(workers[0].ended);
  assert.equal(workers.length, 2);
  assert.deepEqual(boots.at(-1), {stage: "restart", code: "timeout"});
  workers[1].ready();
  assert.deepEqual(workers[1].asks[0].body, {n: 1});
  workers[1].reply(workers[1].asks[0], "late");
  assert.equal(await asked, "late");
});

test("an ask that takes too long twice is given up, and the engine goes on", async () => {
  const {engine, workers, timers} = setUp();
  workers[0].ready();
  const asked = engine.ask("answer", {});
  const end = outcome(asked);
  timers.pass(LIMITS.answer);
  workers[1].ready();
  timers.pass(LIMITS.answer);
  assert.equal((await outcome(asked)).reason.code, "timeout");
  await end;
  workers[2].ready();
  const next = engine.ask("answer", {});
  workers[2].reply(workers[2].asks[0], "well");
  assert.equal(await next, "well");
});

test("the time of an ask does not run while Python starts", async () => {
  const {engine, workers: [worker], timers} = setUp();
  const asked = engine.ask("answer", {});
  timers.pass(LIMITS.boot - 1);
  worker.ready();
  timers.pass(LIMITS.answer - 1);
  assert.ok(!worker.ended);
  worker.reply(worker.asks[0], "yes");
  assert.equal(await asked, "yes");
});

test("a worker that dies mid-drag is replaced, and the newest ask is the one repeated", async () => {
  const {engine, workers} = setUp();
  workers[0].ready();
  const old = outcome(engine.ask("answer", {n: 1}));
  const newest = engine.ask("answer", {n: 2});
  workers[0].onerror({message: "out of memory"});
  workers[1].ready();
  assert.deepEqual(workers[1].asks.map(({body}) => body), [{n: 2}]);
  workers[1].reply(workers[1].asks[0], 2);
  assert.equal(await newest, 2);
  assert.ok((await old).reason instanceof Superseded);
});

test("a worker that reports its own death at work is replaced like one that broke", async () => {
  const {engine, workers} = setUp();
  workers[0].ready();
  const asked = engine.ask("answer", {n: 1});
  workers[0].say({boot: {stage: "failed", text: "out of memory"}});
  workers[1].ready();
  workers[1].reply(workers[1].asks[0], 1);
  assert.equal(await asked, 1);
});

test("a dead worker's last words are not heard", async () => {
  const {engine, workers} = setUp();
  workers[0].ready();
  const asked = engine.ask("answer", {});
  const [ask] = workers[0].asks;
  workers[0].onerror({message: "crash"});
  workers[0].reply(ask, "ghost");
  assert.ok((await outcome(asked)).open);
});

test("a start that shows no sign of life is given up with a reason", async () => {
  const {engine, workers, boots, timers} = setUp();
  const asked = engine.ask("answer", {});
  const end = outcome(asked);
  timers.pass(LIMITS.boot - 1);
  workers[0].say({boot: {stage: "runtime", done: 1, total: 9}}); // a sign of life
  timers.pass(LIMITS.boot - 1);
  assert.equal(engine.stage, "starting");
  timers.pass(1);
  assert.equal(engine.stage, "failed");
  assert.equal(boots.at(-1).error.code, "start-up");
  await end;
  assert.equal((await outcome(asked)).reason.code, "start-up");
  assert.equal((await outcome(engine.ask("answer", {}))).reason.code, "start-up");
});

test("after a failed start, trying again is a new worker", async () => {
  const {engine, workers, boots} = setUp();
  workers[0].say({boot: {stage: "failed", text: "no network"}});
  assert.equal(boots.at(-1).error.text, "no network");
  engine.again();
  workers[1].ready();
  assert.equal(engine.stage, "ready");
});

test("a worker that cannot even be made is a failed start, not an exception", () => {
  const boots = [];
  const refuse = () => {
    throw new Error("blocked by policy");
  };
  const engine = createEngine(refuse, {onBoot: (boot) => boots.push(boot), timers: fakeTimers()});
  assert.equal(engine.stage, "failed");
  assert.equal(boots[0].error.text, "blocked by policy");
});

test("a late word of progress never undoes ready", () => {
  const {engine, workers: [worker], boots} = setUp();
  worker.ready();
  worker.say({boot: {stage: "packages"}});
  assert.equal(engine.stage, "ready");
  assert.equal(boots.at(-1).stage, "ready");
});

test("a reply of another version is stale", async () => {
  const {engine, workers: [worker]} = setUp();
  worker.ready();
  const asked = engine.ask("answer", {});
  worker.say({reply: JSON.stringify({v: 2, id: 1, ok: true, body: {}})});
  assert.equal((await outcome(asked)).reason.code, "stale");
});

test("dropping a channel forgets what flies and what waits", async () => {
  const {engine, workers: [worker]} = setUp();
  worker.ready();
  const both = [engine.ask("answer", {n: 1}), engine.ask("answer", {n: 2})].map(outcome);
  engine.drop("answer");
  for (const end of both) assert.ok((await end).reason instanceof Superseded);
  const next = engine.ask("answer", {n: 3});
  assert.deepEqual(worker.asks.at(-1).body, {n: 3});
  worker.reply(worker.asks[0], "too late"); // nobody waits for it
  worker.reply(worker.asks.at(-1), 3);
  assert.equal(await next, 3);
});
