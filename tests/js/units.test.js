import assert from "node:assert/strict";
import {test} from "node:test";
import {spansOf} from "../../site/js/spans.js";
import {PRESETS, createUnits, fromFile, readNumber, toFile} from "../../site/js/units.js";

const near = (got, wanted, digits) => assert.ok(Math.abs(got - wanted) <= 0.5 * 10 ** -digits, `${got}, not ${wanted}`);

// Published: NIST SP 811 (2008), appendix B.9, from memory; tolerance half a unit of the last printed digit.
test("US units have the factors of NIST SP 811", () => {
  const us = createUnits("gpm-psi-ft", "en");
  near(us.si("flow", 1) * 1e5, 6.309020, 6); // 1 gpm in m³/s
  near(us.si("pressure", 1) / 1e3, 6.894757, 6); // 1 psi in kPa
  near(us.si("head", 1), 0.3048, 7);
  near(us.si("power", 1) / 100, 7.456999, 6); // 1 hp (550 ft·lbf/s) in W
});

test("temperatures have an offset", () => {
  const us = createUnits("gpm-psi-ft", "en");
  near(us.value("temperature", 273.15), 32, 9);
  near(us.value("temperature", 373.15), 212, 9);
  near(createUnits("ls-kpa-m").value("temperature", 293.15), 20, 9);
});

test("every preset knows every quantity, and value and si undo each other", () => {
  const quantities = new Set(Object.values(PRESETS).flatMap(Object.keys));
  for (const id of Object.keys(PRESETS)) {
    const units = createUnits(id, "en");
    for (const quantity of quantities) near(units.value(quantity, units.si(quantity, 12.5)), 12.5, 9);
  }
});

test("digits are the reader's, and the symbol follows with a space that does not break", () => {
  assert.equal(createUnits("m3h-bar-m", "en").full("flow", 42 / 3600), "42.0\u00a0m³/h");
  assert.equal(createUnits("m3h-bar-m", "de").text("pressure", 2.345e5), "2,35");
  assert.equal(createUnits("ls-kpa-m", "en").full("flow", 0.01), "10.00\u00a0L/s");
  assert.equal(createUnits("m3h-bar-m", "en").full("opening", 0.6), "60\u00a0%");
});

test("a system without a language gets English digits", () => {
  for (const none of ["C", "", "en_GB.UTF-8"]) assert.equal(createUnits("m3h-bar-m", none).text("pressure", 2.345e5), "2.35");
});

test("the range of a dial chooses the decimals", () => {
  const units = createUnits("m3h-bar-m", "en");
  assert.equal(units.text("pressure", 1e5, 6e5), "1.00");
  assert.equal(units.text("flow", 42 / 3600, 100 / 3600), "42.0");
  assert.equal(units.text("flow", 1 / 3600, 2 / 3600), "1.00");
});

test("what is not a number is a dash, and nothing is minus zero", () => {
  const units = createUnits("m3h-bar-m", "en");
  assert.equal(units.text("flow", null), "–");
  assert.equal(units.text("flow", Number.NaN), "–");
  assert.equal(units.text("flow", -1e-9), "0.0");
});

test("an unknown preset is the first, an unknown quantity an error", () => {
  const units = createUnits("toString", "en");
  assert.equal(units.id, "m3h-bar-m");
  assert.throws(() => units.symbol("colour"), RangeError);
});

test("keys of a plant file carry their unit", () => {
  near(fromFile("supply.gas_bar", 1.5), 1.5e5, 6);
  near(fromFile("valve.opening", 0.3), 0.3, 12);
  near(fromFile("liquid.temperature_c", 20), 293.15, 9);
  near(toFile("discharge.bore_mm", 0.08), 80, 9);
});

const NUMBERS = [
  ["42,5", 42.5], ["42.5", 42.5], [" 42 ", 42], ["−3,25", -3.25], ["+7", 7], [".5", 0.5], ["5.", 5], ["0,0", 0],
  ["1.234,5", 1234.5], ["1,234.5", 1234.5], ["1\u202f234,5", 1234.5], ["1 234 567", 1234567], ["1’234.5", 1234.5], ["1,234,567", 1234567],
  ["1,234", 1.234],
];

test("a number is read with point or comma, whatever groups its digits", () => {
  for (const [text, number] of NUMBERS) assert.equal(readNumber(text), number, text);
});

