// The way to the verdict: what each check told or could have told, what it cost, and what a strip-down would have.
import {block, make, table} from "./case-dom.js";
import {checkWorth, costText, line} from "./case-parts.js";
import {observationWords} from "./cause-words.js";

const AS_FOUND = {avoided: "sound", needless: "sound", warranted: "at-fault", missed: "at-fault"};

/** The learner's own way: suspicion, checks, the bill, and the strip-down. */
export function path(document, view, {words, units}) {
  const {path: way} = view.reveal;
  const named = new Map(view.checks.map((check) => [check.id, line(check.says, units)]));
  const steps = way.steps.map((step) => make(document, "li", {}, named.get(step.id), " ", make(document, "span", {class: "case-cost"}, costText(step, words))));
  const strip = {minutes: way.strip_minutes, found: words(`case-strip-found-${AS_FOUND[way.strip_down]}`)};
  return block(document, "path", words("case-path-title"),
    make(document, "p", {}, words(way.suspicion_right ? "case-suspicion-right" : "case-suspicion-wrong")),
    steps.length ? make(document, "ol", {class: "case-steps"}, ...steps) : make(document, "p", {}, words("case-path-none")),
    make(document, "p", {class: "case-spent"}, words("case-path-total", {cost: costText(way, words)})),
    way.refused.length > 0 && make(document, "p", {}, words("case-path-refused", {checks: way.refused.map((id) => named.get(id)).join(" ")})),
    make(document, "p", {}, make(document, "strong", {}, words(`case-strip-${way.strip_down}`)), " ", words("case-strip-costs", strip)),
    (way.strip_down === "needless" || way.strip_down === "warranted") && make(document, "p", {class: "case-caution"}, words("case-caution-dismantle")));
}

/** Every check on offer: taken or left, what it cost, what it told or could have told. */
export function worth(document, view, {words, units}) {
  const rows = view.checks.map((check) => [
    line(check.says, units), costText(check, words),
    words(check.refused ? "case-check-refused" : check.taken ? "case-check-taken" : "case-check-left"),
    worthText(check, view.reveal, words),
  ]);
  return block(document, "worth", words("case-worth-title"),
    table(document, null, [words("case-check"), words("case-check-cost"), words("case-check-you"), words("case-check-shows")], rows, "case-worth-table"));
}

function worthText(check, reveal, words) {
  const found = checkWorth(check, reveal);
  if (check.refused) return words(`case-refused-${check.refused}`);
  if (found.kind === "look") return lookText(check, found.telling, words);
  if (found.kind === "nothing") return words("case-worth-test");
  const name = ({id}) => words(`case-reading-${id}`);
  const went = (reading) => words("case-worth-way", {reading: name(reading), way: words(`case-way-${reading.moved}`)});
  return [check.test && words("case-worth-tested"), found.moved.length && words("case-worth-moved", {readings: found.moved.map(went).join(words("case-or"))}),
    found.still.length && words("case-worth-still", {readings: found.still.map(name).join(words("case-or"))})].filter(Boolean).join(" ");
}

/** A look may miss what is there, and see what is not. */
function lookText({showed, observes}, telling, words) {
  const what = words(telling ? "case-worth-telling" : "case-worth-silent", {look: observationWords(words, observes)});
  if (showed === null || showed === telling) return what;
  return `${what} ${words(telling ? "case-worth-missed" : "case-worth-false")}`;
}
