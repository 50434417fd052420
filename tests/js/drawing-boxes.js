// The room that each thing in the apparatus takes on its sheet, from a layout, for tests of what lies over what.
import {stemGeometry} from "../../site/js/views/valve.js";

const LETTER = 0.5; // of the size of type, as wide as a letter is on the average

const around = (name, x, y, left, top, right = left, bottom = top) => ({name, x0: x - left, y0: y - top, x1: x + right, y1: y + bottom});

/** Box of a text. `at` is its baseline: {x, y, end, middle}. */
export function textBox(name, text, {x, y, end, middle}, size = 13) {
  const width = LETTER * size * text.length;
  const from = end ? x - width : middle ? x - width / 2 : x;
  return {name, x0: from, x1: from + width, y0: y - 0.75 * size, y1: y + 0.2 * size};
}

/** Everything that stands on the line, with what is written at it. */
function onLine({line, narrow, letters}, plant) {
  const {x, y, outY, rs, pumpY, rises} = line;
  const [check, valve] = narrow ? [9, 13] : [12, 18];
  const boxes = [around("valve", x.valve, outY, valve, 0.62 * valve), around("handwheel", x.valve, outY + stemGeometry(1, valve).wheel, 0.95 * valve, 5)];
  const text = narrow ? 14 * letters : 22;
  boxes.push(textBox("opening", "100 %", {x: x.valve, y: outY + 0.62 * valve + (narrow ? 4 + 13 * letters : 21), middle: true}, 1.15 * text)); // bold
  if (plant.suction.strainer_k > 0) boxes.push(around("strainer", x.strainer, y, narrow ? 7 : 11, narrow ? 7 : 11));
  for (const pump of ["pump-1", "pump-2"].slice(0, line.pumps)) {
    boxes.push(around(pump, x[pump], pumpY[pump], rs[pump], rs[pump]));
    if (plant.check.fitted) boxes.push(around(pump.replace("pump", "check"), x[pump.replace("pump", "check")], pumpY[pump] - rises[pump], check, 0.78 * check));
  }
  if (!narrow) boxes.push(around("flow-tap", x.flow, outY, 11, 11));
  return boxes;
}

/** What is fitted besides. */
function besides({aside, narrow, letters}) {
  const boxes = [];
  const size = 13 * letters;
  const {relief, "return-line": back, branch, burst, filter, controller} = aside;
  if (relief) boxes.push(around("relief", ...relief.at, 2.7 * relief.size, relief.size, relief.size), textBox("relief-text", narrow ? "blocked" : "Relief: blocked", relief.label, size));
  if (back) boxes.push(around("return-valve", ...back.at, back.size, back.size, 1.2 * back.size), textBox("return-text", narrow ? "100 %" : "Return: 100 % open", back.label, size));
  if (branch) {
    const {at, size, basin, opening, label} = branch;
    boxes.push(around("branch-valve", ...at, size, size), textBox("branch-opening", "100 %", opening, size), textBox("branch-text", "Second", {middle: !label.end, ...label, y: label.y - label.step}, size),
      textBox("branch-text-2", "user", {middle: !label.end, ...label}, size), {name: "basin", x0: basin.x, x1: basin.x + basin.width, y0: basin.y, y1: basin.y + basin.height});
  }
  if (burst) boxes.push(around("burst", ...burst.at, burst.fan, 8, burst.fan, burst.down));
  if (filter) boxes.push(around("filter", ...filter.at, filter.size, 1.2 * filter.size));
  if (filter && !narrow) boxes.push(textBox("filter-text", "Filter", {x: filter.at[0], y: filter.at[1] + 1.2 * filter.size + 15, middle: true}));
  if (controller) boxes.push({name: "controller", x0: controller.box.x, x1: controller.box.x + controller.box.width, y0: controller.box.y, y1: controller.box.y + controller.box.height});
  return boxes;
}

/** Dials with their names, meters, vessels. */
function instruments({dials, meters, columns, heights, narrow, tight, letters}, plant) {
  const names = {suction: "Suction", discharge: "Discharge", "after-valve": "After valve"};
  const boxes = dials.flatMap(({name, x, y, r, label}) => {
    const at = {...label, middle: !label.end};
    const own = [around(`dial-${name}`, x, y, r, r)];
    if (narrow || tight) return [...own, textBox(`name-${name}`, names[name], at, 13 * letters), textBox(`hangs-${name}`, "at −3.00 m", {...at, y: at.y + (narrow ? 13 : 14) * letters}, 12 * letters)];
    return [...own, textBox(`name-${name}`, `${names[name]} at 0.50 m`, at, 12.5 * letters)];
  });
  const right = meters.motors.at(-1) + meters.slim;
  boxes.push({name: "meters", x0: meters.x, x1: right, y0: meters.y, y1: meters.y + meters.tall});
  for (const name of ["supply", "delivery"]) {
    const {x, width} = columns[name];
    boxes.push({name, x0: x, x1: x + width, y0: heights.y(plant[name].top_m), y1: heights.y(plant[name].bottom_m)});
  }
  return boxes;
}

/** All of them. */
export const boxesOf = (plan, plant) => [...onLine(plan, plant), ...besides(plan), ...instruments(plan, plant)];

/** Pairs that lie over each other by more than `slack` both ways. [px] */
export function overlaps(boxes, slack) {
  const found = [];
  boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => {
    const [w, h] = [Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0), Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0)];
    if (w > slack && h > slack) found.push(`${a.name} and ${b.name} by ${w.toFixed(0)} × ${h.toFixed(0)}`);
  }));
  return found;
}
