// The plant of a case beside its story: the drawing of the rig, with the instruments that were told of or read so far.
import {make} from "./case-dom.js";
import {create as createApparatus} from "./apparatus.js";

/**
 * @param {object} view of Python
 * @param {object} deps {document, words, units, model}
 * @returns {{node: Element, draw: () => void, remove: () => void}} draw once the node is in the page
 */
export function picture(document, view, {words, units, model}) {
  const shown = seenSoFar(view);
  const host = make(document, "div", {class: "drawing", inert: true});
  const node = make(document, "figure", {class: "case-picture"},
    make(document, "div", {role: "img", "aria-label": words("case-picture-says", {plant: view.plant.title})}, host),
    make(document, "figcaption", {}, words(shown.length > view.told.length ? "case-picture-read" : "case-picture-told")));
  let drawing = null;
  return {
    node,
    draw() {
      drawing = createApparatus(host, {document, words, units, send: () => {}});
      drawing.update({...day(view.plant, shown, "today"), previous: day(view.plant, shown, "yesterday").answer, yesterday: true,
        units, words, catalogue: model.catalogue, edits: {}, range: {}, set: view.plant, live: false, origin: "live", turning: false, picked: null, part: null, hidden: true});
    },
    remove: () => drawing?.remove?.(),
  };
}

/** Readings that stand open, else what the story tells. */
export const seenSoFar = ({readings, told}) => (readings.length ? readings : told);

/** A day's answer of which nothing is known but what its instruments showed. */
function day(plant, readings, name) {
  const shown = readings.map(({id, quantity, low, high, [name]: pointer}) => ({id, quantity, low, high, accuracy: null, ...pointer}));
  return {plant, answer: {plant, shown, notes: [], state: {machines: []}, stack: []}};
}
