// One quantity with a native slider and a number box beside it.
import {fromFile, toFile} from "../units.js";
import {readTyped} from "./control-table.js";
import {h, hide, setAttributes, setText} from "./dom.js";
import {byHand} from "./held.js";
import {evenTrack} from "./track.js";

const KEYS_APART = 500; // [ms]

/**
 * @param {object} control a row of the control table, kind "slider"; where the same key has another slider elsewhere,
 *   or a range of decades, with `id`, `name` and `track` (low, high) => Track of its own
 * @param {object} kit {document, words, send}
 * @returns {{node: Element, update: (model: object) => void, complain: (text: string|null) => void}}
 */
export function createSlider(control, {document, words, send}) {
  const {key, quantity, step, track: trackOf = (low, high) => evenTrack(low, high, step)} = control;
  const id = control.id ?? key.replaceAll(".", "-");
  const name = control.name ?? words(`control-${id}`);
  const make = (...parts) => h(document, ...parts);
  let model = null;
  let dragging = false; // the hand is on it, or keys follow each other closely
  let held = false; // by a pointer
  let typing = false; // in the number box, not yet entered
  let draft = null; // what stood here, and when, as something was entered that will not do
  let sent = null; // from the box, not yet painted: an arrow may come within the frame
  let rest = null; // timer: no key has come for a while
  let track = null; // between the present ends
  let ends = "";

  const box = make("input", {
    type: "text", role: "spinbutton", inputmode: "decimal", autocomplete: "off", id: `${id}-number`,
    "aria-label": words("control-number", {name}), "aria-describedby": `${id}-idle ${id}-bad`,
    onchange: typed, onfocus: pick, onkeydown: pressed,
    oninput: () => (typing = true), onblur: () => (typing = false),
  });
  const unit = make("span", {class: "unit", "aria-hidden": "true"});
  const slider = make("input", {type: "range", id, "aria-describedby": `${id}-idle ${id}-bad`, oninput: moved, onchange: released,
    onfocus: pick, onpointerdown: () => (held = true), onkeydown: () => (held = false), onblur: settle});
  const why = make("span", {id: `${id}-idle`});
  const take = make("button", {type: "button", class: "plain", hidden: true, onclick: () => send({type: "commit", edits: byHand(model)})}, words("control-take"));
  const idle = make("p", {class: "idle-reason", hidden: true}, why, " ", take);
  const bad = make("p", {class: "bad", id: `${id}-bad`, hidden: true});
  const node = make(
    "div", {class: "control", "data-key": key},
    make("label", {class: "name", for: id}, name), box, unit, slider, idle, bad,
  );

  // sliders run in file units: their steps are round there, and no unit switch moves the handle
  function moved() {
    if (model.idle) return rewind();
    dragging = true;
    complain(null);
    send({type: "preview", edits: {[key]: track.value(Number(slider.value))}});
  }

  /** A pointer that lets go ends the step; keys end it when none has followed for a while. */
  function released() {
    clearTimeout(rest);
    if (held) return settle();
    rest = setTimeout(settle, KEYS_APART);
  }

  function settle() {
    clearTimeout(rest);
    if (dragging) send({type: "settle"});
    dragging = held = false;
  }

  /** A handle without effect goes back to where it was. */
  function rewind() {
    slider.value = String(track.place(model.value));
  }

  function pick() {
    send({type: "pick", control: key});
  }

  function typed() {
    typing = false;
    const {units, range} = model;
    const [low, high] = range[key];
    const toFileUnits = (shown) => toFile(key, units.si(quantity, shown));
    const read = readTyped(box.value, {low, high, toFileUnits, symbol: units.symbol(quantity)});
    if ("value" in read) {
      complain(null);
      sent = read.value;
      return send({type: "commit", edits: {[key]: sent}});
    }
    draft = {value: model.value, turn: model.turn};
    const full = (value) => units.full(quantity, fromFile(key, value));
    complain(
      read.problem === "number"
        ? words("bad-number", {name, low: full(low), high: full(high)})
        : words("error-range-both", {name, got: `${read.got} ${units.symbol(quantity)}`, low: full(low), high: full(high)}),
    );
  }

  function pressed(event) {
    if (event.key !== "Escape") return stepped(event);
    if (!typing && !draft) return;
    event.preventDefault();
    event.stopPropagation(); // it ends the typing, not what the box stands in
    giveUp();
    update(model);
  }

  /** What was typed goes, and the value comes back. */
  function giveUp() {
    typing = false;
    complain(null);
  }

  /** In the box the arrows go by the slider's steps, as they do in a native box of numbers. */
  function stepped(event) {
    const by = {ArrowUp: 1, ArrowDown: -1}[event.key];
    if (!by || event.altKey || event.ctrlKey || event.metaKey || model.idle) return;
    event.preventDefault();
    typing = false;
    complain(null);
    sent = track.next(sent ?? model.value, by);
    send({type: "commit", edits: {[key]: sent}});
  }

  function complain(text) {
    if (text === null) draft = null;
    hide(bad, text === null);
    setText(bad, text ?? "");
    for (const input of [box, slider]) setAttributes(input, {"aria-invalid": text === null ? null : true});
  }

  function follow(low, high) {
    if (ends === `${low} ${high}`) return;
    ends = `${low} ${high}`;
    track = trackOf(low, high);
  }

  function update(next) {
    if (model && model.turn !== next.turn) giveUp();
    if (draft && ((draft.value !== next.value && next.clock?.status !== "running") || next.idle)) giveUp(); // a level that time moves is no answer to what was typed
    model = next;
    sent = null;
    const {units, value, range} = model;
    const [low, high] = range[key];
    follow(low, high);
    setAttributes(slider, {min: track.min, max: track.max, step: track.step, "aria-valuetext": units.full(quantity, fromFile(key, value))});
    if (!model.live) dragging = false; // undone, or settled elsewhere
    const place = track.place(value);
    if (!dragging && Number(slider.value) !== place) slider.value = String(place);
    setText(unit, units.symbol(quantity));
    hide(idle, !model.idle);
    setText(why, model.idle ? words(model.idle) : ""); // a hidden text would still be read out
    hide(take, model.idle !== "control-held");
    box.readOnly = Boolean(model.idle);
    node.classList.toggle("idle", Boolean(model.idle));
    node.classList.toggle("held", model.idle === "control-held");
    for (const input of [box, slider]) setAttributes(input, {"aria-disabled": Boolean(model.idle)});
    const [valueNow, valueMin, valueMax] = [value, low, high].map((each) => round(units.value(quantity, fromFile(key, each))));
    setAttributes(box, {"aria-valuenow": valueNow, "aria-valuemin": valueMin, "aria-valuemax": valueMax});
    const text = units.plain(quantity, fromFile(key, value));
    // a sentence of complaint keeps the wrong number in sight until it is mended
    if (bad.hidden && !typing && box.value !== text) box.value = text;
  }

  return {node, update, complain};
}

const round = (value) => Number(value.toPrecision(6));
