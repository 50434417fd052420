// The remembered day: kept with the state, undone, linked, and drawn hollow against today.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createBeside} from "../../site/js/beside.js";
import {modelOf, pictureOf} from "../../site/js/model.js";
import {checkState, decode, encode} from "../../site/js/share.js";
import {createStore, firstState} from "../../site/js/state.js";
import {createUnits} from "../../site/js/units.js";
import {create, dayWords} from "../../site/js/views/day.js";
import {createGauge} from "../../site/js/views/gauge.js";
import {instrument} from "../../site/js/views/instruments.js";
import {createWords} from "../../site/js/words.js";
import {sampleAnswer, samplePlant} from "./drawing-sample.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const words = createWords(["en", "notes", "drawings", "parts"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
const units = createUnits("m3h-bar-m", "en");
const rig = (edits = {}, plant = "some-plant") => ({plant, edits});

test("a day is remembered and forgotten in one step each, and an undo brings back either", () => {
  const store = createStore(firstState("some-plant"));
  store.keepBeside(rig());
  store.remember(rig());
  store.commit({"valve.opening": 0.3});
  assert.deepEqual([store.state.view.yesterday, store.state.view.beside], [rig(), rig()]);
  store.remember(null);
  assert.equal("yesterday" in store.state.view, false);
  assert.deepEqual([store.state.view.beside, store.state.edits], [rig(), {"valve.opening": 0.3}]);
  store.undo();
  assert.deepEqual(store.state.view.yesterday, rig());
  store.undo();
  store.undo();
  assert.deepEqual([store.state.view.yesterday, store.state.view.beside], [undefined, rig()]);
  store.redo();
  assert.deepEqual(store.state.view.yesterday, rig());
});

test("another plant has another yesterday; going back to the one that was left brings its own", () => {
  const store = createStore(firstState("some-plant"));
  store.remember(rig());
  store.open("another-plant");
  assert.equal("yesterday" in store.state.view, false);
  store.undo();
  assert.deepEqual(store.state.view.yesterday, rig());
});

test("a hand that is moving a control has let go of it before the day is remembered", () => {
  const store = createStore(firstState("some-plant"));
  store.preview({"valve.opening": 0.4});
  store.remember(rig({"valve.opening": 0.4}));
  assert.deepEqual([store.live, store.state.edits, store.state.view.yesterday], [false, {"valve.opening": 0.4}, rig({"valve.opening": 0.4})]);
});

test("the address holds the day, rebuilt key by key; links without one still open", async () => {
  const plain = firstState("some-plant");
  const state = {...plain, view: {...plain.view, yesterday: {...rig({"valve.opening": 0.3}), more: "x"}}};
  assert.deepEqual((await decode(await encode(state))).view.yesterday, rig({"valve.opening": 0.3}));
  assert.equal("yesterday" in (await decode(await encode(plain))).view, false);
  for (const yesterday of ["x", null, {plant: "NO GOOD"}, {plant: "a", edits: {x: 1}}, []]) assert.throws(() => checkState({...state, view: {yesterday}}), /content/);
});

test("the day is asked for on a channel of its own", () => {
  const asks = [];
  const engine = {ask: (kind, body, channel) => new Promise(() => asks.push([kind, body.edits, channel])), drop() {}};
  const store = createStore(firstState("some-plant"));
  createBeside({engine, store, rig: {got: null}, onChange() {}, name: "yesterday"});
  store.remember(rig({"valve.opening": 0.5}));
  store.keepBeside(rig());
  assert.deepEqual(asks, [["answer", {"valve.opening": 0.5}, "yesterday"]]);
});

const state = firstState("some-plant");
const modelWith = (yesterday, previous = null) => modelOf({
  state, live: false, previous, yesterday, words, units, picked: null, turning: false, error: null,
  picture: pictureOf({state, got: {answer: sampleAnswer(), for: rig()}, first: null}),
});

test("what is drawn hollow is yesterday where one is remembered, else the step before", () => {
  const [step, day] = [{name: "step"}, {name: "day"}];
  assert.equal(modelWith(null, step).previous, step);
  assert.equal(modelWith({rig: rig(), answer: day, error: null}, step).previous, day);
  assert.equal(modelWith({rig: rig(), answer: null, error: null}, step).previous, null, "not the wrong one while it is computed");
});

test("a dial has a hollow pointer at yesterday's reading, and says it", () => {
  const yesterday = {rig: rig(), answer: sampleAnswer(samplePlant(), {flow: 0.005, head: 36}), error: null};
  const shown = instrument("gauge-discharge", modelWith(yesterday), words);
  assert.equal(shown.day, true);
  assert.match(shown.says, /; yesterday /);
  const document = fakeDocument(), host = fakeHost(document);
  createGauge(host, {document}).update(shown);
  const seen = (name) => everyNode(host).find((node) => node.getAttribute?.("class") === name).getAttribute("display") !== "none";
  assert.deepEqual([seen("dial-day"), seen("dial-ghost"), seen("dial-needle")], [true, false, true]);
  createGauge(host, {document}).update(instrument("gauge-discharge", modelWith(null, yesterday.answer), words));
  const last = (name) => everyNode(host).findLast((node) => node.getAttribute?.("class") === name).getAttribute("display") !== "none";
  assert.deepEqual([last("dial-day"), last("dial-ghost")], [false, true]);
});

test("one button remembers the rig as it stands and forgets it again", () => {
  const document = fakeDocument(), host = fakeHost(document), sent = [];
  const view = create(host, {document, words, send: (action) => sent.push(action)});
  const button = () => everyNode(host).find((node) => node.nodeName === "button");
  view.update(modelWith(null));
  assert.match(button().textContent, /Remember/);
  button().listeners.click();
  view.update(modelWith({rig: rig(), answer: sampleAnswer(), error: null}));
  assert.match(button().textContent, /Forget/);
  button().listeners.click();
  assert.deepEqual(sent, [{type: "remember", yesterday: rig()}, {type: "remember", yesterday: null}]);
});

test("it says where nothing has changed since, and where the day cannot be had", () => {
  const day = (edits, error = null) => dayWords({...modelWith({rig: rig(edits), answer: null, error})}, words);
  assert.equal(dayWords(modelWith(null), words), "");
  assert.match(day({}), /Now change/);
  assert.equal(day({"valve.opening": 0.3}), "");
  assert.match(day({}, {code: "bug"}), /cannot be computed/);
});
