// The course as a map: every packaged case by family, what is done of it, and the results of a class for whoever teaches it.
import {stageOf} from "../course.js";
import {families, nextCase} from "../course-order.js";
import {createResults} from "./course-results.js";
import {MARKS, stateText} from "./course-state.js";
import {h, icon, setText} from "./dom.js";
import {createPractice} from "./practice.js";

const DIE = "M5 5h14v14H5z M9 9h.01 M15 9h.01 M12 12h.01 M9 15h.01 M15 15h.01";

/**
 * @param {HTMLElement} host
 * @param {object} kit {document, words, send}
 */
export function create(host, {document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  const map = make("div", {class: "course-map"});
  const goOn = make("button", {type: "button", id: "course-go-on", class: "case-button case-main", onclick: () => send({type: "case", case: ahead.id})});
  const progress = make("p", {class: "course-progress", role: "status"});
  const forget = make("button", {type: "button", id: "course-forget", onclick: () => sure.showModal()}, words("course-forget-all"));
  const sure = confirm();
  const results = createResults(document, words, () => model.catalogue.cases);
  const practice = createPractice({document, words, send});
  host.append(make("div", {class: "course-body"},
    make("header", {class: "course-head"}, make("h2", {id: "course-title", tabindex: -1}, words("course-title")), make("p", {}, words("course-about")), progress, goOn, make("p", {class: "fine"}, icon(document, DIE), " ", words("course-die"))),
    practice.node,
    map,
    make("div", {class: "panel course-own"}, make("h3", {}, words("open-own")), make("p", {class: "fine"}, words("course-own-about")),
      make("button", {type: "button", onclick: () => send({type: "ask-open"})}, words("tool-open"))),
    make("div", {class: "panel course-kept"}, make("h3", {}, words("course-kept-title")), make("p", {class: "fine"}, words("course-kept")), forget),
    results), sure);
  let model = null;
  let ahead = null; // the case that comes next
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
    const done = cases.filter((one) => stageOf(all.of(one.id)) === "done").length;
    return make("section", {class: "panel course-family", "aria-label": name},
      make("div", {class: "course-family-head"}, make("h3", {}, name), make("p", {class: "fine"}, words("course-progress", {done, of: cases.length}))),
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
        make("span", {class: "course-mark", "aria-hidden": "true"}, MARKS[stage]),
        make("span", {class: "course-name"}, make("strong", {}, title), make("span", {class: "about"}, kind),
          open.length > 0 && make("span", {class: "about"}, words("course-after", {titles: open.map((each) => each.title).join(words("comma"))})))),
      make("button", {type: "button", class: "course-draw", "aria-label": words("course-draw-one", {title}), title: words("case-draw"), onclick: () => send({type: "draw", case: id})}, icon(document, DIE)),
      make("div", {class: stage === "new" ? "unseen" : "course-kept-of"},
        make("p", {class: "course-state"}, stateText(entry, stage, words)),
        stage !== "new" && make("button", {type: "button", class: "plain", onclick: () => send({type: "forget", case: id}), "aria-label": words("course-forget-one", {title})}, words("course-forget"))));
  }

  /** The way on: what was left half played, else what comes next on the map. */
  function showWay(cases, all) {
    const begun = cases.find(({id}) => stageOf(all.of(id)) === "begun");
    ahead = begun ?? nextCase(cases, (id) => stageOf(all.of(id)) === "done");
    goOn.hidden = !ahead;
    if (ahead) setText(goOn, words(begun ? "course-go-on" : "course-begin", {title: ahead.title}));
  }

  return {
    update(next) {
      model = next;
      practice.update(next);
      const {cases} = next.catalogue;
      const all = next.course;
      const now = JSON.stringify([cases, all.all]);
      if (now === drawn) return;
      drawn = now;
      const done = cases.filter(({id}) => stageOf(all.of(id)) === "done").length;
      setText(progress, words("course-progress", {done, of: cases.length}));
      showWay(cases, all);
      const held = document.activeElement?.dataset?.id;
      map.replaceChildren(...families(cases).map((one) => family(one, all)));
      if (held) map.querySelector(`[data-id="${CSS.escape(held)}"]`)?.focus({preventScroll: true});
    },
  };
}
