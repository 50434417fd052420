// All views of the page, each in its host.
import {daysCovered, drawnCovered, inHandCovered} from "./covered.js";
import {PLACES} from "./share.js";
import {create as createAlarm} from "./views/alarm.js";
import {create as createApparatus} from "./views/apparatus.js";
import {create as createBeside, createKeep} from "./views/beside.js";
import {create as createCase} from "./views/case.js";
import {create as createCauses} from "./views/causes.js";
import {create as createCharts} from "./views/charts.js";
import {create as createClock} from "./views/clock.js";
import {stageOf} from "./course.js";
import {nextCase} from "./course-order.js";
import {playId, titleOf} from "./practice.js";
import {create as createControls} from "./views/controls.js";
import {create as createCourse} from "./views/course.js";
import {create as createDay} from "./views/day.js";
import {create as createDays} from "./views/days.js";
import {setText} from "./views/dom.js";
import {create as createHidden} from "./views/hidden.js";
import {create as createNotes} from "./views/notes.js";
import {create as createOpen} from "./views/open.js";
import {createTaps} from "./views/part-taps.js";
import {create as createParts} from "./views/parts.js";
import {create as createPath} from "./views/path.js";
import {create as createPlaces} from "./views/places.js";
import {SLOWED} from "./views/pump.js";
import {createRoom} from "./views/room.js";
import {create as createShare} from "./views/share-dialog.js";
import {create as createStack} from "./views/stack.js";
import {create as createStatus} from "./views/status.js";
import {create as createToolbar, createSwitch} from "./views/toolbar.js";
import {create as createTrend, eventText} from "./views/trend-panel.js";
import {create as createWhy} from "./views/why.js";

/** A puzzle of one's own is called by its file's name. */
const caseTitle = ({case: which, practice}, cases) => (practice ? titleOf(which) : which.name?.replace(/\.toml$/i, "") ?? cases.find(({id}) => id === which)?.title ?? "");

/** A control stands where it was set, also while what it moves is on its way; a level is where it has got to, in the usual digits. */
function asSet({plant, set, units}) {
  if (plant === set) return set;
  const usual = (si) => units.si("height", Number(units.value("height", si).toFixed(units.decimals("height"))));
  const level = (name) => ({...set[name], surface_m: usual(plant[name].surface_m)});
  return {...set, supply: level("supply"), delivery: level("delivery")};
}

