// How far a case has come, in words.
import {halfPlayed} from "../course.js";

/** @param {{moves: object[], results: object[]}} entry of the course, with its `stageOf` */
export function stateText(entry, stage, words) {
  if (stage === "new") return words("course-new");
  const last = entry.results.at(-1);
  const done = last && words(`course-done-${last.rightness}`, {minutes: last.minutes, outcome: words(`course-outcome-${last.outcome}`)});
  const score = last?.score !== null && last?.score !== undefined && words("course-score", {score: String(Math.round(last.score))});
  return [halfPlayed(entry) && words("course-begun", {moves: entry.moves.length}), done, score].filter(Boolean).join(" ");
}

/** ○ ◐ ● */
export const MARKS = Object.freeze({new: "○", begun: "◐", done: "●"});
