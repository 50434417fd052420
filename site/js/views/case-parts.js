// What a case view says, from what Python sent. No DOM, so node can test it.
import {keyName, valueText} from "./beside-words.js";
import {quantityOf} from "./part-keys.js";

export const DIRECTIONS = ["up", "same", "down"];

/**
 * A part of the prose in the reader's units; an author's words stay as they are.
 * @param {{part: "words"|"quantity", text?: string, quantity?: string, value?: number, source?: string}} part
 * @param {{full: (quantity: string, si: number, span?: number) => string, spanOf?: (source: string) => number|undefined}} units
 */
const partText = (part, units) => (part.part === "words" ? part.text : units.full(part.quantity, part.value, units.spanOf?.(part.source)));

/** Units that give a reading in the prose the digits of its dial. */
export function unitsOf(units, {readings, told, reveal}) {
  const spans = new Map([...told, ...readings, ...(reveal?.readings ?? [])].map(({id, low, high}) => [id, high - low]));
  return {...units, spanOf: (source) => spans.get(source.split(":").at(-1))};
}

/** Paragraphs of prose as plain strings. */
export const paragraphs = (prose, units) => prose.map((parts) => parts.map((part) => partText(part, units)).join(""));

/** Prose as one line, for labels and announcements. */
export const line = (prose, units) => paragraphs(prose, units).join(" ");

/** One day's pointer in words: "3.10 bar", "above the scale", "no reading". */
export function pointerText({value, off_scale: off}, {quantity, low, high}, {words, units}) {
  if (off) return words(`case-off-${off}`);
  return value === null ? words("case-no-reading") : units.full(quantity, value, high - low);
}

/** Everything a small dial needs, in the shown unit. */
export function dialData(reading, {words, units}) {
  const {quantity, low, high, yesterday, today} = reading;
  const shown = (si) => (si === null ? null : units.value(quantity, si));
  return {
    label: words(`case-reading-${reading.id}`),
    unit: units.symbol(quantity),
    range: [shown(low), shown(high)],
    value: shown(held(today, low, high)),
    ghost: shown(held(yesterday, low, high)),
    text: units.text(quantity, today.value, high - low),
    off: today.off_scale,
    says: words("case-dial-says", {
      today: pointerText(today, reading, {words, units}),
      yesterday: pointerText(yesterday, reading, {words, units}),
    }),
    origin: "live",
  };
}

/** Where a pointer rests: at its stop when off the scale. */
function held({value, off_scale: off}, low, high) {
  if (off) return off === "low" ? low : high;
  return value;
}

/** What differs, without a value on a day on which there was no such part: a hole is of no width before the line has burst. */
export function differencesOf(all) {
  const lacks = (key, day) => all.some((one) => one.key === `${key.slice(0, key.lastIndexOf("."))}.fitted` && one.key !== key && one[day] === false);
  return all.map((one) => ({...one, ...Object.fromEntries(["yesterday", "today"].filter((day) => lacks(one.key, day)).map((day) => [day, null]))}));
}

/** A plant key that differs, as label and two values. */
export function differenceText({key, quantity, yesterday, today}, {words, units, catalogue}) {
  const id = `case-key-${key.replaceAll(".", "-")}`;
  const kind = quantity === "length" ? quantityOf(key) : quantity; // a width in millimetres, as its key has it
  const show = (value) => (value === null ? "–" : quantity === null ? valueText(key, value, {units, words, catalogue}) : units.full(kind, value));
  return {label: words.has(id) ? words(id) : keyName(key, words), yesterday: show(yesterday), today: show(today)};
}

/**
 * What was foreseen and seen of each instrument, beside what it did.
 * @returns {{id: string, foreseen: string|null, seen: string|null, moved: string|null}[]} directions; null where there is none
 */
