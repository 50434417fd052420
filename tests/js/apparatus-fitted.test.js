// Everything that a plant may have besides finds its place, in every combination and at every width.
import assert from "node:assert/strict";
import {test} from "node:test";
import {firstShare} from "../../site/js/lib/shape.js";
import {fitted, layout, sheetSize} from "../../site/js/views/apparatus-layout.js";
import {anyFitted, fittedOf, pumpSizes} from "../../site/js/views/fitted.js";
import {routes} from "../../site/js/views/pipe.js";
import {boxesOf, overlaps} from "./drawing-boxes.js";
import {samplePlant} from "./drawing-sample.js";

const TABLES = {
  relief: {state: "sound"}, return_line: {opening: 0.3, bore_mm: 32}, branch: {opening: 0.4, bore_mm: 50, end_m: 6, pours: true},
  burst: {}, filter: {fouling: 3}, second_line: {bore_mm: 65}, summit: {height_m: 18, primed: true}, control: {of: "flow", on: "valve", mode: "automatic"},
};
const NAMES = Object.keys(TABLES);
const HOSTS = [[320, 0], [360, 0], [414, 0], [712, 430], [1150, 640]];
const PLANTS = {
  "one pump": {},
  "two side by side": {"pump.arrangement": "side-by-side"},
  "two in line": {"pump.arrangement": "in-line"},
};

/** A plant with the tables of these bits fitted. */
function withTables(edits, bits, more = {}) {
  const plant = samplePlant(edits);
  NAMES.forEach((name, i) => {
    plant[name] = {...TABLES[name], ...more[name], fitted: Boolean(bits & (1 << i))};
  });
  return plant;
}

const names = (bits) => NAMES.filter((_, i) => bits & (1 << i)).join(", ");

function placed(plant, [width, height], sizes) {
  const plan = layout(plant, fitted(plant, sheetSize(width, height), sizes), sizes);
  return {plan, boxes: boxesOf(plan, plant), runs: [...Object.values(routes(plan, plant)).filter((run) => Array.isArray(run[0])), ...Object.values(plan.aside).map(({run}) => run).filter(Boolean)]};
}

const ALL = 2 ** NAMES.length;

/** What lies wrong on the sheet of a plant, in words. */
function wrongOf(plant, host, sizes) {
  const {plan, boxes, runs} = placed(plant, host, sizes);
  const off = ({x0, x1, y0, y1}) => x0 < -1 || x1 > plan.width + 1 || y0 < -1 || y1 > plan.height + 1;
  const pipes = runs.flat().filter(([x, y]) => x < 0 || x > plan.width || y < 0 || y > plan.height);
  return [...boxes.filter(off).map(({name}) => `${name} leaves the sheet`), ...pipes.map(([x, y]) => `a pipe at ${x}, ${y}`),
    ...overlaps(boxes, plan.narrow ? 5 : 2)].map((text) => `${host[0]}: ${text}`);
}

for (const [name, edits] of Object.entries(PLANTS)) {
  test(`nothing leaves the sheet and nothing covers another: ${name}, all combinations`, () => {
    const wrong = new Map();
    for (const host of HOSTS) {
      for (let bits = 0; bits < ALL; bits++) {
        for (const text of wrongOf(withTables(edits, bits), host)) wrong.set(text, names(bits));
      }
    }
    assert.deepEqual([...wrong], []);
  });
}

test("on a phone no letter comes out below 11 px, and dials and meters are as large as in the plain plant", () => {
  const SMALLEST = 12; // [px] of all letters in the drawing, see styles/drawing*.css
  for (const host of HOSTS.filter(([width]) => width < 640)) {
    const plain = layout(samplePlant(), fitted(samplePlant(), sheetSize(...host)));
    for (const edits of Object.values(PLANTS)) {
      for (let bits = 0; bits < ALL; bits++) {
        const plant = withTables(edits, bits);
        const plan = layout(plant, fitted(plant, sheetSize(...host)));
        const scale = host[0] / plan.width;
        assert.ok(SMALLEST * plan.letters * scale > 10.95, `${host[0]}: ${names(bits)}`);
        assert.ok(Math.abs(plan.dials[0].r * scale - (plain.dials[0].r * host[0]) / plain.width) < 0.5, `${host[0]}: ${names(bits)}`);
      }
    }
  }
});

