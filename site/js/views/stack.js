// The load stack: what the load asks for, block by block, beside what the machine answers.

import {createFigure, hostSize, zoom} from "../lib/figure.js";
import {el, px, say, set, setAll, show} from "../lib/svg.js";
import {createHatches} from "./hatch.js";
import {BLOCKS, headings, sharedHead, stackGeometry, unknown} from "./stack-geometry.js";

const ROW = 15; // [px]
const TERMS = {
  pressure_head: "draw-pressure-head", height: "draw-height", velocity_head: "draw-velocity-head", check_valve: "draw-check-valves",
};
const ALONE = [330, 290]; // [px] a sheet that has all the room is drawn larger, not wider

/**
 * @param {HTMLElement} host
 * @param {{document: Document, words: function}} deps
 * @returns {{update: (model: object) => void, remove: () => void}}
 */
export function create(host, {document, words}) {
  return createFigure(host, document, "stack", {
    size: () => hostSize(host, document, {width: 200, height: 330, least: [180, 250]},
      Math.max(zoom(document), Math.min(host.clientWidth / ALONE[0], host.clientHeight / ALONE[1]))),
    plan: (model) => String(rowsOf(model).length),
    build: (svg, model, size) => build(svg, {...size, rows: rowsOf(model), foot: 21 + ROW * rowsOf(model).length}, document, words),
  });
}

/** Terms of the account; between the gauges of two pumps stand check valves too. */
const rowsOf = ({answer}) => (answer?.state.machines.length > 1
  ? ["pressure_head", "height", "velocity_head", "check_valve"] : ["pressure_head", "height", "velocity_head"]);

function build(svg, size, document, words) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const hatches = createHatches(document);
  const {load, machine, labels} = stackGeometry(null, null, size).columns;
  const over = headings({load, machine}, size.width);
  const blocks = Object.fromEntries(BLOCKS.map((block) => [block, buildBlock(make, block, hatches, load, labels)]));
  const parts = {
    blocks,
    answer: make("rect", {class: "answer-bar", x: machine.x, width: machine.width}),
    dots: make("path", {class: "answer-dots"}),
    ghost: make("path", {class: "stack-ghost"}),
    zero: make("line", {class: "zero-line", x1: load.x - 8, x2: machine.x + machine.width + 6}),
    level: make("line", {class: "equal-line", x1: load.x - 6, x2: machine.x + machine.width + 6}),
    head: make("text", {class: "answer-text end", x: machine.x + machine.width + 6}),
    balance: buildBalance(make, size, words),
  };
  svg.append(hatches.node,
    make("text", {class: "column-load end", x: over.asks, y: 16}, words("draw-asks")),
    make("text", {class: "column-machine end", x: over.answers, y: 16}, words("draw-answers")),
    ...Object.values(blocks).map(({rect}) => rect), parts.answer, parts.dots, parts.ghost, parts.zero, parts.level,
    parts.head, ...Object.values(blocks).flatMap(({leader, text}) => [leader, text]), parts.balance.node);
  set(svg, "role", "img");
  return {update: (model) => update(svg, parts, model, size, words, {load, machine, labels})};
}

function buildBlock(make, block, hatches, load, labels) {
  const name = make("tspan", {class: "block-name"});
  const value = make("tspan", {class: "block-value", dx: 4});
  return {
    rect: make("rect", {class: "load-block", "data-block": block, fill: hatches.fill(block), x: load.x, width: load.width}),
    leader: make("path", {class: "leader-line"}),
    text: make("text", {class: "end", x: labels}, name, value), name, value,
  };
}

/** The account that always closes: its terms add up to the answer. */
function buildBalance(make, {width, height, rows: terms}, words) {
  const right = Math.min(width - 10, 230);
  const top = height - 8 - ROW * terms.length;
  const rows = terms.map((term, i) => {
    const value = make("text", {class: "balance-value end", x: right, y: top + ROW * (i + 1)});
    return {value, label: make("text", {class: "balance-name", x: 10, y: top + ROW * (i + 1)}, `${i ? "+" : "="} ${words(TERMS[term])}`)};
  });
  const rule = make("line", {class: "zero-line faint", x1: 8, x2: right, y1: top, y2: top});
  return {values: rows.map(({value}, i) => [terms[i], value]), node: make("g", {class: "balance"}, rule, ...rows.flatMap(({value, label}) => [label, value]))};
}

