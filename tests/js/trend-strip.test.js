// The strip's geometry, its reading, its table and the words of plant time.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createTrend} from "../../site/js/trend.js";
import {createUnits} from "../../site/js/units.js";
import {isoTime, timeText, timeTicks} from "../../site/js/views/plant-time.js";
import {csvOf} from "../../site/js/views/trend-csv.js";
import {LANE, domainOf, keyedTime, nearest, stripGeometry, stripHeight, windowOf} from "../../site/js/views/trend-geometry.js";
import * as clockBar from "../../site/js/views/clock.js";
import {create as createTrendView, eventText, isLook} from "../../site/js/views/trend-panel.js";
import {createWords} from "../../site/js/words.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const words = createWords(["clock", "drawings"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
const units = createUnits("m3h-bar-m", "en");

/** Flow falls from 36 to 0 m³/h in 100 s; the level is there from 50 s on. */
function record(most) {
  const trend = createTrend(most);
  for (let n = 0; n <= 100; n++) {
    trend.add(n, [
      {id: "flow-meter", quantity: "flow", value: (0.01 * (100 - n)) / 100, low: 0, high: 0.02},
      ...(n < 50 ? [] : [{id: "level-supply", quantity: "height", value: 1.5, low: 0, high: 4}]),
    ], n === 70 ? [{kind: "supply-empty", where: "supply", time: 69.5}] : []);
  }
  return trend.record;
}

test("times read as clocks do, with days before them", () => {
  assert.equal(timeText(0), "0:00:00");
  assert.equal(timeText(753), "0:12:33");
  assert.equal(timeText(3599.96, {tenths: true}), "1:00:00.0");
  assert.equal(timeText(12.34, {tenths: true}), "0:00:12.3");
  assert.equal(timeText(86400 + 3661), "1 d 1:01:01");
});

test("durations are written as ISO 8601 has them", () => {
  assert.equal(isoTime(0), "P0DT00H00M00.000S");
  assert.equal(isoTime(2 * 86400 + 3661.5), "P2DT01H01M01.500S");
  assert.equal(isoTime(59.9996), "P0DT00H01M00.000S");
});

test("ticks of time are round and lie within", () => {
  assert.deepEqual(timeTicks(0, 100, 5), {step: 30, ticks: [0, 30, 60, 90]});
  assert.deepEqual(timeTicks(4000, 8000, 3), {step: 1800, ticks: [5400, 7200]});
  assert.equal(timeTicks(0, 20 * 86400, 5).step, 4 * 86400);
});

test("all of it, or as far back as was asked", () => {
  assert.deepEqual(windowOf(record()), {from: 0, to: 100});
  assert.deepEqual(windowOf(record(), 60), {from: 40, to: 100});
  assert.deepEqual(windowOf(record(), 600), {from: 0, to: 100});
  assert.deepEqual(windowOf({rows: []}), {from: 0, to: 1});
});

test("each instrument has a lane, one under the other, in the reader's units", () => {
  const {lanes, bottom, x, events} = stripGeometry(record(), {ids: ["flow-meter", "level-supply"], span: null, width: 800, units});
  assert.deepEqual(lanes.map(({id, top}) => [id, top]), [["flow-meter", 0], ["level-supply", LANE]]);
  assert.equal(bottom, 2 * LANE);
  assert.equal(stripHeight(2) > bottom, true);
  const [flow, level] = lanes;
  assert.ok(flow.domain[0] < 0 && flow.domain[1] > 36 && flow.domain[1] < 45);
  assert.ok(flow.y(36) < flow.y(0) && flow.y(36) >= flow.plot[0] && flow.y(0) <= flow.plot[1]);
  assert.ok(level.line.startsWith(`M${Math.round(100 * x(50)) / 100},`), level.line.slice(0, 20));
  assert.deepEqual(events.map(({kind}) => kind), ["supply-empty"]);
  assert.equal(Math.round(x.invert(events[0].x) * 10) / 10, 69.5);
});

test("a lane is never so narrow that it magnifies the last digit", () => {
  const [low, high] = domainOf([2, 2.0001], 0, 6);
  assert.ok(Math.abs(high - low - 0.3) < 1e-9);
  assert.deepEqual(domainOf([], 0, 6).map((end) => Math.round(end * 100) / 100), [-0.48, 6.48]);
});

