// NPSH or power over the flow of one pump, on the flow axis of the head chart.

import {createFigure, hostSize} from "../lib/figure.js";
import {linePath} from "../lib/shape.js";
import {el, px, say, set, setAll, show} from "../lib/svg.js";
import {dotsPath, dutyWords, sampled} from "./chart-geometry.js";
import {createFrame} from "./chart-frame.js";
import {createReadout} from "./chart-readout.js";
import {FLOW_CHARTS, flowDomain, legendPlaces, pointsOf, readCurves} from "./flow-chart-table.js";
import {flowChartWords} from "./flow-chart-words.js";

const LETTER = 9.3; // [px] width of a letter beside the duty point
const NARROW = 325; // [px] a sheet that does not hold the legend's whole words
const FROM = 2; // flows, at most, that are marked
const MARKS = 2; // pumps, at most, that do different things

/**
 * @param {HTMLElement} host
 * @param {{document: Document, words: function}} deps
 * @param {"npsh"|"power"} name
 * @returns {{update: (model: object) => void, remove: () => void}}
 */
export function create(host, {document, words}, name) {
  return createFigure(host, document, `chart chart-${name}`, {
    size: () => hostSize(host, document, {width: 328, height: 330, least: [240, 250]}),
    build: (svg, _, size) => build(svg, size, document, words, name),
  });
}

function build(svg, size, document, words, name) {
  const chart = FLOW_CHARTS[name];
  const make = (tag, attributes, ...children) => el(document, tag, attributes, ...children);
  const frame = createFrame(svg, size, chart.quantity);
  const group = (count, one) => Array.from({length: count}, one);
  const ghosts = chart.curves.map(({of}) => make("path", {class: `ghost-curve${of === "load" ? " ghost-load" : ""}`}));
  const curves = chart.curves.map(({of}) => make("path", {class: `${of}-curve`}));
  const parts = {
    chart, name, frame, ghosts, curves,
    dots: make("path", {class: "machine-dots"}),
    level: make("path", {class: "level-line"}), from: group(FROM, () => make("path", {class: "from-line"})),
    margins: group(MARKS, () => make("path", {class: "margin-line"})),
    before: group(MARKS * chart.curves.length, () => make("circle", {class: "duty-before", r: 5.5})),
    duty: group(MARKS * chart.curves.length, () => make("circle", {class: "duty", r: 5.5})),
    words: [make("text", {class: "duty-text"}), make("text", {class: "duty-text"})],
    fromText: Array.from({length: FROM}, (_, i) => make("text", {class: "from-text", y: frame.plot.top + 12 + 16 * i})), levelText: make("text", {class: "from-text end", x: frame.plot.right}),
    legend: buildLegend(make, words, chart, name, size.width < NARROW ? "-short" : ""),
    readout: createReadout(svg, document, frame.plot, words, {
      quantity: chart.quantity, id: `draw-${name}-readout`, read: (answer, flow) => inColumns(chart, readCurves(answer, chart, flow)),
    }),
  };
  frame.curves.append(parts.level, ...parts.from, ...ghosts, ...curves, parts.dots, ...parts.margins);
  svg.append(...parts.before, ...parts.duty, ...parts.fromText, parts.levelText, ...parts.words, parts.legend.node, parts.readout.node);
  set(svg, "role", "group");
  return {update: (model) => update(svg, parts, model, words)};
}

/** What the readout wants: the load's value, then the machine's. */
const inColumns = ({curves}, values) => ["load", "machine"].map((side) => values[curves.findIndex(({of}) => of === side)] ?? null);

function buildLegend(make, words, {curves}, name, short) {
  const rows = curves.map(({of, column}) => {
    const text = words(`draw-${name}-${of}${short}`);
    return {column, text, node: make("g", {},
      make("path", {class: `${of}-curve`, d: "M6,12h28"}), ...(of === "machine" ? [make("path", {class: "machine-dots", d: "M13,12h.01M27,12h.01"})] : []),
      make("text", {class: `legend-${of}`, x: 40, y: 16}, text))};
  });
  return {rows, node: make("g", {class: "legend"}, ...rows.map(({node}) => node))};
}