test("what is no number is none, rather than another", () => {
  for (const text of ["", " ", "-", ".", ",", "e", "1e999", "0x10", "Infinity", "12 m", "1,2,3", "12.34,5", "0.042,5", "1.23.456", "4 2,5", "--1"]) {
    assert.ok(Number.isNaN(readNumber(text)), text);
  }
});

test("what a number box shows is read back as it was, in every language", () => {
  for (const locale of ["en", "de", "fr-CH", "sv", "ar-EG", "hi", "fa"]) {
    const units = createUnits("m3h-bar-m", locale);
    for (const height of [-1234.5, -0.05, 0, 12, 2.345]) near(readNumber(units.plain("height", height)), height, 9);
  }
  assert.equal(createUnits("m3h-bar-m", "de").plain("frequency", 42.5), "42,5");
  assert.equal(createUnits("m3h-bar-m", "en").plain("height", 1.5), "1.50");
  assert.equal(createUnits("m3h-bar-m", "en").plain("opening", 0.6), "60");
});

test("all heights have as many decimals, whatever the size of their vessel", () => {
  const units = createUnits("m3h-bar-m", "en");
  assert.deepEqual([units.text("height", 2, 4), units.text("height", 14, 12)], ["2.00", "14.00"]);
});

test("where flows are tiny they get the digits that their meter has, and never fewer than usual", () => {
  const tiny = createUnits("m3h-bar-m", "en", {flow: 0.05 / 3600});
  assert.equal(tiny.full("flow", 0.0123 / 3600), "0.0123\u00a0m³/h");
  assert.equal(createUnits("m3h-bar-m", "en", {flow: 1000 / 3600}).full("flow", 42 / 3600), "42.0\u00a0m³/h");
  assert.equal(createUnits("m3h-bar-m", "en", {flow: NaN}).full("flow", 42 / 3600), "42.0\u00a0m³/h");
});

test("a power that the usual digits would hide has three, and no other quantity", () => {
  const units = createUnits("m3h-bar-m", "en");
  assert.equal(units.full("power", 8.12), "0.00812\u00a0kW");
  assert.equal(units.full("power", 41.2), "0.0412\u00a0kW");
  assert.equal(units.full("power", 412), "0.41\u00a0kW");
  assert.equal(units.full("power", 0), "0.00\u00a0kW");
  assert.equal(units.full("head", 0.04), "0.0\u00a0m");
});

test("a small plant's heads, currents and powers have digits for its size, and a large one's are as usual", () => {
  const plant = (kw) => ({drive: {motor_kw: kw}, meters: {flow_range_m3h: 10}});
  const answer = (head, high) => ({curves: {station: [head, 0.7 * head, null]}, shown: [{id: "ammeter-1", high}], state: {synchronous_speed: 100 * Math.PI}});
  const units = (...size) => createUnits("m3h-bar-m", "en", spansOf(plant(size[0]), answer(size[1], size[2])));
  const [tiny, usual] = [units(0.02, 0.9, 0.4), units(7.5, 49, 25)];
  assert.deepEqual(["head", "power", "current", "torque"].map((quantity) => tiny.text(quantity, 0.05)), ["0.050", "0.000050", "0.050", "0.0500"]);
  assert.deepEqual(["head", "power", "current", "torque"].map((quantity) => usual.text(quantity, 12.34567)), ["12.3", "0.0123", "12.3", "12.3"]);
  assert.deepEqual(createUnits("m3h-bar-m", "en", spansOf(null, null)).text("head", 0.05), "0.1");
});

test("digits stay while a curve moves a little", () => {
  const head = (most) => spansOf(null, {curves: {station: [most]}}).head;
  assert.equal(head(21), head(49));
  assert.equal(head(50), 50);
});

test("by how much a reading may err has a digit that counts, on a wide scale too", () => {
  const units = createUnits("m3h-bar-m", "en");
  const wide = 400 / 3600;
  assert.equal(units.full("flow", 0.3 / 3600, wide), "0\u00a0m³/h");
  assert.equal(units.error("flow", 0.3 / 3600, wide), "0.3\u00a0m³/h");
  assert.equal(units.error("flow", 5 / 3600, wide), units.full("flow", 5 / 3600, wide));
  assert.equal(units.error("flow", 0, wide), units.full("flow", 0, wide));
});
