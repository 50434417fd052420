// Where every part of the apparatus stands on the sheet, for a plant and a
// width: two compositions, wide and narrow, with the same parts. No DOM.

import {clamp} from "../lib/scale.js";
import {asideOf} from "./apparatus-aside.js";
import {heightMap} from "./apparatus-heights.js";
import {lineOf} from "./apparatus-line.js";
import {anyFitted, fittedOf, lanesOf} from "./fitted.js";

/** Measures of the two compositions. [px] */
const WIDE = {
  narrow: false, ruler: 34, supply: 82, delivery: 98, vessel: 92, pump: 27, dial: 54, stem: 50, lane: 26, leg: 27, user: 46,
  top: 34, foot: 30, meters: {height: 126, wide: 172, slim: [118, 118]},
};
const NARROW = {
  narrow: true, ruler: 29, supply: 56, delivery: 62, vessel: 76, pump: 19, dial: 48, stem: 0, lane: 22, leg: 15, user: 45,
  top: 30, foot: 0, meters: {height: 122, wide: 150, slim: [96, 82]},
};
const NARROW_BELOW = 640;
const UNDER = 280; // [px] room for dials and meters below the plant on a narrow sheet

/**
 * Measures on one sheet. On a narrow one that is larger than its place only pipes and what sits on them are drawn
 * smaller: dials and meters keep their size (`by`), letters theirs as far as it is needed to read them (`letters`).
 */
function lookOf({narrow, by = 1, letters: e = 1, ruled = true}) {
  if (!narrow) return WIDE;
  const {dial, lane, ruler, user, vessel, top, meters} = NARROW;
  return {
    ...NARROW, dial: by * dial, lane: e * lane, ruler: ruled ? e * ruler : -2, user: e * user, vessel: e * vessel, top: e * top,
    meters: {height: by * meters.height, wide: by * meters.wide, slim: meters.slim.map((width) => by * width)},
  };
}
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
    return {width, height: Math.round(276 + 0.75 * width), narrow: true, host: room};
  }
  const width = clamp(room, 700, 720);
  const height = hostHeight ? clamp((hostHeight * width) / room, 0.52 * width, 0.76 * width) : 0.57 * width;
  return {width, height: Math.round(height), narrow: false, host: room};
}

/**
 * Everything the drawing needs to know about places.
 * @param {[number, number]} sizes  how large the pumps are drawn, the larger of them 1
 */
export function layout(plant, size, sizes = [1, 1]) {
  const look = lookOf(size);
  const {letters = 1} = size;
  const lanes = lanesOf(plant);
  const floorPlace = size.narrow ? size.height - UNDER * (size.by ?? 1) : size.height - look.foot;
  const heights = heightsOf(plant, look, floorPlace, lanes);
  const y = heights.y(plant.pump.centre_m);
  const up = goesUp(plant, look, heights, y);
  const columns = columnsOf(plant, size, look, up);
  const line = lineOf(plant, columns, look, y, {sizes, up, letters});
  const places = dialColumns(size, look, line, columns);
  const tight = !size.narrow && (places[1] - places[0] < TIGHT * letters || columns.free - places[1] < LAST * letters);
  const sides = sidesOf(size, look, line, floorPlace, {lanes, control: line.box, tight});
  const plan = {
    by: 1, letters: 1, ruled: true, ...size, look, fitted: fittedOf(plant), heights, columns, line, sides, lanes, up, tight, crowd: size.narrow ? 0 : places[1] - clearOfWheel(line, look.dial),
    floorY: heights.y(0),
    dials: tapped(dialsOf(size, look, line, sides, floorPlace, columns, {places, tight}), plant, size.narrow),
    meters: metersOf(size, look, line, sides, floorPlace, columns),
  };
  return {...plan, aside: asideOf(plan, plant)};
}

/** Whether the second user's line goes straight up from its tee: on a narrow sheet, where nothing hangs above the line. */
function goesUp(plant, look, heights, y) {
  return fittedOf(plant).branch && look.narrow && heights.y(plant.branch.end_m) < y - 2 * look.pump - 50;
}

/**
 * On which side of the line the dials and the meters find room, how long the dials' stems can be,
 * and how much room is missing for stems that keep clear of pumps and handwheel. [px]
 */
function sidesOf({height, narrow, letters = 1}, look, line, floorPlace, {lanes, control, tight}) {
  if (narrow) return {dials: "below", meters: "below", stem: 0, missing: 0};
  const [panel, dial] = [look.meters.height + 24, 2 * look.dial + 8 + (tight ? 28 : 14) * letters];
  const overPump = line.branch === null ? 0 : line.outY - line.branch + line.r + 10; // clear of the second pump
  const above = line.outY - (line.branch === null ? 62 : 108) > panel;
  const under = look.pump + (lanes ? 6 + look.lane * lanes : 0);
  const below = line.y + under + 30 < floorPlace - panel;
  const need = {above: Math.max(control ? 34 : 14, overPump), below: under + 14};
  const options = [
    ["above", "above", line.outY - panel - dial],
    ["below", "above", above ? height - 8 - line.y - dial : -Infinity],
    ["above", "below", below ? line.outY - 8 - dial : -Infinity],
    ["below", "below", floorPlace - panel - line.y - dial],
  ].map(([dials, meters, room]) => ({dials, meters, room, missing: need[dials] - room}));
  const best = options.find(({missing}) => missing <= 0) ?? options.reduce((most, one) => (one.missing < most.missing ? one : most));
  return {...best, stem: clamp(best.room, 8, Math.max(look.stem, overPump, need[best.dials]))};
}

