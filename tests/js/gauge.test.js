// Dials and scales.
import assert from "node:assert/strict";
import {test} from "node:test";
import {createGauge, gaugeGeometry, numeralCount} from "../../site/js/views/gauge.js";
import {scaleMarks} from "../../site/js/views/meter.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

test("the needle turns in proportion to the reading", () => {
  const {turn} = gaugeGeometry({range: [0, 6]}, 48);
  assert.deepEqual([turn(0), turn(3), turn(6)], [-125, 0, 125]);
});

test("the needle rests against its stop beyond the scale", () => {
  assert.equal(gaugeGeometry({range: [0, 6]}, 48).turn(9), 125);
});

test("a dial without a reading has no needle and no ghost", () => {
  const {turn} = gaugeGeometry({range: [0, 6]}, 48);
  assert.deepEqual([turn(null), turn(undefined)], [null, null]);
});

test("a dial that reaches below zero marks its zero", () => {
  assert.equal(gaugeGeometry({range: [-1, 1]}, 48).zero, 0);
  assert.equal(gaugeGeometry({range: [0, 6]}, 48).zero, null);
});

test("longer numerals are fewer, so that they do not touch", () => {
  assert.ok(numeralCount([0, 6000], 48) < numeralCount([0, 6], 48));
  assert.ok(numeralCount([0, 10], 54, 1.2) <= numeralCount([0, 10], 54), "larger numerals are no more of them");
});

test("every numeral of a dial stands at a round value within its ends", () => {
  for (const range of [[0, 6], [-1, 1.5], [0, 87], [-14.5, 21.8], [0, 600], [0, 1e4]]) {
    const {major} = gaugeGeometry({range}, 48);
    assert.ok(major.length >= 2, `${range}`);
    for (const {at} of major) assert.ok(at >= range[0] && at <= range[1]);
  }
});

test("the unit stands where no needle comes, clear of the numerals at both ends", () => {
  for (const range of [[0, 6], [-1, 1.5], [0, 100], [0, 600], [-100, 150], [0, 6000], [-14.5, 21.8]]) {
    for (const r of [48, 54]) {
      const {unit: [x, y], major} = gaugeGeometry({range}, r);
      const needle = Math.tan(((180 - 125) * Math.PI) / 180) * y; // how far from the middle the outermost needle passes
      assert.ok(Math.abs(x) + 10 < needle, `${range} ${r}: needle`);
      for (const {turn, text} of major.filter((one) => Math.abs(one.turn) > 100)) {
        const place = (r - 18 - Math.max(0, 2.2 * (text.length - 2))) * Math.sin((turn * Math.PI) / 180);
        assert.ok(Math.abs(place - x) > 3.4 * text.length + 10, `${range} ${r}: ${text}`);
      }
    }
  }
});

test("a straight scale runs from end to end", () => {
  const {at, major} = scaleMarks([0, 100], [14, 150], 136);
  assert.deepEqual([at(0), at(50), at(100), at(150)], [14, 82, 150, 150]);
  assert.ok(major.length >= 2);
});

test("a reading of nearly nothing is no broken number to a screen reader", () => {
  const document = fakeDocument();
  const host = fakeHost(document, 120);
  createGauge(host, {document}).update({label: "Discharge", unit: "bar", range: [0, 6], value: -3e-17, text: "0.00", off: null, says: "0.00 bar"});
  const meter = everyNode(host).find((node) => node.getAttribute?.("role") === "meter");
  assert.equal(meter.getAttribute("aria-valuenow"), "0");
});

test("a stand-alone dial says its reading in words and reuses its nodes", () => {
  const document = fakeDocument();
  const host = fakeHost(document, 120);
  const gauge = createGauge(host, {document});
  const data = {label: "Discharge", unit: "bar", range: [0, 6], value: 3, text: "3.00", off: null, says: "3.00 bar"};
  gauge.update(data);
  const before = everyNode(host);
  gauge.update({...data, value: 4, text: "4.00", says: "4.00 bar"});
  const meter = everyNode(host).find((node) => node.getAttribute?.("role") === "meter");
  assert.equal(meter.getAttribute("aria-valuetext"), "4.00 bar");
  assert.equal(meter.getAttribute("aria-valuenow"), "4");
  assert.deepEqual(everyNode(host), before);
});
