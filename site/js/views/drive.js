// The frequency that reaches the motors, on a straight scale with a runner that can be dragged.

import {makeSlider} from "../lib/drag.js";
import {linearScale} from "../lib/scale.js";
import {el, placed, px, say, set, show} from "../lib/svg.js";

/**
 * @param {Document} document
 * @param {{x: number, y: number, width: number, scale?: number}} place  `width` before it is scaled
 * @param {{label: string, send: function, read: () => object}} about
 */
export function createDrive(document, {x, y, width, scale: by = 1}, {label, send, read}) {
  const make = (name, attributes, ...children) => el(document, name, attributes, ...children);
  const [from, to, line] = [16, width - 16, 36];
  const ticks = make("g");
  const runner = make("path", {class: "runner", d: `M0,${line + 2}l-7,-7v-7h14v7z`});
  const ghost = make("line", {class: "meter-ghost-line", y1: line - 1, y2: line + 7});
  const value = make("text", {class: "end part-value", x: width - 10, y: 20});
  const slider = make("g", {class: "control drive"}, make("rect", {class: "hit", x: 2, y: 8, width: width - 4, height: 40}), runner);
  const node = make("g", {class: "meter", "data-part": "drive", role: "group", "aria-label": label, transform: placed(x, y, by)},
    make("rect", {class: "meter-case", width, height: 46, rx: 3}),
    make("text", {class: "part-label", x: 10, y: 15}, label), value,
    make("line", {class: "tick-major", x1: from, x2: to, y1: line, y2: line}), ticks, ghost, slider);
  const scale = () => linearScale([read().low, read().high], [from, to]);
  const describe = makeSlider({
    node: slider, key: "drive.frequency_hz", label, send, read,
    move: (start, a, b) => start + scale().invert(b.x / by) - scale().invert(a.x / by),
  });
  let drawn = "";
  return {
    node,
    update({frequency, before, supply}) {
      const at = scale();
      const key = `${at.domain()} ${supply}`;
      if (key !== drawn) ticks.replaceChildren(...marks(make, at, supply, line));
      drawn = key;
      set(runner, "transform", `translate(${px(at(frequency))},0)`);
      show(ghost, before !== null && before !== frequency);
      if (before !== null) set(ghost, "transform", `translate(${px(at(before))},0)`);
      say(value, read().text);
      describe();
    },
  };
}

/** A tick at every five hertz, a longer one at the frequency of the supply. */
function marks(make, at, supply, line) {
  const [low, high] = at.domain();
  const places = [];
  for (let hz = Math.ceil(low / 5) * 5; hz <= high; hz += 5) places.push(hz);
  return places.map((hz) => make("line", {
    class: hz === supply ? "tick-major" : "tick-minor",
    x1: px(at(hz)), x2: px(at(hz)), y1: line, y2: line + (hz === supply ? 9 : 4),
  }));
}