const LARGER = [1, 1.08, 1.16, 1.25, 1.35, 1.5];
const LEGIBLE = 11 / 12; // the smallest letters are of 12 px, and must not come out below 11

/**
 * The sheet on which all of a plant finds room. Where it does not at this size, everything is drawn smaller; on a narrow
 * sheet the ruler goes first, whose heights stand at the levels too.
 */
export function fitted(plant, size, sizes) {
  const plain = !anyFitted(plant);
  if (size.narrow && plain) return size;
  const sheets = size.narrow ? [narrowSheet(plant, size, 1, true), ...LARGER.map((by) => narrowSheet(plant, size, by, false))]
    : LARGER.map((by) => wideSheet(size, by));
  const fits = ({sides, line, crowd}) => sides.missing <= 0 && line.missing <= 0 && (plain || crowd <= 0);
  return sheets.find((sheet) => fits(layout(plant, sheet, sizes))) ?? sheets.at(-1);
}

/** Names and numbers beside the parts stay legible; the large digits of the instruments are so anyway. */
function wideSheet(size, by) {
  const [width, height] = [Math.round(size.width * by), Math.round(size.height * by)];
  return {...size, width, height, letters: lettersOf(width, size)};
}

const lettersOf = (width, size) => Math.max(1, Math.round((100 * LEGIBLE * width) / (size.host ?? size.width)) / 100);

/** A phone's page scrolls: what comes on top of the plain plant gets height of its own. */
function narrowSheet(plant, size, by, ruled) {
  const {summit, branch} = fittedOf(plant);
  const width = Math.round(size.width * by);
  const letters = lettersOf(width, size);
  const more = NARROW.lane * lanesOf(plant) + (summit ? 24 : 0) + (branch ? 30 : 0);
  const height = Math.round(size.height + letters * more + (by - 1) * UNDER + (letters - 1) * 110);
  return {...size, width, height, by, letters, ruled};
}

/** What of a plant decides the layout: when this text changes, everything is placed anew. */
export function layoutKey(plant, sizes = [1, 1], kinds = []) {
  const {supply, delivery, pump, check, discharge, suction, drive, branch, summit, control, gauges, meters} = plant;
  return JSON.stringify([suction.mouth_m, supply.bottom_m, supply.top_m, supply.gas_bar !== 0, delivery.bottom_m, delivery.top_m,
    delivery.outlet_m, delivery.gas_bar !== 0, pump.centre_m, pump.arrangement, check.fitted, discharge.attached,
    discharge.bore_mm, suction.bore_mm, suction.strainer_k > 0, drive.poles, sizes, kinds,
    Object.values(fittedOf(plant)), branch?.end_m, branch?.pours, branch?.bore_mm, summit?.height_m, control?.of, control?.on,
    plant.return_line?.bore_mm, plant.second_line?.bore_mm, Object.values(gauges ?? {}).map(({fault}) => fault?.tapping), meters?.flow_place]);
}

function heightsOf(plant, look, bottom, lanes) {
  const {supply, delivery, pump, branch, summit} = plant;
  const fitted = fittedOf(plant);
  const heights = [0, supply.bottom_m, supply.top_m, delivery.bottom_m, delivery.top_m, pump.centre_m];
  if (Number.isFinite(delivery.outlet_m)) heights.push(delivery.outlet_m);
  if (fitted.branch) heights.push(branch.end_m);
  if (fitted.summit) heights.push(summit.height_m);
  const foot = look.pump + 16 + look.lane * lanes; // pump and lanes stand clear of the floor
  const under = [0, supply.bottom_m, delivery.bottom_m].filter((h) => h < pump.centre_m);
  const rooms = [
    {from: supply.bottom_m, to: supply.top_m, least: look.vessel},
    {from: delivery.bottom_m, to: delivery.top_m, least: look.vessel},
    ...(under.length ? [{from: Math.max(...under), to: pump.centre_m, least: foot}] : []),
  ];
  const map = (top) => heightMap(heights, rooms, bottom - (under.length ? 0 : foot), top);
  const over = fitted.branch ? 34 + (look.top - NARROW.top) * Number(look.narrow) : Number.isFinite(delivery.outlet_m) || fitted.summit ? 24 : 0; // for what goes over the highest
  const first = map(look.top + over);
  const headroom = look.pump + 50 + (plant.pump.arrangement === "side-by-side" ? 2.4 * look.pump : 0);
  const missing = headroom - first.y(pump.centre_m);
  return missing > 0 ? map(look.top + over + missing) : first;
}

