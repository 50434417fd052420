// The charts of NPSH and of power, and which chart is in sight.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {chartAxes, chartDomain, curvePath, dotsPath} from "../../site/js/views/chart-geometry.js";
import {create} from "../../site/js/views/flow-chart.js";
import {FLOW_CHARTS, flowDomain, legendPlaces, pointsOf, readCurves} from "../../site/js/views/flow-chart-table.js";
import {flowChartWords} from "../../site/js/views/flow-chart-words.js";
import {createWords} from "../../site/js/words.js";
import {sampleAnswer, samplePlant} from "./drawing-sample.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const units = createUnits("m3h-bar-m", "en");
const words = createWords([readFileSync(new URL("../../site/words/drawings.ftl", import.meta.url), "utf8")]);
const SIZE = {width: 300, height: 330};
const near = (got, wanted, within = 1e-9) => assert.ok(Math.abs(got - wanted) <= within, `${got}, not ${wanted}`);
const plain = (text) => text.replaceAll("\u00a0", " ");

/** NPSH of 8 m less 2e4 q² offered, 2 m and 3e4 q² needed: they meet at √(6/5e4). */
function answer(arrangement = "single", given = {}) {
  const one = sampleAnswer(samplePlant({"pump.arrangement": arrangement}));
  const {flow} = one.curves;
  one.curves = {...one.curves, npsh_required: flow.map((q) => 2 + 3e4 * q * q), npsh_available: flow.map((q) => 8 - 2e4 * q * q), npsh: {begins: Math.sqrt(6 / 5e4), bubbles_surely: 0.007, bubbles_first: null, boils: 0.02}, power: flow.map((q) => 3000 + 3e5 * q)};
  one.state.machines = one.state.machines.map((machine) => ({
    ...machine, npsh_required: 5, npsh_available: 6, shaft_power: 6000, rated_power: 7500, current: 12, ...given,
  }));
  return one;
}

test("both charts stand on the flow axis of the head chart", () => {
  for (const chart of Object.values(FLOW_CHARTS)) assert.deepEqual(flowDomain([answer(), null], chart).flow, chartDomain([answer()]).flow);
});

test("too little NPSH and bubbles begin where the engine says, and nowhere where it says nothing", () => {
  assert.deepEqual(FLOW_CHARTS.npsh.from(answer()), [Math.sqrt(6 / 5e4), 0.007]);
  const marked = (npsh) => FLOW_CHARTS.npsh.from({...answer(), curves: {...answer().curves, npsh}});
  assert.deepEqual(marked({begins: null}), [null, null]);
  assert.deepEqual(marked(undefined), [null, null]);
  assert.deepEqual(flowChartWords("npsh", {answer: answer(), units}, words).from.map(plain), ["too little from 39.4 m³/h", "bubbles from 25.2 m³/h"]);
});

test("what is said of the chart names where bubbles come, head goes and nothing more passes", () => {
  const says = plain(flowChartWords("npsh", {answer: answer(), units}, words).says);
  assert.match(says, /From 25.2 m³\/h there is less than twice.*From 39.4 m³\/h there is too little.*More than 72.0 m³\/h does not pass/);
  const alone = answer();
  alone.curves.npsh = undefined;
  assert.doesNotMatch(flowChartWords("npsh", {answer: alone, units}, words).says, /From|More than/);
});

test("a required NPSH that shoots up beyond the last point does not press the rest to the floor", () => {
  const wild = answer();
  wild.curves.npsh_required = wild.curves.flow.map((q) => 2 + 1e8 * q * q);
  assert.ok(flowDomain([wild], FLOW_CHARTS.npsh).head[1] <= 1.1 * 16 + 1e-9);
});

test("the motor's rated power is on the sheet, also far over what the shaft takes", () => {
  const {head: [low, high]} = flowDomain([answer("single", {rated_power: 30_000})], FLOW_CHARTS.power);
  assert.ok(low === 0 && high > 30_000);
});

test("two pumps that do the same are one point at the flow of each, and two that differ are two", () => {
  const same = pointsOf(answer("side-by-side"), FLOW_CHARTS.power);
  assert.deepEqual(same, [{flow: 0.005, values: [6000]}]);
  const two = answer("side-by-side");
  two.state.machines[1].shaft_power = 4000;
  assert.equal(pointsOf(two, FLOW_CHARTS.power).length, 2);
  assert.equal(flowChartWords("power", {answer: two, units}, words).axis, "through each pump, m³/h");
});

test("a suction that is undefined leaves a required NPSH without a margin", () => {
  const said = flowChartWords("npsh", {answer: answer("single", {npsh_available: null}), units}, words);
  assert.deepEqual(said.lines.map(plain), ["needs 5.0 m", ""]);
  assert.doesNotMatch(said.says, /there are/);
});

test("the words say what there is to spare, or how much is missing", () => {
  const lines = (offered) => flowChartWords("npsh", {answer: answer("single", {npsh_available: offered}), units}, words).lines.map(plain);
  assert.deepEqual(lines(6), ["needs 5.0 m", "1.0 m to spare"]);
  assert.deepEqual(lines(3.5), ["needs 5.0 m", "1.5 m short"]);
  assert.equal(plain(flowChartWords("power", {answer: answer(), units}, words).level), "the motor’s rated 7.50 kW");
});

test("curves are read at a flow in the order of the table, and a missing one has no value", () => {
  const [offered, needed] = readCurves(answer(), FLOW_CHARTS.npsh, 0.01);
  near(offered, 6);
  near(needed, 5);
  const {npsh_available: gone, ...alone} = answer().curves;
  assert.equal(readCurves({...answer(), curves: alone}, FLOW_CHARTS.npsh, 0.01)[0], null);
});

for (const name of Object.keys(FLOW_CHARTS)) {
  test(`the chart of ${name} draws no broken number, before there is an answer and after`, () => {
    const document = fakeDocument();
    const host = fakeHost(document);
    const view = create(host, {document, words}, name);
    const short = answer("single", {npsh_available: 3, rated_power: undefined});
    delete short.curves.npsh_available;
    for (const now of [null, answer(), answer("side-by-side"), short]) {
      view.update({answer: now, previous: now && answer(), units});
      for (const {attributes = []} of everyNode(host)) for (const value of attributes.values()) assert.doesNotMatch(String(value), /NaN|undefined|Infinity/);
    }
  });
}

test("the keys of a legend stand clear of each other", () => {
  const [first, second] = legendPlaces(["NPSH available", "NPSH required"]);
  assert.equal(first, 0);
  assert.ok(second > 40 + 8 * "NPSH available".length);
});

test("a nearly upright curve has its dots along it and stays on the sheet", () => {
  const flow = [0, 0.00099, 0.000995, 0.001, 0.00101, 0.0011];
  const heads = [null, 200, 120, 40, 0, null];
  const axes = chartAxes(SIZE, {flow: [0, 0.0011], head: [0, 220]}, units);
  const marks = [...dotsPath({flow, heads}, axes).matchAll(/M([\d.]+),([\d.]+)h/g)].map(([, x, y]) => [Number(x), Number(y)]);
  assert.ok(marks.length >= 12);
  const heights = marks.map(([, y]) => y);
  assert.ok(Math.max(...heights) - Math.min(...heights) > 180);
  assert.ok(heights.every((y) => y >= axes.plot.top - 1 && y <= axes.plot.bottom + 1));
  assert.doesNotMatch(curvePath({flow, heads}, axes), /NaN/);
});
