// A case on the wall: one step at a time, and a tally of hands for the prediction. The counts stay in this page.
import {button, make} from "./case-dom.js";
import {DIRECTIONS} from "./case-parts.js";

const MOST_HANDS = 999;

/** Which of so many steps is shown after going some on. */
export const stepTo = (at, by, count) => Math.min(Math.max(at + by, 0), Math.max(count - 1, 0));

/**
 * @param {Document} document
 * @param {Function} words
 */
export function createSteps(document, words) {
  let sections = [];
  let at = 0;
  const where = make(document, "span", {class: "case-where", role: "status"});
  const [back, on] = [["back-step", -1], ["next-step", 1]].map(([key, by]) => button(document, key, words(`case-${key}`), () => go(by)));
  const node = make(document, "nav", {class: "case-bar case-steps-bar", "aria-label": words("case-steps-label")}, back, where, on);

  function go(by) {
    at = stepTo(at, by, sections.length);
    show();
    document.defaultView.scrollTo(0, 0);
    sections[at]?.querySelector("h3")?.focus({preventScroll: true});
  }

  function show() {
    sections.forEach((section, n) => { section.hidden = n !== at; });
    back.disabled = at === 0;
    on.disabled = at >= sections.length - 1;
    where.textContent = words("case-step", {at: at + 1, of: sections.length});
  }

  return {
    node,
    /** Other sections stand there now; the present step stays, as far as there is one. */
    take(all) {
      sections = all;
      at = stepTo(at, 0, sections.length);
      show();
    },
    /** Show the step in which something stands. */
    reveal(inside) {
      const found = sections.findIndex((section) => section.contains(inside));
      if (found < 0) return;
      at = found;
      show();
    },
    restart() {
      at = 0;
    },
    /** Arrow keys and those of a pointing device turn the steps, except where they choose or type. */
    key(event) {
      const by = {ArrowRight: 1, PageDown: 1, ArrowLeft: -1, PageUp: -1}[event.key];
      if (!by || event.target.matches("input, textarea, select")) return;
      event.preventDefault();
      go(by);
    },
  };
}

/** Counted hands: {up, same, down}, tapped or typed. */
export function createHands(document, words) {
  const counts = Object.fromEntries(DIRECTIONS.map((way) => [way, 0]));
  const rows = Object.fromEntries(DIRECTIONS.map((way) => [way, row(way)]));
  const node = make(document, "fieldset", {class: "case-hands"}, make(document, "legend", {}, words("case-hands")),
    ...DIRECTIONS.map((way) => rows[way].node), make(document, "p", {class: "case-soft"}, words("case-hands-note")));

  function row(way) {
    const label = words(`case-way-${way}`);
    const input = make(document, "input", {type: "number", min: 0, max: MOST_HANDS, value: 0, inputmode: "numeric", "aria-label": words("case-hands-of", {way: label}), "data-key": `hands-${way}`,
      onchange: () => put(way, Number(input.value))});
    const bar = make(document, "meter", {min: 0, max: 1, value: 0, "aria-hidden": "true"});
    const step = (by) => make(document, "button", {type: "button", "aria-label": words(by > 0 ? "case-hands-more" : "case-hands-less", {way: label}), onclick: () => put(way, counts[way] + by)}, by > 0 ? "+" : "−");
    return {input, bar, node: make(document, "div", {class: "case-hand"}, make(document, "span", {}, label), step(-1), input, step(1), bar)};
  }

  function put(way, count) {
    counts[way] = Math.min(MOST_HANDS, Math.max(0, Math.round(count) || 0));
    const all = total();
    for (const one of DIRECTIONS) {
      rows[one].input.value = counts[one];
      rows[one].bar.setAttribute("max", String(Math.max(1, all)));
      rows[one].bar.setAttribute("value", String(counts[one]));
    }
  }

  const total = () => DIRECTIONS.reduce((sum, way) => sum + counts[way], 0);

  return {
    node,
    clear: () => DIRECTIONS.forEach((way) => put(way, 0)),
    /** What was counted, as a line; null where no hand was. */
    line: () => (total() ? make(document, "p", {class: "case-counted"}, words("case-hands-counted", counts)) : null),
  };
}
