// Both days drawn: on both curves, and as the stack of what the load asked on each.
import {block, make} from "./case-dom.js";
import {create as createChart} from "./chart.js";
import {create as createStack} from "./stack.js";

/**
 * @returns {{node: Element, draw: () => void, remove: () => void}} draw once the node is in the page
 */
export function curves(document, view, {words, units}) {
  const {yesterday, today} = view.reveal;
  const hosts = {chart: figure("case-curves-note"), yesterday: figure("case-stack-yesterday"), today: figure("case-stack-today")};
  const node = block(document, "curves", words("case-curves-title"),
    make(document, "div", {class: "case-drawings"}, ...Object.values(hosts).map(({all}) => all)),
    make(document, "p", {class: "case-soft"}, words("case-stack-note")));
  const drawn = [];

  function figure(caption) {
    const host = make(document, "div", {class: "drawing"});
    return {host, all: make(document, "figure", {class: caption}, make(document, "figcaption", {}, words(caption)), host)};
  }

  function put(create, {host}, answer, previous, outline = "yesterday") {
    const drawing = create(host, {document, words, units, send: () => {}});
    drawing.update({answer, previous, outline, yesterday: true, plant: answer.plant, units, words, live: false, origin: "live",
      curves: true, turning: false, picked: null, edits: {}, range: {}});
    drawn.push(drawing);
  }

  return {
    node,
    draw() {
      put(createChart, hosts.chart, today, yesterday);
      const [before, now] = [yesterday, today].map((answer) => ({...answer, curves: null})); // nothing moves here: no room for what the machine could answer
      put(createStack, hosts.yesterday, before, now, "today"); // each with the other's outline: both to one scale
      put(createStack, hosts.today, now, before);
    },
    remove: () => drawn.forEach((drawing) => drawing.remove?.()),
  };
}
