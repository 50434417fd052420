// A line on what a case is waiting for, or what went wrong and the way out.
import {button, make} from "./case-dom.js";
import {failure} from "./case-parts.js";
import {sentence} from "./sentence.js";

/**
 * @param {Document} document
 * @param {object} deps {words, send, load: () => void}
 * @param {{model: object, view: object|null, trouble: Error|null, waiting: boolean}} now
 * @returns {Element|null} null where there is nothing to say
 */
export function notice(document, deps, now) {
  if (now.trouble) return problem(document, deps, now);
  const id = waitingFor(now);
  return id && make(document, "p", {class: "case-note", tabindex: "-1", "data-key": "note"}, deps.words(id));
}

function waitingFor({model, view, waiting}) {
  if (!view) return "case-wait-open"; // there is no story yet that could be read meanwhile
  if (!model.ready) return model.moves.length ? "case-wait-kept" : "case-wait-engine";
  return waiting ? "case-wait-move" : null;
}

function problem(document, deps, {model, trouble}) {
  const {words, send} = deps;
  const {words: id} = failure(trouble, model.seed);
  return make(document, "div", {class: "case-note case-trouble", role: "alert"},
    make(document, "p", {}, words(id)),
    trouble.code === "file" && make(document, "p", {class: "case-detail"}, sentence(trouble, {words, units: model.units})),
    id === "case-failed-seed" ? button(document, "draw", words("case-draw"), () => send({type: "draw"})) : wayOut(document, deps, model, trouble));
}

function wayOut(document, {words, send, load}, model, trouble) {
  const {words: id, restart} = failure(trouble, model.seed);
  const again = () => {
    if (trouble.code === "start-up") send({type: "again"}); // Python itself is missing
    load();
  };
  if (typeof model.case === "object" && id === "case-failed-file") // the same text fails again
    return button(document, "open-other", words("tool-open"), () => send({type: "ask-open"}));
  if (restart === null) return null;
  return restart ? button(document, "restart", words("case-restart"), () => send({type: "moves", moves: []})) : button(document, "again", words("case-again"), again);
}

/** Put a node into its place, unless its like is there already: what is being read stays, and so does the focus. */
export function fill(place, node) {
  if (node ? place.firstChild?.isEqualNode(node) : !place.firstChild) return;
  const held = place.contains(place.ownerDocument.activeElement);
  place.replaceChildren(...(node ? [node] : []));
  if (held && node?.hasAttribute("tabindex")) node.focus({preventScroll: true});
}
