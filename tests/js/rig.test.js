// Which answer is the present one, and which the one before it.
import assert from "node:assert/strict";
import {test} from "node:test";
import {createRig} from "../../site/js/rig.js";
import {createStore, firstState} from "../../site/js/state.js";

/** An engine that holds every ask until it is told to answer. */
function heldEngine() {
  const asks = [];
  return {
    asks,
    ask: (kind, body, channel) => new Promise((resolve, reject) => asks.push({body, channel, resolve, reject})),
    drop() {},
  };
}

function start() {
  const engine = heldEngine();
  const store = createStore(firstState("some-plant"));
  const rig = createRig({engine, store, onChange() {}, onTrouble() {}});
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
