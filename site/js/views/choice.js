// One of a few words: native radio buttons that look like one strip.
import {h, hide, setText} from "./dom.js";

/**
 * @param {object} control a row of the control table, kind "choice"; where the same key has another control elsewhere,
 *   with `id` and `name` of its own, and `says` for words of another key
 * @param {object} kit {document, words, send}
 */
export function createChoice(control, {document, words, send}) {
  const {key} = control;
  const slug = key.replaceAll(".", "-");
  const id = control.id ?? slug;
  const says = control.says ?? slug; // whose words the options have
  const make = (...parts) => h(document, ...parts);
  const strip = make("div", {class: "options"});
  const bad = make("p", {class: "bad", id: `${id}-bad`, hidden: true});
  const node = make(
    "fieldset", {class: "choice", "data-key": key, "aria-describedby": `${id}-bad`},
    make("legend", {}, control.name ?? words(`control-${slug}`)), strip, bad,
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
  const wordFor = (value) => (words.has(`choice-${says}-${value}`) ? words(`choice-${says}-${value}`) : String(value));

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
