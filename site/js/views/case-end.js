// The end of a case: a result to hand in, and where to go from here.
import {drawSeed} from "../course.js";
import {block, button, make} from "./case-dom.js";
import {resultOf} from "../result-code.js";

/** The result as a line of text, which nobody gets unless the learner hands it in. */
export function result(document, view, {words, clipboard, points = null}) {
  const {code, seed} = resultOf(view, points);
  const line = make(document, "textarea", {class: "case-code result-lines", readonly: true, rows: 3, "aria-label": words("case-code"), "data-key": "code", onfocus: () => line.select()}, code);
  const said = make(document, "p", {role: "status"});
  async function copy() {
    try {
      await clipboard.writeText(line.value);
      said.textContent = words("share-copied");
    } catch {
      line.select();
      said.textContent = words("share-by-hand");
    }
  }
  return block(document, "result", words("case-result-title"),
    make(document, "p", {class: "case-soft"}, words("case-result-note")),
    make(document, "p", {}, words("case-result-seed", {seed: String(seed)})),
    line,
    make(document, "div", {class: "case-buttons"},
      button(document, "copy-code", words("case-copy-code"), copy),
      button(document, "print", words("case-print"), () => document.defaultView.print())),
    said);
}

/** After a puzzle made for practice: one more of its kind. */
const another = (document, {seed, level}, {words, send}) => [
  make(document, "p", {class: "case-soft"}, words("practice-another-note")),
  button(document, "another", words("practice-another"), () => send({type: "practice", seed: drawSeed(seed), level}), "case-button case-main"),
];

/** What to do next. */
export const next = (document, view, {words, send, model}) =>
  block(document, "next", words("case-next-title"),
    ...(model.practice ? another(document, model.practice, {words, send}) : []),
    make(document, "p", {class: "case-soft"}, words("case-try-note")),
    make(document, "div", {class: "case-buttons"},
      button(document, "try", words("case-try"), () => send({type: "open-plant", plant: view.reveal.plant}), model.practice ? "case-button" : "case-button case-main"),
      model.next && !model.practice && button(document, "next-case", words("case-next", {title: model.next.title}), () => send({type: "case", case: model.next.id})),
      button(document, "replay", words("case-replay"), () => send({type: "moves", moves: []})),
      button(document, "draw", words("case-draw"), () => send({type: "draw"}))));
