// The dialog of causes: its slider, and what it makes happen.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {STEPS, sizeAt, sizeText, stepOf} from "../../site/js/views/cause-size.js";
import {create} from "../../site/js/views/causes.js";
import {createWords} from "../../site/js/words.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const words = createWords(["en", "cases", "days", "causes"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
const units = createUnits("m3h-bar-m", "en");
const example = (name) => JSON.parse(readFileSync(new URL(`../door/messages/${name}.json`, import.meta.url), "utf8")).reply.body;
const rig = {plant: "pit-lift", edits: {}};

test("a slider reaches both ends of a size exactly, and comes back to where it was", () => {
  for (const size of [{low: 0, high: 19.99999999998, scale: "linear"}, {low: 0.1, high: 999.9, scale: "log"}, {low: -30, high: 30, scale: "linear"}]) {
    assert.deepEqual([sizeAt(size, 0), sizeAt(size, STEPS)], [size.low, size.high]);
    for (let step = 0; step <= STEPS; step += 7) assert.ok(Math.abs(stepOf(size, sizeAt(size, step)) - step) <= 1, `${step}`);
  }
  assert.equal(sizeAt({low: 0.1, high: 1000, scale: "log"}, STEPS / 2), 10);
});

test("a size has the reader's unit where it is a length, a pressure or a flow", () => {
  const foot = createUnits("gpm-psi-ft", "en");
  assert.equal(sizeText({unit: "bar"}, 0.5, units).replace("\u00a0", " "), "0.50 bar");
  assert.match(sizeText({unit: "m"}, 2, foot), /^6\.6.ft$/);
  assert.equal(sizeText({unit: "-"}, -0.85, units), "−0.85");
  assert.equal(sizeText({unit: "%"}, 12.3456, units), "12.3\u00a0%");
});

async function opened(model) {
  const document = fakeDocument(), host = fakeHost(document), sent = [], asked = [];
  Object.assign(host, {showModal() {}, close: () => sent.push({type: "closed"})});
  const ask = async (kind, body) => (asked.push([kind, body]), example(kind));
  const view = create(host, {document, words, send: (action) => sent.push(action), ask, seed: () => 11});
  await view.open({rig, yesterday: null, units, ...model});
  const by = (id) => everyNode(host).find((node) => node.getAttribute?.("id") === id);
  return {host, sent, asked, by};
}

test("what can happen is listed by groups, in words", async () => {
  const {host, asked} = await opened();
  assert.deepEqual(asked, [["causes", rig]]);
  const groups = everyNode(host).filter((node) => node.nodeName === "optgroup").map((node) => node.getAttribute("label"));
  assert.ok(groups.length > 4 && groups.every((label) => !label.startsWith("case-group")));
  const options = everyNode(host).filter((node) => node.nodeName === "option");
  assert.equal(options.length, example("causes").causes.length);
  assert.ok(options.every((node) => node.textContent && !node.textContent.startsWith("cause-")));
});

test("a cause happens to the plant as it is, in the open", async () => {
  const first = await opened();
  first.by("cause").value = "valve-throttled";
  first.by("cause").listeners.change();
  await first.by("cause-apply").listeners.click();
  assert.deepEqual(first.asked.at(-1), ["cause", {...rig, cause: "valve-throttled", size: 0.5}]);
  assert.deepEqual(first.sent, [
    {type: "happen", edits: example("cause").edits, told: {cause: "valve-throttled", size: 0.5, unit: "-"}, day: rig}, {type: "closed"}]);
});

test("out of sight, or drawn by chance, nothing but a veil is kept", async () => {
  const named = await opened();
  named.by("cause-hidden").checked = true;
  await named.by("cause-apply").listeners.click();
  const [kind, body] = named.asked.at(-1);
  assert.deepEqual([kind, body.seed, typeof body.cause], ["hide", 11, "string"]);
  assert.deepEqual(named.sent, [{type: "hide", hidden: example("hide").hidden}, {type: "closed"}]);
  const chance = await opened();
  await chance.by("cause-chance").listeners.click();
  assert.deepEqual(chance.asked.at(-1), ["hide", {...rig, seed: 11}]);
});
