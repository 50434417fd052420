// Practice on the course map: a level, a number or none, and a puzzle is made; how far that is; those made before.
import {SEEDS, drawSeed, stageOf} from "../course.js";
import {LEVELS} from "../course-order.js";
import {titleOf, typedSeed} from "../practice.js";
import {MARKS, stateText} from "./course-state.js";
import {h, setAttributes, setText} from "./dom.js";

/** "Practice no. 7"; with the level where it was not drawn. */
export function practiceName({seed, level}, words) {
  return level ? words("practice-name", {seed: String(seed), level: words(`case-level-${level}`)}) : words("practice-name-any", {seed: String(seed)});
}

/**
 * @param {object} kit {document, words, send}
 * @returns {{node: Element, update: (model: {practice: {now: object, all: object[], level: string|null}, course: object, ready: boolean}) => void}}
 */
export function createPractice({document, words, send}) {
  const make = (...parts) => h(document, ...parts);
  const form = createForm(document, words, send);
  const making = createMaking(document, words, send);
  const trouble = make("div", {class: "practice-trouble", role: "alert"});
  const before = createBefore(document, words, send);
  const node = make("section", {class: "panel course-practice", "aria-labelledby": "practice-title"},
    make("h3", {id: "practice-title"}, words("practice-title")), make("p", {class: "fine"}, words("practice-about")), form.node, making.node, trouble, before.node);
  let stage = "idle";

  function turned(now) {
    const was = stage;
    stage = now.stage;
    form.node.hidden = stage === "making";
    making.node.hidden = stage !== "making";
    trouble.replaceChildren(...(stage === "failed" ? failed(now) : []));
    if (stage === "making") making.stop.focus({preventScroll: true});
    else if (was === "making" && (node.contains(document.activeElement) || document.activeElement === document.body)) form.button.focus({preventScroll: true});
    if (stage !== "idle") node.scrollIntoView({block: "nearest"});
  }

  function failed({wish, error, again}) {
    const given = error.rule === "fair";
    return [make("p", {}, words(given ? "practice-given-up" : "practice-failed", {seed: String(wish.seed)})),
      !given && make("button", {type: "button", id: "practice-again", onclick: again}, words("case-again"))].filter(Boolean);
  }

  return {
    node,
    update({practice, course, ready}) {
      form.update(practice.level);
      if (practice.now.stage !== stage) turned(practice.now);
      if (stage === "making") making.update(practice.now, ready);
      before.update(practice.all, course);
    },
  };
}

function createForm(document, words, send) {
  const make = (...parts) => h(document, ...parts);
  const level = make("select", {id: "practice-level"}, make("option", {value: ""}, words("practice-level-any")),
    LEVELS.map((one) => make("option", {value: one}, words(`case-level-${one}`))));
  const number = make("input", {type: "text", inputmode: "numeric", id: "practice-number", autocomplete: "off", maxlength: 9, "aria-describedby": "practice-wrong", onkeydown: (event) => event.key === "Enter" && go()});
  const wrong = make("p", {class: "practice-wrong", id: "practice-wrong", role: "alert"});
  const button = make("button", {type: "button", id: "practice-make", class: "practice-make", onclick: go}, words("practice-make"));
  const node = make("div", {class: "practice-form"},
    make("div", {class: "practice-field"}, make("label", {for: "practice-level"}, words("practice-level")), level),
    make("div", {class: "practice-field"}, make("label", {for: "practice-number"}, words("practice-number")), number),
    button, wrong);
  let told = null; // the level that was set from outside

  function go() {
    const seed = typedSeed(number.value);
    setText(wrong, seed === undefined ? words("practice-number-wrong", {low: String(SEEDS[0]), high: String(SEEDS[1])}) : "");
    setAttributes(number, {"aria-invalid": seed === undefined ? "true" : null});
    if (seed === undefined) return number.focus();
    number.value = "";
    send({type: "practice", level: level.value || null, seed: seed ?? drawSeed()});
  }

  return {
    node,
    button,
    update(now) {
      if (told === now) return;
      told = now;
      level.value = now;
    },
  };
}

function createMaking(document, words, send) {
  const make = (...parts) => h(document, ...parts);
  const what = make("p", {class: "practice-what"});
  const doing = make("p", {role: "status"});
  const bar = make("progress", {max: 1, "aria-label": words("practice-bar")});
  const far = make("p", {class: "fine"});
  const stop = make("button", {type: "button", id: "practice-stop", onclick: () => send({type: "practice-stop"})}, words("practice-stop"));
  const node = make("div", {class: "practice-making", hidden: true}, what, doing, bar, far, stop);

  return {
    node,
    stop,
    update({wish, tried, most, doing: part, done, of}, ready) {
      setText(what, words("practice-making", {name: practiceName(wish, words)}));
      setText(doing, ready ? [words("practice-draw", {draw: tried + 1}), part && words(`practice-doing-${part}`)].filter(Boolean).join(" ") : words("practice-waits"));
      setText(far, [part === "suspects" && of > 0 && words("practice-suspects", {done, of}), part === "chance" && of > 0 && words("practice-chance", {done, of}),
        tried > 0 && words("practice-refused", {count: tried, most})].filter(Boolean).join(" "));
      setAttributes(bar, of > 0 ? {max: of, value: done} : {value: null});
    },
  };
}

function createBefore(document, words, send) {
  const make = (...parts) => h(document, ...parts);
  const count = make("summary", {});
  const list = make("ol", {class: "course-cases"});
  const node = make("details", {class: "practice-before folds", hidden: true}, count, list);
  let drawn = "";

  function row({id, file, practice}, entry) {
    const stage = stageOf(entry);
    const title = titleOf(file);
    return make("li", {class: `course-case course-${stage}`, "data-case": id},
      make("button", {type: "button", class: "course-go", "data-id": id, onclick: () => send({type: "case", case: file, practice})},
        make("span", {class: "course-mark", "aria-hidden": "true"}, MARKS[stage]),
        make("span", {class: "course-name"}, make("strong", {}, title), make("span", {class: "about"}, practiceName(practice, words)))),
      make("div", {class: "course-kept-of"},
        make("p", {class: "course-state"}, stateText(entry, stage, words)),
        make("button", {type: "button", class: "plain", onclick: () => send({type: "forget", case: id}), "aria-label": words("course-forget-one", {title})}, words("course-forget"))));
  }

  return {
    node,
    update(all, course) {
      const entries = all.map(({id}) => course.of(id));
      const now = JSON.stringify([all.map(({id}) => id), entries]);
      if (now === drawn) return;
      drawn = now;
      const held = list.contains(document.activeElement) ? document.activeElement.dataset.id ?? "" : null;
      node.hidden = all.length === 0;
      setText(count, words("practice-before", {count: all.length, begun: entries.filter((entry) => stageOf(entry) === "begun").length}));
      list.replaceChildren(...all.map((one, n) => row(one, entries[n])));
      if (held !== null) (list.querySelector(`[data-id="${CSS.escape(held)}"]`) ?? count).focus({preventScroll: true});
    },
  };
}
