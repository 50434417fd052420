// Which keys of a plant belong to which thing in the drawing. No DOM.
import {at} from "../state.js";

const row = (id, keys, more = {}) => Object.freeze({id, keys, drawn: [id], on: null, fitted: null, needs: null, leads: [], side: "load", ...more});
const PIPE = "discharge.attached";
const MACHINE = {side: "machine"};
const READ = {side: null};
const TWO = ({pump}) => pump.arrangement !== "single";

/**
 * One row is one panel, in the order of the flow.
 * `keys`: whole keys, or the beginning of many (it ends with a point); a whole key goes before a beginning, and
 * leads in its panel. `drawn`: the names in the drawing that open it. `fitted`: the key that says whether it is
 * there, or a test of the plant; what is not there is offered by the panel it stands `on`. Without what it
 * `needs`, it has no effect. `leads`: panels of things that nothing is drawn for, reached from here. `side`: whether it is of the load or of the machine; an instrument is of neither.
 */
export const PARTS = Object.freeze([
  row("liquid", ["liquid.name", "liquid."], {drawn: []}),
  row("site", ["site."], {drawn: []}),
  row("supply", ["supply."], {leads: ["liquid", "levels", "site"]}),
  row("suction-line", ["suction."], {drawn: ["suction-line", "strainer"]}),
  row("pump-1", ["pump.model", "pump.arrangement", "pump."], MACHINE),
  row("pump-2", ["pump.second."], {fitted: TWO, ...MACHINE}),
  row("drive", ["drive.frequency_hz", "drive.supply_hz", "drive.poles", "drive."], MACHINE),
  row("relief", ["relief."], {fitted: "relief.fitted", on: "pump-1"}),
  row("return-line", ["return_line."], {fitted: "return_line.fitted", on: "pump-1"}),
  row("check-1", ["check."], {drawn: ["check-1", "check-2"], fitted: "check.fitted", on: "pump-1"}),
  row("branch", ["branch."], {fitted: "branch.fitted", on: "discharge-line", needs: PIPE}),
  row("burst", ["burst."], {fitted: "burst.fitted", on: "discharge-line"}),
  row("valve", ["valve.opening", "valve."], {needs: PIPE}),
  row("controller", ["control.mode", "control.of", "control.on", "control."], {fitted: "control.fitted", on: "valve"}),
  row("filter", ["filter."], {fitted: "filter.fitted", on: "valve", needs: PIPE}),
  row("discharge-line", [PIPE, "discharge."]),
  row("second-line", ["second_line."], {fitted: "second_line.fitted", on: "discharge-line", needs: PIPE}),
  row("summit", ["summit."], {fitted: "summit.fitted", on: "discharge-line", needs: PIPE}),
  row("delivery", ["delivery."], {needs: PIPE, leads: ["liquid", "levels"]}),
  row("gauge-suction", ["gauges.suction."], READ),
  row("gauge-discharge", ["gauges.discharge."], READ),
  row("gauge-after-valve", ["gauges.after_valve."], {needs: PIPE, ...READ}),
  row("flow-meter", ["meters.flow_kind", "meters.flow_place", "meters.flow_range_m3h", "meters.flow_percent", "meters.flow_density_kgm3", "meters.flow_serial", "meters.flow_fault."], READ),
  row("ammeter-1", ["meters.current_place", "meters.current_range_a", "meters.current_percent", "meters.current_fault."], {drawn: ["ammeter-1", "ammeter-2"], ...READ}),
  row("tachometer-1", ["meters.speed_range_rpm", "meters.speed_percent"], {drawn: ["tachometer-1", "tachometer-2"], ...READ}),
  row("levels", ["meters.level_percent"], {drawn: [], ...READ}),
  row("chance", ["meters.seed"], {drawn: [], ...READ}),
]);

/** Keys without a control: what a file calls itself, and what belongs into a pump's own file as a whole. */
export const IN_FILES = Object.freeze(["format", "title", "about", "pump.curve.", "pump.displacement."]);

const covers = (claim, key) => (claim.endsWith(".") ? key.startsWith(claim) : claim === key);

/** The one claim on a key that counts: the longest. */
function claimOn(key) {
  const claims = [...IN_FILES.map((claim) => ({claim, part: null})), ...PARTS.flatMap((part) => part.keys.map((claim) => ({claim, part})))];
  return claims.filter(({claim}) => covers(claim, key)).reduce((best, each) => (best && best.claim.length >= each.claim.length ? best : each), null);
}

/** Id of the panel that a key belongs to; null where none has it. */
export const partOfKey = (key) => claimOn(key)?.part?.id ?? null;

/** Whether a key is one of those that no panel shows on purpose. */
export const inFileOnly = (key) => claimOn(key)?.part === null;

/** The panel that a thing in the drawing opens: by its name there, or by the key that it moves. */
export function partOfDrawn(name) {
  const part = PARTS.find(({id, drawn}) => id === name || drawn.includes(name));
  return part?.id ?? partOfKey(name);
}

export const partById = (id) => PARTS.find((part) => part.id === id) ?? null;

/**
 * The keys of a panel, those named one by one first, the rest as the plant file has them. The key that says
 * whether the thing is there has no control of its own: it is fitted and taken away as a whole.
 *
 * @param {object} limits of the catalogue: every key that the engine knows
 */
export function keysOf(part, limits) {
  const mine = Object.keys(limits).filter((key) => partOfKey(key) === part.id && key !== part.fitted);
  const named = part.keys.filter((key) => mine.includes(key));
  return [...named, ...mine.filter((key) => !named.includes(key))];
}

/** Whether the engine knows such a thing at all. */
export const known = (part, limits) => Object.keys(limits).some((key) => partOfKey(key) === part.id);

/** Whether it stands in this plant. */
export function stands({fitted}, plant) {
  if (typeof fitted === "function") return fitted(plant);
  return fitted === null || at(plant, fitted) === true;
}

/** What stands in this plant, and what could be added, each in the order of the flow. */
export function inventory(plant, limits) {
  const all = PARTS.filter((part) => known(part, limits));
  return {
    standing: all.filter((part) => stands(part, plant)),
    offered: all.filter((part) => typeof part.fitted === "string" && !stands(part, plant)),
  };
}
