// Pipes of the apparatus: where they run (no DOM), and how they are drawn.

import {clamp} from "../lib/scale.js";
import {bentPath, firstShare} from "../lib/shape.js";
import {el, px, set, show} from "../lib/svg.js";
import {G} from "../units.js";

const MARK = [4, 14]; // [px] a moving mark and the space to the next
const PACE = 14; // [px/s] of a mark for each m/s of liquid
const FASTEST = 130; // [px/s]
const OVERLAP = 1.5; // [px]

/** Drawn width of a pipe. [px] for a bore [mm] */
export const pipeWidth = (bore, narrow) => clamp(4 + 2.2 * Math.log2(Math.max(bore, 10) / 10), 5, narrow ? 9 : 14);

/** How fast marks move in a pipe. [px/s] for a flow [m³/s] in a bore [mm] */
export function markPace(flow, bore) {
  const velocity = flow / ((Math.PI / 4) * (bore / 1000) ** 2);
  return clamp(PACE * velocity, -FASTEST, FASTEST);
}

/** Runs of pipe as points, for a layout and a plant. */
export function routes(plan, plant) {
  const {line} = plan;
  const {x, rs, rises, y, flange} = line;
  const last = line.inLine ? "pump-2" : "pump-1";
  const runs = {
    suction: suctionRun(plan, plant), stub: [[x[last] + rs[last], line.outY], flange],
    discharge: dischargeRun(plan, plant, flange),
  };
  const tee = plan.fitted.branch ? x.branch : plan.fitted.burst ? x.burst : null; // from here on less goes on
  if (tee !== null) {
    runs.header = [flange, [tee, line.outY]];
    runs.discharge[0] = [tee, line.outY];
  }
  if (line.inLine) runs.between = [[x["pump-1"] + rs["pump-1"], y - rises["pump-1"]], [x["pump-2"], y - rises["pump-1"]]];
  if (line.branch !== null) {
    const fork = plan.narrow ? (x.suction + x["pump-1"] - line.r) / 2 + 2 : x["pump-1"] - line.r - 14;
    const join = plan.narrow ? (x["check-1"] + x.discharge) / 2 + 3 : x["check-1"] + 25;
    const over = line.branch - rises["pump-2"];
    runs.fork = [[fork, y], [fork, line.branch], [x["pump-2"], line.branch]];
    runs.join = [[x["pump-2"] + rs["pump-2"], over], [join, over], [join, line.outY]];
  }
  return {...runs, flange};
}

/** It begins at its mouth: at the vessel's bottom where nothing else is said. */
function suctionRun({line, columns, heights}, {supply, pump, suction}) {
  const {x, width} = columns.supply;
  const mouth = Number.isFinite(suction.mouth_m) ? heights.y(suction.mouth_m) : Infinity;
  const bottom = heights.y(supply.bottom_m);
  const end = [line.x["pump-1"], line.y];
  if (pump.centre_m < supply.bottom_m) return [[x + width / 2, Math.min(bottom, mouth)], [x + width / 2, line.y], end];
  return [[x + width - 18, Math.min(bottom - 9, mouth)], [x + width - 18, line.y], end];
}

function dischargeRun(plan, {delivery, summit}, start) {
  const {line, columns, heights} = plan;
  const up = [columns.riser, line.outY];
  const {x} = columns.delivery;
  const crest = plan.fitted.summit ? heights.y(summit.height_m) : Infinity;
  if (!Number.isFinite(delivery.outlet_m)) {
    const inlet = heights.y(delivery.bottom_m) - 13;
    const legs = crest < Infinity ? [[columns.riser, crest], [columns.down, crest], [columns.down, inlet]] : [[columns.riser, inlet]];
    return [start, up, ...legs, [x + 10, inlet]];
  }
  const over = Math.min(crest, rimRun(heights, delivery));
  return [start, up, [columns.riser, over], [x + 16, over], [x + 16, heights.y(delivery.outlet_m)]];
}

/** Where a pipe that ends at a height of its own passes over the vessel's rim. */
export const rimRun = (heights, {top_m, outlet_m}) => Math.min(heights.y(top_m), heights.y(outlet_m)) - 12;

/** Liquid begins a little before its wall, so that no seam shows where one run goes on from another. */
function lead([[x, y], next, ...rest]) {
  const back = OVERLAP / (Math.hypot(next[0] - x, next[1] - y) || 1); // on a phone a bend may lie where its pipe begins
  return [[x - back * (next[0] - x), y - back * (next[1] - y)], next, ...rest];
}

/** One run of pipe, with marks that move with the liquid; where it is still filling, up to the front. */
export function createPipe(document, points, {width, bore, fills = false}) {
  const d = bentPath(points, 1.4 * width);
  const marks = el(document, "path", {class: "flow-marks", d, "stroke-width": px(0.34 * width), "stroke-dasharray": MARK.join(" ")});
  const liquid = el(document, "path", {class: "pipe-bore", d: bentPath(lead(points), 1.4 * width), "stroke-width": px(width)});
  const node = el(document, "g", {class: "pipe"},
    el(document, "path", {class: "pipe-wall", d, "stroke-width": px(width + 2.6)}),
    ...(fills ? [el(document, "path", {class: "pipe-air", d, "stroke-width": px(width)})] : []), liquid, marks);
  const whole = MARK[0] + MARK[1];
  let pace = 0, at = 0, full = 1;
  return {
    node,
    update({flow, moves, removed = false, filled = 1}) {
      pace = moves && !removed ? markPace(flow, bore) : 0;
      show(marks, Boolean(pace));
      set(node, "class", removed ? "pipe removed" : "pipe");
      if (filled === full) return;
      full = filled;
      const wet = firstShare(points, filled);
      set(liquid, "d", bentPath(lead(wet), 1.4 * width));
      set(marks, "d", bentPath(wet, 1.4 * width));
    },
    /** Move the marks on by a time; false when they stand. */
    advance(seconds) {
      if (!pace) return false;
      at = (at - pace * seconds) % whole;
      set(marks, "stroke-dashoffset", px(at));
      return true;
    },
  };
}

/** Path of a free jet that leaves level to the right and falls to the floor. No DOM. */
export function jetPath([x, y], velocity, drop, pixelsPerMetre) {
  const fall = Math.max(drop, 0) / pixelsPerMetre; // [m]
  const time = Math.sqrt((2 * fall) / G);
  const points = Array.from({length: 13}, (_, i) => {
    const t = (time * i) / 12;
    return `${px(x + velocity * t * pixelsPerMetre)},${px(y + 0.5 * G * t * t * pixelsPerMetre)}`;
  });
  return `M${points.join("L")}`;
}