const essence = (answer) => answer && {stack: answer.stack, balance: answer.state.balance.answer, curves: answer.curves, displaces: answer.state.machines.some((one) => one.pressure_limit)};

function update(svg, parts, {answer, previous, yesterday, outline = "yesterday", units}, size, words, columns) {
  const shown = (head) => units.text("head", head);
  const places = stackGeometry(essence(answer), essence(previous), size, (head) => shown(head) !== shown(0));
  const byName = new Map(places.blocks.map((one) => [one.block, one]));
  const labels = new Map(places.labels.map((one) => [one.block, one]));
  for (const name of BLOCKS) updateBlock(parts.blocks[name], name, byName.get(name), labels.get(name), places.columns, shown, words);
  for (const [line, head] of [[parts.zero, 0], [parts.level, answer?.state.balance.answer ?? 0]]) {
    setAll(line, {y1: px(places.y(head)), y2: px(places.y(head))});
  }
  updateAnswer(parts, places, columns, answer ? units.full("head", answer.state.balance.answer) : "");
  updateBalance(parts.balance, answer?.state.balance, shown, words);
  const said = answer ? describe(answer, units, words) : words("draw-no-reading");
  set(svg, "aria-label", yesterday && previous ? words(`draw-stack-and-${outline}`, {said, head: units.full("head", previous.state.balance.answer)}) : said);
}

function updateBlock({rect, leader, text, name, value}, block, place, label, {relief, burden, labels}, shown, words) {
  show(rect, Boolean(place) && place.height > 0);
  show(text, Boolean(label));
  show(leader, Boolean(label));
  const column = place?.head < 0 ? relief : burden;
  if (place) setAll(rect, {...column, y: px(place.top), height: px(place.height), class: `load-block${place.head < 0 ? " relief" : ""}${block === "shared" ? " shared" : ""}`});
  if (!label) return;
  set(text, "y", px(label.y + 4));
  say(name, words(`draw-block-${block}`));
  say(value, shown(label.head));
  set(leader, "d", `M${labels + 3},${px(label.y)}L${column.x - 1},${px(label.at)}`);
}

function updateAnswer({answer, dots, ghost, level, head}, places, {load, machine}, text) {
  const bar = places.answer;
  for (const node of [answer, dots, level, head]) show(node, Boolean(bar));
  show(ghost, Boolean(places.ghost));
  if (places.ghost) set(ghost, "d", ghostPath(places.ghost, load, machine));
  if (!bar) return;
  setAll(answer, {y: px(bar.top), height: px(bar.height)});
  set(dots, "d", dotRows(machine, bar));
  say(head, text);
  set(head, "y", px(bar.top - 6));
}

/** Dots down the middle of the answer's bar: the machine's mark, also without colour. */
function dotRows({x, width}, {top, bottom}) {
  let path = "";
  for (let y = bottom - 9; y > top + 6; y -= 16) path += `M${px(x + width / 2)},${px(y)}h.01`;
  return path;
}

/** Outlines of both columns at the last committed answer. */
function ghostPath({top, bottom}, load, machine) {
  return [load, machine].map(({x, width}) => `M${x},${px(bottom)}V${px(top)}H${x + width}V${px(bottom)}`).join("");
}

function updateBalance({values}, balance, shown, words) {
  for (const [term, node] of values) say(node, !balance ? "–" : balance[term] === null ? words("draw-unknown") : shown(balance[term]));
}

/** The whole picture in a sentence. */
function describe({stack, state}, units, words) {
  const {answer} = state.balance;
  const named = (block) => words(`draw-block-${block}`);
  const blocks = stack.filter(({head}) => head).map(({block, head}) => `${named(block)} ${units.full("head", head)}`);
  const dark = unknown(stack);
  if (dark.length) blocks.push(words("draw-shared-says", {blocks: dark.map(named).join(words("and")), head: units.full("head", sharedHead(stack, answer))}));
  return words("draw-stack-says", {blocks: blocks.join(words("comma")), head: units.full("head", answer)});
}