const USERS = {
  "far above": {end_m: 15}, "just above the line": {end_m: 2}, "at the line": {end_m: 0.9}, "on the floor": {end_m: 0}, "in a pit": {end_m: -6},
  "above all": {end_m: 40}, "under a surface": {end_m: 5, pours: false},
};

for (const [name, branch] of Object.entries(USERS)) {
  test(`a second user finds room: ${name}`, () => {
    for (const host of HOSTS) assert.deepEqual(wrongOf(withTables({}, 0b100, {branch}), host), []);
  });
}

const PLACES = {
  "a sump": {"supply.bottom_m": -3, "supply.surface_m": -1, "supply.top_m": 0},
  "supply on a tower": {"supply.bottom_m": 6, "supply.surface_m": 8, "supply.top_m": 9},
  "delivery on the floor": {"delivery.bottom_m": 0, "delivery.surface_m": 2, "delivery.top_m": 4},
  "pouring in from above": {"delivery.outlet_m": 17},
};

for (const [name, edits] of Object.entries(PLACES)) {
  test(`every single part finds room, and all that lie below the line together: ${name}`, () => {
    for (const host of HOSTS) {
      for (const bits of [...NAMES.map((_, i) => 1 << i), 0b1111]) assert.deepEqual(wrongOf(withTables(edits, bits), host), [], names(bits));
    }
  });
}

test("lanes back to the supply end in it, wherever it stands", () => {
  for (const edits of [{}, ...Object.values(PLACES)]) {
    const plant = withTables(edits, 0b11);
    const {plan} = placed(plant, [712, 430]);
    const {x, width} = plan.columns.supply;
    const [top, bottom] = [plan.heights.y(plant.supply.top_m), plan.heights.y(plant.supply.bottom_m)];
    for (const part of ["relief", "return-line"]) {
      const [endX, endY] = plan.aside[part].run.at(-1);
      assert.ok(endX > x && endX < x + width && endY >= top && endY <= bottom, `${part} ends at ${endX}, ${endY}`);
    }
  }
});

test("a second user's pipe ends at its true height", () => {
  for (const end_m of [0, 1, 3, 6, 12, 20]) {
    for (const host of HOSTS) {
      const {plan} = placed(withTables({}, 0b100, {branch: {end_m}}), host);
      assert.ok(Math.abs(plan.aside.branch.run.at(-1)[1] - plan.heights.y(end_m)) < 1e-9);
    }
  }
});

test("a summit is drawn at its height", () => {
  const plant = withTables({}, 1 << NAMES.indexOf("summit"));
  const {plan} = placed(plant, [712, 430]);
  assert.ok(plan.aside.summit.crest.every(([, y]) => Math.abs(y - plan.heights.y(18)) < 1e-9));
  assert.ok(routes(plan, plant).discharge.some(([, y]) => Math.abs(y - plan.heights.y(18)) < 1e-9));
});

test("two pumps are drawn as large as what one turn of each carries", () => {
  const machine = (flow) => ({best_efficiency_flow: flow, speed: 300});
  assert.deepEqual(pumpSizes({state: {machines: [machine(0.01), machine(0.01)]}}), [1, 1]);
  const [one, other] = pumpSizes({state: {machines: [machine(0.005), machine(0.01)]}});
  assert.ok(Math.abs(one - 0.8) < 1e-9 && other === 1);
  assert.deepEqual(pumpSizes(null), [1, 1]);
  for (const host of HOSTS) assert.deepEqual(wrongOf(withTables({"pump.arrangement": "in-line"}, 0b11), host, [0.7, 1]), []);
});

test("a front stands at its share of the line's length", () => {
  const line = [[0, 0], [60, 0], [60, -40]];
  assert.deepEqual(firstShare(line, 0.3), [[0, 0], [30, 0]]);
  assert.deepEqual(firstShare(line, 0.8), [[0, 0], [60, 0], [60, -20]]);
  assert.deepEqual(firstShare(line, 1), line);
});

test("nothing that is not in a plant file is fitted, and nothing stands in a line that is off", () => {
  assert.equal(anyFitted(samplePlant()), false);
  const off = withTables({"discharge.attached": false}, ALL - 1);
  assert.deepEqual(Object.entries(fittedOf(off)).filter(([, on]) => on).map(([part]) => part), ["relief", "back"]);
  for (const host of HOSTS) assert.deepEqual(wrongOf(off, host), []);
});
