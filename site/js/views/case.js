// A case from its story to its end: asks Python what the learner may see now, and places the parts.
// What stands there already stays: a reader's focus and choices outlive whatever comes without news.
import {button, make} from "./case-dom.js";
import {heading, prediction, story} from "./case-opening.js";
import {failure, newest, playKey} from "./case-parts.js";
import {compared, curves, instruments, next, path, truth, verdict} from "./case-reveal.js";
import {checks, decision, readings} from "./case-work.js";
import {sentence} from "./sentence.js";

/**
 * @param {HTMLElement} host
 * @param {object} deps
 * @param {Document} deps.document
 * @param {Function} deps.words
 * @param {(kind: string, body: object) => Promise<object>} deps.ask
 * @param {(action: object) => void} deps.send  {type: "moves" | "rig" | "open-plant" | "ask-open" | "again", …}
 * @returns {{update: (model: {case: string|object, moves: object[], units: object, words?: Function, ready?: boolean}) => void}}
 */
export function create(host, deps) {
  const {document, ask, send} = deps;
  const body = make(document, "div", {class: "case-body"});
  const notice = make(document, "div", {class: "case-notice"});
  const spoken = make(document, "p", {class: "unseen", role: "status", "aria-live": "polite"});
  host.append(body, spoken);

  let model = null;
  let view = null; // what Python, or the file made with the site, said last
  let shown = null; // key of the play that `view` is of
  let asked = null; // key of the play that was asked for last
  let trouble = null;
  let draft = emptyDraft();
  let drawn = null; // what the parts that stand there were made of, as one text
  let drawnUnits = null;
  let drawings = null;
  let moving = false; // the learner's own move is under way: its result gets the focus

  const waiting = () => asked !== null && asked !== shown;

  function move(...steps) {
    if (waiting()) return; // a second tap on the same button
    moving = true;
    send({type: "moves", moves: [...model.moves, ...steps]});
  }

  async function load() {
    const key = playKey(model.case, model.moves);
    asked = key;
    trouble = null;
    readOpening(key, model);
    let answer = null;
    try {
      answer = await ask("case", {case: model.case, moves: model.moves});
    } catch (error) {
      if (key !== asked || error.name === "Superseded") return;
      trouble = error;
      return render();
    }
    if (key === asked) settle(key, answer);
  }

  /** The story as it was computed when the site was built; its absence does no harm. */
  async function readOpening(key, {case: id, moves, ready}) {
    if (ready || view || typeof id !== "string" || !known(id)) return;
    try {
      const response = await fetch(new URL(`cases/${encodeURIComponent(id)}.json`, document.baseURI));
      const opening = response.ok ? (await response.json()).view : null;
      if (!opening || view || key !== asked) return;
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
    render();
    if (moving) {
      focusOn(newest(model.moves) ?? "title");
      spoken.textContent = deps.words("case-spent", {minutes: view.minutes});
    }
    moving = false;
  }

  function forget() {
    view = shown = drawn = null;
    draft = emptyDraft();
  }

  function focusOn(key) {
    const node = body.querySelector(`[data-key="${CSS.escape(key)}"]`);
    node?.focus();
    node?.scrollIntoView?.({block: "nearest"});
  }

  /** Show how things stand. The parts are made anew only where they would come out otherwise; the note is free to change. */
  function render() {
    body.setAttribute("aria-busy", String(waiting()));
    fill(notice, note());
    const others = Boolean(model.catalogue?.cases.some(({id}) => id !== model.case));
    const now = JSON.stringify([view, covered(), others], unseenDigitsOff);
    if (now === drawn && model.units === drawnUnits) return;
    drawn = now;
    drawnUnits = model.units;
    replaceParts(others);
  }

  function replaceParts(others) {
    const held = document.activeElement?.closest?.("[data-key]");
    const key = held && body.contains(held) ? held.dataset.key : null;
    drawings?.remove();
    drawings = null;
    const unfolded = body.querySelector(".case-goals")?.open ?? false;
    body.replaceChildren(...parts(others));
    body.querySelector(".case-goals")?.toggleAttribute("open", unfolded);
    drawings?.draw();
    if (key) body.querySelector(`[data-key="${CSS.escape(key)}"]`)?.focus({preventScroll: true});
  }

  /** The prediction stands, and its readings are still to come. */
  const covered = () => view?.stage === "predict" && model.moves.length > 0 && !trouble;

  function parts(others) {
    const tools = {...deps, units: model.units};
    const foot = make(document, "div", {class: "case-foot"},
      button(document, "back", deps.words("case-back"), () => send({type: "rig"})),
      others && button(document, "others", deps.words("case-others"), () => send({type: "ask-open"})));
    if (!view) return [notice, foot];
    return [heading(document, view, tools), story(document, view, tools), notice, ...(covered() ? [] : stage(tools)), foot];
  }

  function stage(tools) {
    if (view.stage !== "done") {
      const predicted = prediction(document, view, tools, draft, move);
      if (view.stage === "predict") return [predicted];
      return [predicted, readings(document, view, tools), checks(document, view, tools, move), decision(document, view, tools, draft, move)];
    }
    drawings = curves(document, view, tools);
    return [verdict(document, view, tools), compared(document, view, tools), truth(document, view, tools), drawings.node,
      path(document, view, tools), instruments(document, view, tools), next(document, view, tools)];
  }

  /** A line on what is being waited for, or what went wrong and the way out; null where there is nothing to say. */
  function note() {
    if (trouble) return problem();
    const id = waitingFor();
    return id && make(document, "p", {class: "case-note", tabindex: "-1", "data-key": "note"}, deps.words(id));
  }

  function waitingFor() {
    if (!view) return "case-wait-open"; // there is no story yet that could be read meanwhile
    if (!model.ready) return model.moves.length ? "case-wait-kept" : "case-wait-engine";
    return waiting() ? "case-wait-move" : null;
  }

  function problem() {
    const {words: id, restart} = failure(trouble);
    const again = () => {
      if (trouble.code === "start-up") send({type: "again"}); // Python itself is missing
      load();
      render();
    };
    const way = restart === null ? null : restart
      ? button(document, "restart", deps.words("case-restart"), () => send({type: "moves", moves: []}))
      : button(document, "again", deps.words("case-again"), again);
    return make(document, "div", {class: "case-note case-trouble", role: "alert"},
      make(document, "p", {}, deps.words(id)),
      trouble.code === "file" && make(document, "p", {class: "case-detail"}, sentence(trouble, {words: deps.words, units: model.units})),
      way);
  }

  return {
    update(next) {
      const before = model;
      model = next;
      const key = playKey(next.case, next.moves);
      const sameCase = before !== null && playKey(before.case, []) === playKey(next.case, []);
      if (!sameCase) forget();
      else if (next.moves.length === 0 && before.moves.length) draft = emptyDraft();
      const fresh = key !== asked;
      if (fresh) load();
      if (fresh || before.units !== next.units || before.ready !== next.ready) render();
      if (fresh && moving && !next.ready) focusOn("note");
    },
  };
}

const emptyDraft = () => ({says: null, suspects: null, saw: {}, choice: null});

/** Two machines may differ in a number's last digits, which nobody sees. */
const unseenDigitsOff = (_, value) => (typeof value === "number" ? Number(value.toPrecision(9)) : value);

/** Put a node into its place, unless its like is there already: what is being read stays, and so does the focus. */
function fill(place, node) {
  if (node ? place.firstChild?.isEqualNode(node) : !place.firstChild) return;
  const held = place.contains(place.ownerDocument.activeElement);
  place.replaceChildren(...(node ? [node] : []));
  if (held && node?.hasAttribute("tabindex")) node.focus({preventScroll: true});
}
