// What the engine noticed, worded, each with its caution where one belongs.
import {h} from "./dom.js";

/** What is most urgent comes first; `caution` says whether the real plant needs a warning. */
const KINDS = [
  {kind: "line-off", caution: true},
  {kind: "dead-headed", caution: true},
  {kind: "reverse-flow", caution: true},
  {kind: "overload", caution: true},
  {kind: "npsh-short", caution: true},
  {kind: "below-vapour-pressure", caution: true},
  {kind: "beyond-curve", caution: false},
  {kind: "pressure-undefined", caution: false},
  {kind: "more-than-one-state", caution: false},
];

export function create(host, {document, words}) {
  const make = (...parts) => h(document, ...parts);
  const list = make("ul", {class: "notes", "aria-label": words("notes-label")});
  host.append(list);
  let shown = "";

  function item(entry) {
    return make(
      "li", {class: entry.caution ? "caution" : null, "data-note": entry.kind},
      make("strong", {}, entry.title), entry.text, entry.caution && make("span", {class: "caution-text"}, entry.caution),
    );
  }

  return {
    update(model) {
      const entries = noteEntries(model);
      const wanted = JSON.stringify(entries);
      if (wanted === shown) return;
      shown = wanted;
      list.hidden = entries.length === 0;
      list.replaceChildren(...entries.map(item));
    },
  };
}

/** The notes as words; equal notes on both pumps are said once. No DOM. */
export function noteEntries({answer, units, words}) {
  if (!answer) return [];
  return KINDS.flatMap(({kind, caution}) => {
    const all = answer.notes.filter((note) => note.kind === kind);
    return all.length ? [entry({...all[0], caution, places: all.map(({where}) => where)}, answer, units, words)] : [];
  });
}

function entry({kind, caution, places, facts}, answer, units, words) {
  const pumps = answer.state.machines.length;
  const named = (place) => (words.has(`place-${place}`) ? words(`place-${place}`, {pumps}) : place);
  const args = {where: places.map(named).join(words("and")), count: places.length, ...worded(facts, units)};
  return {
    kind,
    title: words(`note-${kind}.title`, args),
    text: capital(words(`note-${kind}`, args), words.locale),
    caution: caution ? words(`note-${kind}.caution`, args) : null,
  };
}

const FACTS = {
  flow: "flow", last_flow: "flow", head: "head", available: "head", required: "head", shaft_power: "power",
  rated_power: "power", load: "efficiency", pressure: "pressure", vapour_pressure: "pressure",
};

/** The numbers of a note, SI, as the reader's text. */
function worded(facts, units) {
  return Object.fromEntries(
    Object.entries(facts).map(([key, value]) => [key, Object.hasOwn(FACTS, key) ? units.full(FACTS[key], value) : String(value)]),
  );
}

const capital = (text, locale) => text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);
