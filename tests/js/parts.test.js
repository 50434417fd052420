// Which panel has which key: everything the engine knows, once, with words, unit and a control.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {withEdits} from "../../site/js/state.js";
import {PRESETS, createUnits, fromFile} from "../../site/js/units.js";
import {endsOf, isFault, kindOf, liquidEdits, optional, quantityOf, showsNow, silent, slugOf, startOf} from "../../site/js/views/part-keys.js";
import {usualFirst} from "../../site/js/views/part-choices.js";
import {nameOf} from "../../site/js/views/part-taps.js";
import {aboutPart, faultsIn} from "../../site/js/views/parts.js";
import {PARTS, inFileOnly, inventory, keysOf, known, partById, partOfDrawn, partOfKey, stands} from "../../site/js/views/parts-table.js";
import {EQUAL, OWN, pumpChoice, pumpEdits} from "../../site/js/views/pump-choice.js";
import {createWords} from "../../site/js/words.js";

const read = (path) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const reply = (name) => JSON.parse(read(`tests/door/messages/${name}.json`)).reply.body;
const {limits} = reply("catalogue");
const answer = reply("answer-as-it-stands");
const {plant} = answer;
const words = createWords(["en", "parts"].map((name) => read(`site/words/${name}.ftl`)));
const KEYS = Object.keys(limits).filter((key) => partOfKey(key));
const HERE = PARTS.filter((part) => known(part, limits));

test("every key that the engine knows stands in a panel, or belongs into a file alone", () => {
  const lost = Object.keys(limits).filter((key) => !partOfKey(key) && !inFileOnly(key));
  assert.deepEqual(lost, []);
  const shown = HERE.flatMap((part) => [...keysOf(part, limits), part.fitted].filter((key) => typeof key === "string"));
  assert.deepEqual([...shown].sort(), [...KEYS].sort());
});

test("a key that is named leads, and the longest claim on it counts", () => {
  assert.deepEqual(keysOf(partById("valve"), limits).slice(0, 1), ["valve.opening"]);
  assert.equal(partOfKey("pump.second.motor_kw"), "pump-2");
  assert.equal(partOfKey("pump.curve.head_m"), null);
  assert.ok(inFileOnly("pump.curve.head_m"));
  assert.ok(!inFileOnly("pump.centre_m"));
});

test("every key in a panel has its name, and each of its words too", () => {
  assert.deepEqual(KEYS.filter((key) => key !== partById(partOfKey(key)).fitted && !words.has(`key-${slugOf(key)}`)), []);
  const unnamed = KEYS.filter((key) => kindOf(limits[key]) === "choice")
    .flatMap((key) => limits[key].choices.map((value) => `choice-${slugOf(key)}-${value}`)).filter((id) => !words.has(id));
  assert.deepEqual(unnamed, []);
});

test("every part has its name, and what can be added says what for", () => {
  const wanted = HERE.flatMap(({id, fitted, on}) => [
    `part-${id}`, ...(fitted === null ? [] : [`part-${id}-about`]), ...(on === null ? [] : [`part-${id}-add`, `part-${id}-remove`]),
  ]);
  assert.deepEqual(wanted.filter((id) => !words.has(id)), []);
});

test("what can be added is offered by a part that always stands", () => {
  for (const {id, fitted, on} of HERE) {
    assert.equal(on !== null, typeof fitted === "string", id);
    if (on) assert.equal(partById(on).fitted, null, id);
  }
});

test("every number has the quantity that its unit says", () => {
  const units = createUnits("m3h-bar-m", "en");
  for (const key of KEYS.filter((each) => ["number", "pair"].includes(kindOf(limits[each])))) {
    const quantity = quantityOf(key);
    const {unit} = limits[key];
    if (unit === "-") assert.ok((limits[key].whole ? ["count"] : ["ratio", "opening"]).includes(quantity), key);
    else assert.equal(units.symbol(quantity), unit, key);
    if (quantity !== "opening") assert.ok(Math.abs(units.value(quantity, fromFile(key, 7)) - 7) < 1e-9, key);
    for (const preset of Object.values(PRESETS)) assert.ok(preset[quantity], key);
  }
});

test("every key in a panel has a kind of control, but for the texts that are choices", () => {
  const texts = KEYS.filter((key) => kindOf(limits[key]) === "text");
  assert.deepEqual(texts.sort(), ["liquid.name", "pump.model", "pump.second.model"]);
});

test("the ends of a level, a wall and a rim follow the plant", () => {
  assert.deepEqual(endsOf("supply.surface_m", limits["supply.surface_m"], plant), [plant.supply.bottom_m, plant.supply.top_m]);
  assert.equal(endsOf("supply.top_m", limits["supply.top_m"], plant)[0], plant.supply.surface_m);
  assert.equal(endsOf("discharge.roughness_mm", limits["discharge.roughness_mm"], plant)[1], plant.discharge.bore_mm / 20);
  assert.deepEqual(endsOf("gauges.suction.class", limits["gauges.suction.class"], plant), [0.1, 4]);
});

test("a number that may be left out begins within its ends", () => {
  const free = KEYS.filter((key) => optional(key, limits[key]));
  assert.ok(free.includes("delivery.outlet_m"));
  for (const key of free) {
    const [low, high] = endsOf(key, limits[key], plant);
    const value = startOf(key, {plant, answer, catalogue: {limits}});
    assert.ok(value >= low && value <= high, key);
  }
});