export function expectations({prediction, saw}) {
  const seen = new Map(saw.map((one) => [one.reading, one]));
  const ids = new Set([...seen.keys(), prediction.reading]);
  return [...ids].map((id) => ({
    id,
    foreseen: id === prediction.reading ? prediction.says : null,
    seen: seen.get(id)?.says ?? null,
    moved: seen.get(id)?.moved ?? prediction.outcome,
  }));
}

/**
 * The moves of a verdict: what was seen first, then what follows from it and what is done.
 * @returns {{moves: object[]|null, missing: "see"|"choice"|"action"|null}} no moves while something is missing, the first of it named
 */
export function verdictMoves(toSee, {saw, choice, action}) {
  const missing = toSee.some((id) => !saw[id]) ? "see" : !choice ? "choice" : !action ? "action" : null;
  if (missing) return {moves: null, missing};
  return {moves: [...toSee.map((id) => ({do: "see", reading: id, says: saw[id]})), {do: "decide", choice, action}], missing};
}

/**
 * What is new in a view after its last move: the data-key that gets the focus.
 * null where nothing was moved, as on a reload.
 */
export function newest(moves) {
  const last = moves.at(-1);
  if (!last) return null;
  switch (last.do) {
    case "predict":
      return "readings";
    case "check":
      return `check-${last.id}`;
    case "hint":
      return `hint-${moves.filter((move) => move.do === "hint").length}`;
    default:
      return "verdict";
  }
}

/** One text for a case, its moves and its seed, to tell whether two asks are the same. */
export const playKey = ({case: which, moves, seed = null}) => JSON.stringify([which, moves, seed]);

/** What something costs: "8 min", "8 min · 40 in money". */
export const costText = ({minutes, money = 0}, words) => words(money > 0 ? "case-cost-both" : "case-minutes", {minutes, money});

/** A reading of the view as the two days' comparison has it: each day complete, and the change. */
export function asShift({id, quantity, low, high, yesterday, today, moved, explained}) {
  const day = (pointer) => ({id, quantity, low, high, ...pointer});
  const known = yesterday.value !== null && today.value !== null;
  return {id, quantity, yesterday: day(yesterday), today: day(today), moved, explained, change: known ? today.value - yesterday.value : null};
}

/**
 * What a check told, or could have told: of readings which moved, of a look whether it can show what happened.
 * @returns {{kind: "readings", moved: object[], still: object[]} | {kind: "look", telling: boolean} | {kind: "nothing"}}
 */
export function checkWorth(check, {readings, telling}) {
  const read = check.test ? check.tested : readings.filter(({id}) => check.reads.includes(id)); // a test left undone tells nothing
  if (check.observes) return {kind: "look", telling: telling.includes(check.id)};
  if (!read.length) return {kind: "nothing"};
  const went = ({moved}) => moved === "up" || moved === "down";
  return {kind: "readings", moved: read.filter(went), still: read.filter((one) => !went(one))};
}

/** Which sentence explains a failure, and whether starting again helps; null where nothing but another puzzle does. */
export function failure(error, seed = null) {
  if (error.code === "file") return {words: seed === null ? "case-failed-file" : "case-failed-seed", restart: false};
  if (error.code === "input" && error.where === "case" && error.rule === "lookup") return {words: "case-unknown", restart: null};
  if (error.code === "input" && String(error.where).startsWith("moves")) return {words: "case-failed-moves", restart: true};
  if (error.code === "start-up") return {words: "case-failed-start", restart: false};
  return {words: "case-failed", restart: false};
}

/** Answers that are picked, as far as they are on offer: an older page may have kept others. */
export function draftFor({prediction, choices, actions}, {says, suspects, saw, choice, action}) {
  const among = (value, all) => (all.includes(value) ? value : null);
  return {
    says: among(says, DIRECTIONS), suspects: among(suspects, prediction.suspects), choice: among(choice, choices.map(({id}) => id)), action: among(action, actions),
    saw: Object.fromEntries(Object.entries(saw ?? {}).filter(([, way]) => DIRECTIONS.includes(way))),
  };
}
