// Where the things stand that leave the line: lanes back to the supply, the line to a second user, the second line,
// and what sits on the line besides valve and gauges. No DOM.

import {fittedOf} from "./fitted.js";
import {pipeWidth} from "./pipe.js";
import {controlPlace} from "./apparatus-control.js";

const RELIEF_BORE = 25; // [mm] as it is drawn: a relief valve's size is its capacity

/**
 * Places of everything that is fitted besides the plain plant, by the name of the part. Runs are points along the flow.
 * @param {object} plan   without its `aside`
 * @param {object} plant
 */
export function asideOf(plan, plant) {
  const fitted = fittedOf(plant);
  const aside = {};
  if (fitted.relief) aside.relief = laneBack(plan, plant, "relief", 0, RELIEF_BORE);
  if (fitted.back) aside["return-line"] = laneBack(plan, plant, "back", Number(fitted.relief), plant.return_line.bore_mm);
  if (fitted.burst) aside.burst = {at: [plan.line.x.burst, plan.line.outY], down: Math.min(Math.max(plan.floorY - plan.line.outY, 30), plan.narrow ? 46 : 64), fan: plan.narrow ? 6 : 12};
  if (fitted.branch) aside.branch = plan.up ? branchUp(plan, plant) : branchAside(plan, plant);
  if (fitted.filter) aside.filter = {at: [plan.line.x.filter, plan.line.outY], size: plan.narrow ? 8 : 12};
  if (fitted.second) aside["second-line"] = secondLine(plan, plant);
  if (fitted.summit) aside.summit = summitCrest(plan, plant);
  if (fitted.control) aside.controller = controlPlace(plan, plant);
  return aside;
}

/** Height of a lane below the line on the sheet; the first is 0. */
const laneY = ({line, look, narrow}, lane) => line.y + line.r + (narrow ? 11 : 14) + look.lane * lane;

/** From its tee down to a lane, and along it into the supply: through the wall, up through the bottom, or in over the rim. */
function laneBack(plan, {supply}, name, lane, bore) {
  const {line, columns: {supply: vessel}, heights, narrow, letters} = plan;
  const x = line.x[name];
  const y = laneY(plan, lane);
  const [top, bottom] = [heights.y(supply.top_m), heights.y(supply.bottom_m)];
  const inside = vessel.x + (narrow ? 8 + 9 * lane : 12 + 12 * lane);
  const end = y > bottom - 3 ? [[inside, y], [inside, bottom - 8]]
    : y < top + 3 ? [[inside, y], [inside, top + 16]] : [[vessel.x + vessel.width - 10, y]];
  const width = pipeWidth(bore, narrow);
  return {
    run: [[x, line.outY], [x, y], ...end], width, bore,
    at: [x, (line.outY + y) / 2 + (lane ? -0.5 * plan.look.lane : 0)], size: narrow ? 7 : 9,
    label: {x: x - 5, y: y + width / 2 + 12 * letters, end: true, long: !narrow},
  };
}

const OPENING = 36; // [px] width of "100 %"
const GOOSE = 8; // [px] how far a spout's bend stands above its end

/** Straight up from the tee; the spout hangs to its left. */
function branchUp(plan, {branch}) {
  const {line, heights, narrow, letters} = plan;
  const [x, end] = [line.x.branch, heights.y(branch.end_m)];
  const width = pipeWidth(branch.bore_mm, narrow);
  const spout = x - 15;
  const top = end - GOOSE;
  const beside = x + 7 + OPENING * letters < line.x.valve - 14; // clear of the handwheel
  return {
    run: [[x, line.outY], [x, top], [spout, top], [spout, end]], width, bore: branch.bore_mm,
    at: [x, line.outY - 26], size: 7, upright: true, arrow: {x, y: (line.outY - 34 + top) / 2, turn: -90},
    basin: {x: spout - 8, y: end + (branch.pours ? 4 : -6), width: 16, height: 18, surface: branch.pours ? end + 14 : end},
    opening: {x: beside ? x + 7 : x - 9, y: line.outY - 22, end: !beside},
    label: {x: spout + 6, y: top - width / 2 - 5, lines: 2, step: 13 * letters},
  };
}

/** By a lane to a column at the sheet's edge: there no vessel, dial or meter stands in the way of its height. */
function branchAside(plan, {branch}) {
  const {line, heights, narrow, columns, look, letters} = plan;
  const [x, end, y] = [line.x.branch, heights.y(branch.end_m), laneY(plan, 0)];
  const width = pipeWidth(branch.bore_mm, narrow);
  const column = columns.user + (narrow ? 7 : 11);
  const spout = column + (narrow ? 15 : 20);
  const last = branch.pours ? [[column, end - GOOSE], [spout, end - GOOSE], [spout, end]] : [[column, end + 6], [spout, end + 6]];
  const size = narrow ? 7 : 9;
  const valve = narrow ? Math.max(x + 20, (x + columns.riser) / 2) : (line.x.valve + columns.free) / 2;
  const half = narrow ? 8 : 11;
  return {
    run: [[x, line.outY], [x, y], [column, y], ...last], width, bore: branch.bore_mm,
    at: [valve, y], size, upright: false, arrow: {x: column - (narrow ? 22 : 34), y, turn: 0},
    basin: {x: spout - half, y: end + (branch.pours ? 4 : -8), width: 2 * half, height: narrow ? 18 : 24, surface: branch.pours ? end + 15 : end},
    opening: {x: valve, y: y + size + 13 * letters, middle: true},
    label: {x: plan.width - 4, end: true, y: (branch.pours ? end - GOOSE - width / 2 : end - 10) - 6, lines: 2, step: 13 * letters},
  };
}

/** Beside the riser, and into the line again near its end; by a way of its own where the riser is short. */
function secondLine(plan, {delivery, second_line: {bore_mm: bore}}) {
  const {columns: {riser, down, free}, line, heights, narrow} = plan;
  const width = pipeWidth(bore, narrow);
  const inlet = heights.y(delivery.bottom_m) - 13;
  const top = Number.isFinite(delivery.outlet_m) ? Math.min(inlet, heights.y(delivery.top_m)) : inlet;
  const from = [free, line.outY];
  const rise = line.outY - top;
  if (down !== riser) return {run: [from, [free, top - 16], [down, top - 16]], width, bore};
  if (Math.abs(rise) >= 56) return {run: [from, [free, line.outY - 0.8 * rise], [riser, line.outY - 0.8 * rise]], width, bore};
  const around = line.outY + (rise >= 0 ? 20 : -20);
  return {run: [from, [free, around], [riser + (narrow ? 5 : 8), around], [riser + (narrow ? 5 : 8), top]], width, bore};
}

/** The top run of the line over its summit, and the leg that falls from it. */
function summitCrest({columns, heights, narrow}, {delivery, summit, discharge}) {
  const free = Number.isFinite(delivery.outlet_m);
  const far = free ? columns.delivery.x + 16 : columns.down;
  const rim = free ? Math.min(heights.y(delivery.top_m), heights.y(delivery.outlet_m)) - 12 : Infinity;
  const y = Math.min(heights.y(summit.height_m), rim);
  return {crest: [[columns.riser, y], [far, y]], foot: free ? heights.y(delivery.outlet_m) : heights.y(delivery.bottom_m) - 13, width: pipeWidth(discharge.bore_mm, narrow)};
}
