// Two rigs side by side: which side differs, what is exchanged, what is asked for, what can be undone.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createBeside} from "../../site/js/beside.js";
import {checkState, decode, encode} from "../../site/js/share.js";
import {differences, exchanged, movable, rigDifferences, sideOf, sidesOf} from "../../site/js/sides.js";
import {createStore, firstState} from "../../site/js/state.js";
import {createUnits} from "../../site/js/units.js";
import * as view from "../../site/js/views/beside.js";
import {comparison, keyName, readings, valueText} from "../../site/js/views/beside-words.js";
import {createWords} from "../../site/js/words.js";
import {sampleAnswer, samplePlant} from "./drawing-sample.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const words = createWords(["en", "notes", "drawings", "parts"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
const units = createUnits("m3h-bar-m", "en");
const rig = (edits = {}, plant = "some-plant") => ({plant, edits});
const turns = () => new Promise((resolve) => setImmediate(resolve));

test("outside the flanges all is load, the pumps and their motors are the machine", () => {
  for (const key of ["valve.opening", "supply.surface_m", "liquid.temperature_c", "pump.centre_m", "relief.set_bar", "check.k", "branch.fitted"]) assert.equal(sideOf(key), "load", key);
  for (const key of ["pump.model", "pump.arrangement", "pump.wear_percent", "pump.curve", "pump.second.model", "drive.frequency_hz"]) assert.equal(sideOf(key), "machine", key);
  assert.equal(sideOf("gauges.suction.height_m"), "instrument");
  assert.equal(sideOf("title"), null);
});

test("two plants differ in their leaves; a pump's points are one thing, and what is left out is nothing", () => {
  const one = {title: "A", pump: {model: "small"}, valve: {opening: 0.4}, delivery: {outlet_m: null}};
  const other = {title: "B", pump: {curve: {head_m: [1, 2]}}, valve: {opening: 0.6}, delivery: {}};
  assert.deepEqual(differences(one, other).map(({key, side}) => [key, side]), [["pump.model", "machine"], ["valve.opening", "load"], ["pump.curve", "machine"]]);
  assert.deepEqual(differences(one, one), []);
});

test("the sides that differ name the comparison", () => {
  const of = (...sides) => sidesOf(sides.map((side) => ({side})));
  assert.deepEqual([of(), of("load"), of("machine", "machine"), of("load", "machine"), of("instrument"), of("load", "instrument")], ["none", "load", "machine", "both", "instrument", "load"]);
});

test("of one plant only what was changed differs, not what follows from it", () => {
  const kept = samplePlant(), now = samplePlant({"drive.supply_hz": 60, "drive.frequency_hz": 60});
  const found = rigDifferences({kept: rig(), now: rig({"drive.supply_hz": 60}), keptPlant: kept, nowPlant: now});
  assert.deepEqual(found.map(({key}) => key), ["drive.supply_hz"]);
});

test("an exchange of one key of one plant moves it both ways, and twice is none", () => {
  const [kept, now] = [rig({"valve.opening": 0.3}), rig({"pump.model": "large"})];
  const found = [{key: "pump.model", values: ["medium", "large"]}];
  const once = exchanged(kept, now, found);
  assert.deepEqual(once, {beside: rig({"valve.opening": 0.3, "pump.model": "large"}), now: rig({})});
  assert.deepEqual(exchanged(once.beside, once.now, found), {beside: kept, now});
});

test("between two plants the values themselves are exchanged, where they are no tables", () => {
  const [kept, now] = [rig({}, "one"), rig({}, "other")];
  const one = {key: "valve.opening", values: [0.3, 0.7]};
  assert.deepEqual(exchanged(kept, now, [one]), {beside: rig({"valve.opening": 0.7}, "one"), now: rig({"valve.opening": 0.3}, "other")});
  assert.equal(movable(one, kept, now), true);
  assert.equal(movable({key: "pump.curve", values: [null, {}]}, kept, now), false);
});

test("what is kept stays while the rig changes, and every step of it can be undone", () => {
  const store = createStore(firstState("some-plant"));
  store.keepBeside(rig());
  store.commit({"valve.opening": 0.2});
  assert.deepEqual(store.state.view.beside, rig());
  store.exchange({now: rig(), beside: rig({"valve.opening": 0.2})});
  assert.deepEqual([store.state.edits, store.state.view.beside.edits], [{}, {"valve.opening": 0.2}]);
  store.undo();
  assert.deepEqual([store.state.edits, store.state.view.beside.edits], [{"valve.opening": 0.2}, {}]);
  store.keepBeside(null);
  assert.equal("beside" in store.state.view, false);
  store.undo();
  assert.deepEqual(store.state.view.beside, rig());
  store.undo();
  store.undo();
  assert.deepEqual([store.state.edits, store.state.view.beside], [{}, undefined]);
  store.redo();
  assert.deepEqual(store.state.view.beside, rig());
  store.open("another-plant");
  assert.deepEqual(store.state.view.beside, rig());
});

