// What a controller has in its hand, and how it is handed over: nothing moves then.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {withEdits} from "../../site/js/state.js";
import {createUnits} from "../../site/js/units.js";
import {control} from "../../site/js/views/apparatus.js";
import {byHand, fitting, held, holding, onto} from "../../site/js/views/held.js";
import {noteEntries} from "../../site/js/views/notes.js";
import {endsOf, silent} from "../../site/js/views/part-keys.js";
import {createWords} from "../../site/js/words.js";

const read = (path) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const body = (name) => JSON.parse(read(`tests/door/messages/${name}.json`)).reply.body;
const answer = body("answer-in-automatic");
const {plant} = answer;
const {limits} = body("catalogue");
const model = {plant, answer};
const units = createUnits("m3h-bar-m", "en");

test("in automatic the valve is the controller's, everything else is not", () => {
  assert.ok(held("valve.opening", model));
  assert.ok(!held("drive.frequency_hz", model));
  assert.ok(!held("delivery.surface_m", model));
  assert.ok(!held("valve.opening", {plant: withEdits(plant, {"control.mode": "manual"}), answer}));
  assert.ok(!held("valve.opening", {plant: body("answer-as-it-stands").plant, answer: body("answer-as-it-stands")}));
  assert.ok(!held("valve.opening", {plant, answer: null}));
});

test("a drive that only keeps to its current limit may still be asked for another frequency", () => {
  const cut = {...answer, state: {...answer.state, moved: {...answer.state.moved, "drive.frequency_hz": 44}}};
  assert.ok(!held("drive.frequency_hz", {plant, answer: cut}));
  assert.ok(!("drive.frequency_hz" in byHand({plant, answer: cut})));
  const onDrive = {...cut, state: {...cut.state, control: {...cut.state.control, on: "drive"}}};
  assert.ok(held("drive.frequency_hz", {plant, answer: onDrive}));
});

test("the drawn valve cannot be turned while the controller has it", () => {
  const words = (id) => id;
  assert.equal(control("valve.opening", {...model, range: {}, units}, words).off, true);
  assert.equal(control("drive.frequency_hz", {...model, range: {}, units}, words).off, false);
});

test("taken over by hand the valve stays where it stands", () => {
  const opening = answer.state.moved["valve.opening"];
  assert.deepEqual(Object.keys(byHand(model)).sort(), ["control.mode", "valve.opening"]);
  assert.equal(byHand(model)["control.mode"], "manual");
  assert.ok(Math.abs(byHand(model)["valve.opening"] - opening) < 1e-6);
  assert.deepEqual(onto("drive", model), {...onto("drive", model), "control.on": "drive"});
  assert.ok(Math.abs(onto("drive", model)["valve.opening"] - opening) < 1e-6);
});

test("one that is fitted, or that is to hold something else, begins with what that reads now", () => {
  const plain = {plant: body("answer-as-it-stands").plant, answer: body("answer-as-it-stands")};
  const flow = plain.answer.state.station.flow * 3600;
  assert.ok(Math.abs(fitting(plain)["control.set_m3h"] - flow) < 0.1);
  assert.equal(fitting(plain)["control.fitted"], true);
  const gauge = plain.answer.shown.find(({id}) => id === "gauge-discharge").value / 1e5;
  assert.ok(Math.abs(holding("discharge-pressure", plain)["control.set_bar"] - gauge) < 0.01);
  const level = holding("delivery-level", plain);
  assert.equal(level["control.set_m"], plain.plant.delivery.surface_m);
  assert.ok(Math.abs(level["delivery.draw_m3h"] - flow) < 0.1);
  assert.ok(Math.abs(holding("supply-level", plain)["supply.inflow_m3h"] - flow) < 0.1);
  for (const of of limits["control.of"].choices) for (const key of Object.keys(holding(of, plain))) assert.ok(key in limits, key);
  assert.deepEqual(fitting({plant: plain.plant, answer: null}), {"control.fitted": true, "control.of": "flow"});
});

test("only the set point of what it measures is asked for, and a level's stays in its vessel", () => {
  const of = (value) => ["set_m3h", "set_bar", "set_m"].filter((key) => !silent(`control.${key}`, withEdits(plant, {"control.of": value})));
  assert.deepEqual(of("flow"), ["set_m3h"]);
  assert.deepEqual(of("suction-pressure"), ["set_bar"]);
  assert.deepEqual(of("supply-level"), ["set_m"]);
  const high = withEdits(plant, {"control.of": "supply-level"});
  assert.deepEqual(endsOf("control.set_m", limits["control.set_m"], high), [plant.supply.bottom_m, plant.supply.top_m]);
  assert.deepEqual(endsOf("control.low_percent", limits["control.low_percent"], withEdits(plant, {"control.high_percent": 70})), [0, 70]);
});

test("lost control says what is read and what is wanted, a level where it goes", () => {
  const words = createWords(["en", "notes"].map((name) => read(`site/words/${name}.ftl`)));
  const note = (where, facts) => noteEntries({answer: {...answer, notes: [{kind: "control-lost", where, facts}]}, units, words})[0];
  const flow = note("flow", {output: 1, flow: 0.01, wanted_flow: 0.02});
  assert.match(flow.text, /100\u00a0%.*the flow reads 36.0\u00a0m³\/h, the set point is 72.0\u00a0m³\/h/);
  assert.equal(flow.caution, null);
  const none = note("discharge-pressure", {output: 0, wanted_pressure: 2e5});
  assert.match(none.text, /reads –, the set point is 2.00\u00a0bar/);
  const level = note("delivery-level", {output: 1, height: 12, wanted_height: 14, flow: 0.01, draw: 0.02});
  assert.match(level.text, /36.0\u00a0m³\/h pass, 72.0\u00a0m³\/h are drawn.*14.00\u00a0m.*12.00\u00a0m/);
  assert.match(level.caution, /overflow/);
});
