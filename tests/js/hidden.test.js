// Something hidden: in the store, in a link, in the model; what is shown while it is, and when it is told.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {daysCovered, drawnCovered, inHandCovered} from "../../site/js/covered.js";
import {modelOf, pictureOf} from "../../site/js/model.js";
import {createRig} from "../../site/js/rig.js";
import {checkState, decode, encode} from "../../site/js/share.js";
import {createStore, firstState} from "../../site/js/state.js";
import {createUnits} from "../../site/js/units.js";
import {create, toldText} from "../../site/js/views/hidden.js";
import {createWords} from "../../site/js/words.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const words = createWords(["en", "cases", "days", "causes"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
const units = createUnits("m3h-bar-m", "en");
const example = (name) => JSON.parse(readFileSync(new URL(`../door/messages/${name}.json`, import.meta.url), "utf8"));
const veil = example("hide").reply.body.hidden;
const shown = example("shown").reply.body;
const told = {cause: "worn", size: 20, unit: "%"};
const PLANT = "pit-lift";

test("hiding remembers the day before and changes no edit; undo and redo carry it", () => {
  const store = createStore(firstState(PLANT));
  store.commit({"valve.opening": 0.5});
  store.hide(veil);
  const rig = {plant: PLANT, edits: {"valve.opening": 0.5}};
  assert.deepEqual([store.state.edits, store.state.view.hidden, store.state.view.yesterday], [rig.edits, veil, rig]);
  store.undo();
  assert.deepEqual([store.state.view.hidden, store.state.view.yesterday], [undefined, undefined]);
  store.redo();
  store.happen({"pump.wear_percent": 20}, told);
  assert.deepEqual(store.state.edits, {"valve.opening": 0.5, "pump.wear_percent": 20});
  assert.deepEqual([store.state.view.hidden, store.state.view.told, store.state.view.yesterday], [undefined, told, rig]);
  store.undo();
  assert.deepEqual([store.state.edits, store.state.view.hidden, store.state.view.told], [rig.edits, veil, undefined]);
  store.open("rinse-transfer");
  assert.equal(store.state.view.hidden, undefined);
});

test("a link carries the veil as it is, and what was told; anything else there is refused", async () => {
  const store = createStore(firstState(PLANT));
  store.hide(veil);
  const text = await encode(store.state);
  assert.deepEqual(await decode(text), store.state);
  store.happen({"pump.wear_percent": 20}, told);
  assert.deepEqual((await decode(await encode(store.state))).view.told, told);
  const plain = (view) => () => checkState({format: 1, plant: PLANT, view});
  for (const bad of [{hidden: "worn"}, {hidden: 7}, {hidden: "<b>".repeat(20)}, {told: {cause: "Worn!"}}, {told: {cause: "worn", size: "20", unit: "%"}}, {told: []}])
    assert.throws(plain(bad), /content/, JSON.stringify(bad));
});

/** A rig with a store and an engine that notes what it is asked. */
function hiddenRig(state) {
  const asked = [];
  const store = createStore(state);
  const engine = {drop() {}, ask: async (kind, body) => (asked.push([kind, body]), example(kind === "shown" ? "shown" : "answer-as-it-stands").reply.body)};
  const rig = createRig({engine, store, onChange() {}, onTrouble() {}});
  return {asked, store, rig};
}

test("with something hidden the page asks for readings only, and for the truth again when it is told", async () => {
  const {asked, store, rig} = hiddenRig(firstState(PLANT));
  await rig.ask();
  store.hide(veil);
  await Promise.resolve();
  assert.deepEqual(asked.at(-1), ["shown", {plant: PLANT, edits: {}, hidden: veil, yesterday: {plant: PLANT, edits: {}}}]);
  await new Promise((done) => setTimeout(done));
  assert.deepEqual(Object.keys(rig.got.answer).sort(), [...Object.keys(shown), "covered"].sort());
  assert.equal(rig.previous, null);
  const before = asked.length;
  store.preview({"valve.opening": 0.4});
  store.commit();
  assert.ok(asked.slice(before).length > 0 && asked.slice(before).every(([kind]) => kind === "shown"));
  store.happen({"pump.wear_percent": 20}, told);
  assert.equal(asked.at(-1)[0], "answer");
  store.undo();
  assert.equal(asked.at(-1)[0], "shown");
});

test("an answer of the other kind is never drawn, not for a moment", () => {
  const open = firstState(PLANT);
  const covered = firstState(PLANT, {hidden: veil});
  const truth = {answer: example("answer-as-it-stands").reply.body, for: {plant: PLANT, edits: {}}};
  const readings = {answer: {...shown, covered: true}, for: {plant: PLANT, edits: {}}};
  const first = {default: PLANT, answer: truth.answer};
  assert.ok(pictureOf({state: open, got: truth, first: null}).answer);
  assert.ok(pictureOf({state: covered, got: readings, first: null}).answer);
  for (const [state, got] of [[covered, truth], [open, readings], [covered, null]]) {
    const picture = pictureOf({state, got, first});
    assert.deepEqual([picture.answer, picture.origin], [null, "none"]);
    assert.ok(picture.plant);
  }
});

const covered = (view = {}) => {
  const state = firstState(PLANT, {hidden: veil, ...view});
  const picture = pictureOf({state, got: {answer: {...shown, covered: true}, for: {plant: PLANT, edits: {}}}, first: null});
  return modelOf({state, picture, words, units, previous: null, turning: true});
};

test("the drawing has surfaces where the gauges read, the table readings without reasons, controls no answer", () => {
  const model = covered();
  const level = (id) => shown.shown.find((one) => one.id === id).value;
  const drawn = drawnCovered(model);
  assert.deepEqual([drawn.plant.supply.surface_m, drawn.plant.delivery.surface_m, drawn.turning], [level("level-supply"), level("level-delivery"), false]);
  const {answer} = daysCovered(model).days;
  assert.deepEqual([answer.readings, answer.reasons, answer.changed], [shown.readings, {}, []]);
  assert.equal(inHandCovered(model).answer, null);
  assert.equal(daysCovered({...model, answer: null}).days, null);
});

test("while it is hidden it can be asked for; then it is told with its size and what follows", () => {
  const document = fakeDocument(), host = fakeHost(document), sent = [];
  const view = create(host, {document, words, send: (action) => sent.push(action)});
  const button = () => everyNode(host).find((node) => node.getAttribute?.("id") === "reveal");
  for (const node of everyNode(host)) node.focus = () => {};
  view.update({hidden: null, told: null, units});
  assert.equal(host.hidden, true);
  view.update({hidden: veil, told: null, units});
  assert.ok(!host.textContent.includes(words("cause-worn.title")));
  button().listeners.click();
  assert.deepEqual(sent.at(-1), {type: "reveal"});
  const yesterday = {rig: {plant: PLANT, edits: {}}};
  view.update({hidden: null, told, yesterday, units});
  assert.ok(host.textContent.includes(words("cause-worn.follows")));
  assert.match(toldText({told, units}, words), /20.%/);
  assert.equal(toldText({told: {cause: "nothing", size: null, unit: null}, units}, words), words("hidden-told", {happened: words("cause-nothing")}));
  button().listeners.click();
  assert.deepEqual(sent.at(-1), {type: "remember", yesterday: yesterday.rig});
});
