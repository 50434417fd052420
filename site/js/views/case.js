// A case from its story to its end: holds the play in hand and places its parts.
// What stands there already stays: a reader's focus and choices outlive whatever comes without news.
import {resultOf} from "../result-code.js";
import {createAhead} from "./case-ahead.js";
import {createDebrief} from "./case-debrief.js";
import {button, make} from "./case-dom.js";
import {createFair} from "./case-fair.js";
import {createLoad} from "./case-load.js";
import {fill, notice} from "./case-notice.js";
import {costText, draftFor, newest, playKey, unitsOf} from "./case-parts.js";
import {createPicture} from "./case-picture.js";
import {side, stage} from "./case-stages.js";
import {jumps, pointsText} from "./case-summary.js";
import {createHands, createSteps} from "./case-wall.js";
import {createWorked} from "./case-worked.js";

/**
 * @param {HTMLElement} host
 * @param {object} deps
 * @param {Document} deps.document
 * @param {Function} deps.words
 * @param {(kind: string, body: object) => Promise<object>} deps.ask
 * @param {{of: Function, keep: Function, forget: Function}} deps.drafts of drafts.js
 * @param {(action: object) => void} deps.send  {type: "moves" | "rig" | "course" | "open-plant" | "draw" | "finished" | "view" | "again", …}
 * @returns {{update: (model: {case: string|object, id: string|null, practice: object|null, moves: object[], seed: number|null, wall: boolean, next: object|null,
 *   units: object, catalogue: object, ready?: boolean}) => void}}
 */
