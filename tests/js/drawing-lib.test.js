// Scales, shapes and the slider behind every drawn control.
import assert from "node:assert/strict";
import {createHash} from "node:crypto";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {keyed, makeSlider, rounded} from "../../site/js/lib/drag.js";
import {createMotion} from "../../site/js/lib/motion.js";
import {between, clampedScale, decimals, linearScale, roundTicks, roundTop} from "../../site/js/lib/scale.js";
import {bentPath, polar, spread} from "../../site/js/lib/shape.js";
import {el, say, set} from "../../site/js/lib/svg.js";
import {fakeDocument} from "./fake-document.js";

test("the vendored module is the file whose hash its README gives", () => {
  const folder = new URL("../../site/js/vendor/d3/", import.meta.url);
  const hash = createHash("sha256").update(readFileSync(new URL("d3.js", folder))).digest("hex");
  assert.ok(readFileSync(new URL("README.md", folder), "utf8").includes(hash));
});

test("a value between two points lies on the straight line, and nothing lies beside a gap", () => {
  assert.equal(between([0, 1, 2], [0, 10, 30], 1.5), 20);
  assert.equal(between([0, 1, 2], [0, null, 30], 1.5), null);
  assert.equal(between([0, 1, 2], [0, 10, 30], 2.1), null);
});

test("ticks carry as many decimals as their step needs", () => {
  assert.deepEqual([20, 1, 0.5, 0.25, 0.05].map(decimals), [0, 0, 1, 1, 2]);
});

test("a straight scale runs both ways and beyond its ends, and a clamped one stays between them", () => {
  const scale = linearScale([10, 20], [100, 0]);
  assert.deepEqual([10, 15, 20, 30].map(scale), [100, 50, 0, -100]);
  assert.deepEqual([100, 50, -100].map(scale.invert), [10, 15, 30]);
  assert.deepEqual([0, 15, 30].map(clampedScale([10, 20], [100, 0])), [100, 50, 0]);
});

test("a scale without length puts everything in the middle, never nowhere", () => {
  assert.equal(linearScale([5, 5], [0, 10])(7), 5);
  assert.equal(linearScale([0, 8], [3, 3]).invert(3), 4);
});

test("round ticks are the same ones when they are asked for again, and others for other ends", () => {
  assert.equal(roundTicks(0, 6, 6), roundTicks(0, 6, 6));
  assert.deepEqual(roundTicks(0, 6, 6), [0, 1, 2, 3, 4, 5, 6]);
  assert.deepEqual([roundTicks(0, 6, 3), roundTicks(0, 12, 3)], [[0, 2, 4, 6], [0, 5, 10]]);
});

test("an axis keeps a lower end just below zero and rounds its upper end", () => {
  assert.deepEqual(roundTop(-1.5, 43, 5), [-1.5, 50]);
});

test("a turn of zero points straight up, a quarter turn to the right", () => {
  const near = (got, wanted) => got.forEach((value, i) => assert.ok(Math.abs(value - wanted[i]) < 1e-9, `${got}`));
  near(polar(0, 0, 10, 0), [0, -10]);
  near(polar(0, 0, 10, 90), [10, 0]);
});

test("a bend is never larger than half of its shorter leg", () => {
  assert.equal(bentPath([[0, 0], [4, 0], [4, 100]], 10), "M0,0L2,0Q4,0 4,2L4,100");
});

test("a run that turns back on itself or has no length is still a path", () => {
  assert.ok(!bentPath([[0, 0], [0, 0], [5, 0], [5, 0]], 4).includes("NaN"));
});

test("labels keep their distance and their order, and stay within the ends", () => {
  const places = spread([50, 52, 51, 10], 16, 0, 90);
  const sorted = [...places].sort((a, b) => a - b);
  sorted.slice(1).forEach((at, i) => assert.ok(at - sorted[i] >= 16 - 1e-9));
  assert.ok(sorted[0] >= 0 && sorted.at(-1) <= 90);
  assert.ok(places[0] < places[2] && places[2] < places[1]);
});

test("text goes in as text, never as markup", () => {
  const node = el(fakeDocument(), "text", {}, "<b>not bold</b>");
  assert.equal(node.textContent, "<b>not bold</b>");
});

test("an attribute is written once and again only when it changes", () => {
  const node = el(fakeDocument(), "circle", {r: 5});
  for (let i = 0; i < 3; i++) set(node, "r", 5);
  say(node, "a");
  say(node, "a");
  assert.equal(node.writes, 2);
  set(node, "r", null);
  assert.equal(node.getAttribute("r"), null);
});

test("values fall on the grid of their step, and the ends count as on it", () => {
  assert.equal(rounded(0.437, 0.01, 0, 1), 0.44);
  assert.equal(rounded(4.3, 0.5, 0, 4.2), 4.2);
  assert.equal(rounded(-3, 0.5, 0, 4), 0);
});

test("arrow keys step, page keys step tenfold, home and end go to the ends, others do nothing", () => {
  const key = (name) => keyed({key: name}, 0.5, 0.01, 0, 1);
  assert.deepEqual(["ArrowUp", "ArrowDown", "PageUp", "Home", "End", "a"].map(key), [0.51, 0.49, 0.6, 0, 1, null]);
});

/** A slider over 0 … 1 that moves by a hundredth for each pixel upward. */
function slider(off = false) {
  const sent = [];
  const node = fakeDocument().createElementNS("", "g");
  const describe = makeSlider({
    node, key: "valve.opening", label: "Control valve", send: (action) => sent.push(action),
    read: () => ({value: 0.5, low: 0, high: 1, step: 0.01, text: "50 % open", off}),
    move: (start, from, to) => start + (from.y - to.y) / 100,
  });
  describe();
  return {node, sent};
}

test("a drag previews while it moves and commits when it ends", () => {
  const {node, sent} = slider();
  node.tell("pointerdown", {clientX: 0, clientY: 100});
  node.tell("pointermove", {clientX: 0, clientY: 90});
  node.tell("pointermove", {clientX: 0, clientY: 80});
  node.tell("pointerup");
  assert.deepEqual(sent.map(({type, edits}) => [type, edits?.["valve.opening"]]),
    [["pick", undefined], ["preview", 0.6], ["preview", 0.7], ["commit", 0.7]]);
});

test("a drag that is broken off takes its preview back", () => {
  const {node, sent} = slider();
  node.tell("pointerdown", {clientX: 0, clientY: 100});
  node.tell("pointermove", {clientX: 0, clientY: 90});
  node.tell("pointercancel");
  assert.equal(sent.at(-1).type, "cancel");
});

test("a touch that does not move changes nothing", () => {
  const {node, sent} = slider();
  node.tell("pointerdown", {clientX: 0, clientY: 100});
  node.tell("pointerup");
  assert.deepEqual(sent.map(({type}) => type), ["pick"]);
});

test("a part that is off neither drags nor takes the focus", () => {
  const {node, sent} = slider(true);
  node.tell("pointerdown", {clientX: 0, clientY: 100});
  node.tell("pointermove", {clientX: 0, clientY: 50});
  node.tell("keydown", {key: "ArrowUp"});
  assert.deepEqual(sent, []);
  assert.equal(node.getAttribute("tabindex"), "-1");
});

test("the clock of the drawing runs only while something moves", () => {
  const {defaultView, frames} = fakeDocument();
  let left = 3;
  const motion = createMotion(defaultView, () => --left > 0);
  motion.wake();
  motion.wake();
  assert.equal(frames.length, 1);
  for (let now = 16; frames.length && now < 500; now += 16) frames.shift()(now);
  assert.equal(left, 0);
  assert.equal(frames.length, 0);
});