/** @returns {{update: Function, open: object, share: object, catalogue: () => object, complain: Function}} */
export function createViews({document, words, units, send, ask, drafts}) {
  const host = (id) => document.getElementById(id);
  const kit = {document, words, units, send};
  const causes = createCauses(host("causes"), {...kit, ask});
  const onRig = Object.fromEntries(Object.entries({
    apparatus: createApparatus, why: createWhy, day: createDay, notes: createNotes,
    stack: createStack, "chart-figure": createCharts, path: createPath, beside: createBeside, keep: createKeep, days: createDays, hidden: createHidden,
  }).map(([id, create]) => [id, create(host(id), {...kit, causes})]));
  const controls = createControls(host("controls"), {...kit, causes});
  const places = createPlaces(host("places"), kit);
  const toolbar = createToolbar(host("tools"), kit);
  const status = createStatus(host("status"), kit);
  const alarm = createAlarm(host("status"), kit, host("notes"));
  const turning = createSwitch(host("turning"), kit, {id: "turning", action: "turning"});
  const time = createSwitch(host("clock-open"), kit, {id: "clock", action: "clock"});
  const clock = createClock(host("clock"), kit);
  const trend = createTrend(host("trend"), kit);
  const curves = createSwitch(host("curves"), kit, {id: "curves", action: "curves"});
  const parts = createParts(host("parts"), kit, {drawing: host("apparatus"), beside: host("parts-open")});
  createTaps(host("apparatus"), parts.open);
  const open = createOpen(host("open"), kit);
  const share = createShare(host("share"), {...kit, clipboard: navigator.clipboard});
  let caseView = null; // made when a case is first opened
  let courseView = null;
  let model = null;
  let said = "";
  let heard = null; // the last event that was told
  let place = null; // the section in sight

  setText(host("slowed"), words("draw-slowed", {times: SLOWED}));
  createRoom(document, document.querySelector(".top"), host("controls"), host("parts"));
  host("skip").addEventListener("click", (event) => {
    event.preventDefault(); // the address holds the state, not a place on the page
    host(place?.id ?? "rig").focus();
  });

  /** Coming from the other place, begin at the top: how far that one was scrolled means nothing here. */
  function arrive(section) {
    if (place && place !== section) {
      const focused = document.activeElement;
      if (focused === document.body || focused?.closest("[hidden]")) section.focus({preventScroll: true});
      document.defaultView.scrollTo(0, 0);
    }
    place = section;
  }

  function updateRig(now, {page, late}) {
    const origin = late ? "old" : now.origin;
    setText(host("origin"), origin === "live" ? "" : words(`origin-${origin}`));
    host("rig").classList.toggle("old", late);
    if (!now.plant) return; // the file made with the site is missing: the drawing waits for Python
    if (now.hidden) return updateCovered(now);
    for (const view of Object.values(onRig)) view.update(now);
    const inHand = {...now, plant: asSet(now)};
    for (const view of [controls, parts]) view.update(inHand);
    turning.update(!page.paused);
    time.update(now.clock.status !== "off");
    clock.update(now);
    trend.update(now);
    host("slowed").hidden = !now.turning;
    curves.update(now.curves);
    host("rig").classList.toggle("has-before", Boolean(now.previous));
    for (const key of document.querySelectorAll(".before-key")) setText(key, words(now.yesterday ? "before-key-yesterday" : "before-key"));
    host("graphs").classList.toggle("no-curves", !now.curves);
    announce(now);
  }

  /** With something hidden only instruments, controls and both days' readings are there; the rest is out of sight. */
  function updateCovered(now) {
    onRig.apparatus.update(drawnCovered(now));
    for (const name of ["day", "days", "hidden"]) onRig[name].update(daysCovered(now));
    for (const view of [controls, parts]) view.update(inHandCovered(now));
    host("rig").classList.toggle("has-before", Boolean(now.previous));
    for (const key of document.querySelectorAll(".before-key")) setText(key, words("before-key-yesterday"));
  }

  /** Tell a screen reader the outcome once the hand has let go, not during the drag. */
  function announce({live, origin, days, clock: {status, record}}) {
    const event = record.events.at(-1) ?? null;
    if (event !== heard) {
      const all = record.events.slice(record.events.lastIndexOf(heard) + 1);
      heard = event;
      if (event && status === "running") return setText(host("announce"), all.map((one) => eventText(one, words)).join(" "));
    }
    if (live || origin !== "live" || status === "running" || days?.fresh === false) return;
    const line = [...document.querySelectorAll("#why-line, .then")].map((node) => node.textContent.trim()).join(" ");
    if (line !== said) setText(host("announce"), (said = line));
  }

  function updateCase(now, {state: {view}, course, ready}) {
    caseView ??= createCase(host("case"), {...kit, ask, drafts, clipboard: navigator.clipboard});
    const next = nextCase(now.catalogue.cases, (id) => stageOf(course.of(id)) === "done", view.case);
    caseView.update({...now, case: view.case, id: playId(view), practice: view.practice ?? null, moves: view.moves ?? [], seed: view.seed ?? null, wall: view.wall === true, next, ready});
  }

  function updateCourse(now, {course, practice, ready}) {
    courseView ??= createCourse(host("course"), kit);
    courseView.update({...now, course, practice, ready});
  }

  /** Which section is in sight: no case without one, and a course only where there are cases. */
  function placeOf({view}) {
    return view.place === "case" && !view.case ? "course" : view.place ?? "rig";
  }

  return {
    open,
    share,
    catalogue: () => model.catalogue,
    complain: (file, error) => open.complain(file, error, model.units),
    update(now, about) {
      model = now;
      const at = placeOf(about.state);
      const inCase = at !== "rig";
      const {cases} = now.catalogue;
      document.body.classList.toggle("covered", Boolean(now.hidden));
      for (const id of PLACES) host(id).hidden = id !== at;
      arrive(host(at));
      const title = at === "case" ? caseTitle(about.state.view, cases) : at === "course" ? words("course-title") : (now.plant?.title ?? "");
      setText(host("plant-title"), inCase ? "" : title);
      host("plant-title").title = inCase ? "" : title; // a long one is cut short
      document.title = title ? words("page-title", {title}) : words("name");
      places.update({inCase, cases});
      toolbar.update({...about, inCase, units: now.units});
      status.update({...about.page, late: about.late}, now.units);
      alarm.update(inCase || now.hidden || about.page.boot.stage === "failed" ? null : now);
      if (inCase) for (const id of ["beside", "days", "trend"]) host(id).hidden = true;
      if (at === "case") updateCase(now, about);
      else if (at === "course") updateCourse(now, about);
      else updateRig(now, about);
    },
  };
}
