// A controller: a box that reads one instrument and moves valve or drive, with the lines that carry the signals.

import {el, px, say, set, setAll} from "../lib/svg.js";

const path = (run) => `M${run.map(([x, y]) => `${px(x)},${px(y)}`).join("L")}`;

/** @param {{box: {x: number, y: number, width: number, height: number}, sensor: number[][], output: number[][]}} place */
export function createController(document, {box, sensor, output}) {
  const [x, y] = sensor[0];
  const name = el(document, "text", {class: "controller-name middle", x: px(box.x + box.width / 2), y: px(box.y + box.height / 2 - 1)});
  const value = el(document, "text", {class: "controller-output middle", role: "meter", "data-reading": "controller-output", x: px(box.x + box.width / 2), y: px(box.y + box.height - 3)});
  const node = el(document, "g", {class: "controller"},
    el(document, "path", {class: "signal", d: path(sensor)}), el(document, "circle", {class: "signal-end", cx: px(x), cy: px(y), r: 2.4}),
    el(document, "path", {class: "signal output", d: path(output)}),
    el(document, "rect", {class: "controller-box", x: px(box.x), y: px(box.y), width: px(box.width), height: px(box.height), rx: 2}), name, value);
  return {
    node,
    update({short, shown, reading, automatic, lost}) {
      say(name, short);
      say(value, shown);
      const [low, high] = reading.range;
      setAll(value, {"aria-label": reading.label, "aria-valuemin": low, "aria-valuemax": high, "aria-valuenow": reading.value ?? low, "aria-valuetext": reading.says});
      set(node, "class", `controller${automatic ? " automatic" : ""}${lost ? " lost" : ""}`);
    },
  };
}
