import assert from "node:assert/strict";
import {test} from "node:test";
import {deflateRawSync} from "node:zlib";
import {LinkError, checkState, decode, encode} from "../../site/js/share.js";

const STATE = {
  format: 1,
  plant: "wash-line",
  edits: {"valve.opening": 0.3, "pump.arrangement": "in-line", "discharge.attached": false},
  view: {units: "ls-kpa-m", curves: true, place: "rig"},
};

const link = (data) => `#s=${deflateRawSync(typeof data === "string" ? data : JSON.stringify(data)).toString("base64url")}`;

const refused = (promise, reason) =>
  assert.rejects(promise, (error) => {
    assert.ok(error instanceof LinkError, String(error));
    assert.equal(error.reason, reason);
    return true;
  });

test("a state goes into an address and comes back the same", async () => {
  const fragment = await encode(STATE);
  assert.match(fragment, /^s=[A-Za-z0-9_-]+$/);
  assert.ok(fragment.length < 400, `${fragment.length} characters`);
  assert.deepEqual(await decode(`#${fragment}`), STATE);
});

test("a whole plant and a played case come back the same", async () => {
  const plant = {format: 1, title: "Krüger’s line ≤ 3", pump: {curve: {flow_m3h: [0, 10, 20]}}, gauges: {suction: {range_bar: [-1, 1.5]}}};
  const view = {place: "case", case: "the-dropped-gauge", moves: [{do: "predict", says: "down"}]};
  const state = {format: 1, plant, edits: {}, view};
  assert.deepEqual(await decode(await encode(state)), state);
});

test("an address without a state is none", async () => {
  for (const fragment of ["", "#", "#rig"]) assert.equal(await decode(fragment), null);
});

test("a damaged address is said to be damaged", async () => {
  const good = await encode(STATE);
  await refused(decode(good.slice(0, -9)), "broken");
  await refused(decode("s=***"), "broken");
  await refused(decode(link("{not json")), "broken");
});

test("a bomb is not unpacked", async () => {
  await refused(decode(link(JSON.stringify({format: 1, plant: " ".repeat(5_000_000)}))), "long");
  await refused(decode(`s=${"A".repeat(20_000)}`), "long");
});

test("a link of a later format asks for a reload", async () => {
  await refused(decode(link({...STATE, format: 2})), "newer");
});

for (const [what, data] of Object.entries({
  "no table": [1, 2],
  "no format": {plant: "wash-line"},
  "a path as plant": {...STATE, plant: "../secret"},
  "markup as plant": {...STATE, plant: "<img src=x>"},
  "a number as plant": {...STATE, plant: 4},
  "odd keys in edits": {...STATE, edits: {"valve.opening;": 1}},
  "one word as key": {...STATE, edits: {opening: 1}},
  "a table as value": {...STATE, edits: {"valve.opening": {}}},
  "units nobody knows": {...STATE, view: {units: "toString"}},
  "a case with a path": {...STATE, view: {case: "../../x"}},
  "more moves than Python follows": {...STATE, view: {moves: Array(41).fill({do: "hint"})}},
  "a deep plant": {...STATE, plant: {a: {b: {c: {d: {e: 1}}}}}},
  "a long text": {...STATE, edits: {"plant.title": "x".repeat(2000)}},
})) {
  test(`a link with ${what} is refused`, () => refused(decode(link(data)), "content"));
}

test("a link cannot reach prototypes", async () => {
  await refused(decode(link('{"format":1,"plant":"a","edits":{"__proto__.x":1}}')), "content");
  await refused(decode(link('{"format":1,"plant":{"__proto__":{"x":1}}}')), "content");
  assert.equal({}.x, undefined);
});

test("a view's unknown parts are left out", () => {
  const {view} = checkState({...STATE, view: {...STATE.view, colour: "red"}});
  assert.deepEqual(view, STATE.view);
});

test("a plant that is too large for a link says so", async () => {
  const noise = Array.from({length: 60}, (_, i) => [`k${i}`, Array.from({length: 60}, () => Math.random())]);
  await refused(encode({...STATE, plant: Object.fromEntries(noise)}), "long");
});
