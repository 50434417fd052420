// Puzzles made for practice: how they are called and kept, and how one is made, piece after piece.
import assert from "node:assert/strict";
import {test} from "node:test";
import {createKept} from "../../site/js/kept.js";
import {createMaker} from "../../site/js/maker.js";
import {createPractice, isWish, playId, titleOf, typedSeed, wishOf} from "../../site/js/practice.js";
import {checkState} from "../../site/js/share.js";

const noStorage = () => {
  throw new Error("refused");
};
const FILE = {name: "practice-operator-7.toml", text: 'format = 0\ntitle = "A quiet \\"hour\\""\n'};
const WISH = {seed: 7, level: "operator"};
const view = (text = FILE.text) => ({case: {...FILE, text}, practice: WISH});

test("a wish is a number and a level, or none, and nothing else", () => {
  for (const good of [WISH, {seed: 999_999, level: null}]) assert.ok(isWish(good));
  for (const bad of [null, 7, {seed: 7}, {seed: 0, level: null}, {seed: 7, level: "child"}, {...WISH, more: 1}, [7, null]]) assert.ok(!isWish(bad), JSON.stringify(bad));
});

test("a result's name says what was wished for", () => {
  assert.deepEqual(wishOf("practice-first-steps-12"), {seed: 12, level: "first-steps"});
  assert.deepEqual(wishOf("practice-12"), {seed: 12, level: null});
  for (const other of ["practice", "practice-0", "practice-oil-press-3", "the-dropped-gauge", null]) assert.equal(wishOf(other), null);
});

test("a number is typed as people write it", () => {
  for (const [text, seed] of [["", null], ["  ", null], ["7", 7], ["12 345", 12345], ["12,345", 12345], ["999999", 999_999], ["0", undefined], ["1234567", undefined], ["7a", undefined], ["-7", undefined]]) {
    assert.equal(typedSeed(text), seed, text);
  }
});

test("a title stands in its file, or its file's name does", () => {
  assert.equal(titleOf(FILE), 'A quiet "hour"');
  assert.equal(titleOf({name: "mine.toml", text: "title = oh"}), "mine");
});

test("plays are kept under an id of the text, so that a number which gives another puzzle later overwrites nothing", () => {
  assert.equal(playId({case: "the-dropped-gauge"}), "the-dropped-gauge");
  assert.equal(playId({case: FILE}), null);
  assert.match(playId(view()), /^practice-operator-7-[a-z0-9]{4}$/);
  assert.notEqual(playId(view()), playId(view("title = \"another\"")));
  assert.match(playId({case: FILE, practice: {seed: 7, level: null}}), /^practice-7-/);
});

test("puzzles are kept once, the newest first, the oldest goes when there are too many", () => {
  const practice = createPractice(createKept(noStorage));
  assert.deepEqual(practice.keep({case: "the-dropped-gauge"}), []);
  assert.deepEqual(practice.keep({case: FILE}), []);
  const first = playId(view("text 0"));
  const gone = Array.from({length: 31}, (_, n) => practice.keep(view(`text ${n}`))).flat();
  assert.deepEqual(gone, [first]);
  assert.equal(practice.all.length, 30);
  assert.equal(practice.all[0].file.text, "text 30");
  practice.keep(view("text 30"));
  assert.equal(practice.all.length, 30);
  practice.forget(practice.all[0].id);
  assert.equal(practice.all[0].file.text, "text 29");
  practice.forgetAll();
  assert.deepEqual(practice.all, []);
});

test("of what is damaged nothing is used", () => {
  const kept = createKept(noStorage);
  const good = {id: playId(view()), file: FILE, practice: WISH};
  kept.set("practice", [good, null, 7, {...good, id: "practice-operator-7-zzzz"}, {...good, file: {name: 1, text: 2}}, {...good, practice: {}}]);
  assert.deepEqual(createPractice(kept).all, [good]);
  kept.set("practice", {format: 2});
  assert.deepEqual(createPractice(kept).all, []);
});

test("a link holds the wish beside its file, and beside nothing else", () => {
  const state = (part) => ({format: 1, plant: "rinse-transfer", edits: {}, view: part});
  assert.deepEqual(checkState(state(view())).view, view());
  assert.deepEqual(checkState(state({case: "the-dropped-gauge", practice: WISH})).view, {case: "the-dropped-gauge"});
  assert.throws(() => checkState(state({...view(), practice: {seed: "7", level: null}})), /view.practice/);
});

/** An engine that gives these replies one after the other, and remembers the asks. */
function engine(replies) {
  const asks = [];
  return {asks, ask: async (kind, body, channel) => {
    asks.push([kind, body, channel]);
    const reply = replies.shift();
    if (reply instanceof Error) throw reply;
    return reply;
  }};
}

const piece = (tried, doing, reckoned = 0, of = 0) => ({tried, most: 100, doing, reckoned, of, why: null, done: false, name: null, text: null});
const END = {tried: 2, most: 100, doing: null, reckoned: 0, of: 0, why: null, done: true, ...FILE};

test("a puzzle is asked for piece by piece, each ask with the draws made so far", async () => {
  const {asks, ask} = engine([piece(0, "suspects", 8, 80), piece(1, null), piece(1, "plays", 0, 1), END]);
  const seen = [];
  const maker = createMaker(ask, () => seen.push(maker.now));
  let made = null;
  await maker.make(WISH, (...all) => { made = all; });
  assert.deepEqual(asks.map(([kind, body, channel]) => [kind, body.seed, body.level, body.tried, channel]), [0, 0, 1, 1].map((tried) => ["compose", 7, "operator", tried, "compose"]));
  assert.deepEqual(seen.map(({stage, tried, doing, done, of}) => [stage, tried, doing, done, of]), [
    ["making", 0, null, 0, 0], ["making", 0, "suspects", 8, 80], ["making", 1, "suspects", 0, 0], ["making", 1, "plays", 0, 1], ["idle", undefined, undefined, undefined, undefined],
  ]);
  assert.deepEqual(made, [FILE, WISH]);
});

test("without a level none is asked for", async () => {
  const {asks, ask} = engine([END]);
  await createMaker(ask, () => {}).make({seed: 3, level: null}, () => {});
  assert.deepEqual(asks[0][1], {seed: 3, tried: 0});
});

test("whoever stops gets no puzzle, and whoever begins another only that one", async () => {
  const {ask} = engine([piece(0, "suspects", 8, 80), END, END]);
  const maker = createMaker(ask, () => {});
  const made = [];
  const first = maker.make({seed: 1, level: null}, (_, wish) => made.push(wish.seed));
  maker.stop();
  assert.equal(maker.now.stage, "idle");
  const second = maker.make({seed: 2, level: null}, (_, wish) => made.push(wish.seed));
  await Promise.all([first, second]);
  assert.deepEqual(made, [2]);
});

test("what fails is told, and goes on from the draw that it came to", async () => {
  const {asks, ask} = engine([piece(4, null), new Error("no answer"), {...END, tried: 5}]);
  const seen = [];
  const maker = createMaker(ask, () => seen.push(maker.now));
  let made = null;
  await maker.make(WISH, (file) => { made = file; });
  assert.equal(maker.now.stage, "failed");
  assert.equal(maker.now.error.message, "no answer");
  assert.equal(made, null);
  await maker.now.again();
  assert.equal(asks.at(-1)[1].tried, 4);
  assert.deepEqual(seen.filter(({stage, tried}) => stage === "making" && tried > 0).map(({most}) => most), [100, 100]); // it is told beside the draws refused
  assert.deepEqual(made, FILE);
});
