// A finished play as a short line of text that a learner can hand in, and back. No DOM.
// What was foreseen, done and decided stands in it as it is; four letters at the end tell when one was mistyped.

const MARK = "LF1";
const FIELDS = ["case", "seed", "says", "suspects", "checks", "refused", "hints", "choice", "action", "rightness", "outcome", "minutes", "money", "cost", "score"];
const LISTS = ["checks", "refused"];
const WHOLE = ["seed", "hints"];
const HUNDREDTHS = ["minutes", "money", "cost", "score"]; // a point parts the fields
const LONGEST = 2000; // characters of one line
const MOST = 500; // lines
const CODE = new RegExp(`${MARK}(?:\\.[a-z0-9+_-]*){${FIELDS.length}}\\.[a-z0-9]{4}`, "i");

/**
 * What a finished play is remembered by.
 * @param {object} view  of Python, its verdict given
 * @param {number|null} [points] once they are reckoned
 * @returns {object} FIELDS, and `code`; `cost` is what the action costs [min], `score` null without points
 */
export function resultOf(view, points = null) {
  const {prediction, reveal, verdict} = view;
  const result = {
    case: slug(view.id), seed: view.seed, says: prediction.says, suspects: prediction.suspected,
    checks: reveal.path.steps.map(({id}) => id), refused: reveal.path.refused, hints: view.hints.length,
    choice: verdict.choice, action: verdict.action, rightness: verdict.rightness, outcome: verdict.outcome,
    minutes: view.minutes, money: view.money, cost: verdict.minutes, score: points,
  };
  return {...result, code: encode(result)};
}

/** What a code says of a play besides its points: two codes of one play have it in common. */
export const playOf = (code) => code.split(".").slice(0, -2).join(".");

/** A file's name as an id. */
const slug = (name) => name.normalize("NFKD").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 60) || "own";

export function encode(result) {
  const body = [MARK, ...FIELDS.map((name) => fieldText(name, result[name]))].join(".");
  return `${body}.${sum(body)}`;
}

function fieldText(name, value) {
  if (value === null || value === undefined) return "";
  if (LISTS.includes(name)) return value.join("+");
  return String(HUNDREDTHS.includes(name) ? Math.round(value * 100) : value);
}

/**
 * @param {string} text that holds a code
 * @returns {object|null} the result; null where there is no code, or a damaged one
 */
export function decode(text) {
  const [code] = text.slice(0, LONGEST).match(CODE) ?? [];
  if (!code) return null;
  const whole = MARK + code.slice(MARK.length).toLowerCase();
  const [body, check] = [whole.slice(0, -5), whole.slice(-4)];
  if (sum(body) !== check) return null;
  const values = body.split(".").slice(1);
  const result = Object.fromEntries(FIELDS.map((name, n) => [name, fieldValue(name, values[n])]));
  return [...WHOLE, ...HUNDREDTHS].some((name) => Number.isNaN(result[name])) ? null : {...result, code: whole};
}

function fieldValue(name, text) {
  if (LISTS.includes(name)) return text ? text.split("+") : [];
  if (text === "") return null;
  if (HUNDREDTHS.includes(name)) return Number(text) / 100;
  return WHOLE.includes(name) ? Number(text) : text;
}

/** Four letters of a text: enough that a slip of the hand is seen. */
export function sum(text) {
  let hash = 0x811c9dc5; // FNV-1a
  for (const letter of text) hash = Math.imul(hash ^ letter.codePointAt(0), 0x01000193) >>> 0;
  return (hash % 36 ** 4).toString(36).padStart(4, "0");
}

/**
 * The results in a text of many lines; what stands before a code is whose it is.
 * @returns {{results: object[], damaged: string[]}} lines with something like a code that cannot be read
 */
export function decodeAll(text) {
  const lines = text.split(/\r?\n/).map((line) => line.trim()).filter(Boolean).slice(0, MOST);
  const found = lines.map((line) => ({line, result: decode(line)}));
  return {
    results: found.filter(({result}) => result).map(({line, result}) => ({...result, who: whose(line)})),
    damaged: found.filter(({line, result}) => !result && new RegExp(MARK, "i").test(line)).map(({line}) => line),
  };
}

const whose = (line) => line.slice(0, line.search(CODE)).replace(/[\s,;:|=–-]+$/, "").slice(0, 80);

/** Columns of the table of results, with whose each is. */
export const COLUMNS = ["who", ...FIELDS];

/**
 * As a table that other programs open: RFC 4180, a point for the decimals.
 * @param {object[]} results
 * @param {(column: string) => string} heading
 */
export function csv(results, heading) {
  const rows = results.map((result) => COLUMNS.map((name) => cellText(result[name])));
  return [COLUMNS.map(heading), ...rows].map((row) => `${row.map(quoted).join(",")}\r\n`).join("");
}

/** A number, an id, or what somebody typed: that must not become a formula. */
function cellText(value) {
  if (value === null || value === undefined) return "";
  if (Array.isArray(value)) return value.join(" ");
  const text = String(value);
  return typeof value === "string" && /^[=+\-@\t]/.test(text) ? `'${text}` : text;
}

const quoted = (text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
