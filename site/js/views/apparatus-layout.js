// Where every part of the apparatus stands on the sheet, for a plant and a
// width: two compositions, wide and narrow, with the same parts. No DOM.

import {clamp} from "../lib/scale.js";
import {heightMap} from "./apparatus-heights.js";

/** Measures of the two compositions. [px] */
const WIDE = {
  narrow: false, ruler: 34, supply: 82, delivery: 98, vessel: 92, pump: 27, dial: 54, stem: 50,
  top: 34, foot: 30, meters: {height: 126, wide: 172, slim: [118, 118]},
};
const NARROW = {
  narrow: true, ruler: 29, supply: 56, delivery: 62, vessel: 76, pump: 19, dial: 48, stem: 0,
  top: 30, foot: 0, meters: {height: 122, wide: 150, slim: [96, 82]},
};
const NARROW_BELOW = 640;
const LOW = 0.8; // of the width

/**
 * The sheet for a host of this size [px]. In the wide composition it is always about as wide, so that
 * everything grows with the host; its height follows the host's, where that has one of its own.
 * A low place, as on a phone on its side, gets the wide composition too, smaller: all of it is in sight.
 */
export function sheetSize(hostWidth, hostHeight = 0) {
  const room = hostWidth || 740;
  const low = hostHeight > 0 && hostHeight < LOW * room;
  if (room < NARROW_BELOW && !low) {
    const width = clamp(room, 320, 400);
    return {width, height: Math.round(276 + 0.75 * width), narrow: true};
  }
  const width = clamp(room, 700, 720);
  const height = hostHeight ? clamp((hostHeight * width) / room, 0.52 * width, 0.76 * width) : 0.57 * width;
  return {width, height: Math.round(height), narrow: false};
}

/** Everything the drawing needs to know about places. */
export function layout(plant, size) {
  const look = size.narrow ? NARROW : WIDE;
  const floorPlace = size.narrow ? size.height - 280 : size.height - look.foot;
  const heights = heightsOf(plant, look, floorPlace);
  const columns = columnsOf(plant, size, look);
  const line = lineOf(plant, columns, look, heights.y(plant.pump.centre_m));
  const sides = sidesOf(size, look, line, floorPlace);
  return {
    ...size, look, heights, columns, line, sides,
    floorY: heights.y(0),
    dials: dialsOf(size, look, line, sides, floorPlace, columns),
    meters: metersOf(plant, size, look, line, sides, floorPlace),
  };
}

/**
 * On which side of the line the dials and the meters find room, how long the dials' stems can be,
 * and how much room is missing for stems that keep clear of pumps and handwheel. [px]
 */
function sidesOf({height, narrow}, look, line, floorPlace) {
  if (narrow) return {dials: "below", meters: "below", stem: 0, missing: 0};
  const [panel, dial] = [look.meters.height + 24, 2 * look.dial + 22];
  const overPump = line.branch === null ? 0 : line.outY - line.branch + line.r + 10; // clear of the second pump
  const above = line.outY - (line.branch === null ? 62 : 108) > panel;
  const below = line.y + look.pump + 30 < floorPlace - panel;
  const need = {above: Math.max(14, overPump), below: look.pump + 14};
  const options = [
    ["above", "above", line.outY - panel - dial],
    ["below", "above", above ? height - 8 - line.y - dial : -Infinity],
    ["above", "below", below ? line.outY - 8 - dial : -Infinity],
    ["below", "below", floorPlace - panel - line.y - dial],
  ].map(([dials, meters, room]) => ({dials, meters, room, missing: need[dials] - room}));
  const best = options.find(({missing}) => missing <= 0) ?? options.reduce((most, one) => (one.missing < most.missing ? one : most));
  return {...best, stem: clamp(best.room, 8, Math.max(look.stem, overPump))};
}

const LARGER = [1, 1.08, 1.16, 1.25, 1.35, 1.5];

/** The sheet on which all of a plant finds room: where it does not at this size, everything is drawn smaller. */
export function fitted(plant, size) {
  const sheets = LARGER.map((by) => ({...size, width: Math.round(size.width * by), height: Math.round(size.height * by)}));
  return size.narrow ? size : sheets.find((sheet) => layout(plant, sheet).sides.missing <= 0) ?? sheets.at(-1);
}

/** What of a plant decides the layout: when this text changes, everything is placed anew. */
export function layoutKey(plant) {
  const {supply, delivery, pump, check, discharge, suction, drive} = plant;
  return JSON.stringify([supply.bottom_m, supply.top_m, supply.gas_bar !== 0, delivery.bottom_m, delivery.top_m,
    delivery.outlet_m, delivery.gas_bar !== 0, pump.centre_m, pump.arrangement, check.fitted, discharge.attached,
    discharge.bore_mm, suction.bore_mm, suction.strainer_k > 0, drive.poles]);
}

function heightsOf(plant, look, bottom) {
  const {supply, delivery, pump} = plant;
  const heights = [0, supply.bottom_m, supply.top_m, delivery.bottom_m, delivery.top_m, pump.centre_m];
  if (Number.isFinite(delivery.outlet_m)) heights.push(delivery.outlet_m);
  const under = [0, supply.bottom_m, delivery.bottom_m].filter((h) => h < pump.centre_m);
  const rooms = [
    {from: supply.bottom_m, to: supply.top_m, least: look.vessel},
    {from: delivery.bottom_m, to: delivery.top_m, least: look.vessel},
    ...(under.length ? [{from: Math.max(...under), to: pump.centre_m, least: look.pump + 16}] : []),
  ];
  const map = (top) => heightMap(heights, rooms, bottom - (under.length ? 0 : look.pump + 16), top);
  const over = Number.isFinite(delivery.outlet_m) ? 24 : 0; // for a pipe over the delivery's rim
  const first = map(look.top + over);
  const headroom = look.pump + 50 + (plant.pump.arrangement === "side-by-side" ? 2.4 * look.pump : 0);
  const missing = headroom - first.y(pump.centre_m);
  return missing > 0 ? map(look.top + over + missing) : first;
}

