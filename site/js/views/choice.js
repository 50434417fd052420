// One of a few words: native radio buttons that look like one strip.
import {h, hide, setText} from "./dom.js";

/**
 * @param {object} control a row of the control table, kind "choice"
 * @param {object} kit {document, words, send}
 */
export function createChoice(control, {document, words, send}) {
  const {key} = control;
  const id = key.replaceAll(".", "-");
  const make = (...parts) => h(document, ...parts);
  const strip = make("div", {class: "options"});
  const bad = make("p", {class: "bad", id: `${id}-bad`, hidden: true});
  const node = make(
    "fieldset", {class: "choice", "data-key": key, "aria-describedby": `${id}-bad`},
    make("legend", {}, words(`control-${id}`)), strip, bad,
  );
  let shown = "";

  function option(value) {
    const input = make("input", {
      type: "radio", name: id, value: String(value),
      onchange: () => send({type: "commit", edits: {[key]: value}}),
      onfocus: () => send({type: "pick", control: key}),
    });
    return make("label", {}, input, make("span", {}, wordFor(value)));
  }

  // a pump that only this plant's author knows has no words of ours
  const wordFor = (value) => (words.has(`choice-${id}-${value}`) ? words(`choice-${id}-${value}`) : String(value));

  function complain(text) {
    hide(bad, text === null);
    setText(bad, text ?? "");
    node.classList.toggle("bad-choice", text !== null);
  }

  return {
    node,
    complain,
    update({value, options}) {
      const wanted = JSON.stringify(options);
      if (wanted !== shown) {
        strip.replaceChildren(...options.map(option));
        shown = wanted;
      }
      for (const input of strip.querySelectorAll("input")) input.checked = input.value === String(value);
    },
  };
}
