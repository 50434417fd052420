// The dialog in which one cause of the catalogue is made to happen to the plant as it stands.
import {STEPS, sizeAt, sizeText, stepOf} from "./cause-size.js";
import {causeWords} from "./cause-words.js";
import {h, hide, setText} from "./dom.js";

/**
 * @param {HTMLDialogElement} host
 * @param {object} kit {document, words, send, ask}; `ask(kind, body)` asks the engine
 */
export function create(host, {document, words, send, ask}) {
  const make = (...parts) => h(document, ...parts);
  let model = null, found = [], chosen = null, value = null;
  const list = make("select", {id: "cause", onchange: () => choose(list.value)});
  const happened = make("p", {class: "cause-happened"});
  const follows = make("p", {class: "fine"});
  const name = make("label", {for: "cause-size"});
  const shown = make("output", {for: "cause-size"});
  const slider = make("input", {type: "range", id: "cause-size", min: 0, max: STEPS, step: 1, oninput: () => sized(sizeAt(chosen.size, Number(slider.value)))});
  const size = make("div", {class: "cause-size", hidden: true}, name, shown, slider);
  const bad = make("p", {class: "bad", role: "alert", hidden: true});
  const apply = make("button", {type: "button", class: "main", id: "cause-apply", onclick: happen}, words("causes-apply"));
  host.append(
    make("div", {class: "head"}, make("h2", {id: "causes-title"}, words("causes-title")), make("button", {type: "button", onclick: () => host.close()}, words("close"))),
    make("p", {}, words("causes-about")), make("p", {}, make("label", {for: "cause"}, words("causes-choose")), " ", list),
    happened, size, follows, bad, make("p", {}, apply));

  function choose(id) {
    chosen = found.find((one) => one.id === id);
    const told = causeWords(words, id);
    setText(happened, told.happened);
    setText(follows, told.follows);
    hide(size, !chosen.size);
    setText(name, told.size);
    complain(null);
    if (chosen.size) {
      slider.value = stepOf(chosen.size, chosen.size.usual);
      sized(chosen.size.usual);
    } else value = null;
  }

  function sized(next) {
    value = next;
    const text = sizeText(chosen.size, value, model.units);
    setText(shown, text);
    slider.setAttribute("aria-valuetext", text);
  }

  function complain(text) {
    hide(bad, text === null);
    setText(bad, text ?? "");
  }

  async function happen() {
    const {rig, yesterday} = model;
    try {
      const {edits} = await ask("cause", {...rig, cause: chosen.id, size: value});
      if (!yesterday) send({type: "remember", yesterday: rig}); // so that there is something to compare with
      send({type: "commit", edits});
      host.close();
    } catch (error) {
      complain(words("causes-failed", {text: error.text ?? ""}));
    }
  }

  return {
    /** Ask what can happen to the plant of a model, and open. */
    async open(next) {
      model = next;
      complain(null);
      apply.disabled = true;
      host.showModal();
      try {
        found = (await ask("causes", model.rig)).causes;
      } catch (error) {
        return complain(words("causes-failed", {text: error.text ?? ""}));
      }
      const groups = [...new Set(found.map(({group}) => group))];
      list.replaceChildren(...groups.map((group) => make("optgroup", {label: words(`case-group-${group}`)},
        found.filter((one) => one.group === group).map(({id}) => make("option", {value: id}, causeWords(words, id).title)))));
      apply.disabled = false;
      choose(found[0].id);
    },
  };
}
