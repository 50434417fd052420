// The dialog that opens things: plants, cases, and a person's own file of either.
import {h} from "./dom.js";
import {sentence} from "./sentence.js";

const LARGEST = 200_000; // bytes; the longest sensible file is a tenth of it
const LONGEST = 200; // letters of what was found

/**
 * @param {HTMLDialogElement} host
 * @param {object} kit send({type: "open-file", name, text}) when a file was read
 */
export function create(host, {document, words, units, send}) {
  const make = (...parts) => h(document, ...parts);
  const plants = make("ul", {class: "offers", id: "offers-plants"});
  const cases = make("ul", {class: "offers", id: "offers-cases"});
  const problem = make("div", {id: "file-problem", role: "alert"});
  const picker = make("input", {type: "file", id: "file", hidden: true, accept: ".toml,text/plain", onchange: () => take(picker.files[0])});
  const drop = make(
    "div", {class: "drop"}, make("p", {}, words("file-drop")),
    picker, make("button", {type: "button", id: "file-pick", onclick: () => picker.click()}, words("file-pick")), problem,
  );
  host.append(
    make("div", {class: "head"}, make("h2", {id: "open-title"}, words("open-title")), make("button", {type: "button", onclick: () => host.close()}, words("close"))),
    make("h3", {}, words("open-plants")), plants,
    make("h3", {}, words("open-own")), drop, // before the long list of puzzles: it is reached by keys, too
    make("h3", {}, words("open-cases")),
    make("p", {}, make("button", {type: "button", id: "open-course", onclick: () => { host.close(); send({type: "course"}); }}, words("open-course"))), cases,
  );

  host.addEventListener("close", () => problem.replaceChildren()); // what was wrong with one file is not said of the next

  async function take(file) {
    if (!file) return;
    picker.value = "";
    if (file.size > LARGEST) return complain(file.name, {rule: "range", facts: {unit: "bytes"}});
    let bytes;
    try {
      bytes = await file.arrayBuffer();
    } catch {
      return complain(file.name, {rule: "unreadable"});
    }
    try {
      send({type: "open-file", name: file.name, text: new TextDecoder("utf-8", {fatal: true}).decode(bytes)});
    } catch {
      complain(file.name, {rule: "encoding"});
    }
  }

  /** Say what is wrong with a file: file, place, what was found, what would do. */
  function complain(file, error, shown = units) {
    if (!host.open) send({type: "ask-open"}); // with everything else that can be opened
    const row = (id, text) => text && [make("dt", {}, words(`file-${id}`)), make("dd", {}, text)];
    problem.replaceChildren(
      make(
        "div", {class: "file-error"},
        make("p", {}, make("strong", {}, words("file-refused", {file}))),
        make("p", {}, sentence(error, {words, units: shown})),
        make("dl", {}, row("where", error.where), row("found", found(error))),
        make("p", {}, words("file-old-stays")),
      ),
    );
    problem.scrollIntoView({block: "nearest"}); // on a phone it stands below a long list
  }

  const found = ({got, rule}) => (rule === "missing" || got === null || got === undefined ? "" : JSON.stringify(got).slice(0, LONGEST));

  function acceptDrops(page) {
    page.addEventListener("dragover", (event) => {
      if (![...event.dataTransfer.types].includes("Files")) return;
      event.preventDefault();
      drop.classList.add("over");
    });
    page.addEventListener("dragleave", () => drop.classList.remove("over"));
    page.addEventListener("drop", (event) => {
      if (!event.dataTransfer.files.length) return;
      event.preventDefault();
      drop.classList.remove("over");
      take(event.dataTransfer.files[0]);
    });
  }
  acceptDrops(document);

  function offer({id, title, about}, kind) {
    const level = about && make("span", {class: "about"}, about);
    return make("li", {}, make("button", {type: "button", "data-id": id, onclick: () => choose(kind, id)}, title, level));
  }

  function choose(kind, id) {
    host.close();
    send(kind === "plant" ? {type: "open-plant", plant: id} : {type: "case", case: id});
  }

  return {
    complain,
    show(catalogue) {
      problem.replaceChildren();
      plants.replaceChildren(...catalogue.plants.map((plant) => offer(plant, "plant")));
      cases.replaceChildren(...catalogue.cases.map(({id, title, level}) => offer({id, title, about: words(`case-level-${level}`)}, "case")));
      host.showModal();
    },
    close: () => host.open && host.close(),
  };
}
