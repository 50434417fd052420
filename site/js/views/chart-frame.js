// What every chart over the flow has: grid, axes, their numbers and titles, and a window that clips its curves.

import {el, px, say, set, show} from "../lib/svg.js";
import {chartAxes} from "./chart-geometry.js";

let drawings = 0;

/**
 * @param {SVGSVGElement} svg
 * @param {{width: number, height: number}} size
 * @param {string} quantity  of the upright axis, such as "head"
 */
export function createFrame(svg, size, quantity) {
  const document = svg.ownerDocument;
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const clip = `chart-${++drawings}`;
  const {plot} = chartAxes(size, {flow: [0, 1], head: [0, 1]}, {value: (_, v) => v, si: (_, v) => v});
  const grid = make("g");
  const nought = make("path", {class: "axis"});
  const xTitle = make("text", {class: "axis-title end", x: plot.right, y: size.height - 6});
  const yTitle = make("text", {class: "axis-title", x: 6, y: plot.top - 10});
  const curves = make("g", {"clip-path": `url(#${clip})`});
  svg.append(
    make("clipPath", {id: clip}, make("rect", {x: plot.left, y: plot.top - 3, width: plot.right - plot.left + 3, height: plot.bottom - plot.top + 4})),
    grid, make("path", {class: "axis", d: `M${plot.left},${plot.top}V${plot.bottom}H${plot.right}`}), nought, xTitle, yTitle, curves);

  function lines({xTicks, yTicks}) {
    grid.replaceChildren(
      ...yTicks.map(({place}) => make("line", {class: "grid-line", x1: plot.left, x2: plot.right, y1: px(place), y2: px(place)})),
      ...xTicks.map(({place}) => make("line", {class: "axis", x1: px(place), x2: px(place), y1: plot.bottom, y2: plot.bottom + 5})),
      ...yTicks.map(({place, text}) => make("text", {class: "tick-text end", x: plot.left - 6, y: px(place + 4)}, text)),
      ...xTicks.map(({place, text}) => make("text", {class: "tick-text middle", x: px(place), y: plot.bottom + 17}, text)));
  }

  let drawn = "";
  return {
    plot,
    /** Where curves are drawn: nothing in it leaves the axes. */
    curves,
    /** @param {object} domain ends of both axes, SI: `flow` and, whatever its quantity, `head` */
    update(domain, units, title = units.symbol("flow")) {
      const axes = chartAxes(size, domain, units, quantity);
      show(nought, axes.flow[0] < 0); // where liquid runs backwards, no flow is not at the edge
      set(nought, "d", `M${px(axes.x(0))},${plot.top}V${plot.bottom}`);
      const key = [...axes.xTicks, ...axes.yTicks].map(({place, text}) => `${text}@${px(place)}`).join();
      if (key !== drawn) lines(axes);
      drawn = key;
      say(xTitle, title);
      say(yTitle, units.symbol(quantity));
      return axes;
    },
  };
}
