// Puts the page together: state → ask Python → answer → views.
import {createActions} from "./actions.js";
import {createBeside} from "./beside.js";
import {createCourse, drawSeed} from "./course.js";
import {createDays, secondLook, whenOther} from "./days.js";
import {createClock} from "./clock.js";
import {createEntries} from "./entries.js";
import {createDrafts} from "./drafts.js";
import {createEngine} from "./engine/engine.js";
import {spawnWorker} from "./engine/spawn.js";
import {createKept} from "./kept.js";
import {createMaker} from "./maker.js";
import {modelOf, momentOf, pictureOf} from "./model.js";
import {createPractice, playId} from "./practice.js";
import {createRig} from "./rig.js";
import {checkState, decode, EACH} from "./share.js";
import {spansOf} from "./spans.js";
import {createStore, firstState} from "./state.js";
import {FIRST_PRESET, createUnits} from "./units.js";
import {createViews} from "./views.js";
import {isLook} from "./views/trend-panel.js";
import {fetchWords, fillWords} from "./words.js";

const DEFAULT_PLANT = "rinse-transfer";
const KEEPING = 15_000; // [ms] between two times that a running clock is kept
const PATIENCE = 50; // [ms] how long a picture waits for the answer that it could be drawn with

const kept = createKept();
const course = createCourse(kept);
const practice = createPractice(kept);
const drafts = createDrafts(kept);
const [words, first, linked] = await Promise.all([
  fetchWords(["words/en.ftl", "words/notes.ftl", "words/drawings.ftl", "words/cases.ftl", "words/practice.ftl", "words/parts.ftl", "words/days.ftl", "words/causes.ftl", "words/clock.ftl"]),
  readFirstAnswer(),
  decode(location.hash).catch((problem) => problem),
]);
fillWords(document, words);

let due = false; // a painting is asked for
let patience = 0; // a painting that comes without the answer if it must
let units = null; // those of the state, with the digits that its plant needs
let unitsFor = ""; // what they were made for
let keptAt = 0; // when the clock was last kept [ms]
let turn = 0; // counts what put another state in place of the whole
const page = {picked: "valve.opening", part: null, paused: false, boot: {stage: "runtime"}, trouble: null, linkTrouble: null, saved: kept.lasting, look: firstLook()};
const store = createStore(stateToStart());
if (linked instanceof Error) page.linkTrouble = linkTrouble(linked);

const engine = createEngine(spawnWorker, {onBoot});
const rig = createRig({engine, store, onChange: paintSoon, onTrouble, day: () => secondLook(yesterday.kept?.answer)});
const beside = createBeside({engine, store, rig, onChange: paintSoon});
const yesterday = createBeside({engine, store, rig, onChange: dayCame, name: "yesterday"});
const lookAgain = whenOther(() => secondLook(yesterday.kept?.answer), rig.ask);
store.subscribe(lookAgain);
const still = matchMedia("(prefers-reduced-motion: reduce)");
const away = () => document.hidden || store.state.view.place !== "rig" || document.querySelector("dialog[open]") !== null;
const clock = createClock({engine, store, onChange: clockMoved, onTrouble, onRest: keepClock, away, calm: () => still.matches});
const days = createDays({engine, store, clock, onChange: paintSoon});
if (!store.state.view.hidden) clock.restore(kept.get("clock"));
const maker = createMaker((...about) => engine.ask(...about), paintSoon);
const entries = createEntries(window);
entries.begin(store.state.view.place);
const send = createActions({store, rig, clock, beside, yesterday, days, engine, kept, course, practice, maker, drafts, page, entries, paint: paintSoon, views: () => views});
const views = createViews({document, words, units: unitsNow(), send, ask: (kind, body, channel = "case") => engine.ask(kind, body, channel), drafts});

still.addEventListener("change", paintSoon);
addEventListener("pagehide", keepClock);
document.addEventListener("visibilitychange", () => {
  clock.look();
  if (document.hidden) keepClock();
});
document.addEventListener("close", () => clock.look(), true); // of a dialog: what lies behind it goes on
addEventListener("hashchange", openLink);
addEventListener("keydown", undoByKey);
store.subscribe((_, what) => ["undo", "redo", "reset", "open", "load"].includes(what) && (turn += 1));
store.subscribe((_, what) => (what === "preview" && engine.stage === "ready" ? paintWithAnswer() : paintSoon()));
paint();
document.querySelector("main").removeAttribute("aria-busy");
rig.ask();
loadCatalogue();

/** The file made when the site was built: catalogue and the default plant's answer. Without it dials stay blank. */
async function readFirstAnswer() {
  try {
    const response = await fetch("first-answer.json");
    return response.ok ? await response.json() : null;
  } catch {
    return null;
  }
}

function stateToStart() {
  const plain = firstState(first?.default ?? DEFAULT_PLANT, {units: kept.get("units") ?? FIRST_PRESET});
  if (linked instanceof Error) return plain;
  if (linked) return dealt(whole(linked, plain));
  try {
    return whole(checkState(kept.get("state")), plain);
  } catch {
    return plain; // nothing kept, or nothing usable
  }
}

