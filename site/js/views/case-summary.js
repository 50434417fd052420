// The ways through a case that is longer than a screen: a bar under the thumb, and beside the reveal how it ended and what is told there.
import {button, make} from "./case-dom.js";
import {costText} from "./case-parts.js";

const WAYS = {check: ["story", "readings", "checks", "decision"], done: ["story", "verdict", "truth", "debrief", "next"]};
const TOLD = {verdict: "reply", truth: "truth", curves: "curves", all: "all", worth: "worth", path: "path", debrief: "debrief", result: "result", next: "next"};

/** Under the thumb: the bill so far, and the ways to the parts that are gone to most; null where the page is short. */
export function jumps(document, view, {words, go}) {
  if (!WAYS[view.stage]) return null;
  const to = WAYS[view.stage].map((key) => button(document, `to-${key}`, words(`case-to-${key}`), () => go(key), "plain"));
  return make(document, "nav", {class: `case-bar case-bar-${view.stage}`, "aria-label": words("case-jump-label")},
    view.stage === "check" && make(document, "span", {class: "case-bill"}, words(view.money > 0 ? "case-bill-both" : "case-bill", {minutes: view.minutes, money: view.money})), ...to);
}

/** Beside the reveal on a wide screen: how it ended, and the way to each part. */
export function summary(document, view, {words, go, points}) {
  const {rightness, outcome, minutes} = view.verdict;
  const ways = Object.entries(TOLD).map(([key, name]) => make(document, "li", {}, button(document, `sum-${key}`, words(`case-part-${name}`), () => go(key), "plain")));
  return make(document, "nav", {class: "panel case-summary", "aria-label": words("case-jump-label")},
    make(document, "p", {}, make(document, "strong", {}, words(`case-rightness-${rightness}`))),
    make(document, "p", {class: "case-soft"}, words("case-sum-cost", {outcome: words(`course-outcome-${outcome}`), cost: costText(view, words), minutes})),
    make(document, "p", {class: "case-sum-points"}, pointsText(points, words)),
    make(document, "ul", {}, ...ways));
}

/** The points once they are known; nothing before. */
export const pointsText = (points, words) => (points === null ? "" : words("case-points", {points: String(Math.round(points))}));
