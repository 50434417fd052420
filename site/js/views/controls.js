// The tray: every control of the rig. On a phone one group at a time, picked by chips.
import {at} from "../state.js";
import {createChoice} from "./choice.js";
import {GROUPS, groupOf} from "./control-table.js";
import {h} from "./dom.js";
import {held} from "./held.js";
import {createPrinted} from "./printed.js";
import {OWN} from "./pump-choice.js";
import {createPumpTray} from "./pump-tray.js";
import {sentence} from "./sentence.js";
import {createSlider} from "./slider.js";

/** A pump that only this plant's author knows has no words of ours. */
const nameOf = (id, words) => (words.has(`choice-pump-model-${id}`) ? words(`choice-pump-model-${id}`) : id);

export function create(host, {document, words, units, send}) {
  const make = (...parts) => h(document, ...parts);
  const parts = new Map(); // key → control
  const groups = new Map(); // id → its element
  const chips = new Map(); // id → its button
  let picked = null;

  for (const group of GROUPS) {
    const nodes = group.controls.map((control) => {
      const part = (MAKE[control.key] ?? MAKE[control.kind])(control, {document, words, units, send});
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
        if (control.kind === "slider") update({...model, value, range, idle: idleWhy(control, model)});
        else update(choiceOf(control, value, catalogue, words));
        const mine = error?.where === key;
        if (mine) complain(sentence(error, model));
        else if (control.complained) complain(null);
        control.complained = mine;
      }
      pick(groupOf(model.picked) ?? picked ?? GROUPS[0].id);
    },
  };
}

const MAKE = {slider: createSlider, choice: createChoice, "pump.model": createPumpTray};

/** The words that say why a control does nothing now; false where it does. */
function idleWhy({key, needs}, model) {
  if (needs && at(model.plant, needs) === false) return "control-idle";
  return held(key, model) && "control-held";
}

/** Value and options of a choice; of the pump also the name of one that is none of the options. */
function choiceOf(control, value, catalogue, words) {
  const options = control.options(catalogue);
  if (control.key === "pump.model") return {value, options, other: options.includes(value) ? null : nameOf(value ?? OWN, words)};
  return {value, options: options.includes(value) ? options : [value, ...options]};
}
