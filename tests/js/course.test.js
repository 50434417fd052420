// What is kept of plays, the order of the map, and a result as a line of text.
import assert from "node:assert/strict";
import {readFileSync} from "node:fs";
import {test} from "node:test";
import {createKept} from "../../site/js/kept.js";
import {createCourse, drawSeed, halfPlayed, stageOf} from "../../site/js/course.js";
import {COURSE, families, nextCase} from "../../site/js/course-order.js";
import {csv, decode, decodeAll, encode, resultOf} from "../../site/js/result-code.js";

const noStorage = () => {
  throw new Error("refused");
};
const PREDICT = {do: "predict", says: "up", suspects: "machine"};
const DECIDE = {do: "decide", choice: "worn", action: "overhaul"};

test("a half-played case is gone on with where it was left, with its numbers", () => {
  const course = createCourse(createKept(noStorage));
  course.moved("first", 17, [PREDICT]);
  assert.deepEqual(course.of("first"), {seed: 17, moves: [PREDICT], results: []});
  assert.equal(stageOf(course.of("first")), "begun");
  assert.ok(halfPlayed(course.of("first")));
  assert.equal(stageOf(course.of("second")), "new");
});

test("a result stays when its case is begun again, and the same end counts once", () => {
  const course = createCourse(createKept(noStorage));
  course.moved("first", null, [PREDICT, DECIDE]);
  const result = resultOf(VIEW);
  course.finished("first", result);
  course.finished("first", resultOf(VIEW, 61.5));
  course.moved("first", 5, []);
  assert.deepEqual(course.of("first"), {seed: 5, moves: [], results: [{...result, code: resultOf(VIEW, 61.5).code, score: 61.5}]});
  assert.equal(stageOf(course.of("first")), "done");
  assert.ok(!halfPlayed({moves: [PREDICT, DECIDE], results: []}));
});

test("one case or all of them can be forgotten", () => {
  const course = createCourse(createKept(noStorage));
  course.moved("first", null, [PREDICT]);
  course.moved("second", null, [PREDICT]);
  course.forget("first");
  assert.deepEqual(Object.keys(course.all), ["second"]);
  course.forgetAll();
  assert.deepEqual(course.all, {});
});

test("what a newer page has kept is left alone, and damage is nothing", () => {
  const kept = createKept(noStorage);
  const newer = {format: 2, plays: []};
  kept.set("course", newer);
  const course = createCourse(kept);
  course.moved("first", null, [PREDICT]);
  assert.deepEqual(kept.get("course"), newer);
  assert.deepEqual(course.of("first").moves, []);
  kept.set("course", {format: 1, cases: {first: {seed: "x", moves: "y", results: [7]}, second: null}});
  assert.deepEqual(course.of("first"), {seed: null, moves: [], results: []});
  assert.equal(stageOf(course.of("second")), "new");
});

test("a case of this course is kept beside one that nobody knows here", () => {
  const kept = createKept(noStorage);
  kept.set("course", {format: 1, cases: {"from-elsewhere": {seed: 3, moves: [PREDICT], results: []}}});
  const course = createCourse(kept);
  course.moved("first", null, [PREDICT]);
  assert.deepEqual(Object.keys(course.all).sort(), ["first", "from-elsewhere"]);
});

test("a seed is drawn within its limits and is another than before", () => {
  assert.equal(drawSeed(null, () => 0), 1);
  assert.equal(drawSeed(null, () => 0.9999999999), 999_999);
  assert.equal(drawSeed(1, () => 0), 2);
  assert.equal(drawSeed(999_999, () => 0.9999999999), 1);
});

const heading = (id, family, more = {}) => ({id, title: id, level: "operator", family, worked: false, after: [], ...more});

test("the map begins with the easiest family, each with its worked case, then what comes after what", () => {
  const cases = [
    heading("d", "second"), heading("c", "first", {after: ["b"], level: "first-steps"}), heading("b", "first", {after: ["x"]}),
    heading("z", "first", {worked: true, level: "first-steps"}),
  ];
  assert.deepEqual(families(cases).map(({family, cases: all}) => [family, all.map(({id}) => id)]), [["first", ["z", "b", "c"]], ["second", ["d"]]]);
  assert.equal(nextCase(cases, (id) => id === "z").id, "b");
  assert.equal(nextCase(cases, () => true), null);
});

test("two cases that wait for each other are both on the map", () => {
  const cases = [heading("a", "f", {after: ["b"]}), heading("b", "f", {after: ["a"]})];
  assert.deepEqual(families(cases)[0].cases.map(({id}) => id).sort(), ["a", "b"]);
});

const VIEW = {
  id: "the-dropped-gauge", seed: 4711, minutes: 11.5, money: 0, hints: [[]],
  prediction: {says: "up", suspected: "machine"},
  verdict: {choice: "worn", action: "overhaul", rightness: "wrong", outcome: "needless", minutes: 480},
  reveal: {path: {steps: [{id: "flow"}, {id: "stem"}], refused: ["open-it"]}},
};

test("a result goes into a line of text and comes out the same", () => {
  const result = resultOf(VIEW);
  assert.match(result.code, /^LF1\.the-dropped-gauge\.4711\.up\.machine\.flow\+stem\.open-it\./);
  assert.deepEqual(decode(result.code), result);
  assert.deepEqual(decode(`Anna: ${result.code.toUpperCase()} thanks`), result);
});

test("a mistyped code is no result", () => {
  const {code} = resultOf(VIEW);
  assert.equal(decode(code.replace("worn", "warn")), null);
  assert.equal(decode(code.slice(0, -1)), null);
  assert.equal(decode("nothing"), null);
});

test("many lines give a table with whose each is, and tell which cannot be read", () => {
  const {code} = resultOf(VIEW);
  const {results, damaged} = decodeAll(`Anna: ${code}\n\nBen – ${code.replace("up", "down")}\nhello\n${code}`);
  assert.deepEqual(results.map(({who}) => who), ["Anna", ""]);
  assert.deepEqual(damaged.length, 1);
});

test("the table of results is safe to open elsewhere", () => {
  const text = csv([{...resultOf(VIEW), who: '=1+"1"'}], (column) => column);
  const [head, row] = text.split("\r\n");
  assert.ok(head.startsWith("who,case,seed,says"));
  assert.ok(row.startsWith(`"'=1+""1""",the-dropped-gauge,4711,up,machine,flow stem,open-it,1,worn,overhaul,wrong,needless,11.5,0,480,`));
});

test("a play of a file of one's own has a code too", () => {
  assert.equal(decode(encode({...resultOf(VIEW), case: "mine-2"})).case, "mine-2");
  assert.equal(resultOf({...VIEW, id: "Übung 3 (neu)"}).case, "u-bung-3-neu");
});

test("every family of the packaged cases has its place in the course, and its name", () => {
  const packaged = JSON.parse(readFileSync(new URL("../door/messages/catalogue.json", import.meta.url), "utf8")).reply.body.cases;
  assert.deepEqual(new Set(packaged.map(({family}) => family)), new Set(COURSE));
  const named = readFileSync(new URL("../../site/words/cases.ftl", import.meta.url), "utf8");
  for (const family of COURSE) assert.match(named, new RegExp(`^case-family-${family} = `, "m"));
  for (const {cases} of families(packaged)) assert.deepEqual(cases.map(({worked}) => worked), [true, ...cases.slice(1).map(() => false)]);
});
