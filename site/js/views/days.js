// Yesterday and today side by side: why it moved, and what every instrument makes of it.
import {dayParts, dayRows, dayStory} from "./day-words.js";
import {h, hide, setText} from "./dom.js";

const COLUMNS = ["reading", "yesterday", "today", "change", "why"];

/**
 * The table of every instrument on both days.
 * @returns {{node: HTMLTableElement, fill: (rows: object[]) => void}} rows of day-words.js
 */
export function dayTable(document, words) {
  const make = (...parts) => h(document, ...parts);
  const body = make("tbody", {});
  const node = make("table", {class: "days-table"},
    make("caption", {class: "unseen"}, words("days-table")),
    make("thead", {}, make("tr", {}, COLUMNS.map((name) => make("th", {scope: "col", class: `days-${name}`}, words(`days-column-${name}`))))), body);

  function row({id, name, yesterday, today, change, arrow, moved, says, why}) {
    const cell = (column, ...children) => make("td", {"data-column": words(`days-column-${column}`), class: `days-${column}`}, ...children);
    return make("tr", {"data-reading": id, class: moved && moved !== "same" ? "moved" : false},
      make("th", {scope: "row"}, name), cell("yesterday", yesterday), cell("today", today),
      cell("change", arrow && make("span", {class: "days-arrow", "aria-hidden": "true"}, `${arrow} `), change, make("span", {class: "days-says"}, ` ${says}`)), cell("why", why));
  }
  return {node, fill: (rows) => body.replaceChildren(...rows.map(row))};
}

/**
 * @param {HTMLElement} host
 * @param {object} kit {document, words, send}
 */
export function create(host, {document, words}) {
  const make = (...parts) => h(document, ...parts);
  const title = make("h2", {id: "days-title", tabindex: -1}, words("days-title"));
  const print = make("button", {type: "button", class: "plain", id: "days-print", onclick: () => document.defaultView.print()}, words("days-print"));
  const story = make("p", {class: "days-story"});
  const order = make("p", {class: "fine"});
  const still = make("p", {class: "fine", hidden: true}, words("days-at-moment"));
  const list = make("ul", {class: "days-parts"});
  const table = dayTable(document, words);
  host.append(make("div", {class: "beside-head"}, title, print), still, story, list, order, table.node, make("p", {class: "fine"}, words("days-foot")));
  let drawn = null;

  return {
    update(model) {
      const ready = model.yesterday && model.days?.answer;
      hide(host, !ready);
      if (!ready) return;
      hide(still, !model.clock || model.clock.status === "off");
      const key = JSON.stringify([model.units.id]);
      if (drawn?.readings === model.days.answer.readings && drawn.meeting === model.days.answer.meeting && drawn.key === key && drawn.catalogue === model.catalogue) return;
      drawn = {readings: model.days.answer.readings, meeting: model.days.answer.meeting, key, catalogue: model.catalogue};
      setText(story, model.hidden ? words("hidden-days") : dayStory(model, words));
      const parts = dayParts(model, words);
      hide(list, !parts);
      hide(order, !parts);
      list.replaceChildren(...(parts?.lines ?? []).map((line) => make("li", {}, line)));
      setText(order, parts?.says ?? "");
      table.fill(dayRows(model, words));
    },
  };
}
