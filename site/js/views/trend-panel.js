// The trend strip: what the instruments showed while time ran, to be read at any time and saved as a table.
import {createFigure, hostSize} from "../lib/figure.js";
import {h, hide, setText} from "./dom.js";
import {isoTime, timeText} from "./plant-time.js";
import {csvOf} from "./trend-csv.js";
import {stripHeight} from "./trend-geometry.js";
import {buildStrip} from "./trend-strip.js";

/** Which instruments are shown until somebody chooses. */
const FIRST = ["gauge-discharge", "flow-meter", "ammeter-1", "level-supply", "level-delivery"];

/** How far back the strip shows; null is all of it. [s] */
const SPANS = Object.freeze({all: null, minute: 60, minutes: 600, hour: 3600});
const MOST_EVENTS = 8; // in the list

export function create(host, {document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  const name = (id) => words(`draw-${id}`);
  let model = null, listed = "", told = "", running = false;

  const span = make("select", {id: "trend-span", "aria-label": words("trend-span"), onchange: () => look({span: span.value})},
    Object.keys(SPANS).map((id) => make("option", {value: id}, words(`trend-span-${id}`))));
  const save = make("button", {type: "button", id: "trend-save", onclick: download}, words("trend-save"));
  const go = make("button", {type: "button", id: "trend-go", onclick: () => send({type: running ? "clock-pause" : "clock-run"})});
  const back = make("button", {type: "button", class: "plain", id: "trend-back", onclick: toRig}, words("trend-back"));
  const boxes = make("div", {class: "trend-boxes"});
  const chooser = make("details", {class: "trend-chooser"}, make("summary", {}, words("trend-choose")), make("fieldset", {}, make("legend", {class: "unseen"}, words("trend-choose")), boxes));
  const drawing = make("div", {class: "drawing trend-drawing"});
  const events = make("ol", {class: "trend-events", "aria-label": words("trend-events")});
  host.append(
    make("div", {class: "beside-head"}, make("h2", {id: "trend-title", tabindex: -1}, words("trend-title")), make("div", {class: "trend-tools"}, go, back, span, save)),
    chooser, drawing, events);

  const figure = createFigure(drawing, document, "trend", {
    size: (place) => ({...hostSize(place, document, {width: 900, height: 300, least: [260, 100]}), height: 0}),
    plan: ({ids, units}) => `${ids.join()} ${units.id}`,
    fit: ({ids}, {width}) => ({width, height: stripHeight(ids.length)}),
    build: (svg, now, size) => buildStrip(svg, now, size, {document, words, name}),
  });

  function look(part) {
    send({type: "trend-look", look: {...model.look, ...part}});
  }

  function toRig() {
    document.getElementById("rig").scrollIntoView({block: "start"});
    document.getElementById("clock-trend").focus({preventScroll: true});
  }

  function choose() {
    look({ids: [...boxes.querySelectorAll("input")].filter(({checked}) => checked).map(({value}) => value)});
  }

  function download() {
    const {units, record, title} = model;
    const headings = {time: `${words("trend-csv-time")} [s]`, iso: words("trend-csv-iso"), low: (one) => words("trend-csv-low", {name: one}), high: (one) => words("trend-csv-high", {name: one})};
    const text = csvOf(record, {units, name, headings});
    const address = URL.createObjectURL(new Blob(["\ufeff", text], {type: "text/csv;charset=utf-8"})); // the mark tells spreadsheets how it is written
    const link = make("a", {href: address, download: `${fileName(title)}-${isoTime(record.rows.at(-1)?.time ?? 0).replaceAll(".", "_")}.csv`});
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 10_000);
  }

  function list({columns}, ids) {
    const wanted = JSON.stringify([columns.map(({id}) => id), ids]);
    if (wanted === listed) return;
    listed = wanted;
    const held = document.activeElement?.closest?.(".trend-boxes") ? document.activeElement.value : null;
    boxes.replaceChildren(...columns.map(({id}) => make("label", {}, make("input", {type: "checkbox", value: id, checked: ids.includes(id), onchange: choose}), name(id))));
    if (held) boxes.querySelector(`[value="${held}"]`)?.focus();
  }

  function tell(record) {
    const last = record.events.slice(-MOST_EVENTS).reverse();
    const wanted = JSON.stringify(last);
    if (wanted === told) return;
    told = wanted;
    events.replaceChildren(...last.map((event) => make("li", {}, make("span", {class: "clock-time"}, timeText(event.time, {tenths: true})), ` ${eventText(event, words)}`)));
    hide(events, last.length === 0);
  }

  return {
    update({clock, units, look: chosen, plant}) {
      const {record} = clock;
      hide(host, record.rows.length === 0);
      if (record.rows.length === 0) return;
      const known = record.columns.map(({id}) => id);
      const ids = (chosen.ids ?? FIRST).filter((id) => known.includes(id));
      model = {units, record, look: chosen, ids, span: SPANS[chosen.span] ?? null, title: plant?.title ?? ""};
      if (span.value !== (chosen.span ?? "all")) span.value = chosen.span ?? "all";
      running = clock.status === "running";
      hide(go, clock.status === "off");
      setText(go, words(running ? "clock-pause" : "clock-run"));
      list(record, ids);
      tell(record);
      figure.update(model);
    },
  };
}

/** What happened, in a sentence. */
export function eventText({kind, where}, words) {
  const number = /\d$/.test(where) ? where.at(-1) : "1";
  return words(`event-${kind}`, {number});
}

/** A title as the name of a file. */
const fileName = (title) => title.normalize("NFKD").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 60) || "trend";

/** Whether what was kept of the choices can be used. */
export const isLook = (look) => look !== null && typeof look === "object" && (look.span === undefined || Object.hasOwn(SPANS, look.span))
  && (look.ids === undefined || (Array.isArray(look.ids) && look.ids.every((id) => typeof id === "string")));
