// What really happened: its causes, the verdict that holds, and why each reading moved.
import {block, make, prose, table} from "./case-dom.js";
import {asShift, differencesOf, differenceText} from "./case-parts.js";
import {said} from "./case-verdict.js";
import {sizeText} from "./cause-size.js";
import {causeWords} from "./cause-words.js";
import {dayRows} from "./day-words.js";
import {dayTable} from "./days.js";

/** The causes with their sizes, what differed between the days, and the verdict that holds where another was given. */
export function truth(document, view, deps) {
  const {words, units} = deps;
  const {reveal} = view;
  const differences = differencesOf(reveal.differences).map((difference) => differenceText(difference, {words, units, catalogue: deps.model.catalogue}));
  return block(document, "truth", words("case-truth-title"),
    make(document, "ul", {class: "case-happened"}, ...reveal.happened.map((one) => happening(document, one, deps))),
    reveal.load && make(document, "p", {}, words(`case-load-${reveal.load}`)),
    ...(view.verdict.rightness === "right" ? [] : [
      make(document, "p", {}, make(document, "strong", {}, words("case-truth-holds", {says: said(view, reveal.right_choice, units)}))),
      ...prose(document, reveal.why, units),
    ]),
    differences.length > 0 && table(document, words("case-differs"), ["", words("case-yesterday"), words("case-today")],
      differences.map(({label, yesterday, today}) => [label, yesterday, today])));
}

/** One cause: its name, its size, what it is and what follows from it. */
function happening(document, {cause, size, unit}, {words, units}) {
  if (cause === "nothing") return make(document, "li", {}, make(document, "strong", {}, words("case-nothing-happened")));
  const told = causeWords(words, cause);
  const number = size !== null && told.size && words("case-size", {name: told.size, size: sizeText({unit}, size, units)});
  return make(document, "li", {}, make(document, "strong", {}, told.title), number && make(document, "span", {class: "case-soft"}, ` ${number}`),
    make(document, "p", {}, told.happened, " ", told.follows));
}

/** Every instrument of the plant on both days, and why it moved. */
export function moved(document, view, {words, units}) {
  const {readings, reasons, yesterday, today} = view.reveal;
  const meeting = {flow: [yesterday.duty.flow, today.duty.flow], machines: [yesterday, today].map(({state}) => state.machines)};
  const all = dayTable(document, words);
  all.fill(dayRows({days: {answer: {readings: readings.map(asShift), reasons, meeting}}, units}, words));
  return block(document, "all", words("case-all-title"), all.node, make(document, "p", {class: "case-soft"}, words("days-foot")));
}
