// From SI to what people read, and back. Exact factors; the reader's own digits.

/** Standard gravity, 1901. [m/s²] */
export const G = 9.80665;

// Each factor is the size of the unit in SI, exact by definition.
const FOOT = 0.3048; // [m] international foot, 1959
const INCH = 0.0254; // [m]
const GALLON = 231 * INCH ** 3; // [m³] US gallon of 231 cubic inches
const POUND_FORCE = 0.45359237 * G; // [N]
const PSI = POUND_FORCE / INCH ** 2; // [Pa]
const HORSEPOWER = 550 * FOOT * POUND_FORCE; // [W] mechanical
const TURN = 2 * Math.PI; // [rad]

const unit = (symbol, factor, decimals, offset = 0) => ({symbol, factor, decimals, offset});
const level = (symbol, factor, decimals) => ({...unit(symbol, factor, decimals), even: true}); // all with as many decimals

const COMMON = {
  speed: unit("1/min", TURN / 60, 0),
  current: unit("A", 1, 1),
  frequency: unit("Hz", 1, 1),
  opening: unit("%", 0.01, 0),
  output: unit("%", 0.01, 0), // of a controller
  efficiency: unit("%", 0.01, 0),
  torque: unit("N·m", 1, 1),
  density: unit("kg/m³", 1, 1),
  viscosity: unit("mPa·s", 1e-3, 2),
  kinematic: unit("mm²/s", 1e-6, 1),
  percent: unit("%", 1, 1), // as a plant file writes it; shares of one are "efficiency" and "opening"
  ratio: unit("", 1, 1),
  count: unit("", 1, 0),
  coefficient: unit("m³/h", 1 / 3600, 1), // Kv means these, whatever flows are shown in
  time: unit("s", 1, 1),
  area: unit("m²", 1, 1),
  inertia: unit("kg·m²", 1, 3),
};

const METRIC = {
  ...COMMON,
  head: unit("m", 1, 1),
  height: level("m", 1, 2),
  length: unit("m", 1, 1),
  bore: unit("mm", 1e-3, 0),
  roughness: unit("mm", 1e-3, 2),
  velocity: unit("m/s", 1, 2),
  power: unit("kW", 1000, 2),
  temperature: unit("°C", 1, 0, 273.15),
};

/** The three ways to show quantities; the keys stand in addresses and never change. */
export const PRESETS = Object.freeze({
  "m3h-bar-m": {...METRIC, flow: unit("m³/h", 1 / 3600, 1), pressure: unit("bar", 1e5, 2)},
  "ls-kpa-m": {...METRIC, flow: unit("L/s", 1e-3, 2), pressure: unit("kPa", 1e3, 0)},
  "gpm-psi-ft": {
    ...COMMON,
    flow: unit("gpm", GALLON / 60, 0),
    pressure: unit("psi", PSI, 1),
    head: unit("ft", FOOT, 1),
    height: level("ft", FOOT, 1),
    length: unit("ft", FOOT, 0),
    bore: unit("in", INCH, 2),
    roughness: unit("in", INCH, 4),
    velocity: unit("ft/s", FOOT, 1),
    power: unit("hp", HORSEPOWER, 2),
    torque: unit("lbf·ft", POUND_FORCE * FOOT, 1),
    density: unit("lb/ft³", 0.45359237 / FOOT ** 3, 2),
    temperature: unit("°F", 5 / 9, 0, 273.15 - (32 * 5) / 9),
  },
});

export const FIRST_PRESET = "m3h-bar-m";

/** The unit a plant file writes a quantity in, by the end of its key; SI size and offset. */
const FILE_UNITS = {
  m: [1, 0], mm: [1e-3, 0], bar: [1e5, 0], c: [1, 273.15], hz: [1, 0], m3h: [1 / 3600, 0], kw: [1e3, 0],
  mpas: [1e-3, 0], rpm: [TURN / 60, 0],
};

/** SI value of a number as a plant file writes it under `key`. */
export function fromFile(key, value) {
  const [factor, offset] = FILE_UNITS[key.split("_").at(-1)] ?? [1, 0];
  return value * factor + offset;
}

/** The number a plant file writes under `key` for an SI value. */
export function toFile(key, si) {
  const [factor, offset] = FILE_UNITS[key.split("_").at(-1)] ?? [1, 0];
  return (si - offset) / factor;
}

const FINE = ["power"]; // heads add up in a stack, so they keep to one number of decimals
const MOST = 6; // decimals

/**
 * One preset with the reader's digits.
 *
 * @param {string} id key of PRESETS; an unknown one gives the first
 * @param {string} [locale] for digits and decimal signs; one that is none ("C") gives English ones
 * @param {Record<string, number>} [spans] ranges, SI, of quantities that are so small here that they need more digits than usual
 */
