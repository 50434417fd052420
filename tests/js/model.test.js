import assert from "node:assert/strict";
import {test} from "node:test";
import {momentOf, pictureOf} from "../../site/js/model.js";
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

const BUILT = {
  title: "Built", supply: {bottom_m: 0, surface_m: 2, top_m: 4}, pump: {model: "medium"},
  valve: {opening: 0.6}, drive: {frequency_hz: 50}, discharge: {attached: true}, gauges: {suction: {range_bar: [-1, 1.5]}},
};
const KNOWN = {
  default: "wash-line", answer: {plant: BUILT},
  catalogue: {
    pumps: [{id: "small"}, {id: "medium"}],
    limits: {
      "valve.opening": {low: 0, high: 1}, "drive.frequency_hz": {low: 5, high: 75}, "discharge.attached": {choices: [true, false]},
      "supply.surface_m": {low: -30, high: 200}, "supply.bottom_m": {low: -35, high: 200}, "supply.top_m": {low: -30, high: 210},
    },
  },
};
const WILD = {
  "valve.opening": 99, "drive.frequency_hz": "<b>", "supply.surface_m": 150, "discharge.attached": "off", "pump.model": "<i>",
  "valve.opening.x": 1, "gauges.suction": 5, "gauges.suction.range_bar": 3, "title.x": 1, "no.such_key": 7,
};

test("values of a link that will not do are not drawn before Python has said so", () => {
  const {plant} = pictureOf({state: state("wash-line", WILD), got: null, first: KNOWN});
  assert.deepEqual(plant, BUILT);
  const some = pictureOf({state: state("wash-line", {...WILD, "valve.opening": 0.2, "supply.surface_m": 3}), got: null, first: KNOWN}).plant;
  assert.deepEqual([some.valve.opening, some.supply.surface_m, some.drive.frequency_hz], [0.2, 3, 50]);
});

test("nor are they beside an answer for what stood before", () => {
  const got = {answer: {plant: BUILT}, for: {plant: "wash-line", edits: {}}};
  assert.deepEqual(pictureOf({state: state("wash-line", WILD), got, first: KNOWN}).plant, BUILT);
});

test("nor are those of a plant of one's own", () => {
  const own = {title: 7, valve: {opening: 99}, supply: {bottom_m: 9}, drive: 3, gauges: {suction: {range_bar: ["a", {}]}}, discharge: {attached: false}};
  const {plant} = pictureOf({state: state(own), got: null, first: KNOWN});
  assert.deepEqual(plant, {...BUILT, discharge: {attached: false}});
});

test("what cannot be computed is not said to be waiting for Python", () => {
  const asked = {state: state("wash-line", WILD), got: null, first: KNOWN};
  assert.equal(pictureOf(asked).origin, "none");
  assert.equal(pictureOf({...asked, refused: true}).origin, "refused");
});

test("at the clock's moment a level that a hand moves is there at once, a valve only when time has brought it there", () => {
  const plant = {valve: {opening: 0.7}, supply: {bottom_m: 0, surface_m: 1.2, top_m: 4}};
  const got = {answer: {plant}, for: {plant: "some-plant", edits: {}}};
  const state = {plant: "some-plant", edits: {"valve.opening": 0.2, "supply.surface_m": 3}};
  const catalogue = {pumps: [], limits: {"valve.opening": {low: 0, high: 1}, "supply.surface_m": {low: -30, high: 1000}}};
  const shown = momentOf({state, got, catalogue}).plant;
  assert.deepEqual([shown.valve.opening, shown.supply.surface_m], [0.7, 3]);
  assert.equal(pictureOf({state, got, first: null, catalogue}).plant.valve.opening, 0.2);
});
