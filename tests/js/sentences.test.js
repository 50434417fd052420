// The sentences the page computes: why, what changed, notes, errors, progress.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {noteEntries} from "../../site/js/views/notes.js";
import {sentence} from "../../site/js/views/sentence.js";
import {bootLine, troubleLine} from "../../site/js/views/status.js";
import {change, trend, why} from "../../site/js/views/why.js";
import {createWords} from "../../site/js/words.js";

const words = createWords([readFileSync(new URL("../../site/words/en.ftl", import.meta.url), "utf8")]);
const units = createUnits("m3h-bar-m", "en");
const NBSP = /\u00a0/g;

function answer({flow = 42 / 3600, head = 18.2, plant = {}, notes = [], stack} = {}) {
  return {
    converged: true,
    plant: {discharge: {attached: true}, valve: {opening: 0.6}, drive: {frequency_hz: 50}, ...plant},
    state: {
      station: {flow, head},
      machines: [{name: "pump-1"}],
    },
    stack: stack ?? [{block: "lift", head: 12}, {block: "pipe", head: 6.2}],
    notes,
  };
}

const said = (now, previous = null, origin = "live") => {
  const {asks, answers, rest, then} = why({answer: now, previous, plant: now.plant, units, words, origin});
  return [asks, answers, rest, then].map((text) => text.replace(NBSP, " "));
};

test("the sentence says load first, and both sides say the same head", () => {
  const [asks, answers, rest] = said(answer());
  assert.equal(asks, "The load asks 18.2 m at 42.0 m³/h;");
  assert.equal(answers, "the pump answers 18.2 m.");
  assert.equal(rest, "The greatest part of it is the lift: 12.0 m.");
});

test("a shut line and an open flange have sentences of their own", () => {
  assert.match(said(answer({flow: 0}))[0], /nothing flows/);
  assert.match(said(answer({plant: {discharge: {attached: false}}}))[0], /hardly a load/);
});

test("a shut load is not said to consist of anything", () => {
  assert.equal(said(answer({flow: 0}))[2], "");
});

test("a heavier load is told from a slower machine by what was changed", () => {
  const before = answer();
  const throttled = answer({flow: 30 / 3600, head: 22, plant: {valve: {opening: 0.3}}});
  assert.match(change(before, throttled, words), /heavier.*The pump is the same/);
  assert.match(change(throttled, before, words), /lighter.*The pump is the same/);
  const slower = answer({flow: 30 / 3600, head: 15, plant: {drive: {frequency_hz: 40}}});
  assert.match(change(before, slower, words), /The load is the same.*down/);
  const both = answer({plant: {drive: {frequency_hz: 40}, valve: {opening: 0.3}}});
  assert.match(change(before, both, words), /both/);
});

test("nothing is said of a change where there was none", () => {
  const one = answer();
  assert.equal(change(one, one, words), "");
  assert.equal(change(null, one, words), "");
  assert.equal(change(one, answer(), words), "");
  assert.equal(said(answer({plant: {valve: {opening: 0.1}}}), one, "built")[3], "");
});

test("a trend below half a per cent is none", () => {
  assert.deepEqual([trend(100, 100.4), trend(100, 101), trend(100, 99), trend(0, 0), trend(0, 1)], ["same", "up", "down", "same", "up"]);
});

test("an answer without a balance is said to be none", () => {
  assert.match(said({...answer(), converged: false})[3], /No balance/);
});

// what plant/notes.py sends with each kind
const FACTS = {
  "beyond-curve": {flow: 0.02, last_flow: 0.018},
  "below-vapour-pressure": {pressure: -99_500, vapour_pressure: -98_900},
  "reverse-flow": {flow: -0.001},
  "dead-headed": {head: 33, shaft_power: 2100},
  overload: {shaft_power: 6200, rated_power: 5500, load: 1.127},
  "npsh-short": {available: 3.2, required: 4},
  "pressure-undefined": {},
  "more-than-one-state": {},
  "line-off": {},
};

for (const [kind, facts] of Object.entries(FACTS)) {
  test(`the note ${kind} has a title and a sentence without gaps`, (t) => {
    const told = t.mock.method(console, "error", () => {});
    const [entry] = noteEntries({answer: answer({notes: [{kind, where: "pump-1", facts}]}), units, words});
    assert.ok(entry.title && entry.text);
    assert.doesNotMatch(`${entry.title} ${entry.text} ${entry.caution}`, /[{}$]/);
    assert.equal(told.mock.callCount(), 0);
  });
}

test("a pipe taken off is no fault of the pump, and nobody is told to try it", () => {
  const [entry] = noteEntries({answer: answer({notes: [{kind: "line-off", where: "discharge", facts: {}}]}), units, words});
  assert.match(entry.text, /no fault of the pump/);
  assert.match(entry.caution, /Never open a line/);
});

test("the same note on both pumps is said once", () => {
  const notes = ["pump-1", "pump-2"].map((where) => ({kind: "npsh-short", where, facts: FACTS["npsh-short"]}));
  const two = answer({notes});
  two.state.machines.push(two.state.machines[0]);
  const entries = noteEntries({answer: two, units, words});
  assert.equal(entries.length, 1);
  assert.match(entries[0].text, /^Pump 1 and pump 2 need, each, 4.0/);
});

test("an error is worded in the reader's units: where, what it was, what would do", () => {
  const error = {where: "supply.surface_m", got: 9, rule: "range", facts: {low: 0, high: 4}, text: "…"};
  const us = createUnits("gpm-psi-ft", "en");
  const line = sentence(error, {words, units: us}).replace(NBSP, " ");
  assert.equal(line, "Supply level was 29.5 ft; from 0.0 ft to 13.1 ft will do.");
});

test("an error whose rule has no sentence of ours keeps Python's", () => {
  const error = {where: "pump.curve", got: null, rule: "points", facts: {}, text: "pump.curve is odd."};
  assert.equal(sentence(error, {words, units}), "pump.curve is odd.");
});

test("progress tells stage and megabytes, where they are known", () => {
  assert.equal(bootLine({stage: "runtime", done: 2_060_000, total: 5_100_000}, words), "Fetching Python. 2.1 of 5.1 MB");
  assert.equal(bootLine({stage: "packages", done: 5_100_000, total: 5_100_000}, words), "Everything is here; Python is starting.");
  assert.equal(bootLine({stage: "no-such-stage"}, words), bootLine({stage: "runtime"}, words));
  assert.match(bootLine({stage: "runtime", again: true}, words), /your rig is kept/);
  assert.match(bootLine({stage: "failed"}, words), /could not be started/);
});

test("a trouble without words of ours keeps its own", () => {
  assert.match(troubleLine({code: "timeout"}, words), /twice/);
  assert.equal(troubleLine({code: "file", text: "x.toml: …"}, words), "x.toml: …");
});
