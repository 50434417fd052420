// An error as a sentence: where, what it was, what would do, and the way out where one is known.
// Python sends rules and facts; every word is ours.
import {fromFile} from "../units.js";

const QUANTITY = {m: "height", bar: "pressure", c: "temperature", hz: "frequency", m3h: "flow", kw: "power"};
const MOST_NAMED = 12; // of what would do
const LONGEST = 60; // letters of a stranger's text

/** Which sentence suits a rule with these facts; the first that fits them, and what was found. A rule without any has only its general one. */
const FORMS = {
  range: [
    ["file", ({unit}) => unit === "bytes"], ["braces", ({unit, high}, got) => unit === "characters" && got.length <= high && /[{}]/.test(got)],
    ["both", has("low", "high")], ["low", has("low")], ["high", has("high")],
  ],
  choice: [["nearest", has("nearest")], ["known", has("choices")]],
  lookup: [["off", has("off")], ["nearest", has("nearest")], ["known", has("choices")]],
  type: [["above", has("above")], ["double", has("double")]],
  unknown: [["above", has("above")], ["needed", has("needed")], ["nearest", has("nearest")], ["known", has("choices")]],
  missing: [["below", has("below")], ["other", has("other")]],
  points: [
    ["order", has("order")], ["length", has("wanted")], ["list", has("most")],
    ["first", ({index}) => index === 0], ["later", has("index")],
  ],
  together: [["same", has("same")], ["order", has("order")], ["other", has("other")]],
  syntax: [...["twice", "comma", "words", "curly", "lines", "inside"].map((what) => [what, ({slip}) => slip === what]), ["line", has("line")]],
  fair: ["group", "cause", "open", "led", "rival"].map((what) => [what, ({of}) => of === what]),
  "too-early": [["seen", has("seen")], ["tell", has("tell")]],
  days: [["percent", has("percent", "meant")]],
  proof: [
    ["sizes", ({of, sizes}) => of === "draws" && sizes], ["draws", ({of}) => of === "draws"],
    ["percent", has("percent", "meant")], ["lines", has("computed", "also")], ["line", has("computed")],
  ],
  truth: [["nearly", has("nearly")], ["load", has("groups", "load")], ["group", has("groups")]],
};

function has(...names) {
  return (facts) => names.every((name) => facts[name] !== null && facts[name] !== undefined);
}

/**
 * @param {{where: string, got: *, rule: string, facts: object}} error
 * @param {{words: Function, units: object}} kit
 */
export function sentence({where = "", got = null, rule = "", facts = {}}, kit) {
  const {words} = kit;
  const form = FORMS[rule]?.find(([, fits]) => fits(facts, got))?.[0];
  const id = form && words.has(`error-${rule}-${form}`) ? `error-${rule}-${form}`
    : words.has(`error-${rule}`) ? `error-${rule}` : "error-other";
  const args = Object.fromEntries(Object.entries(facts).map(([name, value]) => [name, factText(name, value, where, facts, kit)]));
  return words(id, {...args, name: nameOf(where, words), got: valueText(got, where, kit)});
}

/** What a control calls itself; else the key as it stands in the file. */
function nameOf(where, words) {
  const id = `control-${where.replaceAll(".", "-")}`;
  if (words.has(id)) return words(id);
  return where && where !== "the file" ? where : words("error-the-file");
}

function factText(name, value, where, {unit}, kit) {
  if (name === "order") return String(value).replaceAll(" ", "-"); // a key of the sentence's variants
  if (Array.isArray(value)) return [...value.slice(0, MOST_NAMED).map(String), ...(value.length > MOST_NAMED ? ["…"] : [])].join(", ");
  if (typeof value !== "number" || !["low", "high", "limit"].includes(name)) return short(String(value));
  const text = valueText(value, where, kit);
  return text === String(value) && unit && unit !== "-" ? `${text} ${unit}` : text;
}

/** A value as people see it: numbers in the shown unit where the key says which quantity it is. */
function valueText(value, where, {words, units}) {
  if (value === null || value === undefined) return words("error-nothing");
  if (Array.isArray(value)) return words("error-list");
  if (typeof value === "object") return words("error-table");
  if (typeof value === "string") return `“${short(value)}”`;
  if (typeof value !== "number") return String(value);
  if (where === "valve.opening") return units.full("opening", value);
  const quantity = QUANTITY[where.replace(/\[\d+\]$/, "").split("_").at(-1)];
  return quantity ? units.full(quantity, fromFile(where.replace(/\[\d+\]$/, ""), value)) : String(value);
}

const short = (text) => (text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text);
