// What a controller in automatic has in its hand: nobody else moves that, until it is set to manual. No DOM.
import {G, toFile} from "../units.js";

const DIGITS = 6; // more than any control shows
const ROUND = 3; // digits of a set point to begin with
const FREQUENCY = "drive.frequency_hz";

/** Whether a key is moved by the controller now; a drive that only keeps to its current limit may still be asked. */
export function held(key, {plant, answer}) {
  const {control} = answer?.state ?? {};
  if (!control?.automatic || !plant?.control?.fitted || plant.control.mode !== "automatic") return false;
  return key in (answer.state.moved ?? {}) && (key !== FREQUENCY || control.on === "drive");
}

/** Where everything that the controller moves stands at this moment, in file units. */
const standing = ({answer}) => Object.fromEntries(Object.entries(answer?.state?.moved ?? {})
  .filter(([key]) => key !== FREQUENCY || answer.state.control?.on === "drive").map(([key, value]) => [key, Number(value.toPrecision(DIGITS))]));

/** The edits that take it out of the controller's hand: everything stays where it stands. */
export const byHand = (model) => ({...standing(model), "control.mode": "manual"});

/** The edits that let it move something else; what it moved stays where it stands. */
export const onto = (on, model) => ({...standing(model), "control.on": on});

/** The edits that let it hold something else still, beginning with what that reads now. */
export const holding = (of, model) => ({...standing(model), "control.of": of, ...beginnings(of, model)});

/** The edits that fit one: it holds the flow as it is. */
export const fitting = (model) => ({"control.fitted": true, "control.of": "flow", ...beginnings("flow", model)});

const GAUGE = {"discharge-pressure": "discharge", "after-valve-pressure": "after-valve", "suction-pressure": "suction"};

/** Set point, and flow drawn, as readings are now; nothing where there is no reading. */
function beginnings(of, {plant, answer}) {
  const {state} = answer ?? {};
  if (of === "flow") return set("control.set_m3h", state && Math.max(state.station.flow, 0));
  if (of in GAUGE) return set("control.set_bar", dial(GAUGE[of], plant, state));
  const level = of === "supply-level" ? plant.supply.surface_m : plant.delivery.surface_m;
  const passing = of === "supply-level" ? set("supply.inflow_m3h", state && Math.max(drawn(state), 0)) : set("delivery.draw_m3h", state && Math.max(state.flow, 0));
  return {"control.set_m": level, ...passing};
}

/** What leaves the supply for good. */
const drawn = ({station, aside = {}}) => station.flow - (aside.relief ?? 0) - (aside["return-line"] ?? 0);

/** Pressure at a dial: the truth, also beyond the end of its scale. [Pa] */
function dial(name, {gauges}, state) {
  const node = state?.nodes[name];
  const height = gauges[name.replace("-", "_")].height_m;
  return Number.isFinite(node?.pressure) ? node.pressure - state.liquid.density * G * (height - node.height) : undefined;
}

const set = (key, si) => (Number.isFinite(si) ? {[key]: Number(toFile(key, si).toPrecision(ROUND))} : {});
