// The whole state of the page as the end of its address, and back.
// What comes from an address is a stranger's: it is capped, rebuilt key by key, and never trusted.
import {isSeed} from "./course.js";
import {isWish} from "./practice.js";
import {isTable} from "./tables.js";
import {PRESETS} from "./units.js";

/** Number of the state's format; older ones are lifted in `lift`, newer ones refused. */
export const FORMAT = 1;

/** The charts over the flow, in the order of their strip; the first is the one that a new rig shows. */
export const CHARTS = Object.freeze(["head", "npsh", "power"]);

/** The parts of the page. */
export const PLACES = Object.freeze(["rig", "case", "course"]);

/** In place of a seed: whoever opens the link draws one of their own. */
export const EACH = "each";

const LONGEST_FRAGMENT = 16_384; // characters
const LONGEST_TEXT = 65_536; // bytes, inflated
const LONGEST_NAME = 400; // characters of a file's name, and of the text of a puzzle: as much as Python reads
const LONGEST_PUZZLE = 100_000;

const MARK = "s=";
const TAIL = /(?:%[0-9a-f]{2}|[^\w%-])+$/i; // what a sentence put behind the link: a full stop, a space, a bracket
const MOST_MOVES = 40; // as many as Python follows
const ID = /^[a-z0-9](?:[a-z0-9-]{0,58}[a-z0-9])?$/;
const VEIL = /^[\w-]{20,200}$/; // Python takes it off; here nobody does
const KEY = /^[a-z][a-z0-9_]{0,39}$/;
const PATH = /^[a-z][a-z0-9_]{0,39}(?:\.[a-z][a-z0-9_]{0,39}){1,3}$/;

/** A link that cannot be used; `reason` is "long", "broken", "newer" or "content". */
export class LinkError extends Error {
  constructor(reason, detail = "") {
    super(`${reason}: ${detail}`);
    this.name = "LinkError";
    this.reason = reason;
  }
}

/**
 * @param {object} state as state.js keeps it
 * @returns {Promise<string>} what follows the # of the address
 * @throws {LinkError} "long" when the state does not fit into a link
 */
export async function encode(state) {
  const plain = new TextEncoder().encode(JSON.stringify(state));
  if (plain.length > LONGEST_TEXT) throw new LinkError("long", `${plain.length} bytes`); // it could not be opened
  const packed = await through(plain, new CompressionStream("deflate-raw"));
  const fragment = MARK + toBase64Url(packed);
  if (fragment.length > LONGEST_FRAGMENT) throw new LinkError("long", `${fragment.length} characters`);
  return fragment;
}

/**
 * The rig without a puzzle of one's own that was left: the link to a rig need not hold it.
 *
 * @throws {LinkError} "long" where it is the puzzle that is in sight
 */
export function rigAlone({view, ...rig}) {
  if (view.place === "case") throw new LinkError("long", "view.case");
  const {case: left, moves, seed, practice, ...shown} = view;
  return {...rig, view: shown};
}

/**
 * @param {string} fragment the address's hash, with or without the leading #
 * @returns {Promise<object|null>} a checked state; null when the address holds none
 * @throws {LinkError}
 */
