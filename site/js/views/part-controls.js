// The control of one key in a part's panel: native, with its name, a hint where one is needed, and the way back.
import {at} from "../state.js";
import {h, hide, icon, setAttributes} from "./dom.js";
import {choice, controlMode, controlOf, controlOn, liquid, pump, rootValve, secondPump} from "./part-choices.js";
import {INSTEAD, kindOf, optional, slugOf} from "./part-keys.js";
import {complainer, number, optionalNumber, pair} from "./part-numbers.js";

const BACK = "M8 5 4 9l4 4M4 9h9a6 6 0 0 1 0 12h-3";

/**
 * @param {string} key of a plant
 * @param {object} limit what the catalogue says of it
 * @param {{document: Document, words: Function, send: Function}} kit
 * @returns {{node: Element, update: (model: object) => void, complain: (text: string|null) => void}|null} null for a
 *   key that has no control: a text
 */
export function createPartControl(key, limit, kit) {
  const {document, words} = kit;
  const slug = slugOf(key);
  const about = {key, id: `part-${key.replaceAll(".", "-")}`, name: words(`key-${slug}`), says: slug};
  const make = SPECIAL[key] ?? (key.endsWith(".root_valve") ? rootValve : null) ?? (optional(key, limit) ? optionalNumber : KINDS[kindOf(limit)]);
  if (!make) return null;
  const control = make(about, limit, kit);
  const hint = words.has(`key-${slug}.hint`) ? h(document, "p", {class: "hint", id: `${about.id}-hint`}, words(`key-${slug}.hint`)) : null;
  const back = h(document, "button", {
    type: "button", class: "back", "aria-label": words("part-back", {name: about.name}), title: words("part-back", {name: about.name}), onclick: goBack,
  }, icon(document, BACK));
  const node = h(document, "div", {class: "part-key", "data-part-key": key}, control.node, back, hint);
  if (hint) describe(control.node, hint.id);

  function goBack() {
    kit.send({type: "commit", edits: Object.fromEntries([key, ...(INSTEAD[key] ?? []), ...(control.also ?? [])].map((each) => [each, undefined]))});
    node.querySelector("input:checked, input, select")?.focus(); // the button goes
  }

  return {
    node,
    complain: control.complain,
    update(model) {
      hide(back, !(key in model.edits));
      control.update(model);
    },
  };
}

/** Say the hint with the control, after what it says already. */
function describe(node, id) {
  const inputs = node.nodeName.toLowerCase() === "fieldset" ? [node] : node.querySelectorAll("input, select");
  for (const input of inputs) setAttributes(input, {"aria-describedby": `${input.getAttribute("aria-describedby") ?? ""} ${id}`.trim()});
}

const KINDS = {number, choice, flag, pair};

const SPECIAL = {
  "pump.model": pump, "pump.second.model": secondPump, "liquid.name": liquid,
  "control.mode": controlMode, "control.of": controlOf, "control.on": controlOn,
};

/** Yes or no. */
function flag({key, id, name}, limit, {document, send}) {
  const box = h(document, "input", {type: "checkbox", id, "aria-describedby": `${id}-bad`, onchange: () => send({type: "commit", edits: {[key]: box.checked}})});
  const bad = h(document, "p", {class: "bad", id: `${id}-bad`, hidden: true});
  return {
    node: h(document, "div", {class: "flag"}, h(document, "label", {}, box, h(document, "span", {}, name)), bad),
    update: ({plant}) => (box.checked = at(plant, key) === true),
    complain: complainer(bad, [box]),
  };
}
