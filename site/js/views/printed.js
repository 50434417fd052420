// What a sheet of paper needs besides the drawings: every setting, when it was printed, and the link back to it.
import {at} from "../state.js";
import {fromFile} from "../units.js";
import {CONTROLS} from "./control-table.js";
import {h} from "./dom.js";

/** Adds to the tray what stands there on paper in place of the controls; it is written when a print begins. */
export function createPrinted(host, {document, words}) {
  const box = h(document, "div", {class: "printed", "aria-hidden": "true"});
  let model = null;
  host.append(box);
  document.defaultView.addEventListener("beforeprint", () => {
    if (!model) return;
    const {href} = document.defaultView.location;
    const when = new Intl.DateTimeFormat(document.defaultView.navigator.language, {dateStyle: "long", timeStyle: "short"}).format(new Date());
    box.replaceChildren(
      h(document, "dl", {}, settings(model, words).map(({name, value}) => h(document, "div", {}, h(document, "dt", {}, name), h(document, "dd", {}, value)))),
      h(document, "p", {}, words("printed-when", {when})),
      h(document, "p", {class: "printed-link"}, h(document, "a", {href, tabindex: -1}, href)),
    );
  });
  return {update: (next) => (model = next)};
}

/** Name and value of every control, as words. No DOM. */
export function settings({plant, units, catalogue}, words) {
  return CONTROLS.map(({key, kind, quantity}) => {
    const id = key.replaceAll(".", "-");
    const value = at(plant, key);
    return {name: words(`control-${id}`), value: kind === "slider" ? units.full(quantity, fromFile(key, value)) : chosen(id, value)};
  });

  function chosen(id, value) {
    if (id === "pump-model") return catalogue.pumps.find((pump) => pump.id === value)?.title ?? value ?? words("choice-pump-model-own");
    return words.has(`choice-${id}-${value}`) ? words(`choice-${id}-${value}`) : String(value);
  }
}
