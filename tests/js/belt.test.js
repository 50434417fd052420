// Belt and relay in the drawing of a pump.
import assert from "node:assert/strict";
import {test} from "node:test";
import {beltOf, createBelt} from "../../site/js/views/belt.js";
import {everyNode, fakeDocument} from "./fake-document.js";

const shown = (node) => node.getAttribute("display") !== "none";
const named = (node, name) => everyNode(node).find((one) => one.attributes?.get("class")?.split(" ").includes(name));

test("the belt's runs leave both pulleys at a right angle to their radius", () => {
  for (const ratio of [0.25, 0.6, 1, 1.7, 2.5]) {
    const {pump, motor, y, runs} = beltOf(30, ratio);
    const [x1, y1, x2, y2] = runs.match(/-?[\d.]+/g).slice(4).map(Number);
    for (const [dx, dy, radius] of [[x1, y1, pump], [x2, y2 - y, motor]]) {
      assert.ok(Math.abs(Math.hypot(dx, dy) - radius) < 0.1);
      assert.ok(Math.abs(dx * (x2 - x1) + dy * (y2 - y1)) < 0.02 * 30 * y);
    }
    assert.ok(y - motor > 30, "the motor stands clear of the casing");
    assert.ok(ratio < 1 ? pump > motor : pump <= motor, "the smaller pulley turns faster");
  }
});

test("a belt is there where one is fitted, and says when it slips; the mark, when the relay trips", () => {
  const belt = createBelt(fakeDocument(), 30);
  belt.update({});
  assert.ok(!shown(named(belt.node, "belt")) && !shown(named(belt.node, "tripped")));
  belt.update({fitted: true, ratio: 1});
  assert.ok(shown(named(belt.node, "belt")) && !named(belt.node, "slips"));
  belt.update({fitted: true, ratio: 1, slips: true, trips: true});
  assert.ok(named(belt.node, "slips") && shown(named(belt.node, "tripped")));
  assert.match(named(belt.node, "belt-squeal").getAttribute("d"), /^M/);
});
