// Which controls there are, what each moves, and between which ends. No DOM.
import {readNumber} from "../units.js";

const PIPE = "discharge.attached";
const AT_HAND = ["small", "medium", "large"]; // one machine in three sizes; the panel of the pump has them all

/**
 * One group is what a phone shows at a time. `side` says whether it changes the load or the machine.
 * A slider's `step` is in file units.
 * A control has no effect while what it `needs` is not there.
 */
export const GROUPS = Object.freeze([
  {id: "valve", side: "load", controls: [{key: "valve.opening", kind: "slider", quantity: "opening", step: 0.01, needs: PIPE}]},
  {id: "speed", side: "machine", controls: [{key: "drive.frequency_hz", kind: "slider", quantity: "frequency", step: 0.5}]},
  {id: "supply", side: "load", controls: [{key: "supply.surface_m", kind: "slider", quantity: "height", step: 0.05}]},
  {id: "delivery", side: "load", controls: [{key: "delivery.surface_m", kind: "slider", quantity: "height", step: 0.05, needs: PIPE}]},
  {id: "pump", side: "machine", controls: [{key: "pump.model", kind: "choice", options: (c) => AT_HAND.filter((id) => c.pumps.some((pump) => pump.id === id))}]},
  {
    id: "arrangement",
    side: "machine",
    controls: [{key: "pump.arrangement", kind: "choice", options: () => ["single", "side-by-side", "in-line"]}],
  },
  {
    id: "motor",
    side: "machine",
    controls: [
      {key: "drive.supply_hz", kind: "choice", options: () => [50, 60]},
      {key: "drive.poles", kind: "choice", options: () => [2, 4, 6, 8]},
    ],
  },
  {id: "pipe", side: "load", controls: [{key: "discharge.attached", kind: "choice", options: () => [true, false]}]},
]);

/** Every control, flat. */
export const CONTROLS = Object.freeze(GROUPS.flatMap((group) => group.controls.map((c) => ({...c, group: group.id}))));

/** The group that holds a key; null where none does. */
export const groupOf = (key) => CONTROLS.find((control) => control.key === key)?.group ?? null;

// Before Python has told its limits.
const FALLBACK = {"valve.opening": [0, 1], "drive.frequency_hz": [5, 75]};

/**
 * The ends of a slider, in file units: a level moves between bottom and rim, the rest between the catalogue's limits.
 *
 * @returns {[number, number]}
 */
export function rangeOf(key, plant, limits = {}) {
  const [part, name] = key.split(".");
  if (name === "surface_m") return [plant[part].bottom_m, plant[part].top_m];
  const known = limits[key];
  return known ? [known.low, known.high] : FALLBACK[key];
}

/** The ends of every slider. */
export const ranges = (plant, limits) =>
  Object.fromEntries(
    CONTROLS.filter(({kind}) => kind === "slider").map(({key}) => [key, rangeOf(key, plant, limits)]),
  );

/**
 * Read what a person typed, in the shown unit; its symbol may stand behind the number, as on the screen.
 *
 * @returns {{value: number}|{problem: "number"|"range", got: string}} file units
 */
export function readTyped(text, {low, high, toFileUnits, symbol = ""}) {
  const typed = text.trim();
  const named = symbol !== "" && typed.toLowerCase().endsWith(symbol.toLowerCase());
  const shown = readNumber(named ? typed.slice(0, -symbol.length) : typed);
  if (!Number.isFinite(shown)) return {problem: "number", got: typed};
  const value = Number(toFileUnits(shown).toPrecision(10));
  const slack = (end) => 1e-5 * Math.min(Math.abs(end), high - low); // an end as it is shown, in six digits, is the end
  if (value < low - slack(low) || value > high + slack(high)) return {problem: "range", got: typed};
  return {value: Math.min(high, Math.max(low, value))};
}
