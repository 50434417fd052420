// Hatchings that tell the blocks of the load apart without colour, as on a section drawing.

import {el} from "../lib/svg.js";

const STROKES = {
  "lift": "",
  "vessel-pressure": "M1.5,1.5h.01M5.5,5.5h.01",
  "suction-line": "M0,8L8,0M-2,2L2,-2M6,10L10,6",
  "check-valve": "M1,1L5,4L1,7ZM5,1V7",
  "pipe": "M0,2H8M0,6H8",
  "fittings": "M0,0L8,8M8,0L0,8",
  "acceleration": "M1,1L4,4L1,7M4,1L7,4L4,7",
  "valve": "M0,0L8,8M-2,6L2,10M6,-2L10,2",
  "filter": "M1,1H3V3H1ZM5,5H7V7H5Z",
  "summit": "M0,6L4,2L8,6",
  "jet": "M2,0V8M6,0V8",
  "not-reached": "",
};

let drawings = 0;

/**
 * Patterns for one drawing; ids are its own, so that several drawings share a page.
 * @returns {{node: SVGDefsElement, fill: (block: string) => string}}
 */
export function createHatches(document) {
  const own = `hatch-${++drawings}`;
  const patterns = Object.entries(STROKES).map(([block, d]) =>
    el(document, "pattern", {id: `${own}-${block}`, width: 8, height: 8, patternUnits: "userSpaceOnUse"},
      el(document, "rect", {class: "hatch-ground", width: 8, height: 8}), el(document, "path", {class: "hatch-line", d})));
  return {node: el(document, "defs", {}, ...patterns), fill: (block) => `url(#${own}-${block})`};
}
