// Where the size of a cause stands on its slider, and what it is called. No DOM.

/** Parts of a slider's way. */
export const STEPS = 200;

const QUANTITIES = {m: ["height", 1], bar: ["pressure", 1e5], "m³/h": ["flow", 1 / 3600]};
const DIGITS = 3; // of a size that no unit is chosen for

const byFactors = ({scale, low}) => scale === "log" && low > 0;

/** The size at a step of the slider; its ends are exact. */
export function sizeAt(size, step) {
  const {low, high} = size;
  if (step <= 0) return low;
  if (step >= STEPS) return high;
  const part = step / STEPS;
  return Number((byFactors(size) ? low * (high / low) ** part : low + (high - low) * part).toPrecision(DIGITS));
}

/** The step of the slider that is nearest to a size. */
export function stepOf(size, value) {
  const {low, high} = size;
  const part = byFactors(size) ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
  return Math.round(STEPS * Math.min(1, Math.max(0, part || 0)));
}

/** A size in the reader's units where it is a length, a pressure or a flow. */
export function sizeText({unit}, value, units) {
  if (Object.hasOwn(QUANTITIES, unit)) {
    const [quantity, factor] = QUANTITIES[unit];
    return units.full(quantity, value * factor);
  }
  const number = String(Number(value.toPrecision(DIGITS))).replace("-", "−");
  return unit === "-" ? number : `${number}\u00a0${unit}`;
}
