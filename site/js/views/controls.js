// The tray: every control of the rig. On a phone one group at a time, picked by chips.
import {at} from "../state.js";
import {createChoice} from "./choice.js";
import {GROUPS, groupOf} from "./control-table.js";
import {h} from "./dom.js";
import {createPrinted} from "./printed.js";
import {pumpChoice, pumpEdits} from "./pump-choice.js";
import {sentence} from "./sentence.js";
import {createSlider} from "./slider.js";

export function create(host, {document, words, units, send}) {
  const make = (...parts) => h(document, ...parts);
  const parts = new Map(); // key → control
  const groups = new Map(); // id → its element
  const chips = new Map(); // id → its button
  let picked = null;

  for (const group of GROUPS) {
    const nodes = group.controls.map((control) => {
      const kit = {document, words, units, send: control.key === "pump.model" ? sendPump : send};
      const part = control.kind === "slider" ? createSlider(control, kit) : createChoice(control, kit);
      parts.set(control.key, {...part, control});
      return part.node;
    });
    const kind = group.controls[0].kind === "choice" ? "choices" : "sliders";
    groups.set(group.id, make("div", {class: `group ${kind}`, id: `group-${group.id}`, "data-side": group.side}, nodes));
    chips.set(group.id, make("button", {
      type: "button", "aria-controls": `group-${group.id}`, onclick: () => send({type: "pick", control: group.controls[0].key}),
    }, words(`chip-${group.id}`)));
  }
  const all = [...groups.values()];
  const sliders = all.filter((node) => node.classList.contains("sliders"));
  const choices = all.filter((node) => node.classList.contains("choices"));
  host.append(
    make("h2", {class: "unseen"}, words("controls-title")),
    make("div", {class: "groups"}, sliders, make("div", {class: "choice-row"}, choices)),
    make("div", {class: "chips", role: "group", "aria-label": words("chips-label")}, [...chips.values()]),
  );

  const printed = createPrinted(host, {document, words});

  function sendPump(action) {
    send(action.edits ? {...action, edits: pumpEdits(action.edits)} : action);
  }

  function pick(id) {
    if (id === picked) return;
    picked = id;
    for (const [name, node] of groups) node.classList.toggle("picked", name === id);
    for (const [name, chip] of chips) chip.setAttribute("aria-pressed", String(name === id));
  }

  return {
    update(model) {
      const {plant, catalogue, range, error} = model;
      printed.update(model);
      for (const [key, {update, complain, control}] of parts) {
        const value = at(plant, key);
        if (control.kind === "slider") update({...model, value, range, idle: Boolean(control.needs) && at(plant, control.needs) === false});
        else update(choiceOf(control, value, model, catalogue));
        const mine = error?.where === key;
        if (mine) complain(sentence(error, model));
        else if (control.complained) complain(null);
        control.complained = mine;
      }
      pick(groupOf(model.picked) ?? picked ?? GROUPS[0].id);
    },
  };
}

/** Value and options of a choice. */
function choiceOf(control, value, {own}, catalogue) {
  const options = control.options(catalogue);
  if (control.key === "pump.model") return pumpChoice(value, own, options);
  return {value, options: options.includes(value) ? options : [value, ...options]};
}
