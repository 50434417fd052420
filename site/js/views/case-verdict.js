// After the verdict: whether it holds and why, what came of the action, and what was expected and seen.
import {block, make, prose, table} from "./case-dom.js";
import {expectations, line} from "./case-parts.js";

/** The verdict and the action, each with what came of it. */
export function verdict(document, view, deps) {
  const {words, units} = deps;
  const {choice, rightness, reply, action, outcome, minutes} = view.verdict;
  return block(document, "verdict", words(`case-rightness-${rightness}`),
    make(document, "p", {class: "case-soft"}, words("case-you-said", {says: said(view, choice, units)})),
    ...prose(document, reply, units),
    make(document, "h4", {}, words("case-you-did", {action: words(`case-action-${action}`)})),
    make(document, "p", {class: `case-outcome case-outcome-${outcome}`},
      make(document, "strong", {}, words(`case-outcome-${outcome}`)), " ", words(outcome === "careless" ? "case-outcome-minutes-harm" : "case-outcome-minutes", {minutes})),
    outcome !== "fits" && make(document, "p", {}, words("case-fitting", {actions: listed(view.reveal.fitting.map((one) => words(`case-action-${one}`)), words)})));
}

/** "a; or b". */
const listed = (texts, words) => texts.join(words("case-or"));

/** A verdict on offer, as the learner would say it. */
export const said = (view, id, units) => line(view.choices.find((choice) => choice.id === id).says, units);

/** What was foreseen and what was seen, beside what the instruments did. Never graded. */
export function compared(document, view, {words, hands}) {
  const rows = expectations(view);
  const way = (direction) => (direction === null ? "–" : words(`case-way-${direction}`));
  const group = words(`case-group-${view.prediction.suspected}`).toLocaleLowerCase(words.locale);
  return block(document, "compared", words("case-compared-title"),
    table(document, null, ["", words("case-compared-foreseen"), words("case-compared-seen"), words("case-compared-fact")],
      rows.map(({id, foreseen, seen, moved}) => [words(`case-reading-${id}`), way(foreseen), way(seen), way(moved)])),
    rows.some(({seen, moved}) => seen !== null && seen !== moved) && make(document, "p", {}, words("case-compared-otherwise")),
    make(document, "p", {}, words("case-suspected", {group})),
    hands.line());
}
