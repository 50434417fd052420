// Turns a drawn part into a slider: mouse, touch, pen and keys give the same events.

import {clamp} from "./scale.js";
import {set} from "./svg.js";

/**
 * @typedef {object} Slider
 * @property {SVGElement} node   the part; becomes focusable
 * @property {string} key        plant key it changes
 * @property {() => {value: number, low: number, high: number, step: number, text: string, off: boolean}} read
 *           what it stands at now; `step` is the least change, arrow keys move by it
 * @property {(start: number, from: {x: number, y: number}, to: {x: number, y: number}) => number} move
 *           value after a drag that began at `start`; points in the drawing's own coordinates
 * @property {(action: object) => void} send
 */

/** Make the part draggable and reachable by keys. Returns `describe()`, to be called at every update. */
export function makeSlider({node, key, label, read, move, send}) {
  let drag = null;
  const edit = (type, value) => send({type, edits: {[key]: value}});
  set(node, "role", "slider");
  set(node, "aria-label", label);
  set(node, "data-control", key);

  node.addEventListener("pointerdown", (event) => {
    const {value, off} = read();
    if (off || event.button > 0) return;
    node.setPointerCapture?.(event.pointerId);
    drag = {start: value, from: point(node, event), last: value, moved: false};
    send({type: "pick", control: key});
    node.focus?.({preventScroll: true});
    event.preventDefault();
  });
  node.addEventListener("pointermove", (event) => {
    if (!drag) return;
    const {low, high, step} = read();
    const value = rounded(move(drag.start, drag.from, point(node, event)), step, low, high);
    if (value === drag.last) return;
    Object.assign(drag, {last: value, moved: true});
    edit("preview", value);
  });
  const end = (type) => () => {
    if (drag?.moved) type === "commit" ? edit("commit", drag.last) : send({type: "cancel"});
    drag = null;
  };
  node.addEventListener("pointerup", end("commit"));
  node.addEventListener("pointercancel", end("cancel"));
  node.addEventListener("keydown", (event) => {
    if (event.key === "Escape") return end("cancel")();
    const {value, low, high, step, off} = read();
    const next = off ? null : keyed(event, value, step, low, high);
    if (next === null) return;
    event.preventDefault();
    if (next !== value) edit("commit", next);
  });
  return () => describe(node, read());
}

function describe(node, {value, low, high, text, off}) {
  set(node, "tabindex", off ? -1 : 0);
  set(node, "aria-disabled", off ? "true" : null);
  set(node, "aria-valuemin", low);
  set(node, "aria-valuemax", high);
  set(node, "aria-valuenow", value);
  set(node, "aria-valuetext", text);
}

/** The value after a key, or null for a key that means nothing here. */
export function keyed({key, shiftKey = false}, value, step, low, high) {
  const by = shiftKey ? 10 * step : step;
  const jumps = {
    ArrowUp: value + by, ArrowRight: value + by, ArrowDown: value - by, ArrowLeft: value - by,
    PageUp: value + 10 * step, PageDown: value - 10 * step, Home: low, End: high,
  };
  return key in jumps ? rounded(jumps[key], step, low, high) : null;
}

/** `value` on the grid of `step`, within the ends; the ends themselves count as on the grid. */
export function rounded(value, step, low, high) {
  const grid = Number((Math.round(value / step) * step).toFixed(6));
  return clamp(grid, low, high);
}

/** Where a pointer is, in the coordinates of the drawing that `node` belongs to. */
function point(node, event) {
  const svg = node.ownerSVGElement ?? node;
  const matrix = svg.getScreenCTM?.();
  if (!matrix) return {x: event.clientX, y: event.clientY};
  return {x: (event.clientX - matrix.e) / matrix.a, y: (event.clientY - matrix.f) / matrix.d};
}
