// Which parts of a case stand there at each stage, in which order.
import {checks} from "./case-checks.js";
import {curves} from "./case-curves.js";
import {decision} from "./case-decision.js";
import {next, result} from "./case-end.js";
import {committed, heading, prediction, story} from "./case-opening.js";
import {path, worth} from "./case-path.js";
import {readings} from "./case-readings.js";
import {summary} from "./case-summary.js";
import {moved, truth} from "./case-truth.js";
import {compared, verdict} from "./case-verdict.js";

/**
 * What stays in sight on a wide screen: what the case is, how it ended, the story.
 * @param {object} kit as of `stage`
 */
export const side = (document, view, kit) => [
  heading(document, view, kit),
  ...(view.stage === "done" && !kit.model.wall ? [summary(document, view, kit)] : []),
  story(document, view, kit, kit.drawing(kit.picture.of(view, kit))),
];

/**
 * What is asked of the learner now, or told.
 * @param {object} kit what the views get, and {model, draft, move, hands, picture, worked, debrief, drawing, go}: the answers picked so far,
 *   how a move is made, the tally of a class, three parts that outlive the others, what keeps a drawing and gives its node,
 *   how a part is gone to
 */
export const stage = (document, view, kit) => ({predict: asked, check: working, done: told})[view.stage](document, view, kit);

const asked = (document, view, kit) => [prediction(document, view, kit)];

function working(document, view, kit) {
  const {draft, move} = kit;
  return [
    ...(kit.model.wall ? [] : [prediction(document, view, kit)]),
    readings(document, view, kit, kit.model.wall ? committed(document, view, kit) : []), // a step of its own would stand on an empty wall
    ...(view.worked ? [kit.worked.node] : []),
    checks(document, view, kit, move),
    decision(document, view, kit, draft, move),
  ];
}

function told(document, view, kit) {
  kit.debrief.node.hidden = false; // it outlives the wall, which shows one part at a time
  const parts = (...all) => all.map((part) => part(document, view, kit));
  return [
    ...parts(verdict, compared, truth), kit.drawing(curves(document, view, kit)),
    ...parts(moved, worth, path), kit.debrief.node, ...parts(result, next),
  ];
}
