// The apparatus: supply vessel, pump station, valve, pipe and delivery vessel, with its instruments.

import {createFigure} from "../lib/figure.js";
import {createMotion} from "../lib/motion.js";
import {px, say, set, show} from "../lib/svg.js";
import {G} from "../units.js";
import {buildParts} from "./apparatus-build.js";
import {fitted, layout, layoutKey, sheetSize} from "./apparatus-layout.js";
import {markChosen} from "./apparatus-chosen.js";
import {updateMachines} from "./apparatus-machines.js";
import {flowBehind, flowOfLine, nameLines, noted, updateAside} from "./aside-update.js";
import {filledOf, pumpKinds, pumpSizes} from "./fitted.js";
import {held} from "./held.js";
import {instrument} from "./instruments.js";
import {jetPath} from "./pipe.js";
import {levelStep} from "./vessel.js";

/**
 * @param {HTMLElement} host
 * @param {{document: Document, words: (id: string, args?: object) => string, send: (action: object) => void}} deps
 * @returns {{update: (model: object) => void, remove: () => void}}
 */
export function create(host, deps) {
  return createFigure(host, deps.document, "apparatus", {
    size: () => sheetSize(host.clientWidth, host.clientHeight),
    plan: (model) => layoutKey(model.plant, pumpSizes(model.answer), pumpKinds(model)),
    fit: ({plant, answer}, size) => fitted(plant, size, pumpSizes(answer)),
    build: (svg, model, size) => build(svg, model, size, deps),
  });
}

function build(svg, model, size, deps) {
  set(svg, "role", "group");
  set(svg, "class", `drawing-svg apparatus${size.narrow ? " narrow" : ""}`);
  set(svg, "aria-label", deps.words("draw-apparatus"));
  const plan = {...layout(model.plant, size, pumpSizes(model.answer)), kinds: pumpKinds(model)};
  svg.style.setProperty("--letter", String(plan.letters));
  let now = model;
  const parts = buildParts(svg, plan, model.plant, deps, (key) => control(key, now, deps.words));
  const moving = [...Object.values(parts.pipes), ...Object.values(parts.aside).map(({pipe}) => pipe).filter(Boolean), ...parts.pumps, ...parts.dials.map(({dial}) => dial)];
  const chosen = markChosen(svg);
  const motion = createMotion(deps.document.defaultView, (seconds) => {
    if (svg.closest?.("[hidden]")) return false; // the rig is out of sight; the next update wakes it
    let any = false;
    for (const part of moving) any = part.advance(seconds) || any;
    return any;
  });
  return {
    update(next) {
      now = next;
      updateParts(parts, plan, next, deps.words);
      chosen(next.part);
      motion.wake();
    },
    remove: motion.stop,
  };
}

/** What a control stands at, as lib/drag.js asks for it; values in the units of the plant file. */
export function control(key, model, words) {
  const {plant, set: wanted = plant, range = {}, units} = model;
  const taken = held(key, model);
  const [table, name] = key.split(".");
  const of = (name === "surface_m" ? plant : wanted)[table]; // a stem on its way is taken where it was sent, a surface where it stands
  const value = of[name] ?? plant.drive.supply_hz;
  const attached = plant.discharge.attached;
  if (key === "valve.opening") {
    const text = value === 0 ? words("draw-shut") : words("draw-open", {opening: units.full("opening", value)});
    return {value, low: 0, high: 1, step: 0.01, text, off: !attached || taken};
  }
  if (key === "drive.frequency_hz") {
    const [low, high] = range[key] ?? [5, 75];
    return {value, low, high, step: 0.5, text: units.full("frequency", value), off: taken};
  }
  const [low, high] = range[key] ?? [of.bottom_m, of.top_m];
  const text = units.full("height", value, high - low);
  return {value, low, high, step: levelStep(low, high), text, off: taken || (table === "delivery" && !attached)};
}

