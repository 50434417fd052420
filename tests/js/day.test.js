// The remembered day: kept with the state, undone, linked, and drawn hollow against today.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createBeside} from "../../site/js/beside.js";
import {modelOf, pictureOf, standing} from "../../site/js/model.js";
import {checkState, decode, encode} from "../../site/js/share.js";
import {createStore, firstState} from "../../site/js/state.js";
import {createUnits} from "../../site/js/units.js";
import {createDays, secondLook, whenOther} from "../../site/js/days.js";
import {dayParts, dayRows, dayStory} from "../../site/js/views/day-words.js";
import {create as createTable} from "../../site/js/views/days.js";
import {create, dayWords} from "../../site/js/views/day.js";
import {createGauge} from "../../site/js/views/gauge.js";
import {createTachometer} from "../../site/js/views/meter.js";
import {instrument} from "../../site/js/views/instruments.js";
import {createWords} from "../../site/js/words.js";
import {sampleAnswer, samplePlant} from "./drawing-sample.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const words = createWords(["en", "notes", "drawings", "parts", "cases", "days"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
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

test("a tachometer points at both days' speeds, and at none where no day is remembered", () => {
  const document = fakeDocument();
  const meter = createTachometer(document, {x: 0, y: 0, width: 118, key: "tachometer-1"});
  const data = {label: "Speed", unit: "1/min", range: [0, 480], value: 240, ghost: 360, text: "2,292", off: null, says: "2,292"};
  const at = (name) => everyNode(meter.node).find((node) => node.getAttribute?.("class") === name).getAttribute("transform");
  const shown = () => everyNode(meter.node).some((node) => node.nodeName === "g" && node.getAttribute("display") === "none");
  meter.update({...data, day: true});
  assert.deepEqual([at("meter-pointer"), at("meter-ghost"), shown()], ["translate(59,0)", "translate(85.5,0)", false]);
  meter.update({...data, day: false});
  assert.equal(shown(), true);
});

test("one button remembers the rig as it stands and forgets it again", () => {
  const document = fakeDocument(), host = fakeHost(document), sent = [];
  const view = create(host, {document, words, send: (action) => sent.push(action)});
  const button = () => everyNode(host).find((node) => node.getAttribute?.("id") === "remember-day");
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
  const timed = {...modelWith({rig: rig({"valve.opening": 0.3}), answer: null, error: null}), clock: {status: "paused"}};
  assert.equal(dayWords(timed, words), words("days-at-moment"));
  assert.match(day({}), /Now change/);
  assert.equal(day({"valve.opening": 0.3}), "");
  assert.match(day({}, {code: "bug"}), /cannot be computed/);
});

const example = JSON.parse(readFileSync(new URL("../door/messages/days.json", import.meta.url), "utf8")).reply.body;
const told = (answer = example) => ({...modelWith({rig: rig(), answer: sampleAnswer(), error: null}), days: {answer, fresh: true, error: null}, catalogue: {pumps: []}});
const plain = (text) => text.replaceAll("\u00a0", " ");

test("the story says what was changed, what both curves say at yesterday's flow, and what followed", () => {
  const story = plain(dayStory(told(), words));
  assert.match(story, /^Since yesterday: Drive frequency 50.0 Hz → 48.0 Hz \(drive\); Valve opening 75 % → 40 % \(load\)\./);
  assert.match(story, /At yesterday’s 35\.4 m³\/h the load now asks 372\.8 m instead of 42\.4 m, and the pump now answers 38\.3 m instead of 42\.4 m\./);
  assert.match(story, /So the flow fell from 35\.4 m³\/h to 10\.9 m³\/h, and the head from 42\.4 m to 46\.5 m\.$/);
  assert.equal(dayStory(told({...example, changed: []}), words), "Nothing was changed since yesterday.");
});

