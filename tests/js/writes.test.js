// What the page's frame writes: only what has changed.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {h, hide, setAttributes, setText} from "../../site/js/views/dom.js";
import * as notes from "../../site/js/views/notes.js";
import {createSlider} from "../../site/js/views/slider.js";
import * as status from "../../site/js/views/status.js";
import * as toolbar from "../../site/js/views/toolbar.js";
import * as why from "../../site/js/views/why.js";
import {createWords} from "../../site/js/words.js";
import {sampleAnswer, samplePlant} from "./drawing-sample.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const words = createWords(["en", "notes", "drawings"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
const units = createUnits("m3h-bar-m", "en");
const writes = (host) => everyNode(host).reduce((sum, {writes = 0}) => sum + writes, 0);

test("another text changes the letters of the text node that is there", () => {
  const node = h(fakeDocument(), "p", {}, "42.0");
  const letters = node.firstChild;
  setText(node, "42.1");
  assert.equal(node.textContent, "42.1");
  assert.equal(node.firstChild, letters);
});

test("a text takes the place of elements, and of nothing", () => {
  const document = fakeDocument();
  const node = h(document, "p", {}, "before ", h(document, "b", {}, "bold"));
  setText(node, "plain");
  assert.equal(node.textContent, "plain");
  const empty = h(document, "p");
  setText(empty, "words");
  assert.equal(empty.textContent, "words");
});

test("an attribute is written when it changes, and taken away by null", () => {
  const node = h(fakeDocument(), "p", {min: 1});
  const before = node.writes;
  setAttributes(node, {min: 1, max: null});
  hide(node, false);
  assert.equal(node.writes, before);
  hide(node, true);
  assert.equal(node.getAttribute("hidden"), "");
  setAttributes(node, {min: null});
  hide(node, false);
  assert.deepEqual([node.getAttribute("min"), node.getAttribute("hidden")], [null, null]);
});

const answer = () => ({...sampleAnswer(), notes: [{kind: "dead-headed", where: "pump-1", facts: {head: 50, shaft_power: 2000}}]});
const model = () => ({answer: answer(), previous: null, plant: samplePlant(), edits: {}, units, words, origin: "live", inCase: false, theme: "light"});
const page = {boot: {stage: "ready", done: 1, total: 1}, trouble: null, linkTrouble: null, saved: true};
const VIEWS = {
  status: [status, (view) => view.update(page, units)],
  notes: [notes, (view) => view.update(model())],
  why: [why, (view) => view.update(model())],
  toolbar: [toolbar, (view) => view.update(model())],
};

for (const [name, [{create}, update]] of Object.entries(VIEWS)) {
  test(`the ${name} writes nothing when nothing is new`, () => {
    const document = Object.assign(fakeDocument(), {addEventListener() {}});
    const host = fakeHost(document, 300);
    const view = create(host, {document, words, units, send() {}});
    update(view);
    const before = writes(host);
    update(view);
    assert.ok(before > 0);
    assert.equal(writes(host), before);
  });
}

test("a slider that has not moved writes nothing", () => {
  const key = "valve.opening";
  const {node, update} = createSlider({key, quantity: "opening", step: 0.01}, {document: fakeDocument(), words, send() {}});
  const at = {units, value: 0.5, range: {[key]: [0, 1]}, idle: false, live: false};
  update(at);
  const before = writes(node);
  update(at);
  assert.equal(writes(node), before);
  update({...at, value: 0.6});
  assert.ok(writes(node) > before);
});