export async function decode(fragment) {
  const text = fragment.replace(/^#/, "");
  if (!text.startsWith(MARK)) return null;
  if (text.length > LONGEST_FRAGMENT) throw new LinkError("long", `${text.length} characters`);
  const packed = text.slice(MARK.length).replace(TAIL, "");
  let data;
  try {
    const plain = await through(fromBase64Url(packed), new DecompressionStream("deflate-raw"), LONGEST_TEXT);
    data = JSON.parse(new TextDecoder("utf-8", {fatal: true}).decode(plain));
  } catch (error) {
    throw error instanceof LinkError ? error : new LinkError("broken", error.message);
  }
  return checkState(data);
}

/**
 * A state made only of what is known and plausible; used for links and for what the browser kept.
 *
 * @throws {LinkError} "newer" or "content"
 */
export function checkState(data) {
  const {format, plant, edits = {}, view = {}} = lift(table(data, "state"));
  return {format, plant: checkPlant(plant), edits: checkEdits(edits), view: checkView(table(view, "view"))};
}

function lift(data) {
  if (!Number.isInteger(data.format) || data.format < 1) throw new LinkError("content", "format");
  if (data.format > FORMAT) throw new LinkError("newer", String(data.format));
  return data; // format 1 is the first
}

function checkPlant(plant) {
  if (typeof plant === "string") return matching(plant, ID, "plant");
  return plainTree(table(plant, "plant"), "plant", 4);
}

function checkEdits(edits) {
  const entries = Object.entries(table(edits, "edits"));
  if (entries.length > 100) throw new LinkError("content", "too many edits");
  return Object.fromEntries(entries.map(([key, value]) => [matching(key, PATH, "edits"), leaf(value, key)]));
}

const VIEW = {
  units: (value) => Object.hasOwn(PRESETS, String(value)) && typeof value === "string",
  curves: (value) => typeof value === "boolean",
  chart: (value) => CHARTS.includes(value),
  place: (value) => PLACES.includes(value),
  case: (value) => (typeof value === "string" ? ID.test(value) : isPuzzle(value)),
  practice: isWish,
  seed: (value) => value === null || value === EACH || isSeed(value),
  wall: (value) => typeof value === "boolean",
  beside: isTable,
  yesterday: isTable,
  hidden: (value) => typeof value === "string" && VEIL.test(value),
  told: isTold,
  moves: (value) => Array.isArray(value) && value.length <= MOST_MOVES,
};

/** A rig that the view holds besides. */
const rig = ({plant, edits = {}}) => ({plant: checkPlant(plant), edits: checkEdits(edits)});

/** What is rebuilt key by key, so that nothing else comes in with it. */
const REBUILT = {
  moves: (moves) => moves.map((move) => plainTree(table(move, "move"), "move", 1)),
  beside: rig,
  yesterday: rig,
  told: ({cause, size, unit}) => ({cause, size, unit}),
  practice: ({seed, level}) => ({seed, level}),
};

/** Known parts of the view; an unknown one is left out, a known one with a wrong value refused. */
function checkView(view) {
  const good = {};
  for (const [key, fits] of Object.entries(VIEW)) {
    if (!Object.hasOwn(view, key)) continue;
    if (!fits(view[key])) throw new LinkError("content", `view.${key}`);
    good[key] = REBUILT[key]?.(view[key]) ?? view[key];
  }
  if (typeof good.case !== "object") delete good.practice; // what was made for practice is a file
  return good;
}

/** A cause by its id, with the size and its unit where it has one. */
function isTold(value) {
  if (!isTable(value) || typeof value.cause !== "string" || !ID.test(value.cause)) return false;
  const {size, unit} = value;
  return (size === null && unit === null) || (Number.isFinite(size) && typeof unit === "string" && unit.length < 10);
}

/** A puzzle of somebody's own: the name and the text of its file, and nothing else. Python reads them. */
function isPuzzle(value) {
  if (value === null || typeof value !== "object" || Object.keys(value).sort().join() !== "name,text") return false;
  const short = (text, longest) => typeof text === "string" && text.length <= longest;
  return short(value.name, LONGEST_NAME) && short(value.text, LONGEST_PUZZLE);
}

// Python checks a plant's content; here only its shape, so that nothing odd is stored or shown.
function plainTree(value, where, depth) {
  if (Array.isArray(value) && depth > 0) {
    if (value.length > 200) throw new LinkError("content", where);
    return value.map((item) => plainTree(item, where, depth - 1));
  }
  if (value === null || typeof value !== "object") return leaf(value, where);
  if (depth < 1 && where !== "move") throw new LinkError("content", where);
  const entries = Object.entries(value);
  if (entries.length > 60) throw new LinkError("content", where);
  return Object.fromEntries(
    entries.map(([key, item]) => [matching(key, KEY, where), plainTree(item, `${where}.${key}`, depth - 1)]),
  );
}

function leaf(value, where) {
  const good =
    value === null ||
    typeof value === "boolean" ||
    (typeof value === "number" && Number.isFinite(value)) ||
    (typeof value === "string" && value.length <= 1000);
  if (!good) throw new LinkError("content", where);
  return value;
}

function matching(text, pattern, where) {
  if (!pattern.test(text)) throw new LinkError("content", where);
  return text;
}

function table(value, where) {
  if (!isTable(value)) throw new LinkError("content", where);
  return value;
}

/** Send bytes through a stream; stop as soon as more than `most` bytes have come out. */
async function through(bytes, stream, most = Infinity) {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const parts = [];
  let size = 0;
  for (;;) {
    const {done, value} = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) {
      reader.cancel().catch(() => {});
      throw new LinkError("long", `more than ${most} bytes`);
    }
    parts.push(value);
  }
  const all = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

function toBase64Url(bytes) {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

function fromBase64Url(text) {
  if (!/^[A-Za-z0-9_-]*$/.test(text)) throw new LinkError("broken", "not base64url");
  return Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (letter) => letter.charCodeAt(0));
}