test("of a load that lets nothing pass it says so, and of a faulty instrument that nothing else moved", () => {
  const shut = {...example, meeting: {...example.meeting, asked: [42, null], mover: "load"}};
  assert.match(dayStory(told(shut), words), /lets nothing pass any more; the pump’s curve is where it was/);
  const gauge = {...example, changed: [{key: "gauges.discharge.serial", side: "instrument", yesterday: 0, today: 1}], meeting: {...example.meeting, mover: "neither"}};
  assert.match(dayStory(told(gauge), words), /only what the instruments show is another/);
});

test("several changes have their parts of the flow, and the order is said to matter where it does", () => {
  const {lines, says} = dayParts(told(), words);
  assert.equal(lines.length, 2);
  assert.match(plain(lines[1]), /^Valve opening: −\d+\.\d m³\/h of flow$/);
  assert.match(says, /does not matter/);
  const tangled = dayParts(told({...example, parts: {...example.parts, order_matters: true}}), words);
  assert.match(plain(tangled.lines[1]), /^Valve opening: −\d+\.\d m³\/h of flow where it comes first, −\d+\.\d m³\/h where it comes last$/);
  assert.match(tangled.says, /no single number/);
  assert.equal(dayParts(told({...example, parts: null}), words), null);
});

test("a row has both readings, the change with its sign and arrow, whether it counts, and why", () => {
  const rows = dayRows(told(), words);
  const row = rows.find(({id}) => id === "gauge-discharge");
  assert.deepEqual([row.name, row.moved, row.arrow].join(), "Discharge gauge,up,▲");
  assert.match(row.change, /^\+0\.\d\d/);
  assert.match(row.says, /more than the instrument can err by itself \(0\.04/);
  assert.ok(row.why.endsWith("."));
  assert.match(rows.find(({id}) => id === "level-supply").says, /^no more than/);
  const blank = dayRows(told({...example, readings: [{...example.readings[0], yesterday: null, change: null, explained: null, moved: null}], reasons: {}}), words)[0];
  assert.deepEqual([blank.yesterday, blank.change, blank.arrow, blank.why, blank.says], ["–", "", "", "", "cannot be told"]);
});

test("every reason of the engine has its words, whichever way a reading goes", () => {
  const python = readFileSync(new URL("../../pysrc/loadfirst/days/reason.py", import.meta.url), "utf8");
  const reasons = [...python.match(/Reason = Literal\[([\s\S]*?)\]/)[1].matchAll(/"([\w-]+)"/g)].map(([, name]) => name);
  assert.ok(reasons.length > 15);
  const gauges = reasons.filter((name) => !["load", "both", "drive", "slip", "set", "controller"].includes(name));
  const of = {"gauge-suction": gauges, "flow-meter": ["load", "machine", "both", "instrument"], "ammeter-1": ["curve", "machine", "asked", "liquid", "instrument"], "tachometer-1": ["drive", "slip", "machine"], "level-supply": ["set"], "controller-output": ["controller"]};
  assert.deepEqual([...new Set(Object.values(of).flat())].sort(), [...reasons].sort());
  for (const [id, names] of Object.entries(of)) for (const name of names) for (const moved of ["up", "down"]) {
    const reading = {...example.readings[0], id, moved};
    const [{why}] = dayRows(told({...example, readings: [reading], reasons: {[id]: name}}), words);
    assert.ok(why.length > 10 && !why.startsWith("days-"), `${id} ${name} ${moved}: ${why}`);
  }
});

test("a shaft that no motor turns is turned by liquid; a pump is judged by its own flow", () => {
  const [known] = example.readings;
  const why = (reading, reason, meeting = example.meeting) =>
    dayRows(told({...example, meeting, readings: [{...known, ...reading}], reasons: {[reading.id]: reason}}), words)[0].why;
  const at = (value) => ({...known.today, value});
  assert.equal(why({id: "tachometer-2", moved: "up", yesterday: at(0), today: at(200)}, "slip"), words("days-why-driven-up"));
  assert.equal(why({id: "tachometer-1", moved: "up", yesterday: at(300), today: at(301)}, "slip"), words("days-why-slip-up"));
  const back = {flow: [2, 1], machines: [[{flow: 2}], [{flow: 3}]]}; // less comes to the line, more goes through the pump
  assert.equal(why({id: "ammeter-1", moved: "up"}, "curve", back), words("days-why-current-curve-more-up"));
  assert.equal(why({id: "flow-meter", moved: "down"}, "load", back), words("days-why-divided-down"));
  assert.equal(why({id: "flow-meter", moved: "up"}, "load", back), words("days-why-load-up"));
  assert.equal(why({id: "ammeter-1", moved: "up"}, "curve", {flow: [2, 1]}), words("days-why-current-curve-less-up"));
});

test("the table is made once for an answer, and hidden while nothing is remembered", () => {
  const document = fakeDocument(), host = fakeHost(document);
  const view = createTable(host, {document, words});
  view.update(modelWith(null));
  assert.equal(host.getAttribute("hidden"), "");
  const model = told();
  view.update(model);
  assert.equal(host.getAttribute("hidden"), null);
  const rows = everyNode(host).filter((node) => node.getAttribute?.("data-reading"));
  assert.equal(rows.length, example.readings.length);
  view.update(model);
  assert.deepEqual(everyNode(host).filter((node) => node.getAttribute?.("data-reading")), rows);
});

test("both days are asked about when the hand has let go, and an old answer is known to be old", async () => {
  const asks = [];
  const engine = {ask: (kind, body) => new Promise((resolve) => asks.push({kind, body, resolve})), drop() {}};
  const store = createStore(firstState("some-plant"));
  const days = createDays({engine, store, onChange() {}});
  assert.deepEqual([days.kept, asks.length], [null, 0]);
  store.remember(rig());
  asks[0].resolve("same");
  await new Promise((resolve) => setImmediate(resolve));
  assert.deepEqual(days.kept, {answer: "same", fresh: true, error: null});
  store.preview({"valve.opening": 0.2});
  assert.deepEqual([asks.length, days.kept.fresh], [1, false]);
  store.commit();
  assert.deepEqual([asks.length, asks[1].kind, asks[1].body], [2, "days", {yesterday: rig(), today: rig({"valve.opening": 0.2})}]);
  assert.deepEqual([days.kept.answer, days.kept.fresh], ["same", false]);
  store.remember(null);
  assert.equal(days.kept, null);
});

test("today is the second look at yesterday's gauges, and is asked for again only when that becomes another", () => {
  assert.equal(secondLook(null), null);
  const {look, before} = secondLook(sampleAnswer());
  assert.equal(look, 1);
  assert.ok(Object.keys(before).length > 0 && Object.keys(before).every((id) => id.startsWith("gauge-")));
  assert.deepEqual(Object.keys(Object.values(before)[0]), ["value", "low", "high"]);
  let part = null, asked = 0;
  const changed = whenOther(() => part, () => (asked += 1));
  changed();
  part = secondLook(sampleAnswer());
  changed();
  changed();
  part = null;
  changed();
  assert.equal(asked, 2);
});

test("a day remembered while time runs has the levels, the stem and what else time has moved by then", () => {
  const set = {supply: {surface_m: 2}, delivery: {surface_m: 10}, valve: {opening: 0.5}, drive: {frequency_hz: 50}, discharge: {filled: 1}, pump: {running: true}};
  const own = rig({"valve.opening": 0.5, "liquid.temperature_c": 40});
  assert.deepEqual(standing({rig: own, set, plant: set}), own);
  const plant = {...set, supply: {surface_m: 1.25}, valve: {opening: 0.4}, pump: {running: false}};
  assert.deepEqual(standing({rig: own, set, plant}).edits,
    {"liquid.temperature_c": 40, "valve.opening": 0.4, "supply.surface_m": 1.25, "pump.running": false});
});