function columnsOf(plant, {width, narrow}, look) {
  const supply = {x: look.ruler + 8, width: look.supply};
  const delivery = {x: width - look.delivery - 12, width: look.delivery};
  return {ruler: look.ruler, supply, delivery, riser: delivery.x - (narrow ? 9 : 17)};
}

/** Room that each thing along the line takes, and the places that follow. */
function lineOf(plant, columns, look, y) {
  const pumps = plant.pump.arrangement === "single" ? 1 : 2;
  const inLine = plant.pump.arrangement === "in-line";
  const r = look.pump * (pumps > 1 ? (look.narrow ? 0.8 : 0.92) : 1);
  const check = look.narrow ? 18 : 30;
  const [tap, pump] = [look.narrow ? 9 : 30, 2 * r + 8];
  const flange = [["flow", look.narrow ? 0 : 26], ["discharge", tap]]; // the meter and the gauge at the station's outlet
  const station = pumps === 1 ? [["pump-1", pump], ...flange, ["check-1", check]]
    : [["pump-1", pump], ["check-1", check], ...(inLine ? [["pump-2", pump], ["check-2", check]] : []), ...flange];
  const parts = [["strainer", look.narrow ? 16 : 26], ["suction", tap], ...station];
  const start = columns.supply.x + columns.supply.width;
  const x = look.narrow ? inRow([...parts, ["valve", 30], ["after-valve", tap]], start, columns.riser)
    : inRow(parts, start, columns.riser - 2 * look.dial - 52); // from there on valve and last dial need the room
  if (!look.narrow) x.valve = columns.riser - 2 * look.dial - 32;
  const rise = 0.8 * r; // a pump's outlet lies above its shaft
  const branch = plant.pump.arrangement === "side-by-side" ? y - 2.4 * look.pump - 8 : null;
  if (branch !== null) [x["pump-2"], x["check-2"]] = [x["pump-1"], x["check-1"]];
  const pumpY = {"pump-1": y, "pump-2": branch ?? (inLine ? y - rise : y)};
  const outY = branch === null ? pumpY[inLine ? "pump-2" : "pump-1"] - rise : y - rise;
  return {x, r, pumps, inLine, rise, branch, pumpY, y, outY};
}

/** Middles of parts of given widths, spread evenly between two ends. */
function inRow(parts, from, to) {
  const gap = (to - from - parts.reduce((sum, [, room]) => sum + room, 0)) / (parts.length + 1);
  const x = {};
  let at = from + gap;
  for (const [name, room] of parts) {
    x[name] = at + room / 2;
    at += room + gap;
  }
  return x;
}

const DIALS = ["suction", "discharge", "after-valve"];

function dialsOf({width, narrow}, look, line, sides, floorPlace, columns) {
  const r = look.dial;
  const xs = narrow ? [r + 6, width / 2, width - r - 6] : dialColumns(line, r, columns);
  return DIALS.map((name, i) => {
    const from = name === "suction" ? line.y : line.outY;
    const below = sides.dials === "below";
    const y = narrow ? floorPlace + 24 + r : below ? line.y + sides.stem + r : line.outY - sides.stem - r;
    if (!narrow) line.x[name] = clamp(xs[i], ...freePipe(name, line, columns.riser));
    const end = !narrow && name === "after-valve"; // its words keep clear of the riser
    return {name, x: xs[i], y, r, tap: [line.x[name], from], label: {x: end ? columns.riser - 10 : xs[i], y: below ? y + r + 15 : y - r - 7, end}};
  });
}

/** Dials beside the line keep clear of the lift's dimension, the second pump, the handwheel and the riser. */
function dialColumns({x, r: pump, branch}, r, {supply, riser}) {
  const discharge = Math.min(x.discharge, x.valve - r - 22);
  const right = branch === null ? discharge - 2 * r - 10 : x["pump-1"] - pump - 24 - r;
  const suction = Math.max(supply.x + supply.width + 26 + r, Math.min(x.suction, right));
  return [suction, branch === null ? Math.max(discharge, suction + 2 * r + 8) : x.valve - r - 22, riser - 10 - r];
}

/** The stretch of pipe in which a gauge can sit straight on its tapping. */
function freePipe(name, {x, r, pumps}, riser) {
  if (name === "suction") return [x.strainer + 16, x["pump-1"] - r - (pumps > 1 ? 20 : 12)];
  if (name === "discharge") return [x.flow + 15, (pumps === 1 ? x["check-1"] : x.valve) - 26];
  return [x.valve + 24, riser - 12];
}

function metersOf(plant, {width, height, narrow}, look, line, sides, floorPlace) {
  const {wide, height: tall} = look.meters;
  const slots = line.pumps;
  const slim = look.meters.slim[slots - 1];
  const gap = narrow ? 6 : 10;
  const flow = narrow ? width - 12 - slots * (slim + gap) : wide;
  const total = flow + slots * (slim + gap);
  const y = narrow ? height - tall - 6 : sides.meters === "below" ? floorPlace - tall - 6 : 12;
  const middle = (line.x.suction + line.x["after-valve"]) / 2;
  const x = narrow ? 6 : clamp(middle - total / 2, 150, width - 142 - total);
  return {x, y, tall, flow, slim, gap, motors: Array.from({length: slots}, (_, i) => x + flow + gap + i * (slim + gap))};
}
