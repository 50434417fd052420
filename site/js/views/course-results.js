// Results that learners handed in, for whoever teaches: lines of text read as a table, and as a file for other programs.
import {wishOf} from "../practice.js";
import {COLUMNS, csv, decodeAll} from "../result-code.js";
import {h, setAttributes, setText} from "./dom.js";
import {practiceName} from "./practice.js";

/** Columns whose values have words; a newer page's code may hold others. */
const WORDED = {
  says: {has: (value, words) => words.has(`case-way-${value}`), says: (value, words) => words(`case-way-${value}`)},
  suspects: {has: (value, words) => words.has(`case-group-${value}`), says: (value, words) => words(`case-group-${value}`)},
  action: {has: (value, words) => words.has(`case-action-${value}`), says: (value, words) => words(`case-action-${value}`)},
  rightness: {has: (value, words) => words.has(`course-rightness-${value}`), says: (value, words) => words(`course-rightness-${value}`)},
  outcome: {has: (value, words) => words.has(`course-outcome-${value}`), says: (value, words) => words(`course-outcome-${value}`)},
};

/** A table wider than the page is moved sideways by keys too. */
const MOVED = {tabindex: "0", role: "group", "aria-labelledby": "course-results-title"};

/**
 * @param {Document} document
 * @param {Function} words
 * @param {() => object[]} cases of the catalogue
 * @returns {Element}
 */
export function createResults(document, words, cases) {
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
    setAttributes(place, results.length ? MOVED : {tabindex: null, role: null, "aria-labelledby": null});
  }

  function tableOf(results) {
    return make("table", {}, make("thead", {}, make("tr", {}, COLUMNS.map((name) => make("th", {scope: "col"}, words(`course-column-${name}`))))),
      make("tbody", {}, results.map((result) => make("tr", {}, COLUMNS.map((name) => make("td", {}, shown(name, result)))))));
  }

  function shown(name, result) {
    const value = result[name];
    if (value === null) return "";
    if (name === "case") return cases().find(({id}) => id === value)?.title ?? (wishOf(value) ? practiceName(wishOf(value), words) : value);
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
