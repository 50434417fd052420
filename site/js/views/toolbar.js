// The bar of tools: open, undo, redo, reset, units, theme, link.
import {PRESETS} from "../units.js";
import {h, hide, icon, setText} from "./dom.js";

const DRAWN = {
  undo: "M8 5 4 9l4 4M4 9h9a6 6 0 0 1 0 12h-3",
  redo: "m16 5 4 4-4 4M20 9h-9a6 6 0 0 0 0 12h3",
  more: "M4 6h16M4 12h16M4 18h16",
};

export function create(host, {document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  const button = (id, action) =>
    make("button", {type: "button", id: `tool-${id}`, onclick: () => send({type: action})}, words(`tool-${id}`));
  const drawn = (id, action) =>
    make("button", {type: "button", id: `tool-${id}`, "aria-label": words(`tool-${id}`), title: words(`tool-${id}`), onclick: () => send({type: action})}, icon(document, DRAWN[id]));

  const undo = drawn("undo", "undo");
  const redo = drawn("redo", "redo");
  const units = make(
    "select", {id: "units", "aria-label": words("units-label"), onchange: () => send({type: "view", view: {units: units.value}})},
    Object.keys(PRESETS).map((id) => make("option", {value: id}, words(`units-${id}`))),
  );
  const theme = make("button", {type: "button", id: "tool-theme", onclick: () => send({type: "theme"})});
  const reset = button("reset", "reset");
  const panel = make("div", {class: "more-panel", id: "more-panel"}, button("open", "ask-open"), reset, units, theme, button("share", "share"));
  const more = make("button", {
    type: "button", class: "more", id: "tool-more", "aria-label": words("tool-more"), "aria-expanded": "false", "aria-controls": "more-panel",
    onclick: () => fold(panel.classList.contains("unfolded")),
  }, icon(document, DRAWN.more));

  function fold(away) {
    panel.classList.toggle("unfolded", !away);
    more.setAttribute("aria-expanded", String(!away));
  }
  panel.addEventListener("click", (event) => event.target.closest("button") && fold(true));
  host.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || !panel.classList.contains("unfolded")) return;
    fold(true);
    more.focus();
  });
  document.addEventListener("pointerdown", (event) => host.contains(event.target) || fold(true));

  host.append(undo, redo, panel, more);

  return {
    update(model) {
      for (const each of [undo, redo, reset]) hide(each, model.inCase); // they belong to the rig
      undo.disabled = !model.canUndo;
      redo.disabled = !model.canRedo;
      if (units.value !== model.units.id) units.value = model.units.id;
      setText(theme, words(model.theme === "dark" ? "theme-to-light" : "theme-to-dark"));
    },
  };
}

/** A button that is on or off, with a word for what pressing it does; that word alone tells its state. */
export function createSwitch(host, {document, words, send}, {id, action}) {
  const node = h(document, "button", {type: "button", class: "plain", id: `switch-${id}`, onclick: () => send({type: action})});
  host.append(node);
  return {
    update(on) {
      setText(node, words(`switch-${id}-${on ? "on" : "off"}`));
    },
  };
}
