// What the engine noticed, worded, each with its caution where one belongs.
import {h} from "./dom.js";

/** Notes that come with a caution for the real plant. */
const CAUTIONS = new Set(["dead-headed", "reverse-flow", "overload", "below-vapour-pressure", "npsh-short", "line-off"]);

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
  const kinds = new Map(); // kind → first note, and everywhere it holds
  for (const note of answer.notes) {
    const known = kinds.get(note.kind);
    if (known) known.places.push(note.where);
    else kinds.set(note.kind, {...note, places: [note.where]});
  }
  return [...kinds.values()].filter(({kind}) => words.has(`note-${kind}`)).map((note) => entry(note, answer, units, words));
}

function entry({kind, places, facts}, answer, units, words) {
  const where = places.map((place) => (words.has(`place-${place}`) ? words(`place-${place}`) : place)).join(words("and"));
  const args = {where, ...numbers(facts ?? {}, units), ...ofMachine(places[0], answer, units)};
  return {
    kind,
    title: words(`note-${kind}.title`, args),
    text: words(`note-${kind}`, args),
    caution: CAUTIONS.has(kind) ? words(`note-${kind}.caution`, args) : null,
  };
}

/** What the sentences may quote of the machine a note is about. */
function ofMachine(place, answer, units) {
  const machine = answer.state.machines.find(({name}) => name === place) ?? answer.state.machines[0];
  if (!machine) return {};
  return {
    flow: units.full("flow", machine.flow),
    head: units.full("head", machine.head),
    load: units.full("efficiency", machine.load),
    power: units.full("power", machine.shaft_power),
    required: units.full("head", machine.npsh_required),
    available: units.full("head", machine.npsh_available),
  };
}

const FACTS = {last_flow: "flow", pressure: "pressure", vapour_pressure: "pressure", limit: "power"};

function numbers(facts, units) {
  return Object.fromEntries(
    Object.entries(facts).map(([key, value]) => [key, FACTS[key] && typeof value === "number" ? units.full(FACTS[key], value) : String(value)]),
  );
}
