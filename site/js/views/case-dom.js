// Making the page's elements for a case. Texts become text nodes, never markup.
import {paragraphs} from "./case-parts.js";
import {h as make} from "./dom.js";

export {make};

/** Prose as paragraphs. */
export const prose = (document, text, units) => paragraphs(text, units).map((words) => make(document, "p", {}, words));

/** A part of the case with its heading; `key` names it for the focus. */
export function block(document, key, title, ...children) {
  const id = `case-${key}-title`;
  const heading = make(document, "h3", {id, tabindex: "-1", "data-key": key}, title);
  return make(document, "section", {class: `panel case-block case-${key}`, "aria-labelledby": id}, heading, ...children);
}

/**
 * A group of radio buttons, one line each, or side by side where they are short.
 * @param {{name: string, legend: Node|string|Array, options: {value: string, label: string}[], chosen: string|null,
 *   onpick: (value: string) => void, aside?: boolean, kind?: string}} group  kind: of questions, for their layout
 */
export function radios(document, {name, legend, options, chosen, onpick, aside = false, kind = name}) {
  const rows = options.map(({value, label}) => {
    const box = make(document, "input", {
      type: "radio", name: `case-${name}`, value, checked: chosen === value, "data-key": `${name}-${value}`,
      onchange: () => onpick(value),
    });
    return make(document, "label", {class: "case-option"}, box, make(document, "span", {}, label));
  });
  return make(document, "fieldset", {class: `case-options case-asks-${kind}`}, make(document, "legend", {}, legend),
    make(document, "div", {class: aside ? "case-aside" : false}, ...rows));
}

/** A table: a name before each row, a head over each column, which each cell knows too: see case-reveal.css. */
export function table(document, caption, head, rows, kind = "") {
  const cell = (name, text, attributes = {}) => make(document, name, attributes, text);
  return make(document, "table", {class: `case-table ${kind}`.trim()},
    caption && cell("caption", caption),
    make(document, "thead", {}, make(document, "tr", {}, ...head.map((text) => (text ? cell("th", text, {scope: "col"}) : cell("td", ""))))),
    make(document, "tbody", {}, ...rows.map(([label, ...values]) =>
      make(document, "tr", {}, cell("th", label, {scope: "row"}), ...values.map((value, i) => cell("td", value, {"data-column": head[i + 1]}))))));
}

/** A push button. `key` names it for the focus. */
export const button = (document, key, label, onclick, kind = "case-button") =>
  make(document, "button", {type: "button", class: kind, "data-key": key, onclick}, label);
