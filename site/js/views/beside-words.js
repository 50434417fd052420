// What two rigs side by side are called, what they differ in and what both show, as words. No DOM.
import {movable, rigDifferences, sidesOf} from "../sides.js";
import {fromFile} from "../units.js";
import {instrument} from "./instruments.js";
import {quantityOf, slugOf} from "./part-keys.js";
import {partOfKey} from "./parts-table.js";

const MOST = 8; // rows of differences: two plants may differ in everything

const ORDER = ["machine", "load", "instrument"];

/**
 * @param {object} model of model.js, with `beside` {rig, answer} and `rig`, the present {plant, edits}
 * @returns {{sides: string, title: string, rows: object[], more: number, free: string[]}} `rows`: all of them, of which
 *   all but `more` are shown; `free`: the sides that can be exchanged as a whole
 */
export function comparison({answer, beside, rig, units, catalogue}, words) {
  const found = answer && beside.answer ? rigDifferences({kept: beside.rig, now: rig, keptPlant: beside.answer.plant, nowPlant: answer.plant}) : [];
  const sides = answer && beside.answer ? sidesOf(found) : "unknown";
  const rows = ORDER.flatMap((side) => found.filter((one) => one.side === side)).map((one) => ({
    ...one, name: keyName(one.key, words), texts: one.values.map((value) => valueText(one.key, value, {units, words, catalogue})),
    movable: movable(one, beside.rig, rig),
  }));
  const free = sides === "both" ? ["load", "machine"].filter((side) => rows.every((row) => row.side !== side || row.movable)) : [];
  return {sides, title: words(`beside-title-${sides}`), rows, more: Math.max(0, rows.length - MOST), free};
}

/** What a key is called where its part is not in sight: "Pump: Wear". */
export function keyName(key, words) {
  const slug = slugOf(key);
  if (words.has(`control-${slug}`)) return words(`control-${slug}`);
  const part = partOfKey(key);
  if (!words.has(`key-${slug}`)) return words.has(`beside-key-${slug}`) ? words(`beside-key-${slug}`) : key;
  return part ? words("beside-key", {part: words(`part-${part}`), key: words(`key-${slug}`)}) : words(`key-${slug}`);
}

/** A value as people see it. A stranger's text stays text. */
export function valueText(key, value, {units, words, catalogue}) {
  const slug = slugOf(key);
  if (value === null) return words("beside-none");
  if (typeof value === "boolean" || words.has(`choice-${slug}-${value}`)) {
    return words.has(`choice-${slug}-${value}`) ? words(`choice-${slug}-${value}`) : words(value ? "beside-yes" : "beside-no");
  }
  const number = (each) => (typeof each === "number" ? units.full(quantityOf(key), fromFile(key, each)) : String(each));
  if (Array.isArray(value)) return value.map(number).join(words("beside-to"));
  if (typeof value === "object") return words("beside-own");
  if (typeof value === "number") return number(value);
  return catalogue?.pumps.find(({id}) => id === value)?.title ?? value;
}

/**
 * The same instruments of both, with both readings.
 * @returns {{id: string, name: string, texts: [string, string], differs: boolean}[]}
 */
export function readings({answer, beside, units}, words) {
  const both = [beside.answer, answer];
  const ids = [...new Set(both.flatMap((one) => one?.shown.filter(({quantity}) => quantity !== "height").map(({id}) => id) ?? []))]; // levels stand in the drawing
  return ids.map((id) => {
    const said = both.map((one) => (one?.shown.some((reading) => reading.id === id) ? instrument(id, {answer: one, previous: null, units, plant: one.plant}, words) : null));
    const texts = said.map((one) => one?.says ?? words("beside-none"));
    return {id, name: said.find(Boolean).label, texts, differs: texts[0] !== texts[1]};
  });
}
