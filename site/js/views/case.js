// A case from its story to its end: asks Python what the learner may see now, and places the parts.
// What stands there already stays: a reader's focus and choices outlive whatever comes without news.
import {resultOf} from "../result-code.js";
import {checks} from "./case-checks.js";
import {curves} from "./case-curves.js";
import {createDebrief} from "./case-debrief.js";
import {decision} from "./case-decision.js";
import {button, make} from "./case-dom.js";
import {next, result} from "./case-end.js";
import {createFair} from "./case-fair.js";
import {heading, prediction, story} from "./case-opening.js";
import {costText, draftFor, failure, newest, playKey} from "./case-parts.js";
import {path, worth} from "./case-path.js";
import {picture} from "./case-picture.js";
import {readings} from "./case-readings.js";
import {moved, truth} from "./case-truth.js";
import {compared, verdict} from "./case-verdict.js";
import {createHands, createSteps} from "./case-wall.js";
import {createWorked} from "./case-worked.js";
import {sentence} from "./sentence.js";

const MOST_DRAWS = 12; // seeds that are tried before a case is called one that cannot be drawn
const JUMPS = ["story", "readings", "checks", "decision"];

/**
 * @param {HTMLElement} host
 * @param {object} deps
 * @param {Document} deps.document
 * @param {Function} deps.words
 * @param {(kind: string, body: object) => Promise<object>} deps.ask
 * @param {{of: Function, keep: Function, forget: Function}} deps.drafts of drafts.js
 * @param {(action: object) => void} deps.send  {type: "moves" | "rig" | "course" | "open-plant" | "draw" | "finished" | "view" | "again", …}
 * @returns {{update: (model: {case: string|object, moves: object[], seed: number|null, wall: boolean, next: object|null,
 *   units: object, catalogue: object, ready?: boolean}) => void}}
 */
