// A tap on a thing in the drawing opens its panel; so do Enter and the space bar on what has the focus there.
import {partOfDrawn} from "./parts-table.js";

const STILL = 6; // [px] a hand is allowed to tremble

/**
 * @param {HTMLElement} drawing its parts carry their names in data-part, their sliders the key in data-control
 * @param {(part: string, how: {stay: boolean}) => void} open  `stay`: the focus stays on the slider under the hand
 */
export function createTaps(drawing, open) {
  let down = null;

  drawing.addEventListener("pointerdown", (event) => (down = {x: event.clientX, y: event.clientY}), true);
  drawing.addEventListener("click", (event) => {
    if (down && Math.hypot(event.clientX - down.x, event.clientY - down.y) > STILL) return; // that was a drag
    openAt(event.target, {stay: event.target.closest("[role=slider]") !== null});
  });
  drawing.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    if (openAt(event.target, {stay: false})) event.preventDefault();
  });

  function openAt(target, how) {
    const part = nameOf(target);
    if (part !== null) open(part, how);
    return part !== null;
  }
}

/** The name of the thing that a node of the drawing belongs to; null where it belongs to none. */
export function nameOf(node) {
  for (const attribute of ["data-part", "data-reading", "data-control"]) {
    const name = node.closest(`[${attribute}]`)?.getAttribute(attribute);
    if (name && partOfDrawn(name)) return name;
  }
  return null;
}
