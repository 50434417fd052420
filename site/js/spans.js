// How large the quantities of a plant become: a small plant's numbers need more decimals than usual. No DOM.
import {fromFile} from "./units.js";

const ROUND = [1, 2, 5, 10];

/** The next 1, 2 or 5 times a power of ten, so that digits seldom change while something is dragged. */
function roundUp(size) {
  if (!(size > 0) || !Number.isFinite(size)) return undefined;
  const power = 10 ** Math.floor(Math.log10(size));
  return power * ROUND.find((step) => step * power >= size * (1 - 1e-9));
}

/**
 * @param {object|null} plant effective
 * @param {object|null} answer
 * @returns {{[quantity: string]: number|undefined}} the largest that is usual there, SI; what is not known is left undefined
 */
export function spansOf(plant, answer) {
  const power = fromFile("motor_kw", plant?.drive?.motor_kw);
  const speed = answer?.state?.synchronous_speed;
  const heads = answer?.curves?.station?.filter(Number.isFinite) ?? [];
  const current = answer?.shown?.find(({id}) => id === "ammeter-1")?.high;
  return {
    flow: fromFile("flow_range_m3h", plant?.meters?.flow_range_m3h) || undefined,
    head: roundUp(Math.max(0, ...heads)),
    power: roundUp(power),
    current: roundUp(current),
    torque: roundUp(power / speed),
  };
}