/** What a link leaves unsaid is as at the start, wherever it is opened; only the units are the reader's own. */
function whole(state, {view: {units}}) {
  return {...state, view: {...firstState(state.plant, {units}).view, ...state.view}};
}

/** A link with which everybody has numbers of their own: those that were drawn here before, else new ones. */
function dealt(state) {
  if (state.view.seed !== EACH) return state;
  const id = playId(state.view);
  const before = id ? course.of(id) : {seed: null};
  const own = before.seed === null ? {seed: drawSeed(), moves: []} : {seed: before.seed, moves: before.moves};
  practice.keep(state.view).forEach(course.forget);
  if (id) course.moved(id, own.seed, own.moves);
  return {...state, view: {...state.view, ...own}};
}

async function openLink({newURL}) {
  const {hash} = new URL(newURL);
  const place = entries.place(store.state.view.place);
  if (place) return send({type: "place", place});
  try {
    const next = await decode(hash);
    if (!next || location.hash !== hash) return; // none, or another was opened meanwhile
    entries.adopt();
    send({type: "load", state: dealt(whole(next, store.state))});
  } catch (problem) {
    page.linkTrouble = linkTrouble(problem, "-stays");
    paintSoon();
  }
}

/** @param {string} [rig] "-stays" where there is one already */
function linkTrouble({reason = "broken"}, rig = "") {
  return {code: `link-${reason}${["long", "broken"].includes(reason) ? rig : ""}`};
}

/** Ctrl+Z and Ctrl+Shift+Z, except where a person types. */
function undoByKey(event) {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
  if (event.target.matches?.("input[type=text], input[readonly]") || store.state.view.place !== "rig") return;
  event.preventDefault();
  send({type: event.shiftKey ? "redo" : "undo"});
}

function onBoot(boot) {
  if (boot.stage === "restart") page.boot = {stage: "runtime", again: true};
  else page.boot = {...boot, again: page.boot.again && boot.stage !== "ready"};
  if (boot.stage === "ready") document.documentElement.dataset.engine = "ready";
  else document.documentElement.dataset.engine = boot.stage === "failed" ? "failed" : "starting";
  paintSoon();
}

/** The clock has gone on, or something about it is to be shown. */
function clockMoved() {
  if (clock.status === "running" && performance.now() - keptAt > KEEPING) keepClock();
  days.look();
  paintSoon();
}

/** Its moment and the strip outlive a reload. */
function keepClock() {
  keptAt = performance.now();
  kept.set("clock", clock.kept);
}

function firstLook() {
  const look = kept.get("trend-look");
  return isLook(look) ? look : {};
}

function onTrouble(error) {
  page.trouble = error;
  paintSoon();
}

async function loadCatalogue() {
  try {
    page.catalogue = await engine.ask("catalogue", {}, "catalogue");
    paintSoon();
  } catch (error) {
    if (error.code && error.code !== "start-up") onTrouble(error);
  }
}

/** What is small in the plant in sight has more digits than usual. */
function unitsNow({plant, answer} = {}) {
  const {view} = store.state;
  const spans = view.place !== "rig" ? {} : spansOf(plant, answer);
  const wanted = JSON.stringify([view.units, spans]);
  if (wanted !== unitsFor) units = createUnits(view.units, navigator.language, spans);
  unitsFor = wanted;
  return units;
}

function dayCame() {
  lookAgain();
  paintSoon();
}

function paintSoon() {
  if (due) return;
  due = true;
  requestAnimationFrame(() => {
    due = false;
    paint();
  });
}

/** In a drag the answer is there within a frame: drawn once, with it, the picture is earlier than drawn twice. */
function paintWithAnswer() {
  patience ||= setTimeout(paintSoon, PATIENCE);
}

function paint() {
  clearTimeout(patience);
  patience = 0;
  const {state} = store;
  const catalogue = page.catalogue ?? first?.catalogue;
  const steady = pictureOf({state, got: rig.got, first, catalogue, refused: Boolean(rig.error ?? page.trouble)});
  const picture = clock.got && !state.view.hidden ? momentOf({state, got: clock.got, catalogue}) : steady;
  unitsNow(picture);
  const model = modelOf({
    state, picture, words, units,
    set: steady.plant ?? picture.plant,
    clock: clock.shown,
    look: page.look,
    live: store.live,
    previous: clock.got ? null : rig.previous,
    beside: beside.kept,
    yesterday: yesterday.kept,
    days: days.kept,
    catalogue,
    picked: page.picked,
    part: page.part,
    turning: !page.paused && !still.matches,
    error: rig.error,
    turn,
  });
  views.update(model, {
    state, page, course,
    practice: {now: maker.now, all: practice.all, level: kept.get("practice-level") ?? ""},
    late: rig.late && !clock.got && picture.origin === "live",
    canUndo: store.canUndo,
    canRedo: store.canRedo,
    theme: document.documentElement.dataset.theme,
    ready: engine.stage === "ready",
  });
}
