// The first half of a case: what it is, the story, then the prediction and the first suspicion.
import {block, button, make, prose, radios} from "./case-dom.js";
import {DIRECTIONS, line} from "./case-parts.js";

/** Title, level and goals, and the way to the other cases. */
export function heading(document, view, {words, send, model}) {
  const goals = make(document, "details", {class: "case-goals folds"},
    make(document, "summary", {"data-key": "goals"}, words("case-goals")),
    make(document, "ul", {}, ...view.teaches.map((goal) => make(document, "li", {}, goal))),
    view.leaves_out.length > 0 && make(document, "p", {class: "case-soft"}, words("case-left-out")),
    view.leaves_out.length > 0 && make(document, "ul", {}, ...view.leaves_out.map((goal) => make(document, "li", {}, goal))));
  const kind = [words(`case-level-${view.level}`), view.worked && words("case-worked"), practiced(model.practice, words), model.seed && words("case-seed", {seed: String(view.seed)})];
  return make(document, "header", {class: "case-heading"},
    make(document, "div", {class: "case-top"},
      button(document, "course", words("case-course"), () => send({type: "course"}), "plain"),
      button(document, "wall", words(model.wall ? "case-wall-off" : "case-wall-on"), () => send({type: "view", view: {wall: !model.wall}}), "plain case-to-wall")),
    make(document, "h2", {tabindex: "-1", "data-key": "title"}, view.title),
    make(document, "p", {class: "case-soft"}, kind.filter(Boolean).join(" · ")),
    goals);
}

const practiced = (practice, words) => practice && words(practice.level ? "practice-in-case" : "practice-in-case-any", {seed: String(practice.seed)});

/** What happened, as somebody tells it; the picture of the plant goes with it. */
export const story = (document, view, {words, units}, picture) =>
  block(document, "story", words("case-story-title"), make(document, "div", {class: "case-tale"}, ...prose(document, view.story, units)), picture);

/**
 * The prediction: two questions to answer before anything is shown, or what was answered.
 * @param {{says: string|null, suspects: string|null}} kit.draft  what is picked so far; written to
 * @param {{node: Element}} kit.hands  the tally of a class, for the wall
 */
export function prediction(document, view, kit) {
  const {words, units, draft, move, hands, model} = kit;
  const asked = view.prediction;
  if (asked.says !== null) return block(document, "predict", words("case-prediction-title"), ...committed(document, view, kit));
  const missing = make(document, "p", {class: "case-missing", role: "alert"});
  const commit = () => {
    if (draft.says && draft.suspects) move({do: "predict", says: draft.says, suspects: draft.suspects});
    else missing.textContent = words("case-commit-missing");
  };
  return block(document, "predict", words("case-predict-title"),
    radios(document, {
      name: "says", legend: line(asked.asks, units), chosen: draft.says, onpick: (value) => { draft.says = value; },
      options: DIRECTIONS.map((value) => ({value, label: words(`case-direction-${value}`)})),
    }),
    model.wall && hands.node,
    radios(document, {
      name: "suspects", legend: words("case-suspect-asks"), chosen: draft.suspects, onpick: (value) => { draft.suspects = value; },
      options: asked.suspects.map((value) => ({value, label: words(`case-group-${value}`)})),
    }),
    make(document, "p", {class: "case-soft"}, words("case-predict-note")),
    missing,
    button(document, "commit", words("case-commit"), commit, "case-button case-main"));
}

/** What was foreseen; what came of it the reader is to see, and is asked with the verdict. */
export function foreseen(document, {says}, {words}) {
  const direction = words(`case-direction-${says}`).toLocaleLowerCase(words.locale);
  return make(document, "p", {}, words("case-foreseen", {says: direction}));
}

/** The question and the answers that stand. */
export function committed(document, {prediction: asked}, deps) {
  const {words, units} = deps;
  const group = words(`case-group-${asked.suspected}`);
  return [
    make(document, "p", {class: "case-soft"}, line(asked.asks, units)),
    foreseen(document, asked, deps),
    make(document, "p", {}, words("case-suspected", {group: group.toLocaleLowerCase(words.locale)})),
  ];
}
