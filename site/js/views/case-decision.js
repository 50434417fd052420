// What was seen, reading by reading, then the verdict, and what is to be done.
import {block, button, make, radios} from "./case-dom.js";
import {DIRECTIONS, line, verdictMoves} from "./case-parts.js";

const MISSING = {see: "case-see-missing", choice: "case-decide-missing", action: "case-action-missing"};

/** @param {{saw: object, choice: string|null, action: string|null}} draft  what is picked so far; written to */
export function decision(document, view, deps, draft, move) {
  const {words, units} = deps;
  const missing = make(document, "p", {class: "case-missing", role: "alert"});
  const decide = () => {
    const {moves, missing: what} = verdictMoves(view.to_see, draft);
    if (moves) move(...moves);
    else missing.textContent = words(MISSING[what]);
  };
  return block(document, "decision", words("case-verdict-title"),
    make(document, "p", {class: "case-soft"}, words("case-verdict-note")),
    view.to_see.length > 0 && make(document, "div", {class: "case-sees"}, ...view.to_see.map((id) => radios(document, {
      name: `saw-${id}`, kind: "saw", legend: words("case-see-asks", {instrument: words(`case-reading-${id}`)}), chosen: draft.saw[id] ?? null,
      onpick: (value) => { draft.saw[id] = value; }, aside: true,
      options: DIRECTIONS.map((value) => ({value, label: words(`case-way-${value}`)})),
    }))),
    radios(document, {
      name: "choice", legend: words("case-verdict-asks"), chosen: draft.choice, onpick: (value) => { draft.choice = value; },
      options: view.choices.map((choice) => ({value: choice.id, label: line(choice.says, units)})),
    }),
    radios(document, {
      name: "action", legend: words("case-action-asks"), chosen: draft.action, onpick: (value) => { draft.action = value; },
      options: view.actions.map((value) => ({value, label: words(`case-action-${value}`)})),
    }),
    missing,
    button(document, "decide", words("case-decide"), decide, "case-button case-main"));
}