export function createUnits(id, locale, spans = {}) {
  const name = Object.hasOwn(PRESETS, id) ? id : FIRST_PRESET;
  const table = PRESETS[name];
  const reader = knownLocale(locale);
  const formats = new Map();
  const format = (name, options) => formats.get(name) ?? formats.set(name, new Intl.NumberFormat(reader, options)).get(name);
  const digits = (count) => format(count, {minimumFractionDigits: count, maximumFractionDigits: count});
  const typed = (least) => format(`typed ${least}`, {
    minimumFractionDigits: least, maximumFractionDigits: least + 1, useGrouping: false, numberingSystem: "latn",
  });
  const of = (quantity) => {
    if (!Object.hasOwn(table, quantity)) throw new RangeError(`no unit for ${quantity}`);
    return table[quantity];
  };
  const value = (quantity, si) => (si - of(quantity).offset) / of(quantity).factor;

  /** A power that would be shown as nothing, or by a single digit, has three. */
  function decimalsFor(quantity, si) {
    const usual = units.decimals(quantity);
    const size = Math.abs(value(quantity, si));
    if (!FINE.includes(quantity) || !(size > 0) || size >= 10 ** (1 - usual)) return usual;
    return Math.min(MOST, 2 - Math.floor(Math.log10(size)));
  }

  const units = {
    id: name,
    /** The number in the shown unit. */
    value,
    /** The SI value of a number in the shown unit. */
    si: (quantity, shown) => shown * of(quantity).factor + of(quantity).offset,
    symbol: (quantity) => of(quantity).symbol,
    /** How many decimals suit a range of the given SI size; the usual number when there is none. */
    decimals(quantity, span) {
      const {factor, decimals, even} = of(quantity);
      if (even) return decimals;
      if (!(span > 0)) return spans[quantity] > 0 ? Math.max(decimals, units.decimals(quantity, spans[quantity])) : decimals;
      return Math.min(4, Math.max(0, 3 - Math.ceil(Math.log10(span / factor) - 1e-9)));
    },
    /** Digits only: "42.0"; an en dash where there is no number. */
    text(quantity, si, span) {
      if (typeof si !== "number" || !Number.isFinite(si)) return "–";
      const count = span > 0 ? units.decimals(quantity, span) : decimalsFor(quantity, si);
      const number = Number(value(quantity, si).toFixed(count)); // so that no "-0.0" is shown
      return digits(count).format(number === 0 ? 0 : number).replace("-", "−"); // as on the scales
    },
    /** Digits for a number box, which `readNumber` understands: one decimal more where the value has it, no grouping. */
    plain: (quantity, si) => typed(units.decimals(quantity)).format(Number(value(quantity, si).toFixed(units.decimals(quantity) + 1)) || 0),
    /** By how much a reading may err, with its unit: on a wide scale too with a digit that counts. */
    error: (quantity, si, span) => units.full(quantity, si, Math.min(span, 100 * si) || span),
    /** Digits and unit: "42.0 m³/h", with a space that does not break. */
    full: (quantity, si, span) => `${units.text(quantity, si, span)}\u00a0${of(quantity).symbol}`.trimEnd(),
  };
  return Object.freeze(units);
}

const WHOLE = /^(?:\d*|[1-9]\d{0,2}([.,'’ ])\d{3}(?:\1\d{3})*)$/; // digits, or groups of three with one kind of mark between

/**
 * The number that a person typed or pasted. Point and comma both mark the decimals; a mark that
 * stands more than once, or before the other, or a space, can only group digits in threes.
 *
 * @param {string} text
 * @returns {number} NaN where it is no number
 */
export function readNumber(text) {
  const plain = text.replace(/[\u200e\u200f\u061c]/g, "").trim().replace(/\s/g, " ").replace("−", "-");
  const [, sign, digits] = plain.match(/^([+-]?)(.*)$/);
  const mark = Math.max(digits.lastIndexOf("."), digits.lastIndexOf(","));
  const single = mark >= 0 && digits.split(digits[mark]).length === 2;
  const [whole, part] = single ? [digits.slice(0, mark), digits.slice(mark + 1)] : [digits, ""];
  if (!WHOLE.test(whole) || !/^\d*$/.test(part) || whole + part === "") return NaN;
  return Number(`${sign}${whole.replace(/\D/g, "")}.${part}0`);
}

function knownLocale(locale) {
  try {
    return Intl.getCanonicalLocales(locale)[0];
  } catch {
    return "en"; // some systems tell the browser no language
  }
}