test("another liquid begins as the present one is, and water has no properties of its own", () => {
  const edits = liquidEdits("other", {answer, catalogue: {limits}});
  assert.ok(Math.abs(edits["liquid.density_kgm3"] - answer.state.liquid.density) < 0.01);
  assert.ok(Math.abs(edits["liquid.viscosity_mpas"] / 1000 - answer.state.liquid.viscosity) < 1e-6);
  assert.equal(liquidEdits("water", {answer, catalogue: {limits}})["liquid.density_kgm3"], null);
  assert.ok(Object.keys(liquidEdits("water", {answer, catalogue: {limits}})).every((key) => key in limits));
  assert.ok(silent("liquid.density_kgm3", plant));
  assert.ok(!silent("liquid.density_kgm3", withEdits(plant, {"liquid.name": "other"})));
});

test("things in the drawing open the panel of their name, their key or their instrument", () => {
  assert.equal(partOfDrawn("pump-1"), "pump-1");
  assert.equal(partOfDrawn("check-2"), "check-1");
  assert.equal(partOfDrawn("strainer"), "suction-line");
  assert.equal(partOfDrawn("drive.frequency_hz"), "drive");
  assert.equal(partOfDrawn("nothing"), null);
  const node = (attributes) => ({closest: (query) => (query.slice(1, -1) in attributes ? {getAttribute: (name) => attributes[name]} : null)});
  assert.equal(nameOf(node({"data-control": "valve.opening"})), "valve.opening");
  assert.equal(nameOf(node({"data-control": "valve.opening", "data-part": "valve"})), "valve");
  assert.equal(nameOf(node({})), null);
});

test("what stands and what can be added follow the plant", () => {
  const ids = (parts) => parts.map(({id}) => id);
  const one = inventory(plant, limits);
  assert.ok(ids(one.offered).includes("branch"));
  assert.ok(!ids(one.standing).includes("pump-2"));
  const two = inventory(withEdits(plant, {"branch.fitted": true, "pump.arrangement": "in-line"}), limits);
  assert.ok(ids(two.standing).includes("branch"));
  assert.ok(ids(two.standing).includes("pump-2"));
  assert.ok(!stands(partById("branch"), plant));
});

test("a part that is not there says what it is for, and one without effect says why", () => {
  assert.equal(aboutPart(partById("branch"), false, plant, words), words("part-branch-about"));
  assert.equal(aboutPart(partById("valve"), true, plant, words), "");
  assert.equal(aboutPart(partById("valve"), true, withEdits(plant, {"discharge.attached": false}), words), words("control-idle"));
});

test("a plant with a pump of its own offers it, and going back to it is an edit left out", () => {
  assert.deepEqual(pumpChoice("medium", false, ["small", "medium"]), {value: "medium", options: ["small", "medium"]});
  assert.deepEqual(pumpChoice(undefined, true, ["small"]), {value: OWN, options: [OWN, "small"]});
  assert.deepEqual(pumpChoice("axial", false, ["small"]).options, ["axial", "small"]);
  assert.deepEqual(pumpEdits({"pump.model": OWN, "pump.second.model": EQUAL}), {"pump.model": undefined, "pump.second.model": null});
});

test("what is wrong with an instrument is called the same on each gauge, and told apart from the rest", () => {
  assert.equal(slugOf("gauges.after_valve.fault.zero_bar"), "gauges-fault-zero_bar");
  assert.equal(slugOf("gauges.suction.height_m"), "gauges-suction-height_m");
  assert.ok(isFault("gauges.suction.fault.zero_bar") && isFault("meters.flow_fault.root"));
  assert.ok(!isFault("meters.flow_kind") && !isFault("gauges.suction.class"));
});

test("a gauge that is shut off keeps what it shows, on its own scale", () => {
  const shown = [{id: "gauge-after-valve", value: 43.5e5, low: 0, high: 87e5}];
  assert.equal(showsNow("after_valve", {answer: {shown}, plant}), 3);
  assert.equal(showsNow("suction", {answer: {shown: []}, plant}), 0);
});

test("what only an orifice has is silent on another meter, and what a shut gauge keeps while it is open", () => {
  const orifice = withEdits(plant, {"meters.flow_kind": "orifice"});
  for (const key of ["meters.flow_density_kgm3", "meters.flow_fault.root", "meters.flow_fault.plate"]) {
    assert.ok(silent(key, plant) && !silent(key, orifice), key);
  }
  assert.ok(silent("gauges.suction.fault.frozen_bar", plant));
  assert.ok(!silent("gauges.suction.fault.frozen_bar", withEdits(plant, {"gauges.suction.fault.root_valve": "shut"})));
});

test("the heading of the faults counts those that are set", () => {
  const keys = keysOf(partById("gauge-discharge"), limits);
  const count = (edits) => faultsIn(keys, {plant: withEdits(plant, edits), catalogue: {limits}});
  assert.equal(count({}), 0);
  assert.equal(count({"gauges.discharge.height_m": 4}), 0);
  assert.equal(count({"gauges.discharge.fault.root_valve": "shut", "gauges.discharge.fault.frozen_bar": 2, "gauges.discharge.fault.zero_bar": -0.2}), 2);
});

test("of a few words the usual one stands first, and none is lost", () => {
  const {choices, default: usual} = limits["gauges.suction.fault.tapping"];
  assert.equal(usualFirst(choices, usual)[0], "own");
  assert.deepEqual([...usualFirst(choices, usual)].sort(), [...choices].sort());
});

test("numbers that count have no decimals", () => {
  assert.equal(createUnits("m3h-bar-m", "en").plain(quantityOf("gauges.suction.serial"), 7), "7");
});
