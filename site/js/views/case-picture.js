// The plant of a case beside its story: the drawing of the rig, with the instruments that were told of or read so far.
import {make} from "./case-dom.js";
import {create as createApparatus} from "./apparatus.js";

/**
 * One drawing for all of a play: a further check changes its instruments, not the plant.
 *
 * @param {object} deps {document, words}
 * @returns {{of: (view: object, kit: {model: object}) => {node: Element, draw: () => void, remove: () => void},
 *   forget: () => void}} `of` gives the picture as a view has it; draw once the node is in the page
 */
export function createPicture({document, words}) {
  let kept = null; // {key, units, node, draw, remove} of the plant that was drawn last

  function of(view, {model}) {
    const key = JSON.stringify(view.plant);
    if (kept?.key !== key || kept.units !== model.units) {
      forget();
      kept = {key, units: model.units, ...picture(document, words, view.plant)};
    }
    const {node, draw} = kept;
    return {node, draw: () => draw(view, model), remove: () => {}};
  }

  function forget() {
    kept?.remove();
    kept = null;
  }

  return {of, forget};
}

function picture(document, words, plant) {
  const host = make(document, "div", {class: "drawing", inert: true});
  const caption = make(document, "figcaption", {});
  const node = make(document, "figure", {class: "case-picture"},
    make(document, "div", {role: "img", "aria-label": words("case-picture-says", {plant: plant.title})}, host), caption);
  let drawing = null;
  return {
    node,
    draw(view, {units, catalogue}) {
      const shown = seenSoFar(view);
      caption.textContent = words(shown.length > view.told.length ? "case-picture-read" : "case-picture-told");
      drawing ??= createApparatus(host, {document, words, units, send: () => {}});
      drawing.update({...day(plant, shown, "today"), previous: day(plant, shown, "yesterday").answer, yesterday: true,
        units, words, catalogue, edits: {}, range: {}, set: plant, live: false, origin: "live", turning: false, picked: null, part: null, hidden: true});
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