test("rows that are more than one reading show from their lowest to their highest", () => {
  const trend = createTrend(20);
  for (let n = 0; n < 400; n++) trend.add(n, [{id: "flow-meter", quantity: "flow", value: n === 123 ? 0.02 : 0.01, low: 0, high: 0.02}]);
  const {lanes: [lane]} = stripGeometry(trend.record, {ids: ["flow-meter"], span: null, width: 800, units});
  const [bar] = lane.band.match(/M[\d.]+,([\d.]+)V([\d.]+)/).slice(1).map(Number).sort((a, b) => a - b);
  assert.ok(Math.abs(bar - lane.y(72)) < 0.02);
});

test("the nearest reading is found, and the keys go from one to the next", () => {
  const {rows} = record();
  assert.equal(nearest([], 3), -1);
  assert.equal(rows[nearest(rows, 41.4)].time, 41);
  assert.equal(rows[nearest(rows, 41.6)].time, 42);
  assert.equal(rows[nearest(rows, 1e9)].time, 100);
  const within = {from: 40, to: 100};
  assert.equal(keyedTime("ArrowRight", rows, 41, within), 42);
  assert.equal(keyedTime("ArrowLeft", rows, 40, within), 40);
  assert.equal(keyedTime("Home", rows, 77, within), 40);
  assert.equal(keyedTime("End", rows, 77, within), 100);
  assert.equal(keyedTime("PageDown", rows, 80, within), 77);
  assert.equal(keyedTime("x", rows, 80, within), null);
});

const headings = {time: "Plant time [s]", iso: "Plant time", low: (name) => `${name}, lowest`, high: (name) => `${name}, highest`};
const table = (of, shown = units) => csvOf(of, {units: shown, name: (id) => words(`draw-${id}`), headings}).split("\r\n").map((line) => line.split(","));

test("the table has a row for each reading, units in its headings, and gaps where there was none", () => {
  const lines = table(record());
  assert.deepEqual(lines[0], ["Plant time [s]", "Plant time", "Flow [m³/h]", "Level in the supply vessel [m]"]);
  assert.deepEqual(lines[1], ["0", "P0DT00H00M00.000S", "36", ""]);
  assert.deepEqual(lines[51], ["50", "P0DT00H00M50.000S", "18", "1.5"]);
  assert.equal(lines.length, 103);
  assert.deepEqual(lines[102], [""]);
});

test("the table is in the reader's units, with a point whatever the reader's digits are", () => {
  const lines = table(record(), createUnits("gpm-psi-ft", "de"));
  assert.equal(lines[0][2], "Flow [gpm]");
  assert.equal(lines[1][2], "158.5032");
});

test("where readings were put together, the table has their lowest and highest", () => {
  const trend = createTrend(10);
  for (let n = 0; n < 100; n++) trend.add(n, [{id: "flow-meter", quantity: "flow", value: n === 33 ? 0.02 : 0.01, low: 0, high: 0.02}]);
  const text = csvOf(trend.record, {units, name: () => "Flow", headings});
  assert.match(text.split("\r\n")[0], /,Flow \[m³\/h\],"Flow, lowest \[m³\/h\]","Flow, highest \[m³\/h\]"$/);
  assert.ok(text.includes(",36,36,72"));
});

test("everything that can happen has its words, and a pump its number", () => {
  const source = readFileSync(new URL("../../pysrc/loadfirst/clock/events.py", import.meta.url), "utf8");
  const kinds = [...source.match(/Kind = Literal\[(.*?)\]/s)[1].matchAll(/"([a-z-]+)"/g)].map(([, kind]) => kind);
  assert.ok(kinds.length > 10);
  for (const kind of kinds) assert.ok(words.has(`event-${kind}`), kind);
  assert.match(eventText({kind: "trips", where: "pump-2"}, words), /pump 2/);
  assert.match(eventText({kind: "check-shuts", where: "check"}, words), /Check valve 1/);
});

test("what was kept of the choices is looked at before it is used", () => {
  for (const good of [{}, {span: "hour"}, {ids: ["flow-meter"], span: "all"}]) assert.ok(isLook(good));
  for (const bad of [null, 3, {span: "year"}, {ids: "flow-meter"}, {ids: [3]}]) assert.ok(!isLook(bad));
});

function shown(clock, look = {}) {
  const document = fakeDocument();
  const host = fakeHost(document);
  const sent = [];
  const kit = {document, words, units, send: (action) => sent.push(action)};
  return {document, host, sent, kit, model: {clock, look, units, plant: {title: "A plant"}}};
}

const clockOf = (part = {}) => ({status: "running", rate: 1, time: 12.34, lags: false, record: record(), ...part});

