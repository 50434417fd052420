// Where the controller hangs, what it reads and what it moves: lines of a drawing's instruments. No DOM.

import {clamp} from "../lib/scale.js";

const IN = 5; // [px] from a vessel's rim or bottom to where its level is tapped
const OFF = 6; // [px] from its wall to a signal that runs along it
const RISE = 22; // [px] how far the signal runs above the line

/** Height of the signal, clear of the line and below the dials. */
const signalY = ({line}) => line.outY - RISE;

/**
 * @param {object} plan
 * @param {{control: {of: string, on: string}}} plant
 * @returns {{box: object, sensor: number[][], output: number[][]}} runs of points, from what is read and to what is moved
 */
export function controlPlace(plan, plant) {
  const {control} = plant;
  const {line, narrow, letters} = plan;
  const [width, height] = (narrow ? [38, 28] : [42, 30]).map((side) => side * letters);
  const x = line.x.valve;
  const top = line.outY - (narrow ? 60 : 66) - height; // above the handwheel of an open valve
  const box = {x: x - width / 2, y: top, width, height};
  return {box, sensor: sensorRun(plan, plant, box), output: outputRun(plan, control.on, box)};
}

/** A height of the drawing [px] that lies within a vessel's walls. */
const inside = ({heights}, {bottom_m: bottom, top_m: top}, y) => clamp(y, heights.y(top) + IN, heights.y(bottom) - IN);

function sensorRun(plan, plant, box) {
  const of = plant.control.of ?? "";
  const {line, columns, narrow} = plan;
  const y = signalY(plan);
  const side = box.x - (narrow ? 4 : 3);
  const into = [[side, y], [side, box.y + box.height / 2], [box.x, box.y + box.height / 2]];
  if (of.includes("delivery") || of === "level") {
    const {delivery, free} = {delivery: columns.delivery, free: columns.free};
    const middle = box.y - 8;
    const tap = inside(plan, plant.delivery, middle);
    return [[delivery.x, tap], [free, tap], [free, middle], [box.x + box.width / 2, middle], [box.x + box.width / 2, box.y]];
  }
  if (of.includes("supply")) {
    const [wall, tap] = [columns.supply.x + columns.supply.width, inside(plan, plant.supply, y)];
    return [[wall, tap], [wall + OFF, tap], [wall + OFF, y], ...into];
  }
  if (of.includes("after")) return [[line.x["after-valve"], line.outY], [line.x["after-valve"], y], [box.x + box.width + 3, y], [box.x + box.width + 3, box.y + box.height / 2], [box.x + box.width, box.y + box.height / 2]];
  if (of.includes("suction")) return [[line.x.suction, line.y], [line.x.suction, y], ...into];
  const tap = of.includes("flow") && !narrow ? line.x.flow : line.x.discharge;
  return [[tap, line.outY], [tap, y], ...into];
}

/** To the handwheel below it, or to the drive that feeds the motors. */
function outputRun(plan, on, box) {
  const x = box.x + box.width / 2;
  if (on !== "drive") return [[x, box.y + box.height], [x, plan.line.outY - 34]];
  const {meters, line, narrow} = plan;
  if (narrow || meters.y > line.outY) return [[box.x, box.y + 5], [line.x["pump-1"], box.y + 5], [line.x["pump-1"], line.y]];
  const under = meters.y + meters.tall + 6;
  return [[x, box.y], [x, under], [meters.x + meters.flow / 2, under], [meters.x + meters.flow / 2, meters.y + meters.tall - 4]];
}
