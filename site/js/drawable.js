// Which of the values that nobody has judged yet may be drawn: a link holds whatever a stranger wrote. Pure.
import {at, withEdits} from "./state.js";
import {isTable} from "./tables.js";

/**
 * The catalogue's limits, the names of the pumps among them.
 *
 * @param {{limits: object, pumps: object[]}|undefined} catalogue
 */
export const limitsOf = (catalogue) => ({...catalogue?.limits, "pump.model": {choices: catalogue?.pumps?.map(({id}) => id) ?? []}});

/** A plant with those edits put in that can be drawn; the rest waits for Python's word. */
export function withDrawable(plant, edits, limits) {
  const good = Object.entries(edits).filter(([path, value]) => inTable(plant, path) && fits(value, at(plant, path), limits[path]));
  return good.length ? standing(withEdits(plant, Object.fromEntries(good)), plant) : plant;
}

/** A plant file says only what differs; until Python fills in the rest, and for what will not do, another plant's values stand in. */
export function overDefaults(plant, defaults, limits) {
  return standing(filled(plant, defaults, limits, ""), defaults);
}

function filled(part, defaults, limits, path) {
  const all = {...defaults};
  for (const [key, value] of Object.entries(part)) {
    const here = path + key;
    if (isTable(value) && (defaults[key] === undefined || isTable(defaults[key]))) all[key] = filled(value, defaults[key] ?? {}, limits, `${here}.`);
    else if (fits(value, defaults[key], limits[here])) all[key] = value;
  }
  return all;
}

/** Within the limits where there are any, else of the kind that stands there. */
function fits(value, stands, limit) {
  if (limit?.choices?.length) return limit.choices.includes(value);
  if (Array.isArray(value)) return Array.isArray(stands) && value.length === stands.length && value.every((each, n) => fits(each, stands[n]));
  if (value === null) return limit?.default === null; // left out: Python finds what suits
  if (isTable(value) || (limit && typeof value !== "number")) return false;
  if (limit) return value >= (limit.low ?? -Infinity) && value <= (limit.high ?? Infinity);
  return typeof value === typeof stands;
}

/** A level that is not between bottom and rim would be drawn outside its vessel: the old vessel stands. */
function standing(plant, before) {
  const wrong = ["supply", "delivery"].filter((name) => plant[name] && before[name] && !holds(plant[name]));
  return wrong.length ? {...plant, ...Object.fromEntries(wrong.map((name) => [name, before[name]]))} : plant;
}

const holds = ({bottom_m: bottom, surface_m: surface, top_m: top}) =>
  [bottom, surface, top].includes(undefined) || (bottom < top && bottom <= surface && surface <= top);

/** Whether a dotted key leads into a table, not through a number or a list. */
function inTable(plant, path) {
  const parent = at(plant, path.slice(0, path.lastIndexOf(".")));
  return parent === undefined || isTable(parent);
}
