// The panel of a part: everything that can be set on the thing that was tapped in the drawing. It lies where the
// tray lies, so that drawing, stack and curves stay in sight; Escape closes it and gives the focus back.
import {same} from "../history.js";
import {at} from "../state.js";
import {h, hide, icon, setAttributes, setText} from "./dom.js";
import {fitting} from "./held.js";
import {createPartControl} from "./part-controls.js";
import {isFault, silent} from "./part-keys.js";
import {inventory, keysOf, partById, partOfDrawn, stands} from "./parts-table.js";
import {sentence} from "./sentence.js";

const FIRST = "supply"; // where the list of parts begins
const CROSS = "M6 6l12 12M18 6 6 18";

/**
 * @param {HTMLElement} host
 * @param {HTMLElement} drawing of the plant, where the focus may have been
 * @param {HTMLElement} beside the drawing's heading: place of the button that opens the panel without the drawing
 */
export function create(host, {document, words, send}, {drawing, beside}) {
  const make = (...parts) => h(document, ...parts);
  const name = (id) => words(`part-${id}`);
  const opener = make("button", {
    type: "button", class: "plain", "aria-expanded": "false", "aria-controls": host.id, onclick: () => open(host.hidden ? FIRST : null),
  }, words("parts-open"));
  const title = make("h2", {id: "part-title", tabindex: -1});
  const picker = make("select", {id: "part-picker", "aria-label": words("part-picker"), onchange: () => open(picker.value)});
  const close = make("button", {type: "button", id: "part-close", "aria-label": words("close"), title: words("close"), onclick: shut}, icon(document, CROSS));
  const about = make("p", {class: "part-about"});
  const caution = make("p", {class: "part-caution"});
  const keys = make("div", {class: "part-keys"});
  const faultsSet = make("summary", {});
  const faultKeys = make("div", {class: "part-fault-keys"});
  const faults = make("details", {class: "part-faults folds"}, faultsSet, faultKeys);
  const more = make("div", {class: "part-more"});
  const ways = make("div", {class: "part-more"}); // to what belongs to it and is not drawn
  beside.append(opener);
  host.append(make("div", {class: "part-head"}, title, picker, close), make("div", {class: "part-body"}, about, ways, keys, caution));
  const controls = new Map(); // key → control
  let shown = null; // what stands in it
  let offered = null; // the parts to choose from
  let from = null; // where the focus was
  let now = null; // the model that is shown
  let moves = true; // the focus moves into the panel

  function open(part, {stay = false} = {}) {
    moves = !stay;
    send({type: "part", part});
    if (!stay && !host.hidden && !host.contains(document.activeElement)) enter();
  }

  function shut() {
    open(null);
  }

  document.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || event.defaultPrevented || host.hidden || document.querySelector("dialog[open]")) return;
    if (drawing.contains(event.target) && drawing.matches(":active")) return; // a drag is given up first
    event.preventDefault();
    shut();
  });

  /** The heading; where there is no room for it, the list that says the same. */
  const entrance = () => (getComputedStyle(title).position === "absolute" ? picker : title);

  function enter() {
    entrance().focus({preventScroll: true});
  }

  function show(visible) {
    hide(host, !visible);
    setAttributes(opener, {"aria-expanded": visible});
  }

  function appear() {
    from = document.activeElement;
    show(true);
    if (moves && !host.contains(from)) enter();
  }

  /** The drawing may have been drawn anew since: then its part of the same name takes the focus. */
  function vanish() {
    const had = host.contains(document.activeElement);
    show(false);
    if (!had) return;
    const key = from?.getAttribute?.("data-control");
    const again = from?.isConnected && from !== document.body ? from : key && drawing.querySelector(`[data-control="${key}"]`);
    (again || opener).focus({preventScroll: true});
  }

  /** Another part, or the same with other things to set: its controls are made anew. */
  function fill(part, wanted, model) {
    const focused = document.activeElement?.closest?.("[data-part-key]")?.getAttribute("data-part-key");
    controls.clear();
    for (const key of wanted.keys) {
      const control = createPartControl(key, model.catalogue.limits[key], {document, words, send});
      if (control) controls.set(key, control);
    }
    setText(title, name(part.id));
    ways.replaceChildren(...(wanted.here ? part.leads : []).map((id) => make("button", {type: "button", class: "lead", onclick: () => open(id)}, words("part-lead", {part: name(id)}))));
    more.replaceChildren(...actions(part, wanted));
    const nodes = (folded) => [...controls].filter(([key]) => isFault(key) === folded).map(([, {node}]) => node);
    faultKeys.replaceChildren(...nodes(true));
    if (shown?.part !== wanted.part) faults.open = false;
    keys.replaceChildren(...nodes(false), ...(faultKeys.firstChild ? [faults] : []), more);
    if (focused) (controls.get(focused)?.node.querySelector("input:checked, input, select") ?? entrance()).focus({preventScroll: true});
    else if (moves && document.activeElement === document.body) enter();
  }

  /** What can be fitted to this part, and the way to take it away itself. */
  function actions(part, {here, offers}) {
    const button = (id, key, to, next) => make("button", {type: "button", onclick: () => {
      send({type: "commit", edits: key === "control.fitted" && to ? fitting(now) : {[key]: to}});
      open(next);
    }}, words(`part-${id}-${to ? "add" : "remove"}`));
    if (!here) return [button(part.id, part.fitted, true, part.id)];
    return [
      ...offers.map((id) => button(id, partById(id).fitted, true, id)),
      typeof part.fitted === "string" && button(part.id, part.fitted, false, part.on),
    ].filter(Boolean);
  }

  /** Choose among what stands in the plant, then what could be added. */
  function updatePicker(part, {standing, offered: others}) {
    const lists = [standing, others].map((parts) => parts.map(({id}) => id));
    if (!same(lists, offered)) {
      offered = lists;
      const group = (label, ids) => make("optgroup", {label: words(label)}, ids.map((id) => make("option", {value: id}, name(id))));
      picker.replaceChildren(...[group("part-standing", lists[0]), lists[1].length > 0 && group("part-offered", lists[1])].filter(Boolean));
    }
    if (picker.value !== part.id) picker.value = part.id;
  }

  function update(model) {
    now = model;
    const part = model.part && partById(partOfDrawn(model.part));
    if (!part) {
      if (!host.hidden) vanish();
      shown = null;
      return;
    }
    const here = stands(part, model.plant);
    const stock = inventory(model.plant, model.catalogue.limits);
    const wanted = {
      part: part.id, here,
      keys: here ? keysOf(part, model.catalogue.limits).filter((key) => !silent(key, model.plant)) : [],
      offers: stock.offered.filter(({on}) => on === part.id).map(({id}) => id),
    };
    const another = shown?.part !== part.id;
    if (host.hidden) appear();
    if (!same(shown, wanted)) fill(part, wanted, model);
    setAttributes(host, {"data-side": part.side});
    shown = wanted;
    updatePicker(part, stock);
    tell(about, aboutPart(part, here, model.plant, words) || stateOf(part));
    tell(caution, words.has(`part-${part.id}-caution`) ? words(`part-${part.id}-caution`) : "");
    for (const [key, control] of controls) updateControl(key, control, model);
    const set = faultsIn(wanted.keys, model);
    setText(faultsSet, words(set ? "part-faults-set" : "part-faults", {set}));
    if (another) uncover(model.part);
  }

  function tell(line, text) {
    setText(line, text);
    hide(line, text === "");
  }

  /** What the drawing says of the part as it is now; of what can be dragged there, its controls here say enough. */
  function stateOf({id, drawn}) {
    if (drawing.querySelector(`[data-part="${id}"] [role="slider"]`)) return "";
    const told = drawn.map((each) => drawing.querySelector(`[data-part="${each}"]:is([role="group"], [role="img"], [role="button"])`)?.getAttribute("aria-label"));
    return told.filter(Boolean).join(". ");
  }

  /** Scroll the part out from under the sheet, once the page knows how tall that is. */
  function uncover(part) {
    const {requestAnimationFrame: soon} = document.defaultView;
    soon(() => soon(() => drawing.querySelector(`[data-part="${part}"], [data-control="${part}"]`)?.scrollIntoView({block: "nearest"})));
  }

  function updateControl(key, control, model) {
    control.update(model);
    const mine = model.error?.where?.replace(/\[\d+\]$/, "") === key;
    if (mine && isFault(key)) faults.open = true; // a complaint must be in sight
    if (mine) control.complain(sentence(model.error, model));
    else if (control.complained) control.complain(null);
    control.complained = mine;
  }

  return {open, update};
}

/** How many faults of an instrument are set in this plant; what a shut gauge keeps is none by itself. No DOM. */
export function faultsIn(keys, {plant, catalogue: {limits}}) {
  return keys.filter((key) => isFault(key) && limits[key].default !== null && at(plant, key) !== limits[key].default).length;
}

/** A line under the heading: what it is for, where it is not there; or why it does nothing now. No DOM. */
export function aboutPart(part, here, plant, words) {
  if (!here) return words(`part-${part.id}-about`);
  return part.needs && at(plant, part.needs) === false ? words("control-idle") : "";
}

