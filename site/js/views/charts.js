// Which of the charts over the flow is in sight, and the strip that chooses it.
import {CHARTS} from "../share.js";
import {create as createHeads} from "./chart.js";
import {h, hide, setText} from "./dom.js";
import {create as createFlowChart} from "./flow-chart.js";

/**
 * @param {HTMLElement} host  the figure: its heading, strip and drawings are found in it by their ids
 * @param {object} kit {document, words, send}
 */
export function create(host, {document, words, send}) {
  const [title, strip] = ["chart-title", "chart-strip"].map((id) => document.getElementById(id));
  const hosts = Object.fromEntries(CHARTS.map((name) => [name, document.getElementById(name === "head" ? "chart" : `chart-${name}`)]));
  const views = Object.fromEntries(CHARTS.map((name) => [
    name, name === "head" ? createHeads(hosts[name], {document, words}) : createFlowChart(hosts[name], {document, words}, name),
  ]));
  const inputs = CHARTS.map((name) => h(document, "input", {
    type: "radio", name: "chart", value: name, onchange: () => send({type: "view", view: {chart: name}}),
  }));
  const choice = h(document, "fieldset", {class: "choice small"}, h(document, "legend", {class: "unseen"}, words("chart-strip")),
    h(document, "div", {class: "options"}, inputs.map((input, i) => h(document, "label", {}, input, h(document, "span", {}, words(`chart-show-${CHARTS[i]}`))))));
  strip.append(choice);

  return {
    update(model) {
      const shown = CHARTS.includes(model.chart) ? model.chart : CHARTS[0];
      setText(title, words(`chart-title-${model.curves ? shown : CHARTS[0]}`));
      title.classList.toggle("unseen", model.curves); // the strip says it
      hide(strip, !model.curves);
      for (const [i, name] of CHARTS.entries()) {
        inputs[i].checked = name === shown;
        hide(hosts[name], !model.curves || name !== shown);
      }
      views[shown].update(model); // also out of sight: it is complete when it is shown again
    },
  };
}
