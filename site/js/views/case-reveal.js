// The end of a case: the verdict's explanation, what really happened, both days on both curves, the path.
import {block, button, make, prose, table} from "./case-dom.js";
import {differenceText, expectations, line, pointerText} from "./case-parts.js";
import {create as createChart} from "./chart.js";
import {create as createStack} from "./stack.js";

/** Whether the verdict holds and why. */
export function verdict(document, view, deps) {
  const {words, units} = deps;
  const {choice, right, reply} = view.verdict;
  return block(document, "verdict", words(right ? "case-right" : "case-wrong"),
    make(document, "p", {class: "case-soft"}, words("case-you-said", {says: said(view, choice, units)})),
    ...prose(document, reply, units));
}

const said = (view, id, units) => line(view.choices.find((choice) => choice.id === id).says, units);

/** What was foreseen and what was seen, beside what the instruments did. Never graded. */
export function compared(document, view, {words}) {
  const rows = expectations(view);
  const way = (direction) => (direction === null ? "–" : words(`case-way-${direction}`));
  const group = words(`case-group-${view.prediction.suspected}`).toLocaleLowerCase(words.locale);
  return block(document, "compared", words("case-compared-title"),
    table(document, null, ["", words("case-compared-foreseen"), words("case-compared-seen"), words("case-compared-fact")],
      rows.map(({id, foreseen, seen, moved}) => [words(`case-reading-${id}`), way(foreseen), way(seen), way(moved)])),
    rows.some(({seen, moved}) => seen !== null && seen !== moved) && make(document, "p", {}, words("case-compared-otherwise")),
    make(document, "p", {}, words("case-suspected", {group})));
}

/** What differed between the days, and the verdict that holds where another was given. */
export function truth(document, view, deps) {
  const {words, units} = deps;
  const {reveal} = view;
  const differences = reveal.differences.map((difference) => differenceText(difference, deps));
  return block(document, "truth", words("case-truth-title"),
    ...(view.verdict.right ? [] : [
      make(document, "p", {}, make(document, "strong", {}, words("case-truth-holds", {says: said(view, reveal.right_choice, units)}))),
      ...prose(document, reveal.why, units),
    ]),
    differences.length > 0 && table(document, words("case-differs"), ["", words("case-yesterday"), words("case-today")],
      differences.map(({label, yesterday, today}) => [label, yesterday, today])),
    reveal.load && make(document, "p", {}, words(`case-load-${reveal.load}`)));
}

/**
 * Both days drawn: yesterday thin and hollow, today filled.
 * @returns {{node: Element, draw: (model: object) => void, remove: () => void}} draw once the node is in the page
 */
export function curves(document, view, deps) {
  const {words, units} = deps;
  const {yesterday, today} = view.reveal;
  const chartHost = make(document, "div", {class: "drawing case-chart"});
  const stackHost = make(document, "div", {class: "drawing case-stack"});
  const node = block(document, "curves", words("case-curves-title"),
    make(document, "p", {class: "case-soft"}, words("case-curves-note")),
    make(document, "div", {class: "case-drawings"},
      chartHost,
      make(document, "figure", {}, make(document, "figcaption", {}, words("case-stack-title")), stackHost)));
  const drawn = [];
  return {
    node,
    draw() {
      const model = {answer: today, previous: yesterday, plant: today.plant, units, words, live: false, origin: "live",
        curves: true, turning: false, picked: null, edits: {}, range: {}};
      for (const [create, host] of [[createChart, chartHost], [createStack, stackHost]]) {
        const drawing = create(host, {document, words, units, send: () => {}});
        drawing.update(model);
        drawn.push(drawing);
      }
    },
    remove: () => drawn.forEach((drawing) => drawing.remove?.()),
  };
}

/** Every instrument of the plant on both days. */
export function instruments(document, view, deps) {
  const {words} = deps;
  const rows = view.reveal.readings.map((reading) => [
    words(`case-reading-${reading.id}`), pointerText(reading.yesterday, reading, deps), pointerText(reading.today, reading, deps),
  ]);
  return block(document, "all", words("case-all-title"),
    table(document, null, [words("case-instrument"), words("case-yesterday"), words("case-today")], rows));
}

/** The path of the play: suspicion, checks with their price, whether a strip-down was needed. */
export function path(document, view, {words, units}) {
  const {path: way} = view.reveal;
  const named = new Map(view.checks.map((check) => [check.id, line(check.says, units)]));
  const steps = way.steps.map(({id, minutes}) =>
    make(document, "li", {}, named.get(id), " ", make(document, "span", {class: "case-cost"}, words("case-minutes", {minutes}))));
  return block(document, "path", words("case-path-title"),
    make(document, "p", {}, words(way.suspicion_right ? "case-suspicion-right" : "case-suspicion-wrong")),
    steps.length ? make(document, "ol", {class: "case-steps"}, ...steps) : make(document, "p", {}, words("case-path-none")),
    steps.length > 1 && make(document, "p", {class: "case-spent"}, words("case-path-total", {minutes: way.minutes})),
    make(document, "p", {}, make(document, "strong", {}, words(`case-strip-${way.strip_down}`, {minutes: way.lost}))),
    (way.strip_down === "needless" || way.strip_down === "warranted") && make(document, "p", {class: "case-caution"}, words("case-strip-caution")));
}

/** What to do next. */
export const next = (document, view, {words, send}) =>
  make(document, "div", {class: "case-next"},
    make(document, "p", {class: "case-soft"}, words("case-try-note")),
    button(document, "try", words("case-try"), () => send({type: "open-plant", plant: view.reveal.plant}), "case-button case-main"),
    button(document, "replay", words("case-replay"), () => send({type: "moves", moves: []})));
