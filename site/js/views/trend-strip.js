// The strip as it is drawn, and how it is read: with a pointer, a finger or the arrow keys.

import {clamp} from "../lib/scale.js";
import {el, px, say, set, setAll, show} from "../lib/svg.js";
import {timeText} from "./plant-time.js";
import {LANE, keyedTime, nearest, stripGeometry, stripHeight} from "./trend-geometry.js";

const FLAG = 64; // [px] nearer to it no time of the axis can be read

/**
 * @param {SVGSVGElement} svg
 * @param {object} first {record, ids, span, units}
 * @param {{width: number}} size
 * @param {{document: Document, words: function, name: (id: string) => string}} kit
 */
export function buildStrip(svg, {ids}, {width}, {document, words, name}) {
  const make = (tag, attributes, ...children) => el(document, tag, attributes, ...children);
  set(svg, "role", "group");
  set(svg, "aria-label", words("trend-title"));
  const grid = make("g", {"aria-hidden": "true"});
  let times = []; // of the axis: {x, text}
  const marks = make("g", {class: "trend-marks", "aria-hidden": "true"});
  const lanes = ids.map((id, n) => {
    const parts = {
      band: make("path", {class: "trend-band"}), line: make("path", {class: "trend-line"}),
      value: make("text", {class: "trend-value end", x: px(width - 10), y: n * LANE + 15}),
    };
    return {...parts, id, node: make("g", {"aria-hidden": "true"}, parts.band, parts.line, make("text", {class: "trend-name", x: 52, y: n * LANE + 15}, name(id)), parts.value)};
  });
  const bottom = ids.length * LANE;
  const line = make("line", {class: "readout-line", y1: 0, y2: bottom});
  const flag = make("text", {class: "trend-flag middle", y: bottom + 16});
  const hit = make("rect", {class: "hit", x: 52, y: 0, width: Math.max(0, width - 62), height: stripHeight(ids.length)});
  const node = make("g", {class: "control readout", role: "slider", tabindex: 0, "aria-label": words("trend-read"), "data-control": "trend"}, line, flag, hit);
  svg.append(grid, marks, ...lanes.map((lane) => lane.node), node);
  let model = null, places = null, drawn = "", at = null;

  function draw() {
    const {record, units} = model;
    const row = record.rows[nearest(record.rows, at ?? places.to)];
    if (!row) return;
    const reads = lanes.map(({id, value}) => {
      const column = record.columns.findIndex((one) => one.id === id);
      const {quantity, low, high} = record.columns[column];
      const reading = row.values[column];
      const text = Number.isFinite(reading) ? units.full(quantity, reading, high - low) : words("draw-no-reading");
      say(value, text);
      return words("trend-reading", {name: name(id), reading: text});
    });
    const time = timeText(row.time, {tenths: places.to - places.from < 600});
    for (const part of [line, flag]) show(part, at !== null);
    let flagged = -Infinity;
    if (at !== null) {
      const x = places.x(clamp(row.time, places.from, places.to));
      setAll(line, {x1: px(x), x2: px(x)});
      flagged = clamp(x, places.left + 24, places.right - 24);
      set(flag, "x", px(flagged));
      say(flag, time);
    }
    for (const tick of times) show(tick.text, Math.abs(tick.x - flagged) > FLAG);
    setAll(node, {
      "aria-valuemin": Math.round(places.from), "aria-valuemax": Math.round(places.to), "aria-valuenow": Math.round(row.time),
      "aria-valuetext": words("trend-says", {time, readings: reads.join(words("trend-and"))}),
    });
  }

  function axes() {
    const time = (tick) => timeText(tick.at, {tenths: places.tenths});
    times = places.times.map((tick) => {
      const x = clamp(tick.x, places.left, places.right - 20);
      return {x, text: make("text", {class: "tick-text middle", x: px(x), y: bottom + 16}, time(tick))};
    });
    grid.replaceChildren(
      ...places.times.map((tick) => make("line", {class: "grid-line", x1: px(tick.x), x2: px(tick.x), y1: 0, y2: bottom})),
      ...times.map(({text}) => text),
      ...places.lanes.flatMap(({plot, ticks}) => [
        make("path", {class: "axis trend-axis", d: `M${places.left},${px(plot[0])}V${px(plot[1])}H${places.right}`}),
        ...ticks.map(({y, text}) => make("text", {class: "tick-text end", x: places.left - 5, y: px(y + 4)}, text)),
        ...ticks.map(({y}) => make("line", {class: "grid-line", x1: places.left, x2: places.right, y1: px(y), y2: px(y)})),
      ]));
    marks.replaceChildren(...places.events.map(({x}) => make("path", {class: "trend-event", d: `M${px(x)},0V${bottom}M${px(x - 4)},0H${px(x + 4)}L${px(x)},6Z`})));
  }

  const move = (time) => {
    at = time === null || !places ? null : clamp(time, places.from, places.to);
    if (places) draw();
  };
  const pointed = (event) => {
    const box = svg.getBoundingClientRect();
    if (places) move(places.x.invert(((event.clientX - box.left) * width) / box.width));
  };
  node.addEventListener("pointermove", pointed);
  node.addEventListener("pointerdown", (event) => {
    pointed(event);
    node.focus?.({preventScroll: true});
  });
  node.addEventListener("pointerleave", ({pointerType}) => pointerType === "mouse" && document.activeElement !== node && move(null)); // a finger that is lifted leaves its mark
  node.addEventListener("blur", () => move(null));
  node.addEventListener("keydown", (event) => {
    if (event.key === "Escape") return move(null);
    const next = places && keyedTime(event.key, model.record.rows, at ?? places.to, places);
    if (next === null || next === undefined) return;
    event.preventDefault();
    move(next);
  });

  return {
    update(next) {
      model = next;
      const wanted = `${next.record.version} ${next.span}`;
      if (wanted !== drawn) {
        drawn = wanted;
        places = stripGeometry(next.record, {...next, ids, width});
        places.lanes.forEach((lane, n) => {
          set(lanes[n].line, "d", lane.line);
          set(lanes[n].band, "d", lane.band);
        });
        axes();
        if (at !== null) at = clamp(at, places.from, places.to);
      }
      draw();
    },
  };
}
