// Makes the parts of the apparatus in their places. What they show comes later.

import {clamp} from "../lib/scale.js";
import {el, px} from "../lib/svg.js";
import {buildAside, partGroup} from "./aside-build.js";
import {createDrive} from "./drive.js";
import {createLift, createRuler} from "./elevation.js";
import {createDial} from "./gauge.js";
import {createAmmeter, createFlowMeter, createTachometer} from "./meter.js";
import {createPipe, pipeWidth, rimRun, routes} from "./pipe.js";
import {createPump} from "./pump.js";
import {createStrainer} from "./strainer.js";
import {createCheck, createValve} from "./valve.js";
import {createVessel} from "./vessel.js";

/**
 * Draw every part into `svg` and return them by name.
 * @param {SVGSVGElement} svg
 * @param {object} plan   from `layout`
 * @param {object} plant
 * @param {{document: Document, words: function, send: function}} deps
 * @param {(key: string) => object} read  what a control stands at (see lib/drag.js)
 */
export function buildParts(svg, plan, plant, deps, read) {
  const {document} = deps;
  const parts = {
    ruler: createRuler(document, plan), lift: createLift(document, plan),
    pipes: buildPipes(document, plan, plant), open: buildOpenEnd(document, plan, plant),
    supply: buildVessel(plan, plant, deps, read, "supply"), delivery: buildVessel(plan, plant, deps, read, "delivery"),
    pumps: buildPumps(plan, deps), checks: plant.check.fitted ? buildChecks(plan, deps) : {},
    strainer: plant.suction.strainer_k > 0 ? createStrainer(document, [plan.line.x.strainer, plan.line.y], plan.narrow) : null,
    meterTap: buildFlowTap(document, plan), aside: buildAside(deps, plan), air: buildAir(document, plan),
    valve: createValve(document, {x: plan.line.x.valve, y: plan.line.outY, size: plan.narrow ? 13 : 18, letters: plan.letters},
      {label: deps.words("draw-valve"), send: deps.send, read: () => read("valve.opening")}),
    ...buildInstruments(plan, deps, read),
  };
  parts.lines = buildLines(document, parts);
  svg.append(...layersOf(parts).filter(Boolean));
  return parts;
}

/** Everything drawn, from the ground up. */
function layersOf({ruler, wires, lift, lines, aside, open, supply, delivery, strainer, meterTap, air, checks, pumps, valve, dials, flow, drive, motors}) {
  const fitted = Object.values(aside);
  const nodes = (things) => things.map(({node}) => node);
  return [ruler.node, ...wires, lift.node, ...nodes(fitted.filter(({over}) => !over)), lines.suction, lines.discharge,
    open.node, supply.node, delivery.node, strainer?.node, meterTap?.node, air, ...nodes(fitted.filter(({over}) => over)),
    ...nodes(Object.values(checks)), ...nodes(pumps), valve.node,
    ...dials.flatMap(({stem, dial, label}) => [stem, dial.node, label]),
    flow.node, drive.node, ...motors.flatMap(({amps, speed}) => [amps.node, speed.node]), lift.text];
}

/** The pipes as two things: the line to the pumps and the line from them. */
function buildLines(document, {pipes}) {
  const of = (...names) => names.map((name) => pipes[name]?.node);
  return {
    suction: partGroup(document, "suction-line", ...of("suction", "fork")),
    discharge: partGroup(document, "discharge-line", ...of("between", "join", "stub", "header", "discharge")),
  };
}

/** Bubbles of air in the suction line. */
function buildAir(document, {line: {x, y, r}, narrow}) {
  const [from, to] = [x.strainer + (narrow ? 9 : 16), x["pump-1"] - r - 2];
  const places = [0.1, 0.34, 0.55, 0.8, 0.95].map((share, i) => ({cx: px(from + share * (to - from)), cy: px(y + [-2, 1.5, -1, 2, -2.5][i]), r: narrow ? 1.4 : [2.2, 1.5, 1.8, 2.4, 1.6][i]}));
  return el(document, "g", {class: "bubbles"}, ...places.map((place) => el(document, "circle", place)));
}

