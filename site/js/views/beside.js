// Two rigs side by side: what was kept and what is now, with what differs, and the exchange of it.
import {exchanged} from "../sides.js";
import {comparison, readings} from "./beside-words.js";
import {create as createHeads} from "./chart.js";
import {h, hide, setText} from "./dom.js";
import {create as createFlowChart} from "./flow-chart.js";
import {sentence} from "./sentence.js";
import {create as createStack} from "./stack.js";

const COLUMNS = ["kept", "now"];

/**
 * @param {HTMLElement} host
 * @param {object} kit {document, words, send}
 */
export function create(host, {document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  let model = null, last = null;
  const button = (id, onclick) => make("button", {type: "button", id: `beside-${id}`, onclick}, words(`beside-${id}`));
  const title = make("h2", {id: "beside-title", tabindex: -1});
  const side = (name) => button(name, () => exchange(last.rows.filter((one) => one.side === name)));
  const [machine, load] = [side("machine"), side("load")];
  const places = button("places", () => send({type: "exchange", now: model.beside.rig, beside: model.rig}));
  const away = button("away", () => send({type: "keep-beside", beside: null}));
  const bad = make("p", {class: "bad", hidden: true});
  const table = createTable(make, words, (row) => exchange([row]));
  const columns = COLUMNS.map((name) => createColumn(make, document, words, name));
  host.append(
    make("div", {class: "beside-head"}, title, make("div", {class: "beside-tools"}, load, machine, places, away)), bad,
    make("div", {class: "beside-body"}, columns.map(({node}) => node), table.node));

  function exchange(found) {
    send({type: "exchange", ...exchanged(model.beside.rig, model.rig, found)});
  }

  return {
    update(next) {
      model = next;
      hide(host, !next.beside);
      if (!next.beside) return;
      last = comparison(next, words);
      setText(title, last.title);
      hide(machine, !last.free.includes("machine"));
      hide(load, !last.free.includes("load"));
      const {error, answer} = next.beside;
      hide(bad, !error);
      setText(bad, error ? (error.rule ? sentence(error, next) : words("beside-failed")) : "");
      const both = [answer, next.answer];
      columns.forEach((column, i) => column.update({...next, answer: both[i], previous: both[1 - i], origin: "live"}));
      table.update(last, answer && next.answer ? readings(next, words) : []);
    },
  };
}

/** One rig: stack and chart, with the other as the ghost, so that both have the same axes. */
function createColumn(make, document, words, name) {
  const hosts = {stack: make("div", {class: "drawing"}), chart: make("div", {class: "drawing"})};
  const stack = createStack(hosts.stack, {document, words});
  const views = new Map(); // chart → its view and place; made when first chosen
  const node = make("div", {class: `beside-one beside-${name}`}, make("h3", {}, words(`beside-${name}`)), hosts.stack, hosts.chart);

  function chart(which) {
    if (!views.has(which)) {
      const place = make("div", {});
      hosts.chart.append(place);
      views.set(which, {place, view: which === "head" ? createHeads(place, {document, words}) : createFlowChart(place, {document, words}, which)});
    }
    for (const [other, {place}] of views) hide(place, other !== which);
    return views.get(which).view;
  }

  return {
    node,
    update(model) {
      stack.update(model);
      chart(model.chart ?? "head").update({...model, curves: true});
    },
  };
}

/** What differs, with a button to exchange it, then what the instruments show. */
function createTable(make, words, exchange) {
  const heads = () => COLUMNS.map((name) => make("th", {scope: "col", class: "value"}, words(`beside-${name}`)));
  const differing = make("tbody", {});
  const reading = make("tbody", {});
  const more = make("p", {class: "fine", hidden: true});
  const node = make("div", {class: "beside-table"}, make("table", {},
    make("caption", {class: "unseen"}, words("beside-table")),
    make("thead", {}, make("tr", {}, make("th", {scope: "col"}, make("span", {class: "unseen"}, words("beside-what"))), heads(), make("th", {scope: "col", class: "last"}, make("span", {class: "unseen"}, words("beside-exchange-column"))))),
    differing, reading), more);
  let drawn = "";

  const cells = ({texts}) => texts.map((text) => make("td", {}, text));
  const difference = (row) => make("tr", {class: `side-${row.side}`, "data-key": row.key}, make("th", {scope: "row"}, row.name), cells(row),
    make("td", {}, row.movable && make("button", {type: "button", class: "swap", "aria-label": words("beside-exchange-key", {name: row.name}), title: words("beside-exchange-key", {name: row.name}), onclick: () => exchange(row)}, "⇄")));
  const shown = (row) => make("tr", {class: row.differs ? "differs" : false, "data-reading": row.id}, make("th", {scope: "row"}, row.name), cells(row), make("td", {}));

  return {
    node,
    update({rows, more: left}, readings) {
      const key = JSON.stringify([rows, readings, left]);
      if (key === drawn) return;
      drawn = key;
      const held = node.contains(node.ownerDocument.activeElement) ? node.ownerDocument.activeElement.closest("[data-key]")?.dataset.key : null;
      differing.replaceChildren(...rows.slice(0, rows.length - left).map(difference));
      reading.replaceChildren(...readings.map(shown));
      hide(more, left === 0);
      setText(more, left ? words("beside-more", {count: left}) : "");
      if (held) differing.querySelector(`[data-key="${held}"] button`)?.focus();
    },
  };
}

/** The button that keeps the present rig, and leads to the comparison once there is one. */
export function createKeep(host, {document, words, send}) {
  let model = null;
  const node = h(document, "button", {type: "button", class: "plain", id: "keep-beside", onclick: press});
  host.append(node);

  function press() {
    if (!model.beside) return send({type: "keep-beside", beside: model.rig});
    document.getElementById("beside").scrollIntoView({block: "start"});
    document.getElementById("beside-title").focus({preventScroll: true});
  }

  return {
    update(next) {
      model = next;
      setText(node, words(next.beside ? "keep-see" : "keep-beside"));
      node.title = words(next.beside ? "keep-see-long" : "keep-beside-long");
    },
  };
}
