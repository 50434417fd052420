// The checks on offer, each with its price; what was found by those that were taken; hints.
import {block, button, make, prose} from "./case-dom.js";
import {foreseen} from "./case-opening.js";
import {costText, line} from "./case-parts.js";
import {dials, readingText} from "./case-readings.js";

const CAUTIONS = {
  "shut-displacement": "case-caution-displacement", "shut-propeller": "case-caution-propeller",
  "over-pressure": "case-caution-displacement", "opens-under-pressure": "case-caution-open",
};

/** Every check on offer; those taken show what was found, those refused why nobody does them. */
export function checks(document, view, deps, move) {
  const {words} = deps;
  return block(document, "checks", words("case-checks-title"),
    make(document, "p", {class: "case-soft"}, words("case-checks-note")),
    make(document, "p", {class: "case-spent"}, words("case-spent", {cost: costText(view, words)})),
    make(document, "ul", {class: "case-checks-list"}, ...view.checks.map((check) => make(document, "li", {}, one(document, view, check, deps, move)))),
    ...hints(document, view, deps, move));
}

function one(document, view, check, deps, move) {
  if (check.refused) return refused(document, check, deps);
  return check.taken ? taken(document, view, check, deps) : offer(document, check, deps, move);
}

function offer(document, check, deps, move) {
  const {words, units} = deps;
  const care = careOf(check);
  const caution = care && make(document, "p", {class: "case-caution", id: `case-caution-${check.id}`}, words(`case-caution-${care}`));
  const take = button(document, `take-${check.id}`, [
    make(document, "span", {}, line(check.says, units)),
    make(document, "span", {class: "case-cost"}, costText(check, words)),
  ], () => move({do: "check", id: check.id}), "case-check");
  if (caution) take.setAttribute("aria-describedby", caution.id);
  return make(document, "div", {}, take, caution);
}

const careOf = ({care, test}) => care ?? (test ? "test" : null);

/** What was asked for and is not done: why, and what is done in its place. */
function refused(document, check, {words, units}) {
  return make(document, "article", {class: "case-taken case-refused", tabindex: "-1", "data-key": `check-${check.id}`},
    make(document, "p", {class: "case-soft"}, line(check.says, units)),
    make(document, "p", {}, make(document, "strong", {}, words("case-refused"))),
    make(document, "p", {}, words(`case-refused-${check.refused}`)),
    make(document, "p", {class: "case-caution"}, words(CAUTIONS[check.refused])));
}

function taken(document, view, check, deps) {
  const {words, units} = deps;
  const read = check.test ? [] : view.readings.filter((reading) => check.reads.includes(reading.id));
  return make(document, "article", {class: "case-taken", tabindex: "-1", "data-key": `check-${check.id}`},
    make(document, "p", {class: "case-soft"}, line(check.says, units), " ",
      make(document, "span", {class: "case-cost"}, costText(check, words))),
    ...read.map((reading) => make(document, "p", {},
      make(document, "strong", {}, `${words(`case-reading-${reading.id}`)}: `), readingText(document, view, reading, deps))),
    check.tested.length > 0 && make(document, "p", {}, make(document, "strong", {}, words("case-tested"))),
    check.tested.length > 0 && dials(document, {to_see: []}, check.tested, deps),
    !check.test && check.reads.includes(view.prediction.reading) && foreseen(document, view.prediction, deps), // beside what was seen, not a screen above it
    check.showed !== null && make(document, "p", {class: "case-showed"}, words(check.showed ? "case-showed-something" : "case-showed-nothing")),
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
