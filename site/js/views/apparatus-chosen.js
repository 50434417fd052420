// Which part's panel is open, marked in the drawing.

import {set} from "../lib/svg.js";

/** @returns {(part: string|null|undefined) => void} */
export function markChosen(svg) {
  let now = null;
  return (part = null) => {
    if (part === now) return;
    for (const [name, on] of [[now, null], [part, "true"]]) {
      if (name) for (const node of svg.querySelectorAll(`[data-part="${CSS.escape(name)}"]`)) set(node, "data-chosen", on);
    }
    now = part;
  };
}