export function create(host, deps) {
  const {document, ask, drafts, send, words} = deps;
  const body = make(document, "div", {class: "case-body"});
  const notice = make(document, "div", {class: "case-notice"});
  const spoken = make(document, "p", {class: "unseen", role: "status", "aria-live": "polite"});
  const steps = createSteps(document, words);
  const hands = createHands(document, words);
  const debrief = createDebrief(deps);
  const worked = createWorked(deps);
  const fair = createFair(deps);
  host.append(body, spoken);
  body.addEventListener("change", () => drafts.keep(caseKey(model), draft));
  host.addEventListener("keydown", (event) => model?.wall && steps.key(event));

  let model = null;
  let view = null; // what Python, or the file made with the site, said last
  let shown = null; // key of the play that `view` is of
  let asked = null; // key of the play that was asked for last
  let trouble = null;
  let draft = emptyDraft();
  let drawn = null; // what the parts that stand there were made of, as one text
  let drawnUnits = null;
  let drawings = [];
  let moving = false; // the learner's own move is under way: its result gets the focus
  let draws = 0;
  let points = null; // of the play in sight, once they are reckoned

  const waiting = () => asked !== null && asked !== shown;

  function move(...steps) {
    if (waiting()) return; // a second tap on the same button
    moving = true;
    send({type: "moves", moves: [...model.moves, ...steps]});
  }

  async function load() {
    const key = playKey(model);
    asked = key;
    trouble = null;
    readOpening(key, model);
    let answer = null;
    try {
      answer = await ask("case", play());
    } catch (error) {
      if (key !== asked || error.name === "Superseded") return;
      if (drawsAgain(error)) return;
      trouble = error;
      return render();
    }
    if (key === asked) settle(key, answer);
  }

  /** With some seeds what an author claims is lost in the instruments' scatter: another one is drawn, unseen. */
  function drawsAgain(error) {
    if (error.code !== "file" || model.seed === null || model.moves.length > 0 || draws >= MOST_DRAWS) return false;
    draws += 1;
    send({type: "draw"});
    return true;
  }

  /** The story as it was computed when the site was built; its absence does no harm. */
  async function readOpening(key, {case: id, moves, seed, ready}) {
    if (ready || view || typeof id !== "string" || !known(id)) return;
    try {
      const response = await fetch(new URL(`cases/${encodeURIComponent(id)}.json`, document.baseURI));
      const opening = response.ok ? (await response.json()).view : null;
      if (!opening || view || key !== asked || (seed ?? opening.seed) !== opening.seed) return;
      view = opening;
      if (moves.length === 0) shown = key;
      render();
    } catch {
      // offline or not built: Python will say it all
    }
  }

  /** Of what nobody knows there is no file to be asked for. */
  function known(which) {
    const cases = model.catalogue?.cases ?? [];
    return cases.length === 0 || cases.some(({id}) => id === which);
  }

  function settle(key, answer) {
    view = answer;
    shown = key;
    draws = 0;
    render();
    if (moving) {
      focusOn(newest(model.moves) ?? "title");
      spoken.textContent = words("case-spent", {cost: costText(view, words)});
    }
    moving = false;
  }

  /** The result is kept at once, and again with its points. */
  function ended() {
    const finished = (score) => typeof model.case === "string" && send({type: "finished", case: model.case, result: resultOf(view, score)});
    finished(points);
    debrief.show(play(), view, model.units, (score) => {
      if (points === score) return;
      points = score;
      finished(score);
      const code = body.querySelector(".case-code");
      if (code) code.value = resultOf(view, score).code; // in its place, so that whoever is there stays
    });
  }

  function forget() {
    debrief.stop();
    worked.stop();
    fair.stop();
    view = shown = drawn = null;
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
    const node = body.querySelector(`[data-key="${CSS.escape(key)}"]`);
    if (node && model.wall) steps.reveal(node);
    node?.focus({preventScroll: true});
    node?.scrollIntoView?.({block: node.matches("h3") ? "start" : "nearest"});
  }

  /** Show how things stand. The parts are made anew only where they would come out otherwise; the note is free to change. */
  function render() {
    body.setAttribute("aria-busy", String(waiting()));
    host.classList.toggle("wall", Boolean(model.wall));
    fill(notice, note());
    const now = JSON.stringify([view, covered(), model.next?.id, model.seed, model.wall], unseenDigitsOff);
    if (now === drawn && model.units === drawnUnits) return;
    drawn = now;
    drawnUnits = model.units;
    replaceParts();
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
    if (view?.stage === "done") ended();
    if (key) body.querySelector(`[data-key="${CSS.escape(key)}"]`)?.focus({preventScroll: true});
  }

  /** The prediction stands, and its readings are still to come. */
  const covered = () => view?.stage === "predict" && model.moves.length > 0 && !trouble;

  function parts() {
    const kit = tools();
    const foot = make(document, "div", {class: "case-foot"},
      button(document, "back", words("case-back"), () => send({type: "rig"})),
      button(document, "others", words("case-others"), () => send({type: "course"})));
    if (!view) return [notice, foot];
    draft = draftFor(view, draft);
    const plant = drawing(picture(document, view, kit));
    const author = typeof model.case === "object" && !model.wall;
    if (author) fair.show(play(), view, model.units);
    const side = make(document, "div", {class: "case-side"}, heading(document, view, kit), story(document, view, kit, plant));
    const bar = model.wall ? steps.node : view.stage === "check" && jumps();
    return [side, make(document, "div", {class: "case-main-part"}, notice, ...(covered() ? [] : stage(kit)), author && fair.node), foot, bar].filter(Boolean);
  }

  /** What Python is asked about. */
  const play = () => ({case: model.case, moves: model.moves, seed: model.seed});

  const tools = () => ({...deps, units: model.units, model, points});

  function drawing(made) {
    drawings.push(made);
    return made.node;
  }

  function stage(kit) {
    if (view.stage !== "done") {
      const predicted = prediction(document, view, kit, draft, move, model.wall ? hands.node : null);
      if (view.stage === "predict") return [predicted];
      if (view.worked) worked.show(play(), view, model.units, move);
      return [predicted, readings(document, view, kit), ...(view.worked ? [worked.node] : []), checks(document, view, kit, move), decision(document, view, kit, draft, move)];
    }
    const reveal = [verdict, compared, truth].map((part) => part(document, view, {...kit, hands: hands.line()}));
    debrief.node.hidden = false; // it outlives the wall, which shows one part at a time
    const told = [moved, worth, path].map((part) => part(document, view, kit));
    return [...reveal, drawing(curves(document, view, kit)), ...told, debrief.node, result(document, view, kit), next(document, view, kit)];
  }

  /** Under the thumb: the bill so far, and the ways to what is read, checked and decided. */
  function jumps() {
    const to = JUMPS.map((key) => button(document, `to-${key}`, words(`case-to-${key}`), () => {
      const goal = body.querySelector(`[data-key="${key}"]`);
      goal.focus({preventScroll: true});
      goal.closest(".case-block").scrollIntoView({block: "start"});
    }, "plain"));
    return make(document, "nav", {class: "case-bar", "aria-label": words("case-jump-label")},
      make(document, "span", {class: "case-bill"}, words("case-bill", {cost: costText(view, words)})), ...to);
  }

  /** A line on what is being waited for, or what went wrong and the way out; null where there is nothing to say. */
  function note() {
    if (trouble) return problem();
    const id = waitingFor();
    return id && make(document, "p", {class: "case-note", tabindex: "-1", "data-key": "note"}, words(id));
  }

  function waitingFor() {
    if (!view) return "case-wait-open"; // there is no story yet that could be read meanwhile
    if (!model.ready) return model.moves.length ? "case-wait-kept" : "case-wait-engine";
    return waiting() ? "case-wait-move" : null;
  }

  function problem() {
    const {words: id, restart} = failure(trouble, model.seed);
    const again = () => {
      if (trouble.code === "start-up") send({type: "again"}); // Python itself is missing
      load();
      render();
    };
    const own = typeof model.case === "object" && id === "case-failed-file"; // the same text fails again
    const way = own ? button(document, "open-other", words("tool-open"), () => send({type: "ask-open"})) : restart === null ? null : restart
      ? button(document, "restart", words("case-restart"), () => send({type: "moves", moves: []}))
      : button(document, "again", words("case-again"), again);
    return make(document, "div", {class: "case-note case-trouble", role: "alert"},
      make(document, "p", {}, words(id)),
      trouble.code === "file" && make(document, "p", {class: "case-detail"}, sentence(trouble, {words, units: model.units})),
      id === "case-failed-seed" ? button(document, "draw", words("case-draw"), () => send({type: "draw"})) : way);
  }

  return {
    update(next) {
      const before = model;
      model = next;
      const key = playKey(next);
      const same = before !== null && caseKey(before) === caseKey(next);
      if (!same) forget();
      else if (next.moves.length === 0 && before.moves.length) begin();
      const fresh = key !== asked;
      if (fresh) load();
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

/** Put a node into its place, unless its like is there already: what is being read stays, and so does the focus. */
function fill(place, node) {
  if (node ? place.firstChild?.isEqualNode(node) : !place.firstChild) return;
  const held = place.contains(place.ownerDocument.activeElement);
  place.replaceChildren(...(node ? [node] : []));
  if (held && node?.hasAttribute("tabindex")) node.focus({preventScroll: true});
}
