import assert from "node:assert/strict";
import {test} from "node:test";
import {CONTROLS, GROUPS, groupOf, rangeOf, ranges, readTyped} from "../../site/js/views/control-table.js";

const PLANT = {supply: {bottom_m: 0, top_m: 4}, delivery: {bottom_m: 12, top_m: 16}};
const LIMITS = {"valve.opening": {low: 0, high: 1}, "drive.frequency_hz": {low: 5, high: 75}};

test("a level moves between bottom and rim, the rest between the catalogue's limits", () => {
  assert.deepEqual(rangeOf("supply.surface_m", PLANT, LIMITS), [0, 4]);
  assert.deepEqual(rangeOf("drive.frequency_hz", PLANT, LIMITS), [5, 75]);
  assert.deepEqual(Object.keys(ranges(PLANT, {})), CONTROLS.filter(({kind}) => kind === "slider").map(({key}) => key));
});

test("every control belongs to one group, and keys are found again", () => {
  assert.equal(new Set(CONTROLS.map(({key}) => key)).size, CONTROLS.length);
  assert.equal(groupOf("drive.poles"), "motor");
  assert.equal(groupOf("liquid.name"), null);
  assert.ok(GROUPS.every(({side}) => side === "load" || side === "machine"));
});

const percent = {low: 0, high: 1, toFileUnits: (shown) => shown / 100};

test("what a person types is read in the shown unit, with point or comma", () => {
  assert.deepEqual(readTyped("30", percent), {value: 0.3});
  assert.deepEqual(readTyped(" 12,5 ", percent), {value: 0.125});
});

test("what is no number or out of range is told apart, with what was typed", () => {
  assert.deepEqual(readTyped("abc", percent), {problem: "number", got: "abc"});
  assert.deepEqual(readTyped("", percent), {problem: "number", got: ""});
  assert.deepEqual(readTyped("140", percent), {problem: "range", got: "140"});
});

test("the end of a range, typed in a unit that rounds, is still inside", () => {
  const feet = {low: 0, high: 4, toFileUnits: (shown) => shown * 0.3048};
  assert.deepEqual(readTyped(String(4 / 0.3048), feet), {value: 4});
});