function buildPipes(document, plan, plant) {
  const runs = routes(plan, plant);
  const bores = {suction: plant.suction.bore_mm, fork: plant.suction.bore_mm};
  const pipes = {};
  for (const name of ["suction", "fork", "between", "join", "stub", "header", "discharge"]) {
    if (!runs[name]) continue;
    const bore = bores[name] ?? plant.discharge.bore_mm;
    pipes[name] = createPipe(document, runs[name], {width: pipeWidth(bore, plan.narrow), bore, fills: name === "discharge"});
  }
  return pipes;
}

/** The bare flange and its jet, shown when the discharge line is off. */
function buildOpenEnd(document, plan, plant) {
  const {flange} = routes(plan, plant);
  const half = pipeWidth(plant.discharge.bore_mm, plan.narrow) / 2 + 4;
  const face = el(document, "path", {class: "flange", d: `M${px(flange[0] + 1.5)},${px(flange[1] - half)}v${px(2 * half)}`});
  const jet = el(document, "path", {class: "jet"});
  const splash = el(document, "path", {class: "jet-splash"});
  return {node: el(document, "g", {class: "open-end"}, jet, splash, face), jet, splash, from: flange};
}

function buildVessel(plan, plant, {document, words, send}, read, name) {
  const {heights, columns} = plan;
  const data = plant[name];
  const key = `${name}.surface_m`;
  const runs = routes(plan, plant);
  const place = {...columns[name], top: heights.y(data.top_m), bottom: heights.y(data.bottom_m), y: heights.y, height: heights.height,
    grounded: data.bottom_m === 0, intake: name === "supply" ? runs.suction[0] : null, labelY: vesselLabel(plan, plant, name), narrow: plan.narrow, letters: plan.letters};
  const names = {label: words(`draw-${name}`), surface: words(`draw-level-${name}`), key, closed: data.gas_bar !== 0, part: name};
  return createVessel(document, place, names, {send, read: () => read(key)});
}

/** A vessel's name stands above its rim, and above a pipe that goes over the rim. */
function vesselLabel({heights, line, fitted, aside}, plant, name) {
  const rim = heights.y(plant[name].top_m) - (plant[name].gas_bar !== 0 ? 10 : 0);
  const pipe = name === "supply" ? line.y : Number.isFinite(plant.delivery.outlet_m) ? Math.min(rimRun(heights, plant.delivery), fitted.summit ? aside.summit.crest[0][1] : Infinity) : Infinity;
  return Math.min(rim, pipe - 8) - 8;
}

function buildPumps({line, floorY, narrow, lanes, look, kinds}, {document, words, send}) {
  return Array.from({length: line.pumps}, (_, i) => {
    const name = `pump-${i + 1}`;
    const r = line.rs[name];
    const hangs = line.branch !== null && i === 1; // over the first: it stands on a bracket
    const place = {x: line.x[name], y: line.pumpY[name], r, floor: hangs ? line.pumpY[name] + r + 5 : floorY, below: r + 48 + look.lane * lanes};
    return createPump(document, place, {label: words(line.pumps > 1 ? `draw-${name}` : "draw-pump"), tag: name, narrow, kind: kinds[i],
      pick: () => send({type: "pick", control: "pump.model"})});
  });
}

function buildChecks({line, narrow}, {document, words}) {
  const checks = {};
  for (let i = 1; i <= line.pumps; i++) {
    const y = line.pumpY[`pump-${i}`] - line.rises[`pump-${i}`];
    const part = `check-${i}`;
    checks[part] = createCheck(document, {x: line.x[part], y, size: narrow ? 9 : 12, part}, words(line.pumps > 1 ? `draw-${part}` : "draw-check"));
  }
  return checks;
}

