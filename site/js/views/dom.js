// Making elements. Text always goes in as a text node, never as markup.
import {el} from "../lib/svg.js";

/**
 * @param {Document} document
 * @param {string} name tag
 * @param {object} [attributes] "on…" keys are listeners; false, null and undefined are left out; true is an empty attribute
 * @param {...(Node|string|null|false)} children
 */
export function h(document, name, attributes = {}, ...children) {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === false || value === null || value === undefined) continue;
    if (key.startsWith("on")) node.addEventListener(key.slice(2), value);
    else node.setAttribute(key, value === true ? "" : String(value));
  }
  node.append(...children.flat().filter((child) => child !== null && child !== false && child !== undefined));
  return node;
}

const TEXT = 3; // the kind of a text node

/** A small line drawing of 24 × 24 for a button. */
export const icon = (document, path) =>
  el(document, "svg", {viewBox: "0 0 24 24", fill: "none", "aria-hidden": "true"},
    el(document, "path", {d: path, stroke: "currentColor", "stroke-width": 2, "stroke-linecap": "round"}));

/** Set the text of an element only where it differs, so that nothing is painted or read out for nothing. */
export function setText(node, text) {
  if (node.textContent === text) return;
  const [letters, ...rest] = node.childNodes;
  if (letters?.nodeType === TEXT && rest.length === 0) letters.data = text; // less to lay out than a new text node
  else node.textContent = text;
}

/** Set attributes only where they differ; null takes one away. */
export function setAttributes(node, attributes) {
  for (const [key, value] of Object.entries(attributes)) {
    const text = value === null ? null : String(value);
    if (node.getAttribute(key) === text) continue;
    if (text === null) node.removeAttribute(key);
    else node.setAttribute(key, text);
  }
}

/** Take an element off the page, or put it back. */
export const hide = (node, hidden) => setAttributes(node, {hidden: hidden ? "" : null});
