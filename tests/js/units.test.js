import assert from "node:assert/strict";
import {test} from "node:test";
import {PRESETS, createUnits, fromFile, toFile} from "../../site/js/units.js";

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
