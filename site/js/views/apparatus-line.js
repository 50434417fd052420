// Where the things stand that the liquid passes one after the other, from the supply to the riser. No DOM.

import {fittedOf} from "./fitted.js";

const CROWDED = -2; // [px] parts of a narrow sheet may come this much closer than their rooms say

/** Room along the line for each tee. [px] */
const TEES = {
  wide: {relief: 26, back: 26, burst: 26, branch: 26, filter: 34},
  narrow: {relief: 28, back: 17, burst: 18, branch: 15, filter: 20},
};

/** Room that each thing along the line takes, and the places that follow. */
export function lineOf(plant, columns, look, y, {sizes, up, letters = 1}) {
  const pumps = plant.pump.arrangement === "single" ? 1 : 2;
  const inLine = plant.pump.arrangement === "in-line";
  const beside = plant.pump.arrangement === "side-by-side";
  const r = look.pump * (pumps > 1 ? (look.narrow ? 0.8 : 0.92) : 1);
  const rs = {"pump-1": r * sizes[0], "pump-2": r * sizes[1]};
  const {x, missing} = along(plant, columns, look, r, {up, letters});
  const branch = beside ? y - 2.4 * look.pump - 8 : null;
  if (branch !== null) [x["pump-2"], x["check-2"]] = [x["pump-1"], x["check-1"]];
  const rises = {"pump-1": 0.8 * rs["pump-1"], "pump-2": 0.8 * rs["pump-2"]}; // a pump's outlet lies above its shaft
  const pumpY = {"pump-1": y, "pump-2": branch ?? (inLine ? y - rises["pump-1"] : y)};
  const outY = inLine ? pumpY["pump-2"] - rises["pump-2"] : y - rises["pump-1"];
  const tees = [x.discharge, x.relief, x.back].filter(Number.isFinite);
  const flange = [Math.max(...tees) + (look.narrow ? 5 : 12), outY]; // where the discharge line can be taken off
  return {x, r, rs, rises, pumps, inLine, rise: rises["pump-1"], branch, pumpY, y, outY, flange, missing, box: fittedOf(plant).control};
}

function along(plant, columns, look, r, {up, letters}) {
  const pumps = plant.pump.arrangement === "single" ? 1 : 2;
  const fitted = fittedOf(plant);
  const rooms = {...TEES[look.narrow ? "narrow" : "wide"], ...(up ? {branch: 34} : {})};
  const tee = (...names) => names.filter((name) => fitted[name]).map((name) => [name, rooms[name]]);
  const check = look.narrow ? 18 : 30;
  const [tap, pump] = [look.narrow ? 9 : 30, 2 * r + 8];
  const flange = withMeter([["discharge", tap], ...tee("relief", "back")], ["flow", look.narrow ? 0 : 26], plant); // at the station's outlet
  const second = plant.pump.arrangement === "in-line" ? [["pump-2", pump], ["check-2", check]] : [];
  const station = pumps === 1 ? [["pump-1", pump], ...flange, ["check-1", check]]
    : [["pump-1", pump], ["check-1", check], ...second, ...flange];
  const parts = [["strainer", look.narrow ? 16 : 26], ["suction", tap], ...station, ...tee("burst", "branch")];
  const start = columns.supply.x + columns.supply.width;
  const hang = tee("relief", "back", "burst", "branch");
  const room = (hang.length ? 37 : 30) * letters; // the valve's opening is written below it, beside what hangs from the line
  if (look.narrow) return narrowRow([...parts, ["valve", room], ["after-valve", tap], ...tee("filter")], start, columns.free, up);
  const valve = columns.free - 2 * look.dial - 32 - (fitted.control ? 8 : 0); // from there on valve and last dial need the room
  const clear = hang.length ? 38 : 20; // the valve's opening is written below it
  const {x, gap} = inRow(parts, start, valve - clear);
  x.valve = valve;
  if (fitted.filter) x.filter = columns.free - 34;
  return {x, missing: -gap};
}

/** The flow meter stands before all, or behind the tees that its place is said to be behind; without a line, at the flange. */
function withMeter(parts, meter, {meters, discharge}) {
  const behind = {"before-return": ["relief"], "after-return": ["relief", "back"]}[discharge.attached ? meters?.flow_place : "pump"] ?? [];
  const last = parts.findLastIndex(([name]) => behind.includes(name));
  return last < 0 ? [meter, ...parts] : parts.toSpliced(last + 1, 0, meter);
}

function narrowRow(parts, start, end, up) {
  const {x, gap} = inRow(parts, start, end);
  if (x.relief) x.relief += 6; // its spring lies to its left
  if (up) x.branch += 9; // the second user's basin hangs to its left
  return {x, missing: CROWDED - gap};
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
  return {x, gap};
}
