// One quantity with a native slider and a number box beside it.
import {fromFile, toFile} from "../units.js";
import {readTyped} from "./control-table.js";
import {h, setText} from "./dom.js";

/**
 * @param {object} control a row of the control table, kind "slider"
 * @param {object} kit {document, words, send}
 * @returns {{node: Element, update: (model: object) => void, complain: (text: string|null) => void}}
 */
export function createSlider(control, {document, words, send}) {
  const {key, quantity, step} = control;
  const id = key.replaceAll(".", "-");
  const name = words(`control-${id}`);
  const make = (...parts) => h(document, ...parts);
  let model = null;
  let dragging = false;

  const box = make("input", {
    type: "number", inputmode: "decimal", step: "any", id: `${id}-number`, "aria-label": words("control-number", {name}),
    "aria-describedby": `${id}-bad`, onchange: typed, onfocus: pick,
  });
  const unit = make("span", {class: "unit", "aria-hidden": "true"});
  const slider = make("input", {type: "range", id, "aria-describedby": `${id}-bad`, oninput: moved, onchange: released, onfocus: pick});
  const bad = make("p", {class: "bad", id: `${id}-bad`, hidden: true});
  const node = make(
    "div", {class: "control", "data-key": key},
    make("label", {class: "name", for: id}, name), box, unit, slider, bad,
  );

  // sliders run in file units: their steps are round there, and no unit switch moves the handle
  function moved() {
    dragging = true;
    complain(null);
    send({type: "preview", edits: {[key]: Number(slider.value)}});
  }

  function released() {
    dragging = false;
    send({type: "commit", edits: {[key]: Number(slider.value)}});
  }

  function pick() {
    send({type: "pick", control: key});
  }

  function typed() {
    const {units, range} = model;
    const [low, high] = range[key];
    const toFileUnits = (shown) => toFile(key, units.si(quantity, shown));
    const read = readTyped(box.value, box.validity?.badInput, {low, high, toFileUnits});
    if ("value" in read) {
      complain(null);
      return send({type: "commit", edits: {[key]: read.value}});
    }
    const full = (value) => units.full(quantity, fromFile(key, value));
    complain(
      read.problem === "number"
        ? words("bad-number", {name, low: full(low), high: full(high)})
        : words("bad-range", {name, got: `${read.got} ${units.symbol(quantity)}`, low: full(low), high: full(high)}),
    );
  }

  function complain(text) {
    bad.hidden = text === null;
    setText(bad, text ?? "");
    for (const input of [box, slider]) {
      if (text === null) input.removeAttribute("aria-invalid");
      else input.setAttribute("aria-invalid", "true");
    }
  }

  function update(next) {
    model = next;
    const {units, value, range} = model;
    const [low, high] = range[key];
    setAttributes(slider, {min: low, max: high, step});
    if (!dragging && Number(slider.value) !== value) slider.value = String(value);
    slider.setAttribute("aria-valuetext", units.full(quantity, fromFile(key, value)));
    setText(unit, units.symbol(quantity));
    const shownLow = units.value(quantity, fromFile(key, low));
    const shownHigh = units.value(quantity, fromFile(key, high));
    setAttributes(box, {min: round(shownLow), max: round(shownHigh)});
    // a sentence of complaint keeps the wrong number in sight until it is mended
    if (bad.hidden && document.activeElement !== box) box.value = plainNumber(units, quantity, fromFile(key, value));
    else if (bad.hidden && dragging === false && model.settled) box.value = plainNumber(units, quantity, fromFile(key, value));
  }

  return {node, update, complain};
}

const round = (value) => Number(value.toPrecision(6));

/** Digits a number box accepts: a point, no grouping. */
function plainNumber(units, quantity, si) {
  return String(Number(units.value(quantity, si).toFixed(units.decimals(quantity) + 1)));
}

function setAttributes(node, attributes) {
  for (const [key, value] of Object.entries(attributes)) {
    if (node.getAttribute(key) !== String(value)) node.setAttribute(key, String(value));
  }
}
