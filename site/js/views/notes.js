// What the engine noticed: a title and, where one belongs, the caution, always; what it means on demand.
import {at} from "../state.js";
import {h, hide, setText} from "./dom.js";
import {endOf} from "./why.js";

/** Places on the suction side; what boils at all others does the pump no harm. */
const BEFORE_PUMP = ["supply-surface", "supply-outlet", "suction"];

/**
 * What is most urgent comes first; `caution` says whether the real plant needs a warning. Where the place matters,
 * `at` says at which of them, and `id` names the words, if they are not those of the kind.
 */
const KINDS = [
  {kind: "line-off", caution: true},
  {kind: "not-reached", caution: false},
  {kind: "dead-headed", caution: true},
  {kind: "reverse-flow", caution: true},
  {kind: "overload", caution: true},
  {kind: "npsh-short", caution: true},
  {kind: "below-vapour-pressure", caution: true, at: (place) => BEFORE_PUMP.includes(place)},
  {kind: "below-vapour-pressure", id: "below-vapour-pressure-behind", caution: true, at: (place) => !BEFORE_PUMP.includes(place)},
  {kind: "beyond-curve", caution: false},
  {kind: "other-speed", caution: false},
  {kind: "pressure-undefined", caution: false},
  {kind: "more-than-one-state", caution: false},
];

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

function entry({kind, id: own, caution, places, facts}, answer, units, words) {
  const pumps = answer.state.machines.length;
  const still = answer.state.station.flow <= 0;
  const named = (place) => (words.has(`place-${place}`) ? words(`place-${place}`, {pumps}) : place);
  const where = kind === "not-reached" ? words(endOf(at(answer.plant, "discharge.attached") === false)) : places.map(named).join(words("and"));
  const args = {where, pumps, count: places.length, ...worded(kind === "reverse-flow" ? {...facts, flow: Math.abs(facts.flow)} : facts, units)};
  const id = still && words.has(`note-${own}-still`) ? `note-${own}-still` : `note-${own}`; // what is advised where liquid flows, may be no way out here
  return {
    kind: own,
    title: words(`${id}.title`, args),
    text: capital(words(id, args), words.locale),
    caution: caution ? words(`${id}.caution`, args) : null,
  };
}

const FACTS = {
  flow: "flow", last_flow: "flow", head: "head", missing: "head", available: "head", required: "head", shaft_power: "power",
  rated_power: "power", load: "efficiency", pressure: "pressure", vapour_pressure: "pressure", speed: "speed", measured_speed: "speed",
};

/** The numbers of a note, SI, as the reader's text. */
function worded(facts, units) {
  return Object.fromEntries(
    Object.entries(facts).map(([key, value]) => [key, Object.hasOwn(FACTS, key) ? units.full(FACTS[key], value) : String(value)]),
  );
}

const capital = (text, locale) => text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);
