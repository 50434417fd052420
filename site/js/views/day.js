// Remembering the rig as it stands as yesterday's, and forgetting it again.
import {same} from "../history.js";
import {standing} from "../model.js";
import {h, hide, setText} from "./dom.js";
import {sentence} from "./sentence.js";

/**
 * @param {HTMLElement} host
 * @param {object} kit {document, words, send, causes}; `causes` is the dialog of causes
 */
export function create(host, {document, words, send, causes}) {
  let model = null;
  const state = h(document, "p", {class: "fine", hidden: true});
  const button = h(document, "button", {type: "button", class: "plain", id: "remember-day", onclick: press});
  const see = h(document, "button", {type: "button", class: "plain", id: "see-days", hidden: true, onclick: () => {
    document.getElementById("days").scrollIntoView({block: "start"});
    document.getElementById("days-title").focus({preventScroll: true});
  }}, words("days-see"));
  const change = h(document, "button", {type: "button", class: "plain", id: "open-causes", title: words("causes-open-long"), onclick: () => causes.open(model)}, words("causes-open"));
  host.append(state, change, see, button);

  function press() {
    send({type: "remember", yesterday: model.yesterday ? null : standing(model)});
  }

  return {
    update(next) {
      model = next;
      setText(button, words(next.yesterday ? "forget-day" : "remember-day"));
      button.title = words(next.yesterday ? "forget-day-long" : "remember-day-long");
      const said = dayWords(next, words);
      setText(state, said);
      for (const each of [change, button]) hide(each, Boolean(next.hidden)); // one thing at a time, and the day it is judged by stays
      hide(see, !next.yesterday || !next.days?.answer);
      hide(state, said === "");
    },
  };
}

/** What is to be said of the remembered day itself: that it cannot be had, or that nothing has changed since. */
export function dayWords(model, words) {
  const {yesterday, rig, hidden} = model;
  if (!yesterday || hidden) return "";
  if (model.clock && model.clock.status !== "off") return words("days-at-moment");
  if (yesterday.error) return yesterday.error.rule ? sentence(yesterday.error, model) : words("day-failed");
  return same(yesterday.rig, rig) ? words("day-same") : "";
}
