// As much of a document as the drawings need: nodes with attributes, children and listeners.

class Node {
  constructor(document, name) {
    Object.assign(this, {ownerDocument: document, nodeName: name, attributes: new Map(), childNodes: [], listeners: {}, text: ""});
    this.writes = 0;
    this.style = {setProperty() {}};
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

  append(...children) {
    this.childNodes.push(...children.map((child) => (typeof child === "string" ? {text: child, childNodes: []} : child)));
  }

  replaceChildren(...children) {
    this.childNodes = [];
    this.append(...children);
  }

  set textContent(text) {
    this.writes++;
    this.childNodes = [];
    this.text = text;
  }

  get textContent() {
    return this.text + this.childNodes.map((child) => child.textContent ?? child.text).join("");
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
