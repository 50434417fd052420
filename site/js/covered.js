// What the page shows while something is hidden: the plant as it was set, and what instruments read. Pure.

/**
 * The model of the drawing: surfaces stand where the level gauges read, and nothing moves that no dial tells.
 * @param {object} model of model.js, with an answer of the kind `shown`, or none yet
 */
export function drawnCovered(model) {
  const read = (id) => model.answer?.shown.find((one) => one.id === id)?.value;
  const vessel = (name) => ({...model.plant[name], surface_m: read(`level-${name}`) ?? model.plant[name].surface_m});
  return {...model, plant: {...model.plant, supply: vessel("supply"), delivery: vessel("delivery")}, turning: false};
}

/** The table of both days holds readings alone: no curve, no change by hand, no reason. */
export function daysCovered(model) {
  const {readings} = model.answer ?? {};
  return {...model, days: readings ? {answer: {readings, reasons: {}, changed: [], parts: null, meeting: null}, fresh: true, error: null} : null};
}

/** What a control may know. */
export const inHandCovered = (model) => ({...model, answer: null});
