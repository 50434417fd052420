// What each action of a person does. Views only say what was wanted.
import {drawSeed} from "./course.js";
import {same} from "./history.js";
import {playId} from "./practice.js";
import {EACH, encode, rigAlone} from "./share.js";
import {FIRST_PRESET} from "./units.js";

/** @returns {(action: {type: string}) => void} `send`, which every view gets */
export function createActions({store, rig, clock, beside, yesterday, days, engine, kept, course, practice, maker, drafts, page, entries, paint, views}) {
  const deeds = {
    preview: ({edits}) => {
      clock.touched(Object.keys(edits));
      store.preview(edits);
    },
    commit: ({edits}) => {
      clock.touched(Object.keys(edits));
      keep(() => store.commit(edits));
    },
    settle: () => store.live && keep(() => store.commit()),
    cancel: () => store.cancel(),
    undo: () => keep(store.undo),
    redo: () => keep(store.redo),
    reset: () => keep(store.reset),
    load: ({state}) => {
      page.part = null; // a link shows its plant, not what was open here
      keep(() => store.load(state));
    },
    "keep-beside": ({beside}) => keep(() => store.keepBeside(beside)),
    remember: ({yesterday}) => keep(() => store.remember(yesterday)),
    hide: ({hidden}) => keep(() => store.hide(hidden)),
    happen: ({edits, told, day}) => keep(() => store.happen(edits, told, day)),
    reveal,
    exchange: ({now, beside}) => keep(() => store.exchange({now, beside})),
    view: ({view}) => keep(() => store.show(view)),
    moves: ({moves}) => play({moves}),
    case: (action) => keep(() => store.show({place: "case", ...which(action), ...leftOff(which(action))})),
    draw: (action) => play({place: "case", ...which(action.case ? action : store.state.view), moves: [], seed: drawSeed(store.state.view.seed)}),
    practice: ({seed, level}) => {
      kept.set("practice-level", level ?? "");
      deeds.course();
      maker.make({seed, level}, made);
    },
    "practice-stop": () => maker.stop(),
    finished: (action) => same(course.of(action.case).moves, store.state.view.moves) && course.finished(action.case, action.result), // a link to somebody's end is no end of one's own
    forget: (action) => forget(() => [course, practice].forEach((some) => some.forget(action.case)), action.case),
    "forget-all": () => forget(() => [course, practice].forEach((some) => some.forgetAll()), playId(store.state.view)),
    cases: () => deeds.place({place: store.state.view.place === "rig" ? "case" : "course"}), // from a puzzle to all of them
    course: () => deeds.place({place: "course"}),
    rig: () => deeds.place({place: "rig"}),
    place: ({place}) => keep(() => store.show({place: place === "case" && !store.state.view.case ? "course" : place})),
    curves: () => keep(() => store.show({curves: store.state.view.curves === false})),
    "open-plant": ({plant}) => keep(() => store.open(plant, {place: "rig"})),
    "open-file": openFile,
    "ask-open": () => views().open.show(views().catalogue()),
    share: share,
    theme: turnTheme,
    turning: () => set({paused: !page.paused}),
    clock: () => store.state.view.hidden || (clock.status === "off" ? clock.start() : clock.off()),
    "clock-run": () => clock.start(),
    "clock-pause": () => clock.pause(),
    "clock-step": () => clock.step(),
    "clock-rate": ({rate}) => clock.setRate(rate),
    "trend-look": ({look}) => {
      kept.set("trend-look", look);
      set({look});
    },
    pick: ({control}) => page.picked !== control && set({picked: control}),
    part: ({part}) => page.part !== part && set({part}),
    again: () => {
      set({boot: {stage: "runtime"}});
      engine.again();
      rig.ask();
      beside.again();
      yesterday.again();
      days.again();
      clock.again();
    },
    reload: () => location.reload(),
    "copy-details": copyDetails,
  };

  function send(action) {
    if (!Object.hasOwn(deeds, action.type)) throw new RangeError(`no such action: ${action.type}`);
    deeds[action.type](action);
  }

  /** A play comes so far: it is kept in the course too, unless its case is somebody's own file. */
  function play(part) {
    keep(() => store.show(part));
    const {view} = store.state;
    practice.keep(view).forEach(course.forget);
    if (playId(view)) course.moved(playId(view), view.seed ?? null, view.moves);
  }

  /** A puzzle is made: it is opened, unless the learner has gone elsewhere meanwhile. */
  function made(file, wish) {
    practice.keep({case: file, practice: wish}).forEach(course.forget);
    if (store.state.view.place === "course") send({type: "case", case: file, practice: wish});
    else paint();
  }

  /** What of the view says which case it is. */
  const which = ({case: one, practice: wish}) => ({case: one, practice: wish});

  /** Where a case was left off; the beginning where it never was. */
  function leftOff(one) {
    const {seed, moves} = playId(one) ? course.of(playId(one)) : {seed: null, moves: []};
    return {seed, moves};
  }

  /** Plays that are forgotten do not stand in the state either. */
  function forget(deed, id) {
    deed();
    drafts.forget();
    if (id !== null && id === playId(store.state.view)) keep(() => store.show({moves: [], seed: null}));
    paint();
  }

  function set(part) {
    Object.assign(page, part);
    paint();
  }

  /** Do something that stays: autosave and the address follow it. */
  function keep(deed) {
    deed();
    const {state} = store;
    if (state.view.hidden) clock.off(); // its steps would tell the truth
    kept.set("state", state);
    kept.set("units", state.view.units ?? FIRST_PRESET);
    Object.assign(page, {saved: kept.lasting, linkTrouble: null});
    writeAddress(state);
  }

  async function writeAddress(state) {
    const {hash} = location;
    try {
      const fragment = await encode(state);
      if (state === store.state && location.hash === hash) entries.write(`#${fragment}`, state.view.place);
    } catch {
      // too long for a link: the browser keeps it, the share dialog says so
      entries.write(location.pathname + location.search, state.view.place);
    }
  }

  async function share() {
    const {state} = store;
    try {
      const address = new URL(location.href);
      address.hash = await encode(state).catch(() => encode(rigAlone(state)));
      views().share.show(address.href, {hidden: Boolean(state.view.hidden), own: state.view.place === "case" ? await dealing(state) : null});
    } catch {
      views().share.show(null, {large: state.view.place === "case" && typeof state.view.case === "object" ? "puzzle" : "plant"});
    }
  }

  /** What was hidden happens in the open; until then nobody here knows it. */
  async function reveal() {
    const {plant, edits, view: {hidden}} = store.state;
    try {
      const {edits: made, ...told} = await engine.ask("unveil", {plant, edits, hidden}, "unveil");
      if (store.state.view.hidden === hidden) send({type: "happen", edits: made, told});
    } catch (error) {
      if (error.code) set({trouble: error});
    }
  }

  /** The address of a case with which everybody draws numbers of their own; null where it does not fit into one. */
  async function dealing({view, ...rig}) {
    const address = new URL(location.href);
    address.hash = await encode({...rig, view: {...view, moves: [], seed: EACH}}).catch(() => "");
    return address.hash ? address.href : null;
  }

  async function openFile({name, text}) {
    try {
      const {kind, plant} = await engine.ask("file", {name, text}, "file");
      views().open.close();
      send(kind === "case" ? {type: "case", case: {name, text}} : {type: "open-plant", plant});
    } catch (error) {
      if (error.code) views().complain(name, error);
    }
  }

  function turnTheme() {
    const root = document.documentElement;
    root.dataset.theme = root.dataset.theme === "dark" ? "light" : "dark";
    kept.set("theme", root.dataset.theme);
    paint();
  }

  async function copyDetails() {
    const {code, text, detail} = page.trouble ?? page.boot.error ?? {};
    await navigator.clipboard?.writeText([code, text, detail].filter(Boolean).join("\n")).catch(() => {});
  }

  return send;
}
