// What the engine noticed: a title and, where one belongs, the caution, always; what it means on demand.
import {at} from "../state.js";
import {h, hide, setText} from "./dom.js";
import {KINDS, worded} from "./note-kinds.js";
import {endOf} from "./why.js";

export function create(host, {document, words}) {
  const make = (...parts) => h(document, ...parts);
  const list = make("ul", {class: "notes", "aria-label": words("notes-label")});
  const items = new Map(); // kind → its item; kept while the note stands, so that one that is open stays so
  host.append(list);

  function item(kind) {
    const id = `note-${kind}`;
    const detail = make("p", {id, hidden: true});
    const title = make("button", {type: "button", class: "note-title", "aria-expanded": "false", "aria-controls": id, onclick: turn});
    const caution = make("span", {class: "caution-text"});
    function turn() {
      detail.hidden = !detail.hidden;
      title.setAttribute("aria-expanded", String(!detail.hidden));
    }
    return {node: make("li", {"data-note": kind}, title, " ", caution, detail), title, caution, detail};
  }

  return {
    update(model) {
      const entries = noteEntries(model);
      const kinds = entries.map(({kind}) => kind);
      for (const kind of items.keys()) if (!kinds.includes(kind)) items.delete(kind);
      for (const {kind, title, text, caution} of entries) {
        if (!items.has(kind)) items.set(kind, item(kind));
        const parts = items.get(kind);
        setText(parts.title, title);
        setText(parts.detail, text);
        setText(parts.caution, caution ?? "");
        parts.node.classList.toggle("caution", caution !== null);
      }
      const nodes = kinds.map((kind) => items.get(kind).node);
      hide(list, nodes.length === 0);
      if (nodes.length !== list.children.length || nodes.some((node, i) => node !== list.children[i])) list.replaceChildren(...nodes);
    },
  };
}

/** The notes as words, each under the name of its words; equal notes on both pumps are said once. No DOM. */
export function noteEntries({answer, units, words}) {
  if (!answer) return [];
  return KINDS.flatMap(({kind, id = kind, caution, at: here = () => true}) => {
    const all = answer.notes.filter((note) => note.kind === kind && here(note.where));
    const worst = all.reduce((one, other) => (other.facts.pressure < one.facts.pressure ? other : one), all[0]);
    return all.length ? [entry({...worst, id, caution, places: all.map(({where}) => where)}, answer, units, words)] : [];
  });
}

function entry({kind, id: own, caution, places, ...note}, answer, units, words) {
  const pumps = answer.state.machines.length;
  const named = (place) => (words.has(`place-${place}`) ? words(`place-${place}`, {pumps}) : place);
  const where = kind === "not-reached" && places[0] !== "summit"
    ? words(endOf(at(answer.plant, "discharge.attached") === false)) : [...new Set(places)].map(named).join(words("and"));
  const args = {where, pumps, count: places.length, ...worded({kind, ...note}, units)};
  const id = variant(own, places[0], answer, words);
  return {
    kind: own,
    title: words(`${id}.title`, args),
    text: capital(words(id, args), words.locale),
    caution: caution ? words(`${id}.caution`, args) : null,
  };
}

/** What is advised of a pump that lets liquid slip, or where liquid flows, may be no way out elsewhere. */
function variant(kind, place, {state}, words) {
  const forms = [place, state.machines.some(({pressure_limit: limit}) => limit) && "upright", state.machines.some(({kind: pump}) => pump === "axial") && "propeller", state.station.flow <= 0 && "still"];
  const form = forms.find((each) => each && words.has(`note-${kind}-${each}`));
  return form ? `note-${kind}-${form}` : `note-${kind}`;
}

const capital = (text, locale) => text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);
