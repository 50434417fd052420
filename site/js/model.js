// From state and answers to the one model that every view draws. Pure.
import {at, withEdits} from "./state.js";
import {ranges} from "./views/control-table.js";
import {same} from "./history.js";

const NO_CATALOGUE = Object.freeze({plants: [], pumps: [{id: "small"}, {id: "medium"}, {id: "large"}], cases: [], limits: {}});

/**
 * What the page shows before and while Python works.
 *
 * @param {object} p
 * @param {object} p.state of the store
 * @param {{answer: object, for: object}|null} p.got newest answer and the rig {plant, edits} it belongs to
 * @param {object|null} p.first the file made when the site was built
 * @returns {{answer: object|null, plant: object|null, origin: "live"|"built"|"none"}} no plant where none is known yet
 */
export function pictureOf({state, got, first}) {
  if (got && samePlant(got.for, state)) {
    return {answer: got.answer, plant: edited(got.answer.plant, ownEdits(state, got.for)), origin: "live"};
  }
  const built = first?.answer ?? null;
  if (built && state.plant === first.default) {
    if (Object.keys(state.edits).length === 0) return {answer: built, plant: built.plant, origin: "built"};
    return {answer: null, plant: withEdits(built.plant, state.edits), origin: "none"};
  }
  if (!built) return {answer: null, plant: null, origin: "none"};
  const base = typeof state.plant === "object" ? deepDefaults(state.plant, built.plant) : built.plant;
  return {answer: null, plant: edited(base, state.edits), origin: "none"};
}

/** A plant as it stands is not copied at every paint. */
const edited = (plant, edits) => (Object.keys(edits).length ? withEdits(plant, edits) : plant);

const samePlant = (a, b) => a.plant === b.plant || same(a.plant, b.plant);

/** The newest edits that an answer's plant does not hold yet. */
function ownEdits(state, answered) {
  const edits = {};
  for (const [key, value] of Object.entries(state.edits)) if (answered.edits[key] !== value && value !== null) edits[key] = value;
  return edits;
}

/** A plant file says only what differs; until Python fills in the rest, another plant's values stand in. */
function deepDefaults(plant, defaults) {
  const all = {...defaults};
  for (const [key, value] of Object.entries(plant)) {
    const table = value !== null && typeof value === "object" && !Array.isArray(value);
    all[key] = table ? deepDefaults(value, defaults[key] ?? {}) : value;
  }
  return all;
}

/** Everything the views need, in one frozen object. */
export function modelOf({state, live, picture, previous, beside = null, catalogue, words, units, picked, part = null, turning, error}) {
  const known = catalogue ?? NO_CATALOGUE;
  return Object.freeze({
    ...picture,
    previous,
    beside,
    rig: {plant: state.plant, edits: state.edits},
    live,
    words,
    units,
    edits: state.edits,
    catalogue: known,
    range: picture.plant && ranges(picture.plant, known.limits),
    own: typeof state.plant === "object" && Boolean(at(state.plant, "pump.curve") ?? at(state.plant, "pump.displacement")),
    curves: state.view.curves !== false,
    chart: state.view.chart,
    turning,
    picked,
    part,
    error,
  });
}
