import assert from "node:assert/strict";
import test from "node:test";
import {createAhead} from "../../site/js/views/case-ahead.js";

/** A Python that needs so many asks, and remembers them. */
function python(of) {
  const asked = [];
  const ask = async (kind, play, channel) => {
    asked.push({kind, play, channel});
    return {done: Math.min(asked.length, of), of};
  };
  return {asked, ask};
}

const PLAY = {case: "a", moves: [{do: "predict"}], seed: null};

test("asks again until all is reckoned, on a channel of its own", async () => {
  const {asked, ask} = python(3);
  await createAhead({ask}).go("a", PLAY);
  assert.deepEqual(asked, Array(3).fill({kind: "debrief", play: PLAY, channel: "ahead"}));
});

test("the same play is not reckoned again, another one is", async () => {
  const {asked, ask} = python(1);
  const ahead = createAhead({ask});
  await ahead.go("a", PLAY);
  await ahead.go("a", {...PLAY, moves: []});
  await ahead.go("b", PLAY);
  assert.equal(asked.length, 2);
});

test("stopped, it asks no more", async () => {
  const {asked, ask} = python(5);
  const ahead = createAhead({ask: (...what) => { if (asked.length === 1) ahead.stop(); return ask(...what); }});
  await ahead.go("a", PLAY);
  assert.equal(asked.length, 2);
});

test("a failure ends it in silence: whoever asks in earnest is told", async () => {
  let count = 0;
  const ask = async () => { count += 1; throw new Error("gone"); };
  await createAhead({ask}).go("a", PLAY);
  assert.equal(count, 1);
});
