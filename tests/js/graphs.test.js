// The load stack, the head-flow chart and the head along the path.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {px} from "../../site/js/lib/svg.js";
import {createUnits} from "../../site/js/units.js";
import * as chart from "../../site/js/views/chart.js";
import {chartAxes, chartDomain, curvePath, dotsPath, dutyWords, readAt, sampled} from "../../site/js/views/chart-geometry.js";
import {statePaths, statesSaid} from "../../site/js/views/chart-states.js";
import {keyed} from "../../site/js/views/chart-readout.js";
import * as path from "../../site/js/views/path.js";
import {pathGeometry, pathPlaces} from "../../site/js/views/path-geometry.js";
import * as stack from "../../site/js/views/stack.js";
import {headings, pile, stackGeometry} from "../../site/js/views/stack-geometry.js";
import {createWords} from "../../site/js/words.js";
import {sampleAnswer, samplePlant} from "./drawing-sample.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const units = createUnits("m3h-bar-m", "en");
const words = (id, args) => (args ? `${id} ${Object.values(args).join(" ")}` : id);
const SIZE = {width: 300, height: 330};
const near = (got, wanted, within = 1e-6) => assert.ok(Math.abs(got - wanted) <= within, `${got}, not ${wanted}`);

const message = JSON.parse(readFileSync(new URL("../door/messages/answer-several-states.json", import.meta.url), "utf8"));

test("of several states those that last are diamonds, the others crosses; the one that is there has its own mark", () => {
  const {possible} = message.reply.body.state;
  const count = (lasts) => possible.filter((each) => !each.there && each.lasts === lasts).length;
  const {lasts, falls} = statePaths(possible, {x: (flow) => 1e4 * flow, y: (head) => 300 - head});
  assert.equal(lasts.split("Z").length - 1, count(true));
  assert.equal(falls.split("M").length - 1, 2 * count(false));
  assert.ok(count(true) > 0 && count(false) > 0);
  assert.deepEqual(statePaths(undefined, {}), {lasts: "", falls: ""});
});

test("several states are said one by one to who does not see them, a single one is not", () => {
  const {possible} = message.reply.body.state;
  const said = statesSaid(possible, units, words);
  assert.match(said, /draw-states-say/);
  assert.equal(said.split("draw-state-").length - 1, possible.length);
  assert.equal(said.split("draw-state-there").length - 1, 1);
  assert.equal(statesSaid(undefined, units, words), "");
});

test("the pile's top is the sum of its blocks, also with blocks that relieve", () => {
  for (const heads of [[12, 0, 1, 3, 1, 8], [-14, -5, 1, 4, 1, 20], [-30, 0, 1, 2, 1, 0]]) {
    const names = ["lift", "vessel-pressure", "suction-line", "pipe", "fittings", "valve"];
    const blocks = pile(heads.map((head, i) => ({block: names[i], head})));
    near(blocks.at(-1).to, heads.reduce((a, b) => a + b));
    for (const {head, from, to} of blocks) near(to - from, head);
  }
});

test("blocks touch without gaps, relief downward from zero first", () => {
  const blocks = pile([{block: "lift", head: -5}, {block: "pipe", head: 3}, {block: "valve", head: 4}]);
  assert.deepEqual(blocks.map(({block, from, to}) => [block, from, to]), [["lift", 0, -5], ["pipe", -5, -2], ["valve", -2, 2]]);
});

test("blocks that nobody can tell apart are one block, as high as what is left of the answer", () => {
  const stack = [{block: "lift", head: 12}, {block: "check-valve", head: null}, {block: "valve", head: null}];
  const blocks = pile(stack, 50);
  assert.deepEqual(blocks.map(({block, head}) => [block, head]), [["lift", 12], ["shared", 38]]);
  near(blocks.at(-1).to, 50);
});

test("the check valve and what is not reached have their places in the pile", () => {
  const blocks = pile([{block: "lift", head: 49.9}, {block: "check-valve", head: -46.6}, {block: "not-reached", head: -1}]);
  near(blocks.at(-1).to, 2.3);
  assert.deepEqual(blocks.map(({block}) => block), ["check-valve", "not-reached", "lift"]);
});

test("load and answer end at the same height on the sheet", () => {
  const heads = [{block: "lift", head: 12}, {block: "valve", head: 8}];
  const {blocks, answer} = stackGeometry({stack: heads, balance: 20, curves: {station: [40, 30]}}, null, SIZE);
  near(blocks.at(-1).top, answer.top);
  near(blocks[0].top + blocks[0].height, answer.bottom);
});

