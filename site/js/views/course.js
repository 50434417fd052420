// The course as a map: every packaged case by family, what is done of it, and the results of a class for whoever teaches it.
import {halfPlayed, stageOf} from "../course.js";
import {families} from "../course-order.js";
import {COLUMNS, csv, decodeAll} from "../result-code.js";
import {h, setText} from "./dom.js";

/**
 * @param {HTMLElement} host
 * @param {object} kit {document, words, send}
 */
export function create(host, {document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  const map = make("div", {class: "course-map"});
  const progress = make("p", {class: "course-progress", role: "status"});
  const forget = make("button", {type: "button", id: "course-forget", onclick: () => sure.showModal()}, words("course-forget-all"));
  const sure = confirm();
  const results = createResults(document, words, () => model.catalogue.cases);
  host.append(make("div", {class: "course-body"},
    make("header", {class: "course-head"}, make("h2", {id: "course-title", tabindex: -1}, words("course-title")), make("p", {}, words("course-about")), progress),
    map,
    make("div", {class: "panel course-own"}, make("h3", {}, words("open-own")), make("p", {class: "fine"}, words("course-own-about")),
      make("button", {type: "button", onclick: () => send({type: "ask-open"})}, words("tool-open"))),
    make("div", {class: "panel course-kept"}, make("h3", {}, words("course-kept-title")), make("p", {class: "fine"}, words("course-kept")), forget),
    results), sure);
  let model = null;
  let drawn = "";

  function confirm() {
    const dialog = make("dialog", {"aria-labelledby": "course-sure"}, make("p", {id: "course-sure"}, words("course-sure")),
      make("div", {class: "case-buttons"},
        make("button", {type: "button", id: "course-forget-yes", onclick: () => { dialog.close(); send({type: "forget-all"}); }}, words("course-forget-all")),
        make("button", {type: "button", onclick: () => dialog.close()}, words("close"))));
    return dialog;
  }

  function family({family: id, cases}, all) {
    const name = words.has(`case-family-${id}`) ? words(`case-family-${id}`) : id.replaceAll("-", " ");
    return make("section", {class: "panel course-family", "aria-label": name}, make("h3", {}, name),
      make("ol", {class: "course-cases"}, cases.map((one) => row(one, all))));
  }

  function row({id, title, level, worked, after}, all) {
    const entry = all.of(id);
    const stage = stageOf(entry);
    const before = after.map((one) => ({one, title: model.catalogue.cases.find((each) => each.id === one)?.title})).filter((each) => each.title);
    const open = before.filter(({one}) => stageOf(all.of(one)) !== "done");
    const kind = [words(`case-level-${level}`), worked && words("case-worked")].filter(Boolean).join(" · ");
    return make("li", {class: `course-case course-${stage}`, "data-case": id},
      make("button", {type: "button", class: "course-go", "data-id": id, onclick: () => send({type: "case", case: id})},
        make("span", {class: "course-mark", "aria-hidden": "true"}, {new: "○", begun: "◐", done: "●"}[stage]),
        make("span", {class: "course-name"}, make("strong", {}, title), make("span", {class: "about"}, kind),
          open.length > 0 && make("span", {class: "about"}, words("course-after", {titles: open.map((each) => each.title).join(words("comma"))})))),
      make("p", {class: "course-state"}, stateText(entry, stage)),
      make("div", {class: "case-buttons"},
        make("button", {type: "button", class: "plain", onclick: () => send({type: "draw", case: id})}, words("case-draw")),
        stage !== "new" && make("button", {type: "button", class: "plain", onclick: () => send({type: "forget", case: id}), "aria-label": words("course-forget-one", {title})}, words("course-forget"))));
  }

  function stateText(entry, stage) {
    if (stage === "new") return words("course-new");
    const last = entry.results.at(-1);
    const done = last && words(`course-done-${last.rightness}`, {minutes: last.minutes, outcome: words(`course-outcome-${last.outcome}`)});
    const score = last?.score !== null && last?.score !== undefined && words("course-score", {score: String(Math.round(last.score))});
    return [halfPlayed(entry) && words("course-begun", {moves: entry.moves.length}), done, score].filter(Boolean).join(" ");
  }

  return {
    update(next) {
      model = next;
      const {cases} = next.catalogue;
      const all = next.course;
      const now = JSON.stringify([cases, all.all]);
      if (now === drawn) return;
      drawn = now;
      const done = cases.filter(({id}) => stageOf(all.of(id)) === "done").length;
      setText(progress, words("course-progress", {done, of: cases.length}));
      const held = document.activeElement?.dataset?.id;
      map.replaceChildren(...families(cases).map((one) => family(one, all)));
      if (held) map.querySelector(`[data-id="${CSS.escape(held)}"]`)?.focus({preventScroll: true});
    },
  };
}

/** Columns whose values have words; a newer page's code may hold others. */
const WORDED = {
  says: {has: (value, words) => words.has(`case-way-${value}`), says: (value, words) => words(`case-way-${value}`)},
  suspects: {has: (value, words) => words.has(`case-group-${value}`), says: (value, words) => words(`case-group-${value}`)},
  action: {has: (value, words) => words.has(`case-action-${value}`), says: (value, words) => words(`case-action-${value}`)},
  rightness: {has: (value, words) => words.has(`course-rightness-${value}`), says: (value, words) => words(`course-rightness-${value}`)},
  outcome: {has: (value, words) => words.has(`course-outcome-${value}`), says: (value, words) => words(`course-outcome-${value}`)},
};

/** Codes that learners handed in, as a table and as a file for other programs. */
function createResults(document, words, cases) {
  const make = (...parts) => h(document, ...parts);
  const box = make("textarea", {id: "course-codes", class: "result-lines", rows: 4, spellcheck: "false", oninput: read});
  const said = make("p", {role: "status"});
  const place = make("div", {class: "course-table"});
  const save = make("button", {type: "button", id: "course-save", hidden: true, onclick: download}, words("course-save"));
  let found = [];

  function read() {
    const {results, damaged} = decodeAll(box.value);
    found = results;
    save.hidden = results.length === 0;
    setText(said, [results.length > 0 && words("course-read", {count: results.length}), damaged.length > 0 && words("course-damaged", {count: damaged.length, line: damaged[0]?.slice(0, 60) ?? ""})].filter(Boolean).join(" "));
    place.replaceChildren(...(results.length ? [tableOf(results)] : []));
  }

  function tableOf(results) {
    return make("table", {}, make("thead", {}, make("tr", {}, COLUMNS.map((name) => make("th", {scope: "col"}, words(`course-column-${name}`))))),
      make("tbody", {}, results.map((result) => make("tr", {}, COLUMNS.map((name) => make("td", {}, shown(name, result)))))));
  }

  function shown(name, result) {
    const value = result[name];
    if (value === null) return "";
    if (name === "case") return cases().find(({id}) => id === value)?.title ?? value;
    if (WORDED[name]?.has(value, words)) return WORDED[name].says(value, words);
    return Array.isArray(value) ? value.join(words("comma")) : String(value);
  }

  function download() {
    const address = URL.createObjectURL(new Blob([csv(found, (name) => words(`course-column-${name}`))], {type: "text/csv"}));
    make("a", {href: address, download: "results.csv"}).click();
    setTimeout(() => URL.revokeObjectURL(address), 1000);
  }

  return make("section", {class: "panel course-results", "aria-labelledby": "course-results-title"},
    make("h3", {id: "course-results-title"}, words("course-results")),
    make("label", {for: "course-codes"}, words("course-codes")), box, said, place, save);
}
