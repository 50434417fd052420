// From state and answers to the one model that every view draws. Pure.
import {limitsOf, overDefaults, withDrawable} from "./drawable.js";
import {at} from "./state.js";
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
 * @param {object} [p.catalogue] what Python knows, if it has told: else that of the file made with the site
 * @param {boolean} [p.refused] Python could not compute what stands now
 * @returns {{answer: object|null, plant: object|null, origin: "live"|"built"|"none"|"refused"}} no plant where none is known yet
 */
export function pictureOf(of) {
  const picture = anyPicture(of);
  const fits = Boolean(picture.answer?.covered) === Boolean(of.state.view?.hidden);
  return fits ? picture : {...picture, answer: null, origin: "none"};
}

/** Whatever there is; an answer of another kind than is due may be the newest for a moment. */
function anyPicture({state, got, first, catalogue = first?.catalogue, refused = false}) {
  const limits = limitsOf(catalogue);
  if (got && samePlant(got.for, state)) {
    return {answer: got.answer, plant: withDrawable(got.answer.plant, ownEdits(state, got.for), limits), origin: "live"};
  }
  const origin = refused ? "refused" : "none";
  const built = first?.answer ?? null;
  if (built && state.plant === first.default) {
    if (Object.keys(state.edits).length === 0) return {answer: built, plant: built.plant, origin: "built"};
    return {answer: null, plant: withDrawable(built.plant, state.edits, limits), origin};
  }
  if (!built) return {answer: null, plant: null, origin};
  const base = typeof state.plant === "object" ? overDefaults(state.plant, built.plant, limits) : built.plant;
  return {answer: null, plant: withDrawable(base, state.edits, limits), origin};
}

const samePlant = (a, b) => a.plant === b.plant || same(a.plant, b.plant);

/** The newest edits that an answer's plant does not hold yet. */
function ownEdits(state, answered) {
  const edits = {};
  for (const [key, value] of Object.entries(state.edits)) if (answered.edits[key] !== value && value !== null) edits[key] = value;
  return edits;
}

/** Keys of what takes its time to go where it was set. */
const ON_THEIR_WAY = ["valve.opening", "drive.frequency_hz"];

/** The picture at the clock's moment: what a hand has set is there at once, but for what time moves. */
export function momentOf({state, got, catalogue}) {
  const edits = Object.fromEntries(Object.entries(state.edits).filter(([key]) => !ON_THEIR_WAY.includes(key)));
  return pictureOf({state: {...state, edits}, got, first: null, catalogue});
}

/** What time moves in a plant. */
const MOVED = [...ON_THEIR_WAY, "supply.surface_m", "delivery.surface_m", "discharge.filled", "pump.running", "pump.second.running"];

/** The rig as it stands: while time runs with all that time has moved since it was set. */
export function standing({rig, plant, set}) {
  if (!plant || plant === set) return rig;
  const moved = MOVED.filter((key) => at(plant, key) !== at(set, key)).map((key) => [key, at(plant, key)]);
  return {...rig, edits: {...rig.edits, ...Object.fromEntries(moved)}};
}

const NO_CLOCK = Object.freeze({status: "off", rate: 1, time: 0, lags: false, record: Object.freeze({columns: [], rows: [], events: [], version: 0})});

/**
 * Everything the views need, in one frozen object. `set` is the plant as it is set, `plant` as it stands:
 * they differ while time moves something from one to the other.
 */
export function modelOf({state, live, picture, set = picture.plant, clock = NO_CLOCK, look = {}, previous, beside = null, yesterday = null, days = null, catalogue, words, units, picked, part = null, turning, error, turn = 0}) {
  const known = catalogue ?? NO_CATALOGUE;
  return Object.freeze({
    ...picture,
    set,
    clock,
    look,
    previous: yesterday ? yesterday.answer : previous, // what is drawn hollow: a remembered day is more than the last step
    beside,
    yesterday,
    days,
    rig: {plant: state.plant, edits: state.edits},
    hidden: state.view.hidden ?? null,
    told: state.view.told ?? null,
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
    turn,
  });
}
