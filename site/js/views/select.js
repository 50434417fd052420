// One of many words: a native list that opens.
import {h, hide, setAttributes, setText} from "./dom.js";

/**
 * @param {{key: string, id: string, name: string, says?: string}} control as in choice.js
 * @param {object} kit {document, words, send}
 * Its options may be put in groups: `groups` of `update` are [heading, options of it]; those in none stand first.
 */
export function createSelect({key, id, name, says = key.replaceAll(".", "-")}, {document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  const list = make("select", {id, "aria-describedby": `${id}-bad`, onchange: () => send({type: "commit", edits: {[key]: list.value}})});
  const bad = make("p", {class: "bad", id: `${id}-bad`, hidden: true});
  let shown = "";

  // a pump that only this plant's author knows has no words of ours
  const wordFor = (value) => (words.has(`choice-${says}-${value}`) ? words(`choice-${says}-${value}`) : String(value));

  return {
    node: make("div", {class: "listed"}, make("label", {class: "name", for: id}, name), list, bad),
    complain(text) {
      hide(bad, text === null);
      setText(bad, text ?? "");
      setAttributes(list, {"aria-invalid": text === null ? null : true});
    },
    update({value, options, groups = []}) {
      const wanted = JSON.stringify([options, groups]);
      if (wanted !== shown) {
        const option = (each) => make("option", {value: each}, wordFor(each));
        const grouped = groups.flatMap(([, all]) => all);
        list.replaceChildren(...options.filter((each) => !grouped.includes(each)).map(option),
          ...groups.filter(([, all]) => all.length).map(([label, all]) => make("optgroup", {label}, all.map(option))));
      }
      shown = wanted;
      if (list.value !== value) list.value = value;
    },
  };
}
