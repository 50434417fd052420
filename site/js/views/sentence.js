// An error as a sentence: where, what it was, what would do, and the way out where one is known.
import {fromFile} from "../units.js";

const QUANTITY = {m: "height", bar: "pressure", c: "temperature", hz: "frequency", m3h: "flow", kw: "power", mm: null};

/**
 * @param {{code: string, where: string, got: *, rule: string, facts: object, text: string, hint: string}} error
 * @param {{words: Function, units: object}} kit
 */
export function sentence(error, {words, units}) {
  const {where, got, rule, facts} = error;
  const id = where.replaceAll(".", "-");
  const name = words.has(`control-${id}`) ? words(`control-${id}`) : where;
  const args = {name, got: plain(got, where, units), ...worded(facts, where, units)};
  if (rule === "range" && "low" in facts && "high" in facts) return words("bad-range", args);
  if (rule === "choice" && Array.isArray(facts.choices)) return words("bad-choice", args);
  return error.text; // rules without a sentence of ours: Python's own words, in English
}

function worded(facts, where, units) {
  const all = {};
  for (const [key, value] of Object.entries(facts)) {
    if (Array.isArray(value)) all[key] = value.join(", ");
    else all[key] = plain(value, where, units);
  }
  return all;
}

/** A value as people see it: numbers in the shown unit where the key says which quantity it is. */
function plain(value, where, units) {
  if (typeof value !== "number") return String(value);
  if (where === "valve.opening") return units.full("opening", value);
  const quantity = QUANTITY[where.split("_").at(-1)];
  return quantity ? units.full(quantity, fromFile(where, value)) : String(value);
}