test("the axis holds still while the answer moves below the shut-off head", () => {
  const domain = (balance) => stackGeometry({stack: [], balance, curves: {station: [40, 30]}}, null, SIZE).domain;
  assert.deepEqual(domain(12), domain(39));
});

test("a displacement pump that could answer far more than it is asked leaves blocks that can be read", () => {
  const domain = (balance, displaces) => stackGeometry({stack: [], balance, displaces, curves: {station: [176, 90]}}, null, SIZE).domain;
  assert.ok(domain(15, true)[1] <= 6 * 15 && domain(15, true)[1] >= 15);
  assert.ok(domain(15, false)[1] >= 176);
  assert.deepEqual(domain(100, true), domain(100, false));
  assert.ok(domain(0, true)[1] > 1);
});

test("the stack hides the ghost of an answer that is the same", () => {
  const one = {stack: [{block: "lift", head: 12}], balance: 12, curves: {station: [40]}};
  assert.equal(stackGeometry(one, one, SIZE).ghost, null);
  assert.ok(stackGeometry(one, {...one, balance: 20}, SIZE).ghost);
});

test("the headings of both columns never touch and never hang over, on any sheet", () => {
  for (let width = 180; width < 700; width += 10) {
    const {columns} = stackGeometry(null, null, {width, height: 330});
    const {asks, answers} = headings(columns, width);
    assert.ok(answers - asks >= 60 && answers < width && asks > 40, `${width}`);
  }
});

test("a block that is nothing in the reader's digits has no label, but keeps its place", () => {
  const stack = [{block: "lift", head: 0.04}, {block: "pipe", head: 0.05}, {block: "valve", head: 8}];
  const {labels, blocks} = stackGeometry({stack, balance: 8.09, curves: {}}, null, SIZE, (head) => units.text("head", head) !== "0.0");
  assert.deepEqual(labels.map(({block}) => block), ["pipe", "valve"]);
  assert.equal(blocks.length, 3);
});

test("chart axes hold the curves, the duty point and a load below zero", () => {
  const answer = sampleAnswer();
  answer.curves.load = answer.curves.load.map((head) => head - 20);
  const {flow, head} = chartDomain([answer, null]);
  assert.deepEqual(flow, [0, 0.02]);
  assert.ok(head[0] <= -8 && head[1] >= 40);
});

test("where liquid runs backwards, both curves reach the duty point left of no flow", () => {
  const answer = sampleAnswer();
  answer.duty = {flow: -0.004, head: 45};
  const flow = [-0.0044, -0.004, 0, 0.02];
  answer.curves = {flow, load: [44.9, 45, 46, 52], machine: [45.3, 45, 40, 0], station: [45.3, 45, 40, 0]};
  const domain = chartDomain([answer]);
  assert.equal(domain.flow[0], -0.0044);
  const axes = chartAxes(SIZE, domain, units);
  for (const heads of [answer.curves.load, answer.curves.station]) {
    assert.ok(sampled({flow, heads}, axes).some(([x]) => x < axes.x(-0.003)));
  }
  assert.ok(dotsPath({flow, heads: answer.curves.station}, axes).startsWith(`M${px(axes.x(-0.0044))},`));
  assert.deepEqual(readAt(answer.curves, -0.004), {flow: -0.004, asked: 45, answered: 45});
});

test("what a holding check valve keeps away is on the sheet, above the duty point at its foot", () => {
  const answer = sampleAnswer(samplePlant(), {flow: 0, head: 3.3});
  answer.curves = {flow: [0, 0, 0.01], load: [3.3, 49.9, 55], machine: [1.7, 1.7, 0], station: [3.3, 3.3, 0]};
  const {head} = chartDomain([answer]);
  assert.ok(head[1] > 49.9);
  assert.match(curvePath({flow: answer.curves.flow, heads: answer.curves.load}, chartAxes(SIZE, {flow: [0, 0.01], head}, units)), /^M46,[\d.]+L46,/);
});

test("hidden curves ask for no room below zero", () => {
  const answer = sampleAnswer();
  answer.curves.load = answer.curves.load.map((head) => head - 20);
  assert.equal(chartDomain([answer], false).head[0], 0);
});

