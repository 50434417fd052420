// The numbers in a part's panel: one, one that may be left out, and the two ends of a dial.
import {at} from "../state.js";
import {fromFile, toFile} from "../units.js";
import {readTyped} from "./control-table.js";
import {h, hide, setAttributes, setText} from "./dom.js";
import {held} from "./held.js";
import {INSTEAD, endsOf, quantityOf, startOf} from "./part-keys.js";
import {createSlider} from "./slider.js";
import {evenTrack, trackFor} from "./track.js";

/** A slider between the ends that the plant leaves, and a box. */
export function number(about, limit, kit) {
  const usual = limit.default ?? (limit.low > 0 ? limit.low : 1);
  const part = createSlider({...about, quantity: quantityOf(about.key), track: (low, high) => (limit.whole ? evenTrack(low, high, 1) : trackFor(low, high, usual))}, kit);
  return {...part, update: (model) => part.update({...model, value: at(model.plant, about.key), range: {[about.key]: endsOf(about.key, limit, model.plant)}, idle: held(about.key, model) && "control-held"})};
}

/** A number that may be left out: a switch, and the number once it is on. */
export function optionalNumber(about, limit, kit) {
  const {key, id, name} = about;
  const {document, send} = kit;
  const inner = number(about, limit, kit);
  const others = (value) => Object.fromEntries((INSTEAD[key] ?? []).map((other) => [other, value]));
  let model = null;
  const box = h(document, "input", {type: "checkbox", id: `${id}-given`, onchange: () => send({
    type: "commit", edits: box.checked ? {[key]: startOf(key, model), ...others(null)} : {[key]: null, ...others(undefined)},
  })});
  const node = h(document, "div", {class: "optional"}, h(document, "div", {class: "flag"}, h(document, "label", {}, box, h(document, "span", {}, name))), inner.node);
  return {
    node,
    complain: inner.complain,
    update(next) {
      model = next;
      const given = typeof at(next.plant, key) === "number";
      box.checked = given;
      hide(inner.node, !given);
      if (given) inner.update(next);
    },
  };
}

/** Lower and upper end, each with a box. */
export function pair({key, id, name}, {low, high}, {document, words, send}) {
  const quantity = quantityOf(key);
  let model = null;
  const bad = h(document, "p", {class: "bad", id: `${id}-bad`, hidden: true});
  const unit = h(document, "span", {class: "unit", "aria-hidden": "true"});
  const boxes = ["low", "high"].map((end, i) => h(document, "input", {
    type: "text", inputmode: "decimal", autocomplete: "off", id: `${id}-${end}`, "aria-label": words(`part-pair-${end}`, {name}),
    "aria-describedby": `${id}-bad`, onchange: () => typed(i),
  }));
  const complain = complainer(bad, boxes);
  const full = (value) => model.units.full(quantity, fromFile(key, value));

  function typed(i) {
    const read = readTyped(boxes[i].value, {low, high, toFileUnits: (shown) => toFile(key, model.units.si(quantity, shown))});
    if (!("value" in read)) return complain(words("bad-number", {name, low: full(low), high: full(high)}));
    complain(null);
    send({type: "commit", edits: {[key]: at(model.plant, key).map((each, n) => (n === i ? read.value : each))}});
  }

  return {
    node: h(document, "div", {class: "control pair", role: "group", "aria-label": name}, h(document, "span", {class: "name"}, name), boxes[0], boxes[1], unit, bad),
    complain,
    update(next) {
      model = next;
      setText(unit, next.units.symbol(quantity));
      boxes.forEach((box, i) => {
        const text = next.units.plain(quantity, fromFile(key, at(next.plant, key)[i]));
        if (bad.hidden && document.activeElement !== box && box.value !== text) box.value = text;
      });
    },
  };
}

/** Shows a sentence of complaint, or none, and marks what it is about. */
export const complainer = (bad, inputs) => (text) => {
  hide(bad, text === null);
  setText(bad, text ?? "");
  for (const input of inputs) setAttributes(input, {"aria-invalid": text === null ? null : true});
};
