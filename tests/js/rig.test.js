// Which answer is the present one, and which the one before it.
import assert from "node:assert/strict";
import {test} from "node:test";
import {createRig} from "../../site/js/rig.js";
import {Superseded} from "../../site/js/engine/errors.js";
import {createStore, firstState} from "../../site/js/state.js";
import {fakeTimers} from "./fake-worker.js";

/** An engine that holds every ask until it is told to answer. */
function heldEngine() {
  const asks = [];
  return {
    asks,
    ask: (kind, body, channel) => new Promise((resolve, reject) => asks.push({body, channel, resolve, reject})),
    drop() {},
  };
}

function start(timers) {
  const engine = heldEngine();
  const store = createStore(firstState("some-plant"));
  const rig = createRig({engine, store, onChange() {}, onTrouble() {}, timers});
  rig.ask();
  return {engine, store, rig};
}

const turns = () => new Promise((resolve) => setImmediate(resolve));

test("the last committed answer becomes the one before", async () => {
  const {engine, store, rig} = start();
  engine.asks[0].resolve("first");
  await turns();
  store.preview({"valve.opening": 0.5});
  store.preview({"valve.opening": 0.4});
  store.commit();
  assert.equal(rig.previous, "first");
  assert.equal(engine.asks.filter(({channel}) => channel === "before").length, 0);
});

test("a change before the first answer still gets the answer it began from", async () => {
  const {engine, store, rig} = start();
  store.preview({"valve.opening": 0.5});
  store.commit({"valve.opening": 0.4});
  const before = engine.asks.filter(({channel}) => channel === "before");
  assert.deepEqual(before.map(({body}) => body.edits), [{}]);
  before[0].resolve("where it began");
  engine.asks.at(-1).resolve("now");
  await turns();
  assert.equal(rig.previous, "where it began");
  assert.equal(rig.got.answer, "now");
});

test("without an answer to where it began, nothing but the ghost is missing", async () => {
  const {engine, store, rig} = start();
  store.commit({"valve.opening": 0.4});
  engine.asks.find(({channel}) => channel === "before").reject(new Error("gone"));
  engine.asks.at(-1).resolve("now");
  await turns();
  assert.equal(rig.previous, null);
  assert.equal(rig.got.answer, "now");
});

test("another plant has nothing before it", async () => {
  const {engine, store, rig} = start();
  engine.asks[0].resolve("first");
  await turns();
  store.commit({"valve.opening": 0.4});
  store.open("other-plant");
  assert.equal(rig.previous, null);
});

test("an answer that is a second in coming is late; the newest ask counts from the last answer", async () => {
  const timers = fakeTimers();
  const {engine, store, rig} = start(timers);
  timers.pass(999);
  assert.equal(rig.late, false);
  timers.pass(1);
  assert.equal(rig.late, true);
  store.commit({"valve.opening": 0.4});
  engine.asks[0].resolve("first");
  await turns();
  assert.equal(rig.late, false);
  timers.pass(1000);
  assert.equal(rig.late, true);
  engine.asks.filter(({channel}) => channel === "rig").at(-1).resolve("second");
  await turns();
  timers.pass(5000);
  assert.equal(rig.late, false);
});

test("a flood of asks that are replaced does not hide that none is answered", async () => {
  const timers = fakeTimers();
  const {engine, store, rig} = start(timers);
  for (const opening of [0.1, 0.2, 0.3]) {
    store.preview({"valve.opening": opening});
    timers.pass(300);
    engine.asks.filter(({channel}) => channel === "rig").at(-1).reject(new Superseded());
    await turns();
  }
  timers.pass(100);
  assert.equal(rig.late, true);
  engine.asks[0].reject(new Error("refused"));
  await turns();
  assert.equal(rig.late, false);
});