function updateParts(parts, plan, model, words) {
  const {plant, previous, units} = model;
  const attached = plant.discharge.attached;
  const before = (table, name) => previous?.plant?.[table]?.[name] ?? null;
  parts.ruler.update(units);
  for (const name of ["supply", "delivery"]) {
    const {gas_bar: gas, surface_m: surface} = plant[name];
    const span = plant[name].top_m - plant[name].bottom_m;
    parts[name].update({surface, before: before(name, "surface_m"), off: name === "delivery" && !attached,
      text: units[plan.narrow ? "text" : "full"]("height", surface, span), bare: units.text("height", surface, span),
      gasText: gas ? units.full("pressure", gas * 1e5) : "", sucks: name === "supply" && noted(model.answer, "vortex")});
  }
  parts.lift.update(lift(plant, units, words));
  parts.valve.update({opening: plant.valve.opening, before: before("valve", "opening"), off: !attached, chokes: noted(model.answer, "choked", "valve"),
    shown: plant.valve.opening === 0 ? words("draw-shut") : units.full("opening", plant.valve.opening)});
  parts.drive.update({frequency: plant.drive.frequency_hz ?? plant.drive.supply_hz, supply: plant.drive.supply_hz,
    before: previous ? before("drive", "frequency_hz") ?? before("drive", "supply_hz") : null});
  updateMachines(parts, plan, model, words);
  updateFlows(parts, plan, model, attached);
  updateSuction(parts, model, words);
  updateAside(parts.aside, plan, model, words);
  nameLines(parts.lines, model, words);
  updateInstruments(parts, model, words, attached);
}

/** From which height to which the liquid is lifted; surface to surface, or to a free pipe end. */
export function lift({supply, delivery, discharge}, units, words) {
  const to = Number.isFinite(delivery.outlet_m) && delivery.outlet_m > delivery.surface_m ? delivery.outlet_m : delivery.surface_m;
  const size = to - supply.surface_m;
  return {from: supply.surface_m, to, rim: supply.top_m, visible: discharge.attached, shown: words("draw-lift", {head: units.full("height", size)})};
}

function updateFlows({pipes, open, meterTap}, plan, {answer, plant, turning}, attached) {
  const machines = answer?.state?.machines ?? [];
  const total = answer?.state?.station?.flow ?? answer?.state?.flow ?? 0;
  const behind = flowBehind(answer);
  const flows = {suction: total, stub: total, header: behind, discharge: attached ? flowOfLine(answer) : behind, between: total, fork: machines[1]?.flow ?? 0, join: machines[1]?.flow ?? 0};
  for (const name in pipes) {
    const filled = name === "discharge" ? filledOf(plant) : 1;
    pipes[name].update({flow: flows[name], moves: turning, removed: !attached && name === "discharge", filled});
  }
  if (meterTap) set(meterTap.mark, "transform", total < 0 ? "rotate(180)" : null);
  show(open.node, !attached);
  if (!attached) drawJet(open, plan, plant, behind);
}

/** The strainer as it is stopped up, and air that goes with the liquid. */
function updateSuction({strainer, air}, {answer, plant}, words) {
  const {strainer_k: k, air_percent: gas} = plant.suction;
  strainer?.update({k, says: words(k > STOPPED ? "draw-strainer-blocked" : "draw-strainer-clean")});
  show(air, gas > 0 || noted(answer, "vortex"));
}

const STOPPED = 10; // [-] loss coefficient of a strainer that is called stopped up

function drawJet({jet, splash, from: start}, {heights, floorY, width}, {discharge}, flow) {
  const scale = (heights.y(heights.low) - heights.y(heights.high)) / (heights.high - heights.low); // [px/m]
  const velocity = flow / ((Math.PI / 4) * (discharge.bore_mm / 1000) ** 2);
  const drop = Math.max(floorY, start[1] + 30) - start[1];
  const d = flow > 0 ? jetPath(start, velocity, drop, scale) : "";
  set(jet, "d", d);
  const end = Math.min(width, start[0] + velocity * Math.sqrt((2 * drop) / scale / G) * scale);
  set(splash, "d", flow > 0 ? `M${px(end - 12)},${px(start[1] + drop)}q3,-9 8,-3q3,-9 8,0q5,-7 8,3` : "");
}

function updateInstruments({dials, flow, motors}, model, words, attached) {
  for (const {dial, id, stem, height, key} of dials) {
    say(height, heightText(model.plant.gauges?.[key]?.height_m, model.units, words));
    const off = !attached && id === "gauge-after-valve";
    set(stem, "opacity", off ? 0.35 : null);
    dial.update({...instrument(id, model, words), removed: off});
  }
  flow.update(instrument("flow-meter", model, words));
  motors.forEach(({amps, speed}, i) => {
    amps.update(instrument(`ammeter-${i + 1}`, model, words));
    speed.update(instrument(`tachometer-${i + 1}`, model, words));
  });
}

/** How high a dial hangs; nothing where that is not known yet. [m] */
function heightText(height, units, words) {
  return Number.isFinite(height) ? words("draw-gauge-height", {height: units.full("height", height)}) : "";
}
