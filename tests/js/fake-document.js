// As much of a document as the drawings need: nodes with attributes, children and listeners.

/** A text node; its changes count as those of the element around it. */
class Letters {
  constructor(text, parent) {
    Object.assign(this, {nodeType: 3, childNodes: [], text, parent});
  }

  set data(text) {
    this.parent.writes++;
    this.text = text;
  }

  get textContent() {
    return this.text;
  }
}

class Node {
  constructor(document, name) {
    Object.assign(this, {ownerDocument: document, nodeName: name, attributes: new Map(), childNodes: [], listeners: {}});
    this.writes = 0;
    this.style = {setProperty() {}};
    const classes = new Set();
    this.classList = {toggle: (name, on) => (classes.has(name) === on ? on : (this.writes++, on ? classes.add(name) : classes.delete(name), on))};
  }

  setAttribute(name, value) {
    this.writes++;
    this.attributes.set(name, value);
  }

  removeAttribute(name) {
    this.writes++;
    this.attributes.delete(name);
  }

  getAttribute(name) {
    return this.attributes.get(name) ?? null;
  }

  set hidden(away) {
    if (away) this.setAttribute("hidden", "");
    else this.removeAttribute("hidden");
  }

  get hidden() {
    return this.getAttribute("hidden") !== null;
  }

  append(...children) {
    this.childNodes.push(...children.map((child) => (typeof child === "string" ? new Letters(child, this) : child)));
  }

  replaceChildren(...children) {
    this.childNodes = [];
    this.append(...children);
  }

  set textContent(text) {
    this.writes++;
    this.childNodes = text === "" ? [] : [new Letters(text, this)];
  }

  get textContent() {
    return this.childNodes.map((child) => child.textContent).join("");
  }

  get firstChild() {
    return this.childNodes[0] ?? null;
  }

  get children() {
    return this.childNodes.filter((child) => child instanceof Node);
  }

  addEventListener(type, listener) {
    this.listeners[type] = listener;
  }

  contains() {
    return false;
  }

  remove() {}

  focus() {}

  /** Tell the node's listener of an event, as a browser would. */
  tell(type, event = {}) {
    this.listeners[type]?.({preventDefault() {}, button: 0, ...event});
  }
}

/** A document whose window runs frames only when told to. */
export function fakeDocument() {
  const document = {frames: [], activeElement: null};
  document.createElementNS = (_, name) => new Node(document, name);
  document.createElement = (name) => new Node(document, name);
  document.defaultView = {
    innerWidth: 1280,
    requestAnimationFrame: (run) => document.frames.push(run),
    cancelAnimationFrame: () => (document.frames.length = 0),
  };
  return document;
}

/** A host element of a width. */
export function fakeHost(document, clientWidth, clientHeight = 0) {
  return Object.assign(document.createElementNS("", "div"), {clientWidth, clientHeight});
}

/** Every node below, the node itself first. */
export function everyNode(node) {
  return [node, ...(node.childNodes ?? []).flatMap(everyNode)];
}