function update(svg, parts, model, words) {
  const {answer, previous, units} = model;
  const said = flowChartWords(parts.name, model, words);
  const axes = parts.frame.update(flowDomain([answer, previous], parts.chart), units, said.axis);
  updateCurves(parts, axes, answer, previous);
  updatePoints(parts, axes, answer, previous);
  updateMarks(parts, axes, answer, said);
  updateWords(parts, axes, answer, said);
  parts.readout.update(axes, answer, units);
  set(svg, "aria-label", said.says);
}

function updateCurves({chart, curves, ghosts, dots, legend}, axes, answer, previous) {
  const drawn = (one, column) => one?.curves[column] && linePath(one.curves.flow.map((at, i) => (Number.isFinite(one.curves[column][i]) ? [axes.x(at), axes.y(one.curves[column][i])] : [NaN, NaN])));
  chart.curves.forEach(({column, of}, i) => {
    for (const [node, one] of [[curves[i], answer], [ghosts[i], previous]]) {
      const path = drawn(one, column);
      show(node, Boolean(path));
      if (path) set(node, "d", path);
    }
    if (of !== "machine") return;
    show(dots, Boolean(answer));
    if (answer) set(dots, "d", dotsPath({flow: answer.curves.flow, heads: answer.curves[column]}, axes));
  });
  const drawnRows = legend.rows.filter(({column}) => !answer || answer.curves[column]);
  for (const {node} of legend.rows) show(node, drawnRows.some((row) => row.node === node));
  const places = legendPlaces(drawnRows.map(({text}) => text));
  drawnRows.forEach(({node}, i) => set(node, "transform", `translate(${px(places[i])},0)`));
}

function updatePoints({chart, duty, before, margins}, axes, answer, previous) {
  const points = answer ? pointsOf(answer, chart) : [];
  for (const [nodes, one] of [[duty, points], [before, previous ? pointsOf(previous, chart) : []]]) {
    const all = one.flatMap(({flow, values}) => values.filter((value) => value !== null).map((value) => [axes.x(flow), axes.y(value)]));
    nodes.forEach((node, i) => {
      show(node, i < all.length);
      if (i < all.length) setAll(node, {cx: px(all[i][0]), cy: px(all[i][1])});
    });
  }
  margins.forEach((node, i) => {
    const ends = points[i]?.values.filter((value) => value !== null) ?? [];
    show(node, ends.length === 2);
    if (ends.length === 2) setAll(node, {d: `M${px(axes.x(points[i].flow))},${px(axes.y(ends[0]))}V${px(axes.y(ends[1]))}`, class: `margin-line${ends[0] < ends[1] ? " short" : ""}`});
  });
}

function updateMarks({chart, frame: {plot}, level, from, levelText, fromText}, axes, answer, said) {
  const across = answer ? chart.level(answer) : null;
  const upright = answer ? chart.from(answer) : [];
  for (const node of [level, levelText]) show(node, across !== null);
  if (across !== null) {
    set(level, "d", `M${plot.left},${px(axes.y(across))}H${plot.right}`);
    set(levelText, "y", px(axes.y(across) - 5));
    say(levelText, said.level);
  }
  from.forEach((line, i) => {
    const known = Number.isFinite(upright[i]);
    for (const node of [line, fromText[i]]) show(node, known);
    if (!known) return;
    const x = axes.x(upright[i]);
    set(line, "d", `M${px(x)},${plot.top}V${plot.bottom}`);
    const left = x > (plot.left + plot.right) / 2;
    setAll(fromText[i], {x: px(x + (left ? -5 : 5)), class: `from-text${left ? " end" : ""}`});
    say(fromText[i], said.from[i]);
  });
}

function updateWords({chart, words}, axes, answer, said) {
  const [first] = answer ? pointsOf(answer, chart) : [];
  const at = first?.values.findLast((value) => value !== null) ?? null;
  for (const [i, node] of words.entries()) show(node, at !== null && said.lines[i] !== "");
  if (at === null) return;
  const drawn = chart.curves.flatMap(({column}) => (answer.curves[column] ? sampled({flow: answer.curves.flow, heads: answer.curves[column]}, axes) : []));
  const place = dutyWords([axes.x(first.flow), axes.y(at)], axes, drawn, LETTER * Math.max(...said.lines.map(({length}) => length)));
  words.forEach((node, i) => {
    setAll(node, {x: px(place.x), y: px(place.y + 16 * i), "text-anchor": place.anchor});
    say(node, said.lines[i]);
  });
}
