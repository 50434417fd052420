// The order of the clock's steps: one after another, each from the moment of the last.
import assert from "node:assert/strict";
import {test} from "node:test";
import {createClock} from "../../site/js/clock.js";
import {createEngine} from "../../site/js/engine/engine.js";
import {createStore, firstState} from "../../site/js/state.js";
import {fakeTimers, fakeWorker} from "./fake-worker.js";

const turns = () => new Promise((resolve) => setImmediate(resolve));

function begin({away = () => false, calm} = {}) {
  const workers = [];
  const timers = fakeTimers();
  const engine = createEngine(() => workers[workers.push(fakeWorker()) - 1], {timers});
  const store = createStore(firstState("some-plant"));
  const told = {rests: 0, trouble: []};
  const clock = createClock({
    engine, store, onChange() {}, onTrouble: (error) => error && told.trouble.push(error.code), onRest: () => told.rests++, away, calm, timers,
  });
  workers[0].ready();
  return {workers, worker: () => workers.at(-1), timers, engine, store, clock, told};
}

/** Answer the newest ask as Python would: time goes on by the span. */
async function answer(worker, extra = {}) {
  const ask = worker.asks.at(-1);
  const time = (ask.body.moment?.time[0] ?? 0) + ask.body.span;
  worker.reply(ask, {
    time, moment: {time: [time, 0]}, curves: ask.body.curve_points ? {points: ask.body.curve_points} : null, events: [], plant: {},
    shown: [{id: "flow-meter", quantity: "flow", value: 1, low: 0, high: 2}], ...extra,
  });
  await turns();
  return ask.body;
}

test("it first looks at the moment it starts from, then goes on by what has gone by", async () => {
  const {worker, timers, clock} = begin();
  clock.start();
  assert.equal((await answer(worker())).span, 1e-4);
  assert.equal(clock.shown.time, 0);
  assert.equal(clock.got.answer.time, 0);
  timers.pass(100);
  const first = await answer(worker());
  assert.deepEqual([first.span, first.moment], [0.1, undefined]);
  timers.pass(100);
  const second = await answer(worker());
  assert.deepEqual([second.span, second.moment.time], [0.1, [0.1, 0]]);
  assert.deepEqual(clock.shown.record.rows.map(({time}) => time), [0, 0.1, 0.2]);
});

test("what is set before time has gone anywhere is on its way too: it goes on from the first look", async () => {
  const {worker, store, clock} = begin();
  clock.start();
  await answer(worker());
  clock.pause();
  store.commit({"valve.opening": 0.3});
  const look = await answer(worker());
  assert.deepEqual([look.edits, look.span, look.moment.time], [{"valve.opening": 0.3}, 1e-4, [1e-4, 0]]);
  clock.step();
  assert.deepEqual((await answer(worker())).moment.time, [1e-4, 0]);
});

test("never two in flight, however long one takes; what it took is made up for up to a limit", async () => {
  const {worker, timers, clock} = begin();
  clock.start();
  await answer(worker());
  clock.setRate(10);
  timers.pass(100);
  assert.equal(worker().asks.length, 2);
  timers.pass(3000);
  assert.equal(worker().asks.length, 2);
  await answer(worker());
  timers.pass(0);
  assert.equal(worker().asks.length, 3);
  assert.equal((await answer(worker())).span, 5);
});

test("single steps are queued, not replaced", async () => {
  const {worker, clock} = begin();
  clock.step();
  clock.step();
  clock.step();
  await answer(worker());
  for (let n = 0; n < 3; n++) assert.equal((await answer(worker())).span, 1);
  assert.equal(clock.shown.time, 3);
  assert.equal(clock.status, "paused");
  assert.equal(worker().asks.length, 4);
});

test("what a hand changes takes effect at the next step; paused, it is looked at and time stands", async () => {
  const {worker, timers, clock, store} = begin();
  clock.start();
  await answer(worker());
  store.commit({"valve.opening": 0.2});
  timers.pass(100);
  assert.deepEqual((await answer(worker())).edits, {"valve.opening": 0.2});
  clock.pause();
  store.commit({"valve.opening": 0.3});
  const looked = await answer(worker());
  assert.deepEqual([looked.span, looked.edits], [1e-4, {"valve.opening": 0.3}]);
  assert.ok(Math.abs(clock.shown.time - 0.1) < 1e-3); // and the ten-thousandth that the first look took
  assert.deepEqual(clock.kept.moment.time, [clock.shown.time, 0]);
  assert.equal(clock.shown.record.rows.length, 2);
});

test("nothing runs while nobody can see it, and that time is not made up for", async () => {
  let hidden = false;
  const {worker, timers, clock} = begin({away: () => hidden});
  clock.start();
  await answer(worker());
  hidden = true;
  clock.look();
  timers.pass(60_000);
  assert.equal(worker().asks.length, 1);
  hidden = false;
  clock.look();
  timers.pass(100);
  assert.equal((await answer(worker())).span, 0.1);
});

test("a worker that dies costs no time: the next one is asked from the same moment", async () => {
  const {workers, worker, timers, clock, told} = begin();
  clock.start();
  await answer(worker());
  timers.pass(100);
  await answer(worker());
  timers.pass(100);
  worker().onerror({message: "gone"});
  assert.equal(workers.length, 2);
  worker().ready();
  const again = await answer(worker());
  assert.deepEqual(again.moment.time, [0.1, 0]);
  assert.equal(clock.status, "running");
  assert.deepEqual(told.trouble, []);
});

