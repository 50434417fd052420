// The instruments that a learner has read: each with both days, how well it reads, and whether it has moved beyond its scatter.
import {block, make} from "./case-dom.js";
import {dialData, pointerText} from "./case-parts.js";
import {createGauge} from "./gauge.js";

/** The instruments read so far, each a dial with today's pointer and yesterday's; then what was expected, where that is told here. */
export const readings = (document, view, deps, expected = []) =>
  block(document, "readings", deps.words("case-readings-title"),
    make(document, "p", {class: "case-soft"}, deps.words("case-moved-note")),
    dials(document, view, view.readings, deps), ...expected);

/** Dials in a row. */
export const dials = (document, view, all, deps) =>
  make(document, "ul", {class: "case-dials"}, ...all.map((reading) => dial(document, view, reading, deps)));

function dial(document, view, reading, deps) {
  const face = make(document, "div", {class: "case-dial", "aria-hidden": "true"});
  createGauge(face, {document}).update({...dialData(reading, deps), label: "", day: true});
  face.firstElementChild.setAttribute("viewBox", "0 0 120 120"); // without the room for its own label
  return make(document, "li", {"data-reading": reading.id},
    face,
    make(document, "strong", {}, deps.words(`case-reading-${reading.id}`)),
    readingText(document, view, reading, deps));
}

/** Yesterday, today, how well it reads, and whether it moved by more than that explains, unless the reader is to say it. */
export function readingText(document, view, reading, deps) {
  const {words, units} = deps;
  const moved = !view.to_see.includes(reading.id) && reading.moved;
  const error = (si) => units.error(reading.quantity, si, reading.high - reading.low);
  const day = (name) => make(document, "span", {class: `case-day case-${name}`}, `${words(`case-${name}`)} ${pointerText(reading[name], reading, deps)}`);
  return make(document, "span", {class: "case-reading"}, day("yesterday"), " ", day("today"), " ",
    make(document, "span", {class: "case-soft case-accuracy"}, words("case-accuracy", {error: error(reading.accuracy)})), " ",
    moved && make(document, "span", {class: `case-moved case-moved-${moved}`}, words(`case-moved-${moved}`, {explained: error(reading.explained)})));
}