test("the address holds what is kept, rebuilt key by key, and refuses what is no rig", async () => {
  const state = {...firstState("some-plant"), view: {...firstState("some-plant").view, beside: {...rig({"valve.opening": 0.3}), more: "x"}}};
  assert.deepEqual((await decode(await encode(state))).view.beside, rig({"valve.opening": 0.3}));
  for (const beside of ["x", {plant: "NO GOOD", edits: {}}, {plant: "a", edits: {x: 1}}, []]) assert.throws(() => checkState({...state, view: {beside}}), /content/);
});

function held() {
  const asks = [];
  const engine = {asks, ask: (kind, body, channel) => new Promise((resolve, reject) => asks.push({body, channel, resolve, reject})), drop() {}};
  const store = createStore(firstState("some-plant"));
  const now = {got: null};
  return {asks, store, now, beside: createBeside({engine, store, rig: now, onChange() {}})};
}

test("what was kept is asked on a channel of its own, and only the newest counts", async () => {
  const {asks, store, beside} = held();
  assert.equal(beside.kept, null);
  store.keepBeside(rig());
  store.keepBeside(rig({"valve.opening": 0.5}));
  assert.deepEqual(asks.map(({channel}) => channel), ["beside", "beside"]);
  asks[1].resolve("new");
  asks[0].resolve("old");
  await turns();
  assert.equal(beside.kept.answer, "new");
  store.keepBeside(null);
  assert.equal(beside.kept, null);
});

test("what was in sight when it was kept need not be asked for", () => {
  const {asks, store, now, beside} = held();
  now.got = {answer: "seen", for: rig()};
  store.keepBeside(rig());
  assert.equal(asks.length, 0);
  assert.equal(beside.kept.answer, "seen");
});

test("a rig that cannot be computed says so, and stays kept", async () => {
  const {asks, store, beside} = held();
  store.keepBeside(rig());
  asks[0].reject({code: "input"});
  await turns();
  assert.deepEqual([beside.kept.answer, beside.kept.error.code], [null, "input"]);
});

const model = (edits = {}, kept = {}) => {
  const one = (given) => sampleAnswer(samplePlant(given));
  return {answer: one(edits), rig: rig(edits), beside: {rig: rig(kept), answer: one(kept), error: null}, units, words, catalogue: {pumps: []}, previous: null, curves: true, plant: samplePlant(edits)};
};

test("the rows say which key differs, in the reader's units, and on which side", () => {
  const {title, rows} = comparison(model({"valve.opening": 0.2, "drive.poles": 4}, {}), words);
  assert.equal(title, "Another load and another machine");
  assert.deepEqual(rows.map(({key, side, texts}) => [key, side, texts.map((text) => text.replace("\u00a0", " "))]), [
    ["drive.poles", "machine", ["2", "4"]], ["valve.opening", "load", ["60 %", "20 %"]],
  ]);
  assert.ok(rows.every((row) => row.movable && row.name));
  assert.match(comparison(model(), words).title, /Now change/);
});

test("keys and values are words, and a stranger's text stays as it is", () => {
  assert.equal(keyName("valve.opening", words), "Valve opening");
  assert.match(keyName("pump.wear_percent", words), /^Pump: /);
  assert.equal(keyName("no.such", words), "no.such");
  assert.equal(valueText("relief.fitted", true, {units, words}), "yes");
  assert.equal(valueText("liquid.name", "<b>x</b>", {units, words}), "<b>x</b>");
  assert.equal(valueText("delivery.outlet_m", null, {units, words}), "–");
});

test("instruments that only one of both has stand beside a dash", () => {
  const both = readings(model({"pump.arrangement": "side-by-side"}), words);
  assert.equal(both.find(({id}) => id === "ammeter-2").texts[0], "–");
  assert.equal(both.find(({id}) => id === "gauge-suction").differs, false);
});

test("a tap exchanges one key, one side or both rigs, and another takes what was kept away", () => {
  const document = fakeDocument(), host = fakeHost(document), sent = [];
  const shown = view.create(host, {document, words, send: (action) => sent.push(action)});
  shown.update(model({"valve.opening": 0.2, "drive.poles": 4}));
  const press = (test) => everyNode(host).find((node) => node.nodeName === "button" && test(node)).listeners.click();
  press((node) => node.getAttribute("class") === "swap" && /poles/.test(node.getAttribute("aria-label")));
  press((node) => node.getAttribute("id") === "beside-load");
  press((node) => node.getAttribute("id") === "beside-places");
  press((node) => node.getAttribute("id") === "beside-away");
  assert.deepEqual(sent, [
    {type: "exchange", beside: rig({"drive.poles": 4}), now: rig({"valve.opening": 0.2})},
    {type: "exchange", beside: rig({"valve.opening": 0.2}), now: rig({"drive.poles": 4})},
    {type: "exchange", beside: rig({"valve.opening": 0.2, "drive.poles": 4}), now: rig()},
    {type: "keep-beside", beside: null},
  ]);
});
