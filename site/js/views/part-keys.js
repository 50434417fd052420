// What a key's control is, from what the engine says of the key: its kind, its quantity, its ends. No DOM.
import {at} from "../state.js";

/** Quantity by the end of a key; some names say more than their unit. */
const QUANTITY = {
  m: "height", mm: "bore", bar: "pressure", c: "temperature", hz: "frequency", kw: "power", m3h: "flow", a: "current",
  rpm: "speed", kgm3: "density", mpas: "viscosity", percent: "percent", k: "ratio", ratio: "ratio", s: "time", m2: "area", kgm2: "inertia",
};
/** What a key is called by in the words: what may be wrong with a gauge is called the same on each of them. */
export const slugOf = (key) => key.replace(/^gauges\.\w+\.(fault\.|serial$)/, "gauges.$1").replaceAll(".", "-");

/** Whether a key says what is wrong with an instrument: such keys lie folded away. */
export const isFault = (key) => /(^|[._])fault\./.test(key);

const BY_NAME = [[/(^|_)length_m$/, "length"], [/(^|_)roughness_mm$/, "roughness"], [/(^|_)kv_\w*m3h$/, "coefficient"], [/^(opening|filled|leg_filled|at)$/, "opening"], [/^class$/, "percent"], [/(^|_)(serial|seed)$/, "count"]];

/** The quantity a key's number is of; a plain number where nothing else is known. */
export function quantityOf(key) {
  const name = key.split(".").at(-1);
  return BY_NAME.find(([form]) => form.test(name))?.[1] ?? QUANTITY[name.split("_").at(-1)] ?? "ratio";
}

/**
 * @param {object} limit what the catalogue says of the key
 * @returns {"number"|"choice"|"flag"|"pair"|"text"}
 */
export function kindOf({choices, most, longest}) {
  if (choices) return choices.every((each) => typeof each === "boolean") ? "flag" : "choice";
  if (most) return "pair";
  return longest === undefined ? "number" : "text";
}

/** Ends that other keys set: a level stays in its vessel, and a wall is smoother than a twentieth of the bore. */
const WITHIN = {
  surface_m: ({bottom_m: low, top_m: high}) => [low, high],
  bottom_m: ({surface_m: high}) => [-Infinity, high],
  top_m: ({surface_m: low}) => [low, Infinity],
  roughness_mm: ({bore_mm: bore}) => [0, bore / 20],
  low_percent: ({high_percent: high}) => [0, high],
  high_percent: ({low_percent: low}) => [low, Infinity],
  set_m: ({of}, {supply, delivery}) => [(of === "supply-level" ? supply : delivery).bottom_m, (of === "supply-level" ? supply : delivery).top_m],
};

/** The ends of a number in this plant, in file units. */
export function endsOf(key, {low, high}, plant) {
  const [, table, name] = key.match(/^(.*)\.([^.]+)$/);
  const [least, most] = WITHIN[name]?.(at(plant, table), plant) ?? [];
  return [Math.max(low, least ?? low), Math.min(high, most ?? high)];
}

/** Numbers that a plant may do without. Where one is asked for, it begins with what the plant or the engine's answer has. */
const START = {
  "site.altitude_m": () => 0,
  "suction.mouth_m": ({plant}) => plant.supply.bottom_m,
  "drive.inertia_kgm2": () => 0.02,
  "delivery.outlet_m": ({plant}) => plant.delivery.top_m,
  "drive.current_limit_percent": () => 100,
  "control.full_hz": ({plant}) => plant.drive.supply_hz,
  "pump.second.motor_kw": ({plant}) => plant.drive.motor_kw,
  "meters.current_range_a": ({answer}) => answer?.shown.find(({id}) => id === "ammeter-1")?.high,
  "meters.flow_density_kgm3": ({answer}) => answer?.state.liquid.density,
  ...Object.fromEntries(["suction", "discharge", "after_valve"].map((place) => [`gauges.${place}.fault.frozen_bar`, (model) => showsNow(place, model)])),
};

/** What a gauge shows at present, on its own scale, whatever unit it is read in. [bar] */
export function showsNow(place, {answer, plant}) {
  const reading = answer?.shown.find(({id}) => id === `gauge-${place.replace("_", "-")}`);
  if (typeof reading?.value !== "number") return 0;
  const [low, high] = plant.gauges[place].range_bar;
  return Number((low + ((reading.value - reading.low) / (reading.high - reading.low)) * (high - low)).toPrecision(6));
}

