import assert from "node:assert/strict";
import {test} from "node:test";
import {evenTrack, ladder, ladderTrack, trackFor} from "../../site/js/views/track.js";

test("a ladder has both ends, nought between them, and round numbers that rise", () => {
  const rungs = ladder(-0.9, 100, 0.01);
  assert.equal(rungs[0], -0.9);
  assert.equal(rungs.at(-1), 100);
  assert.ok(rungs.includes(0) && rungs.includes(-0.1) && rungs.includes(45));
  assert.ok(rungs.every((rung, i) => i === 0 || rung > rungs[i - 1]));
});

test("a ladder over decades has no step above fifteen per cent, and no more steps than a hand can tell apart", () => {
  const rungs = ladder(0.1, 1e5, 0.01);
  assert.ok(rungs.length < 160);
  assert.ok(rungs.every((rung, i) => i === 0 || rung / rungs[i - 1] < 1.15));
});

test("a value between two rungs stands at the nearer, and the arrows leave it for the next", () => {
  const track = ladderTrack(5, 2000, 1);
  assert.equal(track.value(track.place(102)), 100);
  assert.equal(track.next(102, 1), 110);
  assert.equal(track.next(102, -1), 100);
  assert.equal(track.next(2000, 1), 2000);
  assert.equal(track.next(5, -1), 5);
});

test("on an even track place and value are the same, and the arrows stay within", () => {
  const track = evenTrack(0, 1, 0.01);
  assert.equal(track.value(track.place(0.6)), 0.6);
  assert.equal(track.next(0.6, 1), 0.61);
  assert.equal(track.next(1, 1), 1);
});

test("a range within reach of the usual value is even, one over decades is a ladder", () => {
  assert.equal(trackFor(0, 1, 0.6).step, 0.01);
  assert.equal(trackFor(5, 75, 50).max, 75);
  assert.equal(trackFor(0.1, 1e5, 120).value(0), 0.1);
  assert.equal(trackFor(0, 1e5, 6).value(0), 0);
  assert.equal(trackFor(-30, 1000, 0.5).value(0), -30);
});