test("a step that fails twice pauses it at the last answered moment, and it can go on from there", async () => {
  const {worker, timers, clock, told} = begin();
  clock.start();
  await answer(worker());
  timers.pass(100);
  await answer(worker());
  timers.pass(100);
  for (let n = 0; n < 2; n++) {
    worker().onerror({message: "gone"});
    worker().ready();
    await turns();
  }
  assert.deepEqual([clock.status, clock.shown.time, told.trouble], ["paused", 0.1, ["crash"]]);
  clock.start();
  timers.pass(100);
  assert.deepEqual((await answer(worker())).moment.time, [0.1, 0]);
});

test("a rig that Python refuses is asked once, and again when it has been changed", async () => {
  const {worker, clock, store, timers} = begin();
  clock.start();
  await answer(worker());
  store.commit({"valve.opening": 9});
  timers.pass(100);
  worker().refuse(worker().asks.at(-1), {code: "input", where: "valve.opening", rule: "range", text: "no"});
  await turns();
  assert.equal(clock.status, "paused");
  const asked = worker().asks.length;
  timers.pass(5000);
  assert.equal(worker().asks.length, asked);
  store.commit({"valve.opening": 0.9});
  assert.equal(worker().asks.length, asked + 1);
});

test("another plant ends it, and a late answer of the old one is nobody's", async () => {
  const {worker, clock, store, timers} = begin();
  clock.start();
  await answer(worker());
  timers.pass(100);
  store.open("other-plant");
  assert.equal(clock.status, "off");
  await answer(worker());
  assert.equal(clock.got, null);
  assert.equal(clock.shown.record.rows.length, 0);
});

test("a link opened ends it too, though it is of the same plant", async () => {
  const {worker, clock, store} = begin();
  clock.start();
  await answer(worker());
  store.load({...store.state, edits: {"valve.opening": 0.5}});
  assert.equal(clock.status, "off");
});

test("left, the strip stays until time runs anew", async () => {
  const {worker, clock, timers} = begin();
  clock.start();
  await answer(worker());
  timers.pass(100);
  await answer(worker());
  clock.off();
  assert.equal(clock.got, null);
  assert.equal(clock.shown.record.rows.length, 2);
  clock.start();
  assert.equal(clock.shown.record.rows.length, 0);
  assert.equal((await answer(worker())).moment, undefined);
});

test("what was kept comes back paused, for its own rig alone", async () => {
  const {worker, clock, timers} = begin();
  clock.start();
  await answer(worker());
  timers.pass(100);
  await answer(worker());
  const kept = JSON.parse(JSON.stringify(clock.kept));
  const other = begin();
  other.clock.restore(kept);
  assert.deepEqual([other.clock.status, other.clock.shown.time], ["paused", 0.1]);
  assert.deepEqual((await answer(other.worker())).moment.time, [0.1, 0]);
  assert.deepEqual([other.clock.got.answer.time, other.clock.shown.record.rows.length], [0.1, 2]);
  const changed = begin();
  changed.store.commit({"valve.opening": 0.5});
  changed.clock.restore(kept);
  assert.equal(changed.clock.status, "off");
});

test("a kept moment of another build is let go", async () => {
  const {worker, clock} = begin();
  clock.restore({plant: "some-plant", edits: {}, rate: 1, moment: {time: "odd"}, trend: null});
  worker().refuse(worker().asks.at(-1), {code: "input", where: "body.moment.time", rule: "type", text: "no"});
  await turns();
  assert.equal(clock.status, "off");
});

test("curves are asked for again only now and then, and the last ones stay meanwhile", async () => {
  const {worker, timers, clock} = begin();
  clock.start();
  await answer(worker());
  const points = [];
  for (let n = 0; n < 12; n++) {
    timers.pass(100);
    points.push((await answer(worker())).curve_points);
  }
  assert.deepEqual(points.filter(Boolean), [60]);
  assert.deepEqual(clock.got.answer.curves, {points: 60});
});

test("a level that time has moved goes back to where it was set, though the plant says the same as before", async () => {
  const {worker, clock, store, timers} = begin();
  const vessel = (volume) => ({volume: [volume, 0], bottom_m: 1, area_m2: 4, surface_m: 3});
  const moment = (time) => ({time: [time, 0], supply: vessel(4), delivery: vessel(8)});
  store.commit({"supply.surface_m": 3});
  clock.start();
  await answer(worker(), {moment: moment(0)});
  timers.pass(100);
  clock.touched(["supply.surface_m"]); // while the step is on its way
  await answer(worker(), {moment: moment(0.1)});
  timers.pass(100);
  const sent = (await answer(worker(), {moment: moment(0.2)})).moment;
  assert.deepEqual([sent.supply.surface_m, sent.delivery.surface_m], [2, 3]);
  clock.pause();
  clock.touched(["delivery.surface_m"]);
  store.commit({"supply.surface_m": 3}); // says nothing new, and is looked at
  assert.deepEqual((await answer(worker())).moment.delivery.surface_m, 3);
});

test("where less motion is asked for it goes on in longer steps", async () => {
  const {worker, timers, clock} = begin({calm: () => true});
  clock.start();
  await answer(worker());
  timers.pass(499);
  assert.equal(worker().asks.length, 1);
  timers.pass(1);
  assert.equal((await answer(worker())).span, 0.5);
});
