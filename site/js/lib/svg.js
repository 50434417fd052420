// Making and changing SVG nodes. Writes to the page only what has changed, so
// that a view may set everything at every update and still cost next to nothing.

const SVG = "http://www.w3.org/2000/svg";
const written = new WeakMap(); // node → Map(attribute → last value)

/**
 * Make an SVG element.
 * @param {Document} document  passed in, so that views run under any document
 * @param {string} name        element name, such as "circle"
 * @param {object} attributes  null or undefined leaves an attribute out
 * @param {...(Node|string)} children  strings become text nodes, never markup
 */
export function el(document, name, attributes = {}, ...children) {
  const node = document.createElementNS(SVG, name);
  setAll(node, attributes);
  for (const child of children) node.append(child);
  return node;
}

/** Set one attribute if its value is new; null or undefined takes it away. */
export function set(node, name, value) {
  let values = written.get(node);
  if (!values) written.set(node, (values = new Map()));
  const text = value === null || value === undefined ? null : String(value);
  if (values.has(name) && values.get(name) === text) return;
  values.set(name, text);
  if (text === null) node.removeAttribute(name);
  else node.setAttribute(name, text);
}

/** Set several attributes, each only if new. */
export function setAll(node, attributes) {
  for (const name in attributes) set(node, name, attributes[name]);
  return node;
}

/** Make `text` the whole content of `node`, which holds nothing but text, if it is not already. */
export function say(node, text) {
  const values = written.get(node) ?? written.set(node, new Map()).get(node);
  if (values.get("#text") === text) return;
  values.set("#text", text);
  if (node.firstChild) node.firstChild.data = text; // the same text node with other letters: less to lay out than a new one
  else node.textContent = text;
}

/** Show or hide a node; hidden nodes leave the accessibility tree too. */
export function show(node, visible) {
  set(node, "display", visible ? null : "none");
}

/** Transform of what stands at a place, perhaps larger or smaller than it was made. */
export const placed = (x, y, scale = 1) => `translate(${px(x)},${px(y)})${scale === 1 ? "" : ` scale(${px(scale)})`}`;

/** A number short enough for an attribute: two decimals are a fiftieth of a pixel. */
export const px = (value) => Math.round(value * 100) / 100;
