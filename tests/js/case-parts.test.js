// What a case view says, from what Python sent.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {createWords} from "../../site/js/words.js";
import {createDrafts} from "../../site/js/drafts.js";
import {bitText, placeOf} from "../../site/js/views/case-debrief.js";
import {rivalsOf} from "../../site/js/views/case-fair.js";
import * as parts from "../../site/js/views/case-parts.js";

const words = createWords([readFileSync(new URL("../../site/words/cases.ftl", import.meta.url), "utf8")]);
const units = createUnits("m3h-bar-m", "en");
const deps = {words, units};
const gauge = {
  id: "gauge-discharge", quantity: "pressure", low: 0, high: 6e5, accuracy: 9600, moved: "down",
  yesterday: {value: 4.6e5, off_scale: null}, today: {value: 3.7e5, off_scale: null},
};

test("a quantity in the prose follows the reader's units, the words stay", () => {
  const prose = [[{part: "words", text: "It shows "}, {part: "quantity", quantity: "pressure", value: 3.7e5}], [{part: "words", text: "<b>"}]];
  assert.deepEqual(parts.paragraphs(prose, units), ["It shows 3.70\u00a0bar", "<b>"]);
  assert.match(parts.line(prose, createUnits("gpm-psi-ft", "en")), /53\.7\u00a0psi <b>$/);
});

test("a dial has today's pointer and yesterday's mark in the shown unit", () => {
  const dial = parts.dialData(gauge, deps);
  assert.deepEqual(dial.range, [0, 6]);
  assert.ok(Math.abs(dial.value - 3.7) < 1e-12 && Math.abs(dial.ghost - 4.6) < 1e-12);
  assert.match(dial.says, /3\.70\u00a0bar today, 4\.60\u00a0bar yesterday/);
});

test("a pointer off the scale rests at its stop and says so", () => {
  const high = {...gauge, today: {value: 6e5, off_scale: "high"}};
  assert.equal(parts.dialData(high, deps).value, 6);
  assert.equal(parts.pointerText(high.today, high, deps), "above the scale");
});

test("an instrument without a reading says so and draws no pointer", () => {
  const none = {...gauge, today: {value: null, off_scale: null}};
  assert.equal(parts.dialData(none, deps).value, null);
  assert.equal(parts.pointerText(none.today, none, deps), "no reading");
});

test("a difference has a label and two values, a key without words its own name", () => {
  const valve = parts.differenceText({key: "valve.opening", quantity: "opening", yesterday: 0.65, today: 0.85}, deps);
  assert.deepEqual(valve, {label: "Opening of the control valve", yesterday: "65\u00a0%", today: "85\u00a0%"});
  const other = parts.differenceText({key: "meters.flow_percent", quantity: null, yesterday: 1, today: null}, deps);
  assert.deepEqual(other, {label: "meters.flow_percent", yesterday: "1.0\u00a0%", today: "–"});
});

