// What each action of a person does. Views only say what was wanted.
import {encode, rigAlone} from "./share.js";
import {FIRST_PRESET} from "./units.js";

/** @returns {(action: {type: string}) => void} `send`, which every view gets */
export function createActions({store, rig, clock, beside, yesterday, days, engine, kept, page, entries, paint, views}) {
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
    moves: ({moves}) => keep(() => store.show({moves})),
    case: (action) => keep(() => store.show({place: "case", case: action.case, moves: []})),
    cases: () => keep(() => store.show({place: "case", ...lastCase()})),
    rig: () => keep(() => store.show({place: "rig"})),
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

  /** The case that was left, or else the first of the course. */
  function lastCase() {
    return store.state.view.case ? {} : {case: views().catalogue().cases[0]?.id, moves: []};
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
      views().share.show(address.href, "", Boolean(state.view.hidden));
    } catch {
      views().share.show(null, state.view.place === "case" && typeof state.view.case === "object" ? "puzzle" : "plant");
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
