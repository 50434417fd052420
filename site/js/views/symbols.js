// Small symbols of the drawing: relief valve, hand valve, filter, burst, basin, the arrow of a flow.

import {el, px, say, set, show} from "../lib/svg.js";

const group = (document, attributes, ...children) => el(document, "g", attributes, ...children);
const at = ([x, y], turn = 0) => `translate(${px(x)},${px(y)})${turn ? ` rotate(${turn})` : ""}`;

/** An arrow in a pipe, shown where something flows, turned round where it flows backward. */
export function createArrow(document, {x, y, turn}, width) {
  const s = Math.max(5, 0.62 * width);
  const node = el(document, "path", {class: "flow-arrow", d: `M${px(-s)},${px(-0.75 * s)}L${px(s)},0L${px(-s)},${px(0.75 * s)}Z`});
  return {
    node,
    update(flow) {
      show(node, Boolean(flow));
      set(node, "transform", at([x, y], Math.round(turn + (flow < 0 ? 180 : 0))));
    },
  };
}

/** A relief valve in a pipe that falls: two cones, and a spring that holds it shut. It lifts off when it opens; a pin holds a blocked one. */
export function createRelief(document, place, size) {
  const s = size;
  const disc = el(document, "path", {class: "relief-disc", d: `M${px(-s)},0H${px(s)}`});
  const pin = el(document, "path", {class: "relief-pin", d: `M${px(-1.1 * s)},${px(-0.9 * s)}l${px(-1.3 * s)},${px(1.8 * s)}m0,${px(-1.8 * s)}l${px(1.3 * s)},${px(1.8 * s)}`});
  const drop = el(document, "path", {class: "relief-leak", d: `M${px(0.6 * s)},${px(0.9 * s)}q${px(0.5 * s)},${px(0.7 * s)} 0,${px(0.9 * s)}q${px(-0.5 * s)},${px(-0.2 * s)} 0,${px(-0.9 * s)}`});
  const coil = Array.from({length: 4}, (_, i) => `L${px(-s * (1.1 + 0.4 * i))},${px(i % 2 ? -0.4 * s : 0.4 * s)}`).join("");
  const spring = el(document, "path", {class: "relief-spring", d: `M${px(-0.4 * s)},0${coil}L${px(-2.7 * s)},0M${px(-2.7 * s)},${px(-0.7 * s)}V${px(0.7 * s)}`});
  const node = group(document, {transform: at(place)},
    el(document, "path", {class: "valve-body", d: `M${px(-0.8 * s)},${px(-s)}H${px(0.8 * s)}L${px(-0.8 * s)},${px(s)}H${px(0.8 * s)}Z`}), spring, disc, drop, pin);
  return {
    node,
    update({lifted, blocked, passing}) {
      set(disc, "transform", lifted ? `translate(0,${px(-0.55 * s)})` : null);
      show(pin, blocked);
      show(drop, passing && !lifted);
      set(node, "class", `relief${lifted ? " lifted" : ""}${blocked ? " blocked" : ""}`);
    },
  };
}

/** A hand valve: two cones, filled where it is shut, with its lever along the pipe when open. */
export function createHandValve(document, place, size, upright) {
  const s = size;
  const fill = el(document, "path", {class: "valve-plug"});
  const lever = el(document, "path", {class: "lever"});
  const node = group(document, {class: "hand-valve", transform: at(place, upright ? 90 : 0)},
    el(document, "path", {class: "valve-body", d: `M${px(-s)},${px(-0.65 * s)}L${px(s)},${px(0.65 * s)}V${px(-0.65 * s)}L${px(-s)},${px(0.65 * s)}Z`}), fill, lever);
  return {
    node,
    update(opening) {
      const plug = s * (1 - opening);
      set(fill, "d", `M${px(-plug)},${px(-0.65 * plug)}L${px(plug)},${px(0.65 * plug)}V${px(-0.65 * plug)}L${px(-plug)},${px(0.65 * plug)}Z`);
      const turn = ((1 - opening) * Math.PI) / 2; // along the pipe when open
      set(lever, "d", `M0,0L${px(1.5 * s * Math.cos(turn))},${px(-1.5 * s * Math.sin(turn) - 0.45 * s * opening)}`);
    },
  };
}

/** How much of a filter's or strainer's mesh is drawn dark, 0 … 1, for a resistance over that of the clean one. */
export const foulShare = (fouling) => Math.min(1, Math.log10(1 + Math.max(0, fouling)) / 2);

/** A filter: a housing with its medium across, darker as it fouls. */
export function createFilter(document, place, size) {
  const s = size;
  const cake = el(document, "rect", {class: "cake", x: px(-s), y: px(-1.2 * s), height: px(2.4 * s), width: 0});
  const node = group(document, {class: "filter", transform: at(place)},
    el(document, "rect", {class: "strainer-body", x: px(-s), y: px(-1.2 * s), width: px(2 * s), height: px(2.4 * s), rx: px(0.4 * s)}), cake,
    el(document, "path", {class: "strainer-mesh", d: `M0,${px(-1.2 * s)}V${px(1.2 * s)}M${px(0.3 * s)},${px(-1.2 * s)}V${px(1.2 * s)}`}));
  return {
    node,
    update: (fouling) => set(cake, "width", px(s * foulShare(fouling))),
  };
}

/** A hole in the pipe's wall and what leaves it, downward: wider and thicker as it is more. */
export function createBurst(document, {at: place, down, fan: widest}) {
  const spray = el(document, "path", {class: "spray"});
  const crack = el(document, "path", {class: "crack", d: "M-9,-8L-3,-2L-6,2L2,4L-1,9L8,7M-3,-2L3,-7L8,-4"});
  const node = group(document, {class: "burst", transform: at(place)}, spray, crack);
  return {
    node,
    update({share}) {
      show(spray, share > 0);
      const fan = widest * (0.3 + 0.7 * Math.sqrt(Math.min(1, Math.max(0, share))));
      const leg = (x) => `M${px(0.2 * x)},7Q${px(0.8 * x)},${px(0.4 * down)} ${px(x)},${px(down)}`;
      set(spray, "d", [-fan, -0.4 * fan, 0.3 * fan, fan].map(leg).join(""));
    },
  };
}

/** A second user's basin, with its liquid; closed over where it ends under a surface. */
export function createBasin(document, {x, y, width, height, surface}) {
  return group(document, {class: "basin"},
    el(document, "rect", {class: "liquid", x: px(x), y: px(surface), width: px(width), height: px(Math.max(0, y + height - surface))}),
    el(document, "path", {class: "wall", d: `M${px(x)},${px(y)}V${px(y + height)}H${px(x + width)}V${px(y)}`}),
    el(document, "line", {class: "level-line", x1: px(x), x2: px(x + width), y1: px(surface), y2: px(surface)}));
}

/** A label of a part, in as many lines as it has room for. */
export function createLabel(document, {x, y, end, middle, lines = 1, step = 13}) {
  const spans = lines > 1 ? Array.from({length: lines}, (_, i) => el(document, "tspan", {x: px(x), ...(i ? {dy: px(step)} : {})})) : [];
  const kind = end ? " end" : middle || lines > 1 ? " middle" : "";
  const node = el(document, "text", {class: `part-label aside-label${kind}`, x: px(x), y: px(y - step * (lines - 1))}, ...spans);
  return {
    node,
    update(text) {
      if (!spans.length) return say(node, text);
      const words = text.split(" ");
      spans.forEach((span, i) => say(span, i < spans.length - 1 ? (words[i] ?? "") : words.slice(i).join(" ")));
    },
  };
}
