// The pump in the tray: one machine in three sizes, and a button that leads to all other kinds.
import {createChoice} from "./choice.js";
import {h, setAttributes, setText} from "./dom.js";
import {pumpEdits} from "./pump-choice.js";

/**
 * @param {object} control row of the control table
 * @param {object} kit {document, words, send}
 */
export function createPumpTray(control, kit) {
  const {document, words, send} = kit;
  const sizes = createChoice(control, {...kit, send: (action) => send(action.edits ? {...action, edits: pumpEdits(action.edits)} : action)});
  const others = h(document, "button", {type: "button", class: "others", onclick: () => send({type: "part", part: "pump-1"})});
  const node = h(document, "div", {class: "pump-tray"}, sizes.node, others);
  return {
    node,
    complain: sizes.complain,
    update({value, options, other}) {
      sizes.update({value, options});
      setText(others, words("pump-others", {name: other ?? words("pump-others-none")}));
      setAttributes(others, {"aria-label": words(other ? "pump-others-fitted" : "pump-others-long", {name: other ?? ""}), "data-fitted": other ? true : null});
    },
  };
}