export function create(host, deps) {
  const {document, drafts, send, words} = deps;
  const body = make(document, "div", {class: "case-body"});
  const note = make(document, "div", {class: "case-notice"});
  const spoken = make(document, "p", {class: "unseen", role: "status", "aria-live": "polite"});
  const steps = createSteps(document, words);
  const hands = createHands(document, words);
  const ahead = createAhead(deps);
  const debrief = createDebrief(deps);
  const worked = createWorked(deps);
  const fair = createFair(deps);
  const plant = createPicture(deps);
  const play = createLoad(deps, {changed: render, settled});
  host.append(body, spoken);
  body.addEventListener("change", () => drafts.keep(caseKey(model), draft));
  host.addEventListener("keydown", (event) => model?.wall && steps.key(event));

  let model = null;
  let draft = emptyDraft();
  let drawn = null; // what the parts that stand there were made of, as one text
  let drawnUnits = null;
  let drawings = [];
  let moving = false; // the learner's own move is under way: its result gets the focus
  let arriving = false; // another case begins, or this one anew, at the wish of who has the focus here: its title gets it
  let points = null; // of the play in sight, once they are reckoned

  function move(...steps) {
    if (play.waiting()) return; // a second tap on the same button
    moving = true;
    send({type: "moves", moves: [...model.moves, ...steps]});
  }

  function settled() {
    render();
    if (play.view.stage === "check") ahead.go(caseKey(model), asks());
    if (moving) {
      focusOn(newest(model.moves) ?? "title");
      spoken.textContent = words("case-spent", {cost: costText(play.view, words)});
    }
    moving = false;
  }

  /** The result is kept at once, and again with its points. */
  function ended() {
    ahead.stop();
    const {view} = play;
    const finished = (score) => model.id && send({type: "finished", case: model.id, result: resultOf(view, score)});
    finished(points);
    debrief.show(asks(), view, unitsOf(model.units, view), (score) => {
      if (points === score) return;
      points = score;
      finished(score);
      putPoints(view);
    });
  }

  /** In their place, so that whoever is there stays. */
  function putPoints(view) {
    const code = body.querySelector(".case-code");
    const sum = body.querySelector(".case-sum-points");
    if (code) code.value = resultOf(view, points).code;
    if (sum) sum.textContent = pointsText(points, words);
  }

  function forget() {
    for (const part of [ahead, debrief, worked, fair]) part.stop();
    play.forget();
    plant.forget();
    drawn = null;
    begin(drafts.of(caseKey(model)));
  }

  function begin(picked = null) {
    if (!picked) drafts.forget();
    draft = picked ?? emptyDraft();
    points = null;
    debrief.stop();
    steps.restart();
    hands.clear();
  }

  function focusOn(key) {
    const node = find(key);
    if (node && model.wall) steps.reveal(node);
    node?.focus({preventScroll: true});
    node?.scrollIntoView?.({block: node.matches("h3") ? "start" : "nearest"});
  }

  /** To the head of a part, at the learner's wish. */
  function go(key) {
    find(key).focus({preventScroll: true});
    find(key).closest(".case-block").scrollIntoView({block: "start"});
  }

  const find = (key) => body.querySelector(`[data-key="${CSS.escape(key)}"]`);

  /** Show how things stand. The parts are made anew only where they would come out otherwise; the note is free to change. */
  function render() {
    body.setAttribute("aria-busy", String(play.waiting()));
    host.classList.toggle("wall", Boolean(model.wall));
    const {view, trouble} = play;
    fill(note, notice(document, {words, send, load}, {model, view, trouble, waiting: play.waiting()}));
    const now = JSON.stringify([view, covered(), model.next?.id, model.seed, model.wall], unseenDigitsOff);
    if (now === drawn && model.units === drawnUnits) return;
    drawn = now;
    drawnUnits = model.units;
    replaceParts();
    arrive();
  }

  function arrive() {
    if (!arriving || !find("title")) return;
    arriving = false;
    find("title").focus({preventScroll: true});
    document.defaultView.scrollTo(0, 0);
  }

  function load() {
    play.load(model);
    render();
  }

  function replaceParts() {
    const held = document.activeElement?.closest?.("[data-key]");
    const key = held && body.contains(held) ? held.dataset.key : null;
    for (const drawing of drawings) drawing.remove();
    drawings = [];
    const unfolded = body.querySelector(".case-goals")?.open ?? false;
    body.replaceChildren(...parts());
    body.querySelector(".case-goals")?.toggleAttribute("open", unfolded);
    for (const drawing of drawings) drawing.draw();
    if (model.wall) steps.take([...body.querySelectorAll(".case-block")]);
    if (play.view?.stage === "done" && !play.waiting()) ended(); // else it is the end of a play that was left
    if (key) find(key)?.focus({preventScroll: true});
  }

  /** The prediction stands, and its readings are still to come. */
  const covered = () => play.view?.stage === "predict" && model.moves.length > 0 && !play.trouble;

  function parts() {
    const {view} = play;
    const foot = make(document, "div", {class: "case-foot"},
      button(document, "back", words("case-back"), () => send({type: "rig"})),
      button(document, "others", words("case-others"), () => send({type: "course"})));
    if (!view) return [note, foot];
    draft = draftFor(view, draft);
    const kit = tools();
    const author = !model.id && !model.wall; // of a file of one's own
    if (author) fair.show(asks(), view, kit.units);
    if (view.worked && view.stage === "check") worked.show(asks(), view, kit.units, move);
    return [
      make(document, "div", {class: "case-side"}, ...side(document, view, kit)),
      make(document, "div", {class: "case-main-part"}, note, ...(covered() ? [] : stage(document, view, kit)), author && fair.node),
      foot, model.wall ? steps.node : jumps(document, view, kit),
    ].filter(Boolean);
  }

  /** What Python is asked about. */
  const asks = () => ({case: model.case, moves: model.moves, seed: model.seed});

  const tools = () => ({...deps, units: unitsOf(model.units, play.view), model, points, draft, move, hands, picture: plant, worked, debrief, drawing, go});

  function drawing(made) {
    drawings.push(made);
    return made.node;
  }

  return {
    update(next) {
      const before = model;
      model = next;
      const same = before !== null && caseKey(before) === caseKey(next);
      const anew = same && next.moves.length === 0 && before.moves.length > 0;
      arriving ||= (anew || (before !== null && !same)) && body.contains(document.activeElement);
      if (!same) forget();
      else if (anew) begin();
      const fresh = !play.has(next);
      if (fresh) play.load(next);
      if (fresh || ["units", "ready", "wall", "next"].some((name) => before[name] !== next[name])) render();
      if (fresh && moving && !next.ready) focusOn("note");
    },
  };
}

/** A case with its seed, however far it was played. */
const caseKey = (model) => playKey({...model, moves: []});

const emptyDraft = () => ({says: null, suspects: null, saw: {}, choice: null, action: null});

/** Two machines may differ in a number's last digits, which nobody sees. */
const unseenDigitsOff = (_, value) => (typeof value === "number" ? Number(value.toPrecision(9)) : value);
