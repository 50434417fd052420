// The middle of a case: readings, further checks with their price, hints, the verdict.
import {block, button, make, prose, radios} from "./case-dom.js";
import {DIRECTIONS, foreseen} from "./case-opening.js";
import {dialData, line, pointerText, verdictMoves} from "./case-parts.js";
import {createGauge} from "./gauge.js";

/** The instruments read so far, each a dial with today's pointer and yesterday's mark. */
export const readings = (document, view, deps) =>
  block(document, "readings", deps.words("case-readings-title"),
    make(document, "p", {class: "case-soft"}, deps.words("case-moved-note")),
    make(document, "ul", {class: "case-dials"}, ...view.readings.map((reading) => dial(document, view, reading, deps))));

function dial(document, view, reading, deps) {
  const {words} = deps;
  const face = make(document, "div", {class: "case-dial", "aria-hidden": "true"});
  createGauge(face, {document}).update({...dialData(reading, deps), label: ""});
  face.firstElementChild.setAttribute("viewBox", "0 0 120 120"); // without the room for its own label
  return make(document, "li", {"data-reading": reading.id},
    face,
    make(document, "strong", {}, words(`case-reading-${reading.id}`)),
    readingText(document, view, reading, deps));
}

/** Yesterday, today, and whether the difference is more than the instrument can err, unless the reader is to say it. */
function readingText(document, view, reading, deps) {
  const moved = !view.to_see.includes(reading.id) && reading.moved;
  const day = (name) => make(document, "span", {class: `case-day case-${name}`},
    `${deps.words(`case-${name}`)} ${pointerText(reading[name], reading, deps)}`);
  return make(document, "span", {class: "case-reading"}, day("yesterday"), " ", day("today"), " ",
    moved && make(document, "span", {class: `case-moved case-moved-${moved}`}, deps.words(`case-moved-${moved}`)));
}

/** Every check on offer; those taken show what was found. */
export function checks(document, view, deps, move) {
  const {words} = deps;
  const open = view.stage === "check";
  const list = view.checks.filter((check) => open || check.taken);
  return block(document, "checks", words("case-checks-title"),
    open && make(document, "p", {class: "case-soft"}, words("case-checks-note")),
    make(document, "p", {class: "case-spent"}, words("case-spent", {minutes: view.minutes})),
    make(document, "ul", {class: "case-checks-list"}, ...list.map((check) => make(document, "li", {},
      check.taken ? taken(document, view, check, deps) : offer(document, check, deps, move)))),
    ...hints(document, view, deps, move));
}

function offer(document, check, {words, units}, move) {
  const caution = check.strips_down && make(document, "p", {class: "case-caution", id: `case-caution-${check.id}`}, words("case-strip-caution"));
  const take = button(document, `take-${check.id}`, [
    make(document, "span", {}, line(check.says, units)),
    make(document, "span", {class: "case-cost"}, words("case-minutes", {minutes: check.minutes})),
  ], () => move({do: "check", id: check.id}), "case-check");
  if (caution) take.setAttribute("aria-describedby", caution.id);
  return make(document, "div", {}, caution, take);
}

function taken(document, view, check, deps) {
  const {words, units} = deps;
  const read = view.readings.filter((reading) => check.reads.includes(reading.id));
  return make(document, "article", {class: "case-taken", tabindex: "-1", "data-key": `check-${check.id}`},
    make(document, "p", {class: "case-soft"}, line(check.says, units), " ",
      make(document, "span", {class: "case-cost"}, words("case-minutes", {minutes: check.minutes}))),
    ...read.map((reading) => make(document, "p", {},
      make(document, "strong", {}, `${words(`case-reading-${reading.id}`)}: `), readingText(document, view, reading, deps))),
    check.reads.includes(view.prediction.reading) && foreseen(document, view.prediction, deps), // beside what was seen, not a screen above it
    check.found && make(document, "p", {}, make(document, "strong", {}, words(`case-found-${check.found}`))),
    ...(check.result ? prose(document, check.result, units) : []));
}

function hints(document, view, {words, units}, move) {
  const given = view.hints.map((hint, index) =>
    make(document, "aside", {class: "case-hint", tabindex: "-1", "data-key": `hint-${index + 1}`, "aria-label": words("case-hint-title")},
      ...prose(document, hint, units)));
  const more = view.stage === "check" && view.hints_left > 0;
  return [...given, more && button(document, "hint", words("case-hint-ask", {left: view.hints_left}), () => move({do: "hint"}))];
}

/** What was seen, reading by reading, and then the verdicts on offer. */
export function decision(document, view, deps, draft, move) {
  const {words, units} = deps;
  const missing = make(document, "p", {class: "case-missing", role: "alert"});
  const decide = () => {
    const moves = verdictMoves(view.to_see, draft);
    if (moves) move(...moves);
    else missing.textContent = words(draft.choice ? "case-see-missing" : "case-decide-missing");
  };
  return block(document, "decision", words("case-verdict-title"),
    make(document, "p", {class: "case-soft"}, words("case-verdict-note")),
    ...view.to_see.map((id) => radios(document, {
      name: `saw-${id}`, legend: words("case-see-asks", {instrument: words(`case-reading-${id}`)}), chosen: draft.saw[id] ?? null,
      onpick: (value) => { draft.saw[id] = value; }, aside: true,
      options: DIRECTIONS.map((value) => ({value, label: words(`case-way-${value}`)})),
    })),
    radios(document, {
      name: "choice", legend: words("case-verdict-asks"), chosen: draft.choice, onpick: (value) => { draft.choice = value; },
      options: view.choices.map((choice) => ({value: choice.id, label: line(choice.says, units)})),
    }),
    missing,
    button(document, "decide", words("case-decide"), decide, "case-button case-main"));
}