test("what differs is told in words and units, never as the file has it", () => {
  const all = {units, words: createWords(["en", "parts", "cases"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")))};
  const told = (key, quantity, yesterday, today) => Object.values(parts.differenceText({key, quantity, yesterday, today}, all));
  assert.deepEqual(told("second_line.fitted", null, true, false), ["Second discharge line in use", "yes", "no"]);
  assert.deepEqual(told("drive.current_limit_percent", null, 110, 64.66), ["Current limit of the drive", "110.0\u00a0%", "64.7\u00a0%"]);
  assert.deepEqual(told("burst.hole_mm", "length", 0, 0.025).slice(1), ["0\u00a0mm", "25\u00a0mm"]);
});

test("a part that was not there has no value on that day", () => {
  const all = [{key: "burst.fitted", yesterday: false, today: true}, {key: "burst.hole_mm", yesterday: 0.025, today: 0.021}, {key: "valve.opening", yesterday: 0.5, today: 0.6}];
  assert.deepEqual(parts.differencesOf(all), [all[0], {...all[1], yesterday: null}, all[2]]);
});

test("a reading in the prose has the digits of its dial", () => {
  const flow = {id: "flow-meter", low: 0, high: 200 / 3600};
  const part = {part: "quantity", quantity: "flow", value: 86.04 / 3600, source: "flow-meter", day: "today"};
  const of = (view) => parts.line([[part]], parts.unitsOf(units, view));
  assert.equal(of({told: [flow], readings: []}), "86\u00a0m³/h");
  assert.equal(of({told: [], readings: [], reveal: {readings: [flow]}}), "86\u00a0m³/h");
  assert.equal(of({told: [], readings: []}), "86.0\u00a0m³/h");
});

test("what differs in an instrument is told in the words of its panel", () => {
  const all = {units, words: createWords(["en", "parts", "cases"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")))};
  const shut = parts.differenceText({key: "gauges.discharge.fault.root_valve", quantity: null, yesterday: "open", today: "shut"}, all);
  assert.deepEqual([shut.yesterday, shut.today], [all.words("choice-gauges-fault-root_valve-open"), all.words("choice-gauges-fault-root_valve-shut")]);
  assert.ok(shut.label.includes(all.words("part-gauge-discharge")) && shut.label.includes(all.words("key-gauges-fault-root_valve")));
  const kept = parts.differenceText({key: "gauges.discharge.fault.frozen_bar", quantity: "pressure", yesterday: null, today: 2e5}, all);
  assert.deepEqual([kept.yesterday, kept.today], ["–", "2.00\u00a0bar"]);
});

test("each kind of move names the part that is new and gets the focus", () => {
  const predict = {do: "predict", says: "up", suspects: "machine"};
  const hint = {do: "hint"};
  assert.equal(parts.newest([]), null);
  assert.equal(parts.newest([predict]), "readings");
  assert.equal(parts.newest([predict, {do: "check", id: "stem"}]), "check-stem");
  assert.equal(parts.newest([predict, hint, {do: "check", id: "stem"}, hint]), "hint-2");
  assert.equal(parts.newest([predict, {do: "decide", choice: "worn"}]), "verdict");
});

test("a verdict waits until it was said what was seen, what follows and what is done", () => {
  const ids = ["gauge-discharge", "flow-meter"];
  const all = {saw: {"gauge-discharge": "down", "flow-meter": "up"}, choice: "worn", action: "overhaul"};
  assert.deepEqual(parts.verdictMoves(ids, {...all, saw: {"gauge-discharge": "down"}}), {moves: null, missing: "see"});
  assert.deepEqual(parts.verdictMoves(ids, {...all, choice: null}), {moves: null, missing: "choice"});
  assert.deepEqual(parts.verdictMoves(ids, {...all, action: null}), {moves: null, missing: "action"});
  assert.deepEqual(parts.verdictMoves(["flow-meter"], {...all, saw: {"gauge-suction": "up", "flow-meter": "same"}}).moves,
    [{do: "see", reading: "flow-meter", says: "same"}, {do: "decide", choice: "worn", action: "overhaul"}]);
  assert.deepEqual(parts.verdictMoves([], {...all, saw: {}}).moves, [{do: "decide", choice: "worn", action: "overhaul"}]);
});

test("what something costs is time, and money where it takes any", () => {
  assert.equal(parts.costText({minutes: 8}, words), "8 min");
  assert.equal(parts.costText({minutes: 8, money: 40}, words), "8 min and 40 of money");
});

test("a check is worth what its readings did, or whether its look can show what happened", () => {
  const reveal = {readings: [gauge, {...gauge, id: "flow-meter", moved: "same"}, {...gauge, id: "ammeter-1", moved: null}], telling: ["stem"]};
  const check = {id: "all", reads: ["gauge-discharge", "flow-meter", "ammeter-1"], observes: null, test: false};
  const {kind, moved, still} = parts.checkWorth(check, reveal);
  assert.deepEqual([kind, moved.map(({id}) => id), still.map(({id}) => id)], ["readings", ["gauge-discharge"], ["flow-meter", "ammeter-1"]]);
  assert.deepEqual(parts.checkWorth({...check, test: true, tested: []}, reveal), {kind: "nothing"});
  const tested = [{id: "gauge-discharge", moved: "same"}];
  assert.deepEqual(parts.checkWorth({...check, test: true, tested}, reveal), {kind: "readings", moved: [], still: tested});
  assert.deepEqual(parts.checkWorth({id: "stem", reads: [], observes: "valve-stem"}, reveal), {kind: "look", telling: true});
  assert.deepEqual(parts.checkWorth({id: "log", reads: [], observes: "shift-log"}, reveal), {kind: "look", telling: false});
});

test("a reading of a case is a row of the two days' comparison", () => {
  const shift = parts.asShift({...gauge, explained: 3000});
  assert.equal(shift.change, 3.7e5 - 4.6e5);
  assert.deepEqual(shift.today, {id: "gauge-discharge", quantity: "pressure", low: 0, high: 6e5, value: 3.7e5, off_scale: null});
  assert.equal(parts.asShift({...gauge, today: {value: null, off_scale: null}}).change, null);
});

test("a play is another one with other numbers", () => {
  assert.notEqual(parts.playKey({case: "a", moves: [], seed: 3}), parts.playKey({case: "a", moves: []}));
  assert.equal(parts.playKey({case: "a", moves: [], seed: null}), parts.playKey({case: "a", moves: []}));
});

test("what was foreseen and seen stands beside what each instrument did", () => {
  const prediction = {reading: "flow-meter", says: "down", outcome: "up"};
  const saw = [{reading: "gauge-discharge", says: "down", moved: "down"}, {reading: "flow-meter", says: "same", moved: "up"}];
  assert.deepEqual(parts.expectations({prediction, saw}), [
    {id: "gauge-discharge", foreseen: null, seen: "down", moved: "down"},
    {id: "flow-meter", foreseen: "down", seen: "same", moved: "up"},
  ]);
  assert.deepEqual(parts.expectations({prediction, saw: []}), [{id: "flow-meter", foreseen: "down", seen: null, moved: "up"}]);
});

test("a failure that a fresh start mends offers one", () => {
  assert.deepEqual(parts.failure({code: "input", where: "moves[2].id"}), {words: "case-failed-moves", restart: true});
  assert.deepEqual(parts.failure({code: "file", where: "story"}), {words: "case-failed-file", restart: false});
  assert.deepEqual(parts.failure({code: "file", where: "proof"}, 17), {words: "case-failed-seed", restart: false});
  assert.deepEqual(parts.failure({code: "input", where: "case", rule: "lookup"}), {words: "case-unknown", restart: null});
  assert.deepEqual(parts.failure({code: "timeout", where: ""}), {words: "case-failed", restart: false});
});

test("answers that were kept count as far as they are on offer", () => {
  const view = {prediction: {suspects: ["machine", "liquid"]}, choices: [{id: "worn"}], actions: ["leave"]};
  const whole = {says: "up", suspects: "liquid", saw: {"flow-meter": "down"}, choice: "worn", action: "leave"};
  assert.deepEqual(parts.draftFor(view, whole), whole);
  const other = {says: "sideways", suspects: "nobody", saw: {"flow-meter": "x"}, choice: "gone", action: "shout"};
  const nothing = {says: null, suspects: null, saw: {}, choice: null, action: null};
  assert.deepEqual(parts.draftFor(view, other), nothing);
  assert.deepEqual(parts.draftFor(view, {}), nothing);
});

test("answers are kept for the one play that they were picked in", () => {
  const store = new Map();
  const drafts = createDrafts({get: (name) => store.get(name) ?? null, set: (name, value) => store.set(name, value)});
  assert.equal(drafts.of("a"), null);
  drafts.keep("a", {says: "up"});
  assert.deepEqual(drafts.of("a"), {says: "up"});
  assert.equal(drafts.of("b"), null);
  drafts.forget();
  assert.equal(drafts.of("a"), null);
  store.set("draft", {of: "a", draft: "damaged"});
  assert.equal(drafts.of("a"), null);
});

test("wrong verdicts are named where they stay likely, the likeliest first", () => {
  assert.deepEqual(rivalsOf({rivals: {low: 0.01, some: 0.1, most: 0.4}}), [["most", 0.4], ["some", 0.1]]);
});

test("a loss of no doubt has no sign", () => {
  assert.deepEqual([-0.01, 0.04, 0.06, -0.31].map(bitText), ["0.0", "0.0", "0.1", "−0.3"]);
});

test("a reading of a test says which test it is of", () => {
  assert.deepEqual(placeOf("shut-in:gauge-discharge"), {test: "shut-in", id: "gauge-discharge"});
  assert.deepEqual(placeOf("gauge-discharge"), {test: null, id: "gauge-discharge"});
});
