// The sentences the page computes: why, what changed, notes, errors, progress.
import assert from "node:assert/strict";
import {readFileSync, readdirSync} from "node:fs";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {KINDS} from "../../site/js/views/note-kinds.js";
import {noteEntries} from "../../site/js/views/notes.js";
import {sentence} from "../../site/js/views/sentence.js";
import {bootLine, troubleLine} from "../../site/js/views/status.js";
import {trend} from "../../site/js/views/trend.js";
import {aboutPlant, change, why} from "../../site/js/views/why.js";
import {createWords} from "../../site/js/words.js";

const words = createWords(["en", "notes"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
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
  assert.match(said(answer({plant: {discharge: {attached: false}}}))[0], /all that is left of the load is 18\.2 m/);
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

test("every table of a plant that changes what is asked belongs to one side; the pump's height to the load", () => {
  const before = answer({plant: {pump: {model: "medium", centre_m: 0}, check: {k: 2}, site: {barometer_bar: 1}}});
  const changed = (plant) => change(before, answer({flow: 30 / 3600, plant: {...before.plant, ...plant}}), words);
  const heavier = /heavier.*The pump is the same/;
  assert.match(changed({pump: {model: "medium", centre_m: 3}}), heavier);
  assert.match(changed({check: {k: 90}}), heavier);
  assert.match(changed({site: {barometer_bar: 0.8}}), heavier);
  assert.match(changed({pump: {model: "small", centre_m: 0}}), /The load is the same/);
  assert.match(changed({pump: {model: "small", centre_m: 3}}), /both/);
});

test("a second pump brings its check valve, which belongs to the load", () => {
  const plant = (arrangement, fitted) => ({pump: {arrangement}, check: {fitted}});
  const from = (fitted) => change(answer({plant: plant("single", fitted)}), answer({flow: 0.02, plant: plant("in-line", fitted)}), words);
  assert.match(from(true), /But for its check valves.*moved up/);
  assert.match(from(false), /^The load is the same/);
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
  "npsh-short": {available: 3.2, required: 4, enough: 0.002, lost: 3},
  bubbles: {available: 5, required: 4},
  "suction-boils": {flow: 0.001},
  "suction-dry": {missing: 0.4},
  "runs-dry": {speed: 313},
  "npsh-not-counted": {lost: 1.5},
  vortex: {above: 0.2, needed: 0.3},
  "pressure-undefined": {},
  "more-than-one-state": {states: 3, lasting: 2, least_flow: 0, most_flow: 0.008},
  "held-level": {},
  "line-off": {},
  "not-reached": {head: 0.6, missing: 2.4},
  stalled: {torque: 120, speed: 3},
  "pressure-limit": {pressure: 4e6, limit: 1.6e6},
  "relief-lifted": {flow: 0.001, pressure: 1.1e6, set: 1e6},
  "no-relief": {limit: 1.6e6},
  "not-supplied": {missing: 3},
  backflow: {flow: -0.002},
  choked: {drop: 5e5, most: 3e5},
  "held-shut": {head: 30, against: 40},
  standing: {flow: 0, head: 0, speed: 0},
  "turning-backward": {flow: -0.004, head: -10, speed: -100},
  burst: {flow: 0.004},
  "line-filling": {filled: 0.4, height: 6},
  "not-primed": {rise: 4},
  "siphon-broken": {rise: 4},
  "outside-rule": {got: 5e-3, low: 1e-6, high: 4e-3, held: 1},
  "other-speed": {speed: 301, measured_speed: 151.8},
};

for (const [kind, facts] of Object.entries(FACTS)) {
  test(`the note ${kind} has a title and a sentence without gaps`, (t) => {
    const told = t.mock.method(console, "error", () => {});
    for (const flow of [0.01, 0]) {
      const rule = kind === "outside-rule" ? {rule: "viscosity.viscosity"} : {};
      const [entry] = noteEntries({answer: answer({flow, notes: [{kind, where: "pump-1", facts, ...rule}]}), units, words});
      assert.ok(entry.title && entry.text);
      assert.doesNotMatch(`${entry.title} ${entry.text} ${entry.caution}`, /[{}$]/);
    }
    assert.equal(told.mock.callCount(), 0);
  });
}

test("every kind of note that has words has its rank, and warns where it has a warning", () => {
  const text = readFileSync(new URL("../../site/words/notes.ftl", import.meta.url), "utf8");
  const known = text.split(/^(?=[a-z])/m).flatMap((entry) => entry.match(/^note-([a-z-]+) =/)?.[1] ?? [])
    .filter((kind) => !/-(?:still|upright|propeller|summit)$/.test(kind));
  assert.deepEqual(known.toSorted(), KINDS.map(({kind, id = kind}) => id).toSorted());
  for (const {kind, id = kind, caution} of KINDS) {
    const entry = text.slice(text.indexOf(`note-${id} =`)).split(/\n(?=\S)/)[0];
    assert.equal(entry.includes("    .caution ="), caution, kind);
  }
});

test("a pump that displaces may not run against a shut valve for a moment", () => {
  const upright = answer({flow: 0, notes: [{kind: "dead-headed", where: "pump-1", facts: FACTS["dead-headed"]}]});
  upright.state.machines[0] = {...upright.state.machines[0], pressure_limit: 1.6e6};
  assert.match(noteEntries({answer: upright, units, words})[0].caution, /not for a moment/);
});

test("a propeller is never shut in, not even for a test", () => {
  const shut = answer({flow: 0, notes: [{kind: "dead-headed", where: "pump-1", facts: FACTS["dead-headed"]}]});
  assert.match(noteEntries({answer: shut, units, words})[0].caution, /Minutes at most/);
  shut.state.machines[0] = {...shut.state.machines[0], kind: "axial"};
  assert.match(noteEntries({answer: shut, units, words})[0].caution, /Never shut an axial pump in/);
});

test("a limit of a rule is told in the unit of what it limits", () => {
  const note = {kind: "outside-rule", where: "pump-1", facts: FACTS["outside-rule"]};
  const told = (rule) => noteEntries({answer: answer({notes: [{...note, rule}]}), units, words})[0].text;
  assert.match(told("viscosity.viscosity"), /thick liquids .* from 1\.0\u00a0mm²\/s to .* held at the end/);
  assert.match(told("viscosity.parameter"), /from 0\.000001 to 0\.004/);
});

test("a pipe taken off is no fault of the pump, and nobody is told to try it", () => {
  const [entry] = noteEntries({answer: answer({notes: [{kind: "line-off", where: "discharge", facts: {}}]}), units, words});
  assert.match(entry.text, /no fault of the pump/);
  assert.match(entry.caution, /Never open a line/);
});

test("liquid that boils before the pump harms the pump; behind it the column parts, and each is said for its own places", () => {
  const told = (...places) =>
    noteEntries({answer: answer({notes: places.map((where) => ({kind: "below-vapour-pressure", where, facts: FACTS["below-vapour-pressure"]}))}), units, words});
  for (const place of ["supply-surface", "supply-outlet", "suction"]) assert.match(told(place)[0].caution, /suction side/);
  for (const place of ["discharge", "after-check", "after-valve", "pipe-end", "delivery-surface"]) {
    const [entry] = told(place);
    assert.match(entry.title, /may part/);
    assert.match(entry.caution, /low end/);
    assert.doesNotMatch(entry.caution, /pump|suction/);
  }
  const both = told("suction", "after-valve");
  assert.deepEqual(both.map(({kind}) => kind), ["below-vapour-pressure", "below-vapour-pressure-behind"]);
  assert.doesNotMatch(both[0].text, /valve/);
  assert.match(both[1].text, /behind the control valve/);
});

test("both speeds of a pump that runs far from its measured points are told", () => {
  const [entry] = noteEntries({answer: answer({notes: [{kind: "other-speed", where: "pump-1", facts: FACTS["other-speed"]}]}), units, words});
  assert.match(entry.text, /^The pump runs at 2,874\u00a01\/min, but the points were measured at 1,450\u00a01\/min/);
});

test("where the liquid boils in several places, the lowest pressure is told", () => {
  const notes = [-99_100, -150_000, -99_500].map((pressure, i) => ({kind: "below-vapour-pressure", where: ["discharge", "after-valve", "pipe-end"][i], facts: {pressure, vapour_pressure: -98_900}}));
  assert.match(noteEntries({answer: answer({notes}), units, words})[0].text, /would fall to −1\.50/);
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

// One error for each form a rule comes in, as the decoder, the checks and the proof of a case raise them.
const ERRORS = [
  {where: "pump.shiny", got: 1, rule: "unknown", facts: {nearest: "pump.model"}, says: /Did you mean pump.model\?/},
  {where: "pump.shiny", got: 1, rule: "unknown", facts: {choices: ["model", "curve"]}, says: /model, curve/},
  {where: "title", got: null, rule: "missing", facts: {high: 80}, says: /title is missing/},
  {where: "title", got: "\u202eeniM", rule: "turns", facts: {}, says: /^title holds a character that turns the direction/},
  {where: "liquid.density_kgm3", got: null, rule: "missing", facts: {other: "liquid.name"}, says: /liquid.name/},
  {where: "pump.curve.head_m[2]", got: 40, rule: "points", facts: {order: "below", limit: 30, unit: "m", index: 2}, says: /below 30.00 m/},
  {where: "pump.curve.head_m", got: [1], rule: "points", facts: {count: 1, wanted: 3, other: "pump.curve.flow_m3h"}, says: /as many/},
  {where: "gauges.suction.range_bar", got: [1], rule: "points", facts: {least: 2, most: 2}, says: /2 to 2 entries/},
  {where: "pump.curve.flow_m3h[0]", got: 3, rule: "points", facts: {index: 0}, says: /must be 0/},
  {where: "pump.curve.efficiency_percent[1]", got: 0, rule: "points", facts: {index: 1}, says: /above 0/},
  {where: "pump.curve", got: null, rule: "points", facts: {}, says: /not those of a pump/},
  {where: "supply.surface_m", got: 9, rule: "together", facts: {order: "at or below", other: "supply.top_m", limit: 4, unit: "m"}, says: /no more than 4.00 m.*supply.top_m/},
  {where: "pump.model", got: "x", rule: "together", facts: {other: "pump.curve"}, says: /leave one/},
  {where: "checks", got: "strips_down", rule: "together", facts: {}, says: /does not go together/},
  {where: "line 3, column 5", got: "a = ", rule: "syntax", facts: {line: 3, column: 5}, says: /^Line 3 .*a =/},
  {where: "the file", got: "TOML", rule: "syntax", facts: {}, says: /^The file is not written as TOML/},
  {where: "the file", got: "larger", rule: "range", facts: {high: 65536, unit: "bytes"}, says: /far larger/},
  {where: "pump.model", got: "huge", rule: "lookup", facts: {choices: ["small", "large"]}, says: /“huge”.*small, large/},
  {where: "x", got: "{today.y}", rule: "lookup", facts: {}, says: /nothing of that name/},
  {where: "the file", got: null, rule: "unreadable", facts: {}, says: /could not be read/},
  {where: "format", got: 9, rule: "version", facts: {choices: [1]}, says: /does not know that format/},
  {where: "valve.opening", got: "wide", rule: "type", facts: {kind: "number", low: 0, high: 1}, says: /a number belongs there/},
  {where: "check.k", got: -1, rule: "range", facts: {low: 0}, says: /0 or more/},
  {where: "title", got: "aaa", rule: "range", facts: {high: 80, unit: "characters"}, says: /80 characters or less/},
  {where: "title", got: "At {x}", rule: "range", facts: {low: 1, high: 80, unit: "characters"}, says: /without braces/},
  {where: "title", got: `{${"x".repeat(90)}}`, rule: "range", facts: {low: 1, high: 80, unit: "characters"}, says: /to 80 characters/},
  {where: "checks", got: "0.33", rule: "fair", facts: {of: "led"}, says: /decides rightly in a share of “?0.33”? of the plays/},
  ...["typed-number", "too-early", "order", "proof", "days", "truth"].map((rule) => ({where: "story", got: "3.1 bar", rule, facts: {}, says: /story/})),
  {where: "line 3", got: "opening = 0,5", rule: "syntax", facts: {line: 3, slip: "comma"}, says: /opening = 0,5.*decimal point/},
  {where: "line 3", got: "model = small", rule: "syntax", facts: {line: 3, slip: "words"}, says: /quotation marks/},
  {where: "line 3", got: "[valve]", rule: "syntax", facts: {line: 3, slip: "twice"}, says: /once only/},
  {where: "line 3", got: "level = “operator”", rule: "syntax", facts: {line: 3, slip: "curly"}, says: /straight quotation marks/},
  {where: "line 3", got: 'story = "', rule: "syntax", facts: {line: 3, slip: "lines"}, says: /three quotation marks/},
  {where: "line 3", got: 'says = "the "old" one"', rule: "syntax", facts: {line: 3, slip: "inside"}, says: /“these” quotation marks/},
  {where: "words.seed", got: 4, rule: "type", facts: {kind: "list", above: "seed"}, says: /seed is a key of the file itself/},
  {where: "prediction.seed", got: 4, rule: "unknown", facts: {nearest: "seed", above: "seed"}, says: /above the first \[table\]/},
  {where: "checks[0].hours", got: 4, rule: "unknown", facts: {choices: ["id", "minutes"], needed: "minutes"}, says: /id, minutes.*Still missing is: minutes/},
  {where: "story", got: null, rule: "missing", facts: {below: "yesterday.plant"}, says: /stands below \[yesterday.plant\]/},
  {where: "today", got: {cause: "worn"}, rule: "type", facts: {kind: "list", double: "today"}, says: /write \[\[today\]\]/},
  {where: "the file", rule: "encoding", facts: {}, says: /UTF-8/},
  {where: "shown.at_first", got: "0", rule: "fair", facts: {of: "open"}, says: /no check is needed/},
  {where: "proof.flow-meter", got: "falls", rule: "proof", facts: {computed: "rises"}, says: /“falls”; what is computed: .?rises.?\.$/},
  {where: "proof.flow-meter", got: "falls", rule: "proof", facts: {computed: "rises", also: ["ammeter-1 = same"]}, says: /Wrong as well.*ammeter-1 = same/},
  {where: "proof.flow-meter", got: "same", rule: "proof", facts: {of: "draws", share: "45%", sizes: "worn 11 %"}, says: /45%.*worn 11 %/},
  {where: "story", got: "it fell", rule: "proof", facts: {of: "draws", share: "52%", sizes: ""}, says: /52%.*without a direction/},
  {where: "choices", got: "pump", rule: "truth", facts: {groups: ["discharge-side"], load: "lighter"}, says: /“discharge-side”.*“lighter”/},
  {where: "choices", got: "pump", rule: "truth", facts: {groups: ["machine"], load: null}, says: /“machine”\.$/},
  {where: "choices", got: "pump", rule: "truth", facts: {groups: ["discharge-side"], load: "lighter", nearly: "filter"}, says: /“filter” would be, but for.* load/},
  {where: "proof.flow-meter", got: "falls", rule: "proof", facts: {computed: "same", percent: "0.16", meant: "16"}, says: /in per cent, now 0.16 %: was 16 meant/},
  {where: "today", got: "worn", rule: "days", facts: {percent: "0.16", meant: "16"}, says: /in per cent, now 0.16 %: was 16 meant/},
  {where: "choices[2].reply", got: "Yes.", rule: "together", facts: {same: "filter"}, says: /the reply to “filter” too/},
  {where: "story", got: "{today.gauge-discharge}", rule: "lookup", facts: {choices: ["a"], off: "high"}, says: /its pointer rests above the scale/},
  {where: "story", got: "{today.gauge-discharge}", rule: "lookup", facts: {choices: ["a"], off: "nothing"}, says: /nothing to be read/},
  {where: "story", got: "{today.flow-meter}", rule: "too-early", facts: {seen: "ammeter-1"}, says: /Seen are: ammeter-1/},
  {where: "story", got: "{today.valve.opening}", rule: "too-early", facts: {tell: "valve-stem"}, says: /seen with: valve-stem/},
  {where: "the file", got: "a pump", rule: "pump", facts: {}, says: /This is a pump.*pump.curve/},
  {where: "moves[1]", got: "see", rule: "order", facts: {}, says: /what was seen, last the verdict/},
  {where: "a.b", got: null, rule: "never-heard-of", facts: {}, says: /a\.b cannot be used as it is/},
];

for (const {says, ...error} of ERRORS) {
  test(`the rule ${error.rule} is worded by the page for ${error.where} with ${Object.keys(error.facts).join(", ") || "no facts"}`, (t) => {
    const told = t.mock.method(console, "error", () => {});
    const line = sentence({...error, text: "Python's words", hint: "Python's words"}, {words, units}).replace(NBSP, " ");
    assert.match(line, says);
    assert.doesNotMatch(line, /Python|\{ |\$|undefined|null/);
    assert.equal(told.mock.callCount(), 0);
  });
}

test("every rule that Python checks has a sentence", () => {
  const folder = new URL("../../pysrc/loadfirst/", import.meta.url).pathname;
  const code = readdirSync(folder, {recursive: true}).filter((name) => name.endsWith(".py")).map((name) => readFileSync(folder + name, "utf8"));
  const rules = new Set(code.flatMap((text) => [...text.matchAll(/\brule ?= ?"([a-z-]+)"/g)].map(([, rule]) => rule)));
  assert.ok(rules.size > 10);
  assert.deepEqual([...rules].filter((rule) => !words.has(`error-${rule}`)), []);
});

test("a long text from a stranger is cut short", () => {
  const line = sentence({where: "title", got: "x".repeat(500), rule: "choice", facts: {}}, {words, units});
  assert.ok(line.length < 160);
});

test("progress tells stage and megabytes, where they are known", () => {
  assert.equal(bootLine({stage: "runtime", done: 2_060_000, total: 5_100_000}, words), "Fetching Python. 2.1 of 5.1 MB");
  assert.equal(bootLine({stage: "packages", done: 5_100_000, total: 5_100_000}, words), "Everything is here; Python is starting.");
  assert.equal(bootLine({stage: "no-such-stage"}, words), bootLine({stage: "runtime"}, words));
  assert.match(bootLine({stage: "runtime", again: true}, words), /your rig is kept/);
  assert.match(bootLine({stage: "failed"}, words), /could not be started/);
});

test("a trouble is worded by the page, whatever Python says of it", () => {
  assert.match(troubleLine({code: "timeout"}, {words, units}), /twice/);
  const link = {code: "input", where: "plant", got: "nowhere", rule: "lookup", facts: {choices: ["a"]}, text: "Python's words"};
  assert.match(troubleLine(link, {words, units}), /cannot be computed.*“nowhere”/);
  assert.match(troubleLine({code: "no-such-code", text: "Python's words"}, {words, units}), /Something went wrong/);
});

const OFF = {plant: {discharge: {attached: false}}, stack: [{block: "lift", head: -1.5}, {block: "suction-line", head: 0.8}, {block: "jet", head: 0.9}]};

test("with the pipe off the page says why that is no fault of the pump, and what limits the flow", () => {
  const rest = said(answer(OFF))[2];
  assert.match(rest, /no fault of the pump/);
  assert.match(rest, /the suction line \(0.8 m\) and the jet into the open \(0.9 m\)\./);
  assert.doesNotMatch(rest, /lift|motor|boil/);
  const notes = ["overload", "npsh-short"].map((kind) => ({kind, where: "pump-1", facts: {}}));
  assert.match(said(answer({...OFF, notes}))[2], /boil/);
});

test("with the pipe off an overloaded motor is not said to limit the flow: it does not", () => {
  const notes = [{kind: "overload", where: "pump-1", facts: {}}];
  assert.doesNotMatch(said(answer({...OFF, notes}))[2], /motor/);
});

test("what is shown as nought limits nothing", () => {
  const stack = [{block: "lift", head: 3}, {block: "suction-line", head: 0.04}, {block: "jet", head: 0.05}];
  const rest = said(answer({...OFF, stack}))[2];
  assert.doesNotMatch(rest, /suction|0\.0 m/);
  assert.match(rest, /the lift \(3\.0 m\) and the jet into the open \(0\.1 m\)/);
});

test("liquid that does not rise to the open end is said to lack the rest", () => {
  const notes = [{kind: "not-reached", where: "discharge", facts: {head: 0.6, missing: 2.4}}];
  const stack = [{block: "lift", head: 3}, {block: "jet", head: 0}, {block: "not-reached", head: -2.4}];
  const dry = answer({...OFF, flow: 0, head: 0.6, stack, notes: [...notes, {kind: "line-off", where: "discharge", facts: {}}]});
  assert.deepEqual(said(dry).slice(1, 3), ["the pump answers 0.6 m at no flow.", "To come out at the open flange, the liquid lacks 2.4 m."]);
  const entries = noteEntries({answer: dry, units, words});
  assert.doesNotMatch(entries.map(({title, text}) => title + text).join(), /jet|whole head|no fault/);
  assert.match(said(answer({flow: 0, notes: [{...notes[0], where: "pipe-end"}]}))[2], /the end of the pipe/);
});

test("nobody is told to ask for less flow where that is no way out", () => {
  const notes = [{kind: "overload", where: "pump-1", facts: FACTS.overload}];
  const caution = (flow) => noteEntries({answer: answer({flow, notes}), units, words})[0].caution;
  assert.match(caution(0.01), /Mend the load, or lower the speed/);
  assert.doesNotMatch(caution(0), /Mend the load/);
  assert.match(caution(0), /Lower the speed/);
});

test("a block of unknown head is not the greatest part", () => {
  const stack = [{block: "valve", head: null}, {block: "lift", head: 2}, {block: "check-valve", head: null}];
  assert.match(said(answer({head: 20, stack}))[2], /the lift: 2\.0 m/);
});

test("before there is an answer the sentence stands alone, and says when numbers come", () => {
  const {asks, answers, rest, then} = why({answer: null, previous: null, plant: {}, units, words, origin: "none"});
  assert.equal(asks + answers, "");
  assert.match(rest, /^A pump does not choose .*\.$/);
  assert.match(then, /as soon as Python is ready/);
});

test("two pumps answer together", () => {
  const two = answer();
  two.state.machines.push(two.state.machines[0]);
  assert.match(said(two)[1], /^the pumps answer/);
});

test("what a plant is there for is said while it is as its author describes it", () => {
  const plant = {about: " Lifts water. \n"};
  assert.equal(aboutPlant({plant, edits: {}}, {then: ""}), "Lifts water.");
  assert.equal(aboutPlant({plant, edits: {"valve.opening": 0.2}}, {then: ""}), "");
  assert.equal(aboutPlant({plant, edits: {}}, {then: "You made the load lighter."}), "");
  assert.equal(aboutPlant({plant: {}, edits: {}}, {then: ""}), "");
});

test("a pump that turns the wrong way has a sentence of its own, not that of a load which pushes back", () => {
  const turned = answer({flow: -6 / 3600, head: -4});
  turned.state.machines = [{name: "pump-1", backward: true}];
  assert.match(said(turned)[0], /The pump turns the wrong way: 6\.00? m³\/h go from the discharge to the suction/);
  assert.equal(said(turned)[1], "4.0 m are given the wrong way round.");
  turned.state.station.flow = 0;
  assert.match(said(turned)[0], /turns the wrong way, and nothing comes back to it;/);
  turned.state.station = {flow: -6 / 3600, head: 5};
  assert.match(said(turned)[1], /the load drives it with 5\.0 m/);
});