test("where neither curve rises above nought the axis keeps readable numbers", () => {
  const none = {curves: {flow: [0, 0.01], load: [0, 0], station: [0, 0], machine: [0, 0]}, duty: {flow: 0, head: 0}};
  assert.ok(chartDomain([none]).head[1] >= 10);
  assert.ok(chartDomain([{...none, curves: {...none.curves, station: [0.05, 0]}}]).head[1] < 0.1, "a small pump keeps its own scale");
});

test("ticks stand at round numbers of the shown unit", () => {
  const {xTicks, yTicks} = chartAxes(SIZE, {flow: [0, 0.02], head: [0, 44]}, createUnits("gpm-psi-ft", "en"));
  for (const {text} of [...xTicks, ...yTicks]) assert.match(text, /^\d+0$|^0$|^\d+5$/);
});

test("a curve breaks where the load has no value, and a shut valve is a wall", () => {
  const axes = chartAxes(SIZE, {flow: [0, 3], head: [0, 10]}, units);
  assert.equal(curvePath({flow: [0, 1, 2, 3], heads: [1, 2, null, 3]}, axes).match(/M/g).length, 2);
  assert.match(curvePath({flow: [0, 1, 2], heads: [4, null, null]}, axes), /^M[\d.]+,[\d.]+V[\d.]+$/);
});

test("the readout says what both curves hold at a flow", () => {
  const curves = {flow: [0, 1], load: [10, 20], station: [40, 20]};
  assert.deepEqual(readAt(curves, 0.5), {flow: 0.5, asked: 15, answered: 30});
  assert.deepEqual(readAt({...curves, load: [10, null]}, 0.5), {flow: 0.5, asked: null, answered: 30});
});

test("the words beside the duty point cover neither curve where there is room", () => {
  const {curves, duty} = sampleAnswer();
  const axes = chartAxes(SIZE, {flow: [0, 0.02], head: [0, 44]}, units);
  const drawn = [curves.load, curves.station].flatMap((heads) => sampled({flow: curves.flow, heads}, axes));
  const {left, top} = dutyWords([axes.x(duty.flow), axes.y(duty.head)], axes, drawn);
  const under = drawn.filter(([x, y]) => x > left && x < left + 92 && y > top && y < top + 34);
  assert.equal(under.length, 0);
});

test("keys move the readout and stop at the chart's ends", () => {
  assert.equal(keyed("End", 0.2, [0, 1]), 1);
  assert.equal(keyed("ArrowLeft", 0, [0, 1]), 0);
  near(keyed("ArrowRight", 0.5, [0, 1]), 0.52);
  assert.equal(keyed("x", 0.5, [0, 1]), null);
});

test("places along the path rise from edge to edge, also where a step has no length", () => {
  const places = pathPlaces([{distance: 0}, {distance: 4}, {distance: 4}, {distance: 124}]);
  assert.equal(places[0], 0);
  near(places.at(-1), 1);
  places.slice(1).forEach((at, i) => assert.ok(at > places[i]));
});

test("the pressure line meets the surface of an open vessel", () => {
  const {path: points, liquid} = sampleAnswer().state;
  const drawn = pathGeometry({path: points, density: liquid.density}, null, units, {width: 540, height: 200});
  const end = (d) => d.split("L").at(-1);
  assert.equal(end(drawn.grade), end(drawn.pipe));
  assert.equal(end(drawn.grade), end(drawn.head));
});

test("an undefined pressure leaves a gap and no broken number", () => {
  const {path: points} = sampleAnswer().state;
  const holed = points.map((one, i) => (i === 2 ? {...one, head: null, pressure: null} : one));
  const drawn = pathGeometry({path: holed, density: 1000}, null, units, {width: 540, height: 200});
  for (const d of [drawn.head, drawn.grade, drawn.between, drawn.machine]) assert.ok(!d.includes("NaN"));
  assert.equal(drawn.gaps.length, 1);
});

/** An answer with check valve and control valve shut, and the pressure at the discharge unknown. */
function dark(plant) {
  const answer = sampleAnswer(plant, {flow: 0, head: 20});
  answer.stack = [{block: "lift", head: 12}, {block: "check-valve", head: null}, {block: "valve", head: null}];
  Object.assign(answer.state.balance, {pressure_head: null, check_valve: null});
  answer.state.path[2] = {...answer.state.path[2], head: null, pressure: null};
  return answer;
}

