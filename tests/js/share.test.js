import assert from "node:assert/strict";
import {test} from "node:test";
import {deflateRawSync} from "node:zlib";
import {LinkError, checkState, decode, encode, rigAlone} from "../../site/js/share.js";

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

const PUZZLE = {name: "mine.toml", text: 'format = 1\ntitle = "<b>Mine</b>"\n'};
const playing = (own, place = "case") => ({...STATE, view: {place, case: own, moves: [{do: "hint"}]}});

test("a puzzle of one's own goes into a link with its play, letter by letter", async () => {
  assert.deepEqual(await decode(await encode(playing(PUZZLE))), playing(PUZZLE));
});

for (const [what, own] of Object.entries({
  "no text": {name: "mine.toml"},
  "a number as text": {...PUZZLE, text: 3},
  "something else beside": {...PUZZLE, x: 1},
  "a text longer than Python reads": {...PUZZLE, text: " ".repeat(100_001)},
  "a name as long as a page": {...PUZZLE, name: "x".repeat(401)},
  "a list": ["mine.toml", "format = 1"],
  nothing: null,
})) {
  test(`a puzzle with ${what} is refused`, () => {
    assert.throws(() => checkState(playing(own)), (error) => error instanceof LinkError && error.reason === "content");
  });
}

test("no link is made that could not be opened, however well it packs", async () => {
  await refused(encode(playing({...PUZZLE, text: "#".repeat(70_000)})), "long");
});

test("a puzzle that was left does not keep the rig from having a link", async () => {
  const long = {...PUZZLE, text: Array.from({length: 20_000}, () => Math.random().toString(36).at(2)).join("")};
  await refused(encode(playing(long, "rig")), "long");
  const {view} = await decode(await encode(rigAlone(playing(long, "rig"))));
  assert.deepEqual(view, {place: "rig"});
  assert.throws(() => rigAlone(playing(long)), LinkError);
});

test("a plant that is too large for a link says so", async () => {
  const noise = Array.from({length: 60}, (_, i) => [`k${i}`, Array.from({length: 60}, () => Math.random())]);
  await refused(encode({...STATE, plant: Object.fromEntries(noise)}), "long");
});

test("what a sentence puts behind a link does not spoil it", async () => {
  const fragment = await encode(STATE);
  for (const tail of [".", ",", "%20", "%20%0A", ")", ").", "…", "==", "&gt;"]) assert.deepEqual(await decode(`#${fragment}${tail.replace("&gt;", ">")}`), STATE, tail);
});