/** Columns of the sheet: `free` is the leftmost pipe at the delivery's side, `down` the far leg of a summit. */
function columnsOf(plant, {width, narrow}, look, up) {
  const {branch, summit, second} = fittedOf(plant);
  const user = branch && !up ? look.user : 0;
  const supply = {x: look.ruler + 8, width: look.supply};
  const delivery = {x: width - look.delivery - 12 - user, width: look.delivery};
  const down = delivery.x - (narrow ? 9 : 17);
  const legs = summit && !Number.isFinite(plant.delivery.outlet_m);
  const riser = down - (legs ? look.leg : 0);
  const free = riser - (second ? look.leg : 0);
  return {ruler: look.ruler, supply, delivery, down, riser, free, user: user ? width - user : null};
}

const TIGHT = 132; // [px] two dials nearer than this have how high they hang below their names
const LAST = 215; // [px] likewise for the last two, whose names reach to the riser
const DIALS = ["suction", "discharge", "after-valve"];

function dialsOf({narrow, by = 1, letters = 1}, look, line, sides, floorPlace, columns, {places: xs, tight}) {
  const r = look.dial;
  return DIALS.map((name, i) => {
    const from = name === "suction" ? line.y : line.outY;
    const below = sides.dials === "below";
    const y = narrow ? floorPlace + 24 * by + r : below ? line.y + sides.stem + r : line.outY - sides.stem - r;
    if (!narrow) line.x[name] = clamp(xs[i], ...freePipe(name, line, columns.free));
    const end = !narrow && name === "after-valve"; // its words keep clear of the riser
    return {name, x: xs[i], y, r, tap: [line.x[name], from], label: {x: end ? columns.free - 10 : xs[i], y: below ? y + r + 15 * letters : y - r - 7 - (tight ? 14 * letters : 0), end}};
  });
}

const BESIDE = {wide: 9, narrow: 5}; // [px] from a tapping to another at the same place

/** The dials, those that are really tapped at another's place with their stems there. */
function tapped(dials, {gauges}, narrow) {
  const beside = BESIDE[narrow ? "narrow" : "wide"];
  return dials.map((dial, i) => {
    const at = dials.findIndex(({name}) => name === gauges?.[dial.name.replace("-", "_")]?.fault?.tapping);
    if (at < 0 || at === i) return dial;
    const [x, y] = dials[at].tap;
    return {...dial, tap: [x + (i < at ? -beside : beside), y], strays: true};
  });
}

/** How far right a dial may stand, clear of the handwheel and of a controller above it. */
const clearOfWheel = ({x, box}, r) => x.valve - r - 22 - (box ? 8 : 0);

/** Dials beside the line keep clear of the lift's dimension, the second pump, the handwheel and the riser. */
function dialColumns({width, narrow}, {dial: r}, {x, r: pump, branch, box}, {supply, free}) {
  if (narrow) return [r + 6, width / 2, width - r - 6];
  const clear = clearOfWheel({x, box}, r);
  const discharge = Math.min(x.discharge, clear);
  const right = branch === null ? discharge - 2 * r - 10 : x["pump-1"] - pump - 24 - r;
  const suction = Math.max(supply.x + supply.width + 26 + r, Math.min(x.suction, right));
  return [suction, branch === null ? Math.max(discharge, suction + 2 * r + 8) : clear, free - 10 - r];
}

/** The stretch of pipe in which a gauge can sit straight on its tapping. */
function freePipe(name, {x, r, pumps}, free) {
  if (name === "suction") return [x.strainer + 16, x["pump-1"] - r - (pumps > 1 ? 20 : 12)];
  const behind = [x.relief, x.back, x.burst, x.branch, pumps === 1 ? x["check-1"] : x.valve].find(Number.isFinite);
  if (name === "discharge") return [x.flow < x.discharge ? x.flow + 15 : x.discharge, Math.min(x.flow < x.discharge ? Infinity : x.flow, behind) - (behind === x.valve || behind === x["check-1"] ? 26 : 15)];
  return [x.valve + 24, x.filter === undefined ? free - 12 : x.filter - 22];
}

function metersOf({width, height, narrow, by = 1}, look, line, sides, floorPlace, columns) {
  const {wide, height: tall} = look.meters;
  const slots = line.pumps;
  const slim = look.meters.slim[slots - 1];
  const gap = narrow ? 6 * by : 10;
  const flow = narrow ? width - 12 - slots * (slim + gap) : wide;
  const total = flow + slots * (slim + gap);
  const y = narrow ? height - tall - 6 : sides.meters === "below" ? floorPlace - tall - 6 : 12;
  const middle = (line.x.suction + line.x["after-valve"]) / 2;
  const x = narrow ? 6 : clamp(middle - total / 2, 150, columns.delivery.x - 32 - total);
  return {x, y, tall, flow, slim, gap, motors: Array.from({length: slots}, (_, i) => x + flow + gap + i * (slim + gap))};
}
