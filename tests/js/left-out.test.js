import assert from "node:assert/strict";
import test from "node:test";
import {withDrawable} from "../../site/js/drawable.js";

const PLANT = {delivery: {outlet_m: 16, surface_m: 14}};
const LIMITS = {"delivery.outlet_m": {unit: "m", low: -30, high: 1010, default: null}, "delivery.surface_m": {unit: "m", low: -30, high: 1000, default: 14}};

test("a key that may be left out can be, before Python has said what suits", () => {
  assert.equal(withDrawable(PLANT, {"delivery.outlet_m": null}, LIMITS).delivery.outlet_m, null);
});

test("a key that must have a value keeps the one that stands", () => {
  assert.equal(withDrawable(PLANT, {"delivery.surface_m": null}, LIMITS).delivery.surface_m, 14);
  assert.equal(withDrawable(PLANT, {"delivery.surface_m": null}, {}).delivery.surface_m, 14);
});
