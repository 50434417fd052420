// What two plants differ in, on which side it lies, and how two rigs exchange it. No DOM.
import {same} from "./history.js";
import {isTable} from "./tables.js";
import {partById, partOfKey} from "./views/parts-table.js";

const WHOLE = ["pump.curve", "pump.displacement", "pump.second.curve", "pump.second.displacement"]; // tables that are one thing
const NAMES = ["format", "title", "about"];
const APART = {"pump.centre_m": "load"}; // where a pump stands is part of what it meets

/**
 * Which side a key lies on: outside the flanges all is load.
 * @returns {"load"|"machine"|"instrument"|null} null for what changes nothing
 */
export function sideOf(key) {
  if (NAMES.includes(key)) return null;
  if (Object.hasOwn(APART, key)) return APART[key];
  if (WHOLE.includes(key)) return "machine";
  const part = partOfKey(key);
  return part ? (partById(part).side ?? "instrument") : "load";
}

function leaves(plant, path = "", found = new Map()) {
  for (const [name, value] of Object.entries(plant)) {
    const key = path ? `${path}.${name}` : name;
    if (isTable(value) && !WHOLE.includes(key)) leaves(value, key, found);
    else found.set(key, value);
  }
  return found;
}

/** Keys with other values in two effective plants, with the side of each; what is left out counts as null. */
export function differences(one, other) {
  const [a, b] = [leaves(one), leaves(other)];
  return [...new Set([...a.keys(), ...b.keys()])]
    .filter((key) => sideOf(key) && !same(a.get(key) ?? null, b.get(key) ?? null))
    .map((key) => ({key, side: sideOf(key), values: [a.get(key) ?? null, b.get(key) ?? null]}));
}

/**
 * What two rigs differ in. Of one plant, it is what was changed in either; what only follows from that is none.
 * @param {{plant: object|string, edits: object}} kept   and `now`
 * @param {object} keptPlant  effective, as the answer has it; and `nowPlant`
 */
export function rigDifferences({kept, now, keptPlant, nowPlant}) {
  const all = differences(keptPlant, nowPlant);
  if (!same(kept.plant, now.plant)) return all;
  const changed = ({key}) => key in kept.edits || key in now.edits;
  return all.some(changed) ? all.filter(changed) : all;
}

/** Which sides differ: "none", "load", "machine", "both" or "instrument". */
export function sidesOf(found) {
  const [load, machine] = ["load", "machine"].map((side) => found.some((one) => one.side === side));
  return load && machine ? "both" : load ? "load" : machine ? "machine" : found.length ? "instrument" : "none";
}

/** Whether a difference can be exchanged by itself: a table of points goes only with its whole plant. */
export const movable = ({key, values}, kept, now) => same(kept.plant, now.plant) ? key in kept.edits || key in now.edits
  : !WHOLE.includes(key) && values.every((value) => value === null || typeof value !== "object");

/**
 * Both rigs after they have exchanged some of their keys.
 * @param {{plant: object|string, edits: object}} kept  and `now`
 * @param {{key: string, values: [*, *]}[]} found  what they differ in and shall exchange; values: kept, now
 */
export function exchanged(kept, now, found) {
  const own = same(kept.plant, now.plant); // then a key left out is the plant's own value, on both sides
  const [a, b] = [{...kept.edits}, {...now.edits}];
  for (const {key, values} of found) {
    put(a, key, own ? now.edits[key] : values[1]);
    put(b, key, own ? kept.edits[key] : values[0]);
  }
  return {beside: {...kept, edits: a}, now: {...now, edits: b}};
}

function put(edits, key, value) {
  delete edits[key];
  if (value !== undefined) edits[key] = value;
}