for (const [name, view] of Object.entries({stack, chart, path})) {
  const draw = (model) => {
    const document = fakeDocument();
    const host = fakeHost(document, 300, 330);
    const drawing = view.create(host, {document, words, units, send() {}});
    drawing.update(model);
    return {host, drawing};
  };
  const model = (more) => ({plant: samplePlant(), answer: sampleAnswer(), previous: null, units, words, ...more});

  test(`the ${name} draws before there is an answer, and says so`, () => {
    const {host} = draw(model({answer: null}));
    const svg = host.childNodes[0];
    assert.match(svg.getAttribute("aria-label"), /draw-no-reading|draw-chart-empty/);
    assert.equal(svg.getAttribute("data-origin"), "none");
  });

  test(`the ${name} writes no broken number for any answer`, () => {
    const still = sampleAnswer(samplePlant(), {flow: 0, head: 40});
    still.curves.load = still.curves.load.map((head, i) => (i ? null : head));
    const two = samplePlant({"pump.arrangement": "side-by-side"});
    for (const answer of [sampleAnswer(), still, sampleAnswer(two), dark(), dark(two)]) {
      const {host} = draw(model({answer, previous: sampleAnswer()}));
      const texts = everyNode(host).flatMap((node) => [...(node.attributes?.values() ?? []), node.text ?? ""]);
      assert.ok(!texts.some((text) => /NaN|Infinity|undefined|null/.test(text)), texts.find((text) => /NaN|Infinity|undefined|null/.test(text)));
    }
  });

  test(`the ${name} reuses its nodes for a new answer`, () => {
    const {host, drawing} = draw(model());
    const before = everyNode(host);
    drawing.update(model({answer: sampleAnswer(samplePlant(), {flow: 0.0101, head: 29.9})}));
    const after = everyNode(host);
    assert.ok(after.length === before.length && after.every((node, i) => node === before[i]));
  });
}

test("the stack prints no label of nothing, but says it", () => {
  const answer = sampleAnswer();
  answer.stack = [{block: "suction-line", head: 0.04}, {block: "valve", head: 8}];
  const host = fakeHost(fakeDocument(), 300, 330);
  stack.create(host, {document: host.ownerDocument, words}).update({plant: samplePlant(), answer, previous: null, units, words});
  const labels = everyNode(host).filter((node) => node.attributes?.get("class") === "end" && node.attributes.get("display") !== "none");
  assert.deepEqual(labels.map(({textContent}) => textContent), ["draw-block-valve8.0"]);
  assert.match(host.childNodes[0].getAttribute("aria-label"), /draw-block-suction-line 0\.0/);
});

test("what is unknown is worded: in the stack's sentence, in its account, along the path", () => {
  const words = createWords(["en", "notes", "drawings"].map((name) => readFileSync(new URL(`../../site/words/${name}.ftl`, import.meta.url), "utf8")));
  const drawn = (view) => {
    const host = fakeHost(fakeDocument(), 300, 330);
    const plant = samplePlant({"pump.arrangement": "in-line"});
    view.create(host, {document: host.ownerDocument, words}).update({plant, answer: dark(plant), previous: null, units, words});
    return host.childNodes[0];
  };
  const svg = drawn(stack);
  assert.match(svg.getAttribute("aria-label").replaceAll("\u00a0", " "), /Check valve and Valve together, in unknown shares, 8\.0 m\. The pump/);
  assert.equal(everyNode(svg).filter((node) => node.text === "unknown").length, 2);
  assert.match(drawn(path).getAttribute("aria-label"), /unknown at the discharge\./);
});

test("the answer's label lies on no block, above zero or below", () => {
  for (const [head, blocks] of [[8, [["lift", 3], ["pipe", 5]]], [-5, [["lift", -20], ["pipe", 15]]], [-5, [["lift", -5]]]]) {
    const answer = sampleAnswer();
    answer.stack = blocks.map(([block, size]) => ({block, head: size}));
    answer.state.balance.answer = head;
    const host = fakeHost(fakeDocument(), 300, 330);
    stack.create(host, {document: host.ownerDocument, words}).update({plant: samplePlant(), answer, previous: null, units, words});
    const has = (node, name) => node.attributes?.get("class")?.includes(name) && node.attributes.get("display") !== "none";
    const [label] = everyNode(host).filter((node) => has(node, "answer-text"));
    const foot = Number(label.attributes.get("y"));
    const tops = everyNode(host).filter((node) => has(node, "load-block")).map(({attributes: of}) => [Number(of.get("y")), Number(of.get("y")) + Number(of.get("height"))]);
    assert.ok(tops.length === blocks.length && tops.every(([top, bottom]) => bottom < foot - 16 || top > foot), `${head}: ${foot}, ${tops}`);
  }
});
