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
 * A group of radio buttons, one line each.
 * @param {{name: string, legend: Node|string|Array, options: {value: string, label: string}[], chosen: string|null,
 *   onpick: (value: string) => void}} group
 */
export function radios(document, {name, legend, options, chosen, onpick}) {
  const rows = options.map(({value, label}) => {
    const box = make(document, "input", {
      type: "radio", name: `case-${name}`, value, checked: chosen === value, "data-key": `${name}-${value}`,
      onchange: () => onpick(value),
    });
    return make(document, "label", {class: "case-option"}, box, make(document, "span", {}, label));
  });
  return make(document, "fieldset", {class: "case-options"}, make(document, "legend", {}, legend), ...rows);
}

/** A push button. `key` names it for the focus. */
export const button = (document, key, label, onclick, kind = "case-button") =>
  make(document, "button", {type: "button", class: kind, "data-key": key, onclick}, label);
