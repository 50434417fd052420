// The dialog in which one cause of the catalogue is made to happen to the plant as it stands: in the open, out of
// sight, or drawn by chance, which is out of sight always.
import {STEPS, sizeAt, sizeText, stepOf} from "./cause-size.js";
import {causeWords} from "./cause-words.js";
import {standing} from "../model.js";
import {h, hide, setText} from "./dom.js";

/**
 * @param {HTMLDialogElement} host
 * @param {object} kit {document, words, send, ask}; `ask(kind, body)` asks the engine; `seed()` draws a whole number below 2³²
 */
export function create(host, {document, words, send, ask, seed = drawSeed}) {
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
  const unseen = make("input", {type: "checkbox", id: "cause-hidden"});
  const chance = make("button", {type: "button", id: "cause-chance", onclick: () => conceal({})}, words("causes-chance"));
  host.append(
    make("div", {class: "head"}, make("h2", {id: "causes-title"}, words("causes-title")), make("button", {type: "button", onclick: () => host.close()}, words("close"))),
    make("p", {}, words("causes-about")), make("p", {}, make("label", {for: "cause"}, words("causes-choose")), " ", list),
    happened, size, follows,
    make("p", {}, unseen, " ", make("label", {for: "cause-hidden"}, words("causes-hidden"))), make("p", {class: "fine"}, words("causes-hidden-about")),
    bad, make("p", {}, apply, " ", chance));

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
    const what = {cause: chosen.id, size: value};
    if (unseen.checked) return conceal(what);
    const told = {...what, unit: chosen.size?.unit ?? null};
    await act("cause", {...model.rig, ...what}, ({edits}) => send({type: "happen", edits, told, day: standing(model)}));
  }

  /** What is named, or what chance draws, goes under a veil at once: this page keeps nothing else of it. */
  const conceal = (what) => act("hide", {...model.rig, ...what, seed: seed()}, ({hidden}) => send({type: "hide", hidden}));

  async function act(kind, body, then) {
    try {
      then(await ask(kind, body));
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
      apply.disabled = chance.disabled = true;
      host.showModal();
      try {
        found = (await ask("causes", model.rig)).causes;
      } catch (error) {
        return complain(words("causes-failed", {text: error.text ?? ""}));
      }
      const groups = [...new Set(found.map(({group}) => group))];
      list.replaceChildren(...groups.map((group) => make("optgroup", {label: words(`case-group-${group}`)},
        found.filter((one) => one.group === group).map(({id}) => make("option", {value: id}, causeWords(words, id).title)))));
      apply.disabled = chance.disabled = false;
      choose(found[0].id);
    },
  };
}

const drawSeed = () => crypto.getRandomValues(new Uint32Array(1))[0];