test("the bar says what its buttons do now, and the plant's time", () => {
  const {host, kit, model, sent} = shown(clockOf());
  const bar = clockBar.create(host, kit);
  bar.update(model);
  const [go, step] = everyNode(host).filter(({nodeName}) => nodeName === "button");
  assert.equal(go.getAttribute("aria-label"), "Pause");
  assert.equal(step.getAttribute("aria-label"), "One step of 1 s");
  assert.ok(everyNode(host).some((node) => node.textContent === "0:00:12.3"));
  go.listeners.click();
  bar.update({...model, clock: clockOf({status: "paused", rate: 100})});
  assert.equal(go.getAttribute("aria-label"), "Let time run");
  assert.equal(step.getAttribute("aria-label"), "One step of 100 s");
  go.listeners.click();
  assert.deepEqual(sent.map(({type}) => type), ["clock-pause", "clock-run"]);
  bar.update({...model, clock: clockOf({status: "off"})});
  assert.equal(host.hidden, true);
});

test("the strip is read by keys: time and every reading shown are said; escape lets go", () => {
  const {host, kit, model, sent} = shown(clockOf(), {ids: ["flow-meter", "level-supply", "gone"]});
  const view = createTrendView(host, kit);
  view.update(model);
  const slider = everyNode(host).find((node) => node.getAttribute?.("role") === "slider");
  const says = () => slider.getAttribute("aria-valuetext").replaceAll("\u00a0", " ");
  assert.equal(says(), "0:01:40.0: Flow 0.0 m³/h; Level in the supply vessel 1.50 m");
  slider.tell("keydown", {key: "Home"});
  assert.equal(says(), "0:00:00.0: Flow 36.0 m³/h; Level in the supply vessel no reading");
  slider.tell("keydown", {key: "ArrowRight"});
  assert.match(says(), /^0:00:01\.0: Flow 35\.6/);
  const times = everyNode(host).filter((node) => /tick-text middle/.test(node.getAttribute?.("class")) && node.getAttribute("display") !== "none");
  const flag = everyNode(host).find((node) => /trend-flag/.test(node.getAttribute?.("class")));
  assert.ok(times.length > 0 && times.every((text) => Math.abs(text.getAttribute("x") - flag.getAttribute("x")) > 50), "no time of the axis under the flag");
  slider.tell("keydown", {key: "Escape"});
  assert.match(says(), /^0:01:40/);
  const boxes = everyNode(host).filter((node) => node.getAttribute?.("type") === "checkbox");
  assert.deepEqual(boxes.map((box) => [box.getAttribute("value"), box.getAttribute("checked")]), [["flow-meter", ""], ["level-supply", ""]]);
  assert.ok(everyNode(host).some((node) => node.textContent === "0:01:09.5 The supply vessel has run empty: the pump draws air and gives nothing."));
  assert.deepEqual(sent, []);
});

test("what has just happened is told beside the time, with what followed at once, for a minute of the watcher", () => {
  const events = [{kind: "check-opens", where: "check-1", time: 5}, {kind: "supply-empty", where: "supply", time: 61.9}, {kind: "check-shuts", where: "check-1", time: 62}];
  const news = (time, rate) => clockBar.newsOf({record: {events}, time, rate}, words);
  assert.equal(news(62, 1), "0:01:02 The supply vessel has run empty: the pump draws air and gives nothing. Check valve 1 shuts.");
  assert.equal(news(121, 1), news(62, 1));
  assert.equal(news(123, 1), "");
  assert.notEqual(news(123, 10), "");
  assert.equal(clockBar.newsOf({record: {events: []}, time: 3, rate: 1}, words), "");
});

test("another update of the same record writes nothing", () => {
  const {host, kit, model} = shown(clockOf());
  const view = createTrendView(host, kit);
  view.update(model);
  view.update(model);
  const writes = () => everyNode(host).reduce((sum, {writes: count = 0}) => sum + count, 0);
  const before = writes();
  view.update(model);
  assert.equal(writes(), before);
});

test("beside the strip time is stopped and let run, and it leads back", () => {
  for (const [status, says, type] of [["running", "clock-pause", "clock-pause"], ["paused", "clock-run", "clock-run"]]) {
    const {host, kit, model, sent} = shown({...clockOf(), status});
    createTrendView(host, kit).update(model);
    const by = (id) => everyNode(host).find((node) => node.getAttribute?.("id") === id);
    assert.equal(by("trend-go").textContent, words(says));
    by("trend-go").listeners.click();
    assert.deepEqual(sent, [{type}]);
    assert.equal(by("trend-back").textContent, words("trend-back"));
  }
});