/** Where the flow meter sits in the line: a lens, as in a drawing of an orifice run, which points where the liquid goes. */
function buildFlowTap(document, {line, narrow}) {
  if (narrow) return null;
  const mark = el(document, "path", {class: "flow-tap-mark", d: "M-5,-5L6,0L-5,5Z"});
  const node = el(document, "g", {class: "flow-tap", "data-part": "flow-meter", transform: `translate(${px(line.x.flow)},${px(line.outY)})`},
    el(document, "circle", {class: "flow-tap-body", r: 11}), mark);
  return {node, mark};
}

const LARGEST = 1.2; // larger numerals would run into the reading

/** On a sheet that is drawn smaller to hold more, numerals stay legible as the other letters do. */
function buildInstruments(plan, {document, words, send}, read) {
  const {meters, narrow, by: scale} = plan;
  const letters = clamp(plan.letters / scale, 1, LARGEST);
  const place = (x, down, width) => ({x, y: meters.y + scale * down, width: width / scale, scale, letters});
  const flow = createFlowMeter(document, {...place(meters.x, 0, meters.flow), key: "flow-meter"});
  const drive = createDrive(document, place(meters.x, 76, meters.flow),
    {label: words("draw-drive"), send, read: () => read("drive.frequency_hz")});
  const motors = meters.motors.map((x, i) => ({
    amps: createAmmeter(document, {...place(x, 0, meters.slim), key: `ammeter-${i + 1}`}),
    speed: createTachometer(document, {...place(x, 94, meters.slim), key: `tachometer-${i + 1}`}),
  }));
  const wires = narrow ? [] : meters.motors.map((x, i) => wire(document, plan, x + meters.slim / 2, i));
  return {flow, drive, motors, wires, dials: plan.dials.map((each) => buildDial(document, each, {narrow, scale, letters: plan.letters, numerals: letters, tight: narrow || plan.tight, words, below: plan.sides.dials === "below"}))};
}

/** The motor's cable, from its ammeter to the pump. */
function wire(document, {meters, line, sides}, from, index) {
  const flip = sides.meters === "below";
  const name = `pump-${index + 1}`;
  const [start, turn] = flip ? [meters.y, meters.y - 12 - 5 * index] : [meters.y + meters.tall, meters.y + meters.tall + 12 + 5 * index];
  const behind = line.branch !== null && index === 0;
  const x = line.x[name] + (behind ? -line.r - 7 : 0);
  const end = behind ? `V${px(line.pumpY[name])}H${px(line.x[name])}` : `V${px(line.pumpY[name])}`;
  return el(document, "path", {class: "wire", d: `M${px(from)},${px(start)}V${px(turn)}H${px(x)}${end}`});
}

function buildDial(document, place, {narrow, scale, letters, numerals, tight, words, below}) {
  const {name, x, y, r, tap, label, strays} = place;
  const dial = createDial(document, {x, y, r: r / scale, scale, letters: numerals, key: `gauge-${name}`});
  const edge = below ? y - r : y + r;
  const turn = narrow ? edge - (strays ? 6 : 12) * scale : edge + (tap[1] - edge) * (strays ? 0.2 : 0.5); // one that strays keeps clear of the others' bends
  const bend = !narrow && x === tap[0] ? `V${px(edge)}` : `V${px(turn)}H${px(x)}V${px(edge)}`;
  const stem = el(document, "path", {class: narrow ? "stem-line leader" : "stem-line", d: `M${px(tap[0])},${px(tap[1])}${bend}`});
  const height = el(document, "tspan", {class: "gauge-height", ...(tight ? {x: px(label.x), dy: px((narrow ? 13 : 14) * letters)} : {dx: 4})}); // beside its name, or below
  const text = el(document, "text", {class: `part-label ${label.end ? "end" : "middle"}`, x: px(label.x), y: px(label.y)}, words(`draw-gauge-${name}-short`), height);
  return {stem, dial, label: text, height, id: `gauge-${name}`, key: name.replace("-", "_")};
}
