import assert from "node:assert/strict";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {settings} from "../../site/js/views/printed.js";
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

test("a number is read with the unit that stands beside it on the screen, and with the true minus sign", () => {
  for (const text of ["50 %", "50%", "50\u00a0%", "+50 %"]) assert.deepEqual(readTyped(text, {...percent, symbol: "%"}), {value: 0.5}, text);
  const metres = {low: -5, high: 5, toFileUnits: (shown) => shown, symbol: "m"};
  for (const text of ["−3", "−3.00 m", "-3\u00a0M"]) assert.deepEqual(readTyped(text, metres), {value: -3}, text);
  for (const text of ["3 ft", "m", "3 m m", "%"]) assert.equal(readTyped(text, metres).problem, "number", text);
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

test("where a range spans decades, nought is not its lower end", () => {
  assert.deepEqual(readTyped("0", {low: 0.1, high: 1e5, toFileUnits: (shown) => shown}), {problem: "range", got: "0"});
});

test("on paper every control stands with its value, the pump by its title", () => {
  const plant = {
    valve: {opening: 0.6}, drive: {frequency_hz: 42.5, supply_hz: 50, poles: 2}, supply: {surface_m: 2}, delivery: {surface_m: 14},
    pump: {model: "medium", arrangement: "single"}, discharge: {attached: true},
  };
  const words = Object.assign((id) => id, {has: () => true});
  const catalogue = {pumps: [{id: "medium", title: "Medium pump, 37 m³/h at 40 m"}]};
  const told = Object.fromEntries(settings({plant, units: createUnits("m3h-bar-m", "en"), catalogue}, words).map(({name, value}) => [name, value]));
  assert.equal(Object.keys(told).length, CONTROLS.length);
  assert.equal(told["control-pump-model"], "Medium pump, 37 m³/h at 40 m");
  assert.equal(told["control-drive-frequency_hz"], "42.5\u00a0Hz");
  assert.equal(told["control-drive-poles"], "choice-drive-poles-2");
  const own = settings({plant: {...plant, pump: {}}, units: createUnits("m3h-bar-m", "en"), catalogue}, words);
  assert.equal(own.find(({name}) => name === "control-pump-model").value, "choice-pump-model-own");
});
