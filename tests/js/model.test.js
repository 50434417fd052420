import assert from "node:assert/strict";
import {test} from "node:test";
import {pictureOf} from "../../site/js/model.js";
import {firstState} from "../../site/js/state.js";

const FIRST = {default: "wash-line", answer: {plant: {title: "Built", valve: {opening: 0.6, rangeability: 50}}}};
const state = (plant = "wash-line", edits = {}) => ({...firstState(plant), edits});

test("before Python, the default plant shows what was computed when the site was built", () => {
  const picture = pictureOf({state: state(), got: null, first: FIRST});
  assert.deepEqual([picture.origin, picture.answer], ["built", FIRST.answer]);
});

test("before Python, a changed plant is drawn as changed, with blank dials", () => {
  const picture = pictureOf({state: state("wash-line", {"valve.opening": 0.1}), got: null, first: FIRST});
  assert.deepEqual([picture.origin, picture.answer, picture.plant.valve.opening], ["none", null, 0.1]);
});

test("before Python, an own plant is drawn with what it says, the rest standing in", () => {
  const own = {title: "Own", valve: {opening: 0.2}};
  const {plant, answer} = pictureOf({state: state(own), got: null, first: FIRST});
  assert.deepEqual(plant, {title: "Own", valve: {opening: 0.2, rangeability: 50}});
  assert.equal(answer, null);
});

test("without the file made with the site, there is no plant until Python answers", () => {
  assert.equal(pictureOf({state: state(), got: null, first: null}).plant, null);
});

test("the drawing follows the hand at once, the readings follow the answer", () => {
  const got = {answer: {plant: {valve: {opening: 0.5}}}, for: {plant: "wash-line", edits: {"valve.opening": 0.5}}};
  const picture = pictureOf({state: state("wash-line", {"valve.opening": 0.4}), got, first: FIRST});
  assert.deepEqual([picture.origin, picture.plant.valve.opening, picture.answer], ["live", 0.4, got.answer]);
});

test("a plant that stands as it was answered is drawn from the answer itself, without a copy", () => {
  const got = {answer: {plant: {valve: {opening: 0.5}}}, for: {plant: "wash-line", edits: {"valve.opening": 0.5}}};
  assert.equal(pictureOf({state: state("wash-line", {"valve.opening": 0.5}), got, first: FIRST}).plant, got.answer.plant);
});

test("an answer for another plant is not shown for this one", () => {
  const got = {answer: {plant: {}}, for: {plant: "filter", edits: {}}};
  assert.equal(pictureOf({state: state(), got, first: FIRST}).origin, "built");
});