const THREE = 3; // digits are enough to begin with

export function startOf(key, model) {
  const [low, high] = endsOf(key, model.catalogue.limits[key], model.plant);
  const wished = START[key]?.(model);
  const value = Number.isFinite(wished) ? Number(wished.toPrecision(THREE)) : low > 0 ? low : 0;
  return Math.min(high, Math.max(low, value));
}

/** Whether a number may be left out in this plant: then its control has a switch before it. */
export const optional = (key, limit) => limit.default === null && kindOf(limit) === "number" && !ALWAYS.includes(key);

/** Without a default, and yet there in every answer: the engine fills them in. */
const ALWAYS = ["site.barometer_bar", "drive.frequency_hz", "drive.motor_kw", "gauges.suction.height_m", "gauges.discharge.height_m",
  "gauges.after_valve.height_m", "meters.flow_range_m3h", "relief.set_bar", "relief.capacity_m3h", "control.gain", "control.integral_s",
  "liquid.density_kgm3", "liquid.viscosity_mpas", "liquid.vapour_bar"];

/** What goes when a number is given: the two say the same thing in two ways. */
export const INSTEAD = Object.freeze({"site.altitude_m": ["site.barometer_bar"]});

const CRITICAL = "liquid.critical_bar"; // known of few liquids

/** Keys that say nothing as this plant stands: water has no properties of its own to set, and so on. */
const SILENT = {
  "liquid.temperature_c": ({liquid}) => liquid.name !== "water",
  "liquid.density_kgm3": ({liquid}) => liquid.name === "water",
  "liquid.viscosity_mpas": ({liquid}) => liquid.name === "water",
  "liquid.vapour_bar": ({liquid}) => liquid.name === "water",
  [CRITICAL]: ({liquid}) => liquid.name === "water",
  "site.barometer_bar": ({site}) => typeof site.altitude_m === "number",
  "control.set_m3h": ({control}) => control.of !== "flow",
  "control.set_bar": ({control}) => !control.of.endsWith("pressure"),
  "control.set_m": ({control}) => !control.of.endsWith("level"),
  "control.full_hz": ({control}) => control.on !== "drive",
  "relief.passing_percent": ({relief}) => relief.state !== "passing",
  "drive.ramp_s": ({drive}) => !slowed(drive),
  "drive.belt_ratio": ({drive}) => drive.belt === "none",
  "drive.belt_tension_percent": ({drive}) => drive.belt === "none",
  "meters.current_place": ({drive}) => !slowed(drive),
  "meters.flow_density_kgm3": notAnOrifice,
  "meters.flow_fault.plate": notAnOrifice,
  "meters.flow_fault.root": notAnOrifice,
  ...Object.fromEntries(["suction", "discharge", "after_valve"].map((place) => [`gauges.${place}.fault.frozen_bar`, ({gauges}) => gauges[place].fault.root_valve === "open"])),
};

/** Whether there is a variable-speed drive. */
function slowed({start, frequency_hz: frequency, supply_hz: supply, mains_percent: mains}) {
  return start === "ramp" || Math.abs(frequency - (supply * mains) / 100) > 1e-9;
}

function notAnOrifice({meters}) {
  return meters.flow_kind !== "orifice";
}

export const silent = (key, plant) => SILENT[key]?.(plant) ?? false;

const PROPERTIES = {"liquid.density_kgm3": ["density", 1], "liquid.viscosity_mpas": ["viscosity", 1e-3], "liquid.vapour_bar": ["vapour_pressure", 1e5]};
const DIGITS = 6;

/** The edits that make the liquid water, or another one that begins as like the present one as can be. */
export function liquidEdits(name, {answer, catalogue: {limits}}) {
  const edits = {"liquid.name": name};
  if (name === "water" && CRITICAL in limits) edits[CRITICAL] = null;
  for (const [key, [property, size]] of Object.entries(PROPERTIES)) {
    edits[key] = name === "water" ? null : Number((answer.state.liquid[property] / size).toPrecision(DIGITS));
  }
  return edits;
}
