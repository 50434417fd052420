// While something is hidden: that it is, and the way to be told. Afterwards: what it was.
import {causeWords} from "./cause-words.js";
import {sizeText} from "./cause-size.js";
import {h, hide, setText} from "./dom.js";

/**
 * @param {HTMLElement} host
 * @param {object} kit {document, words, send}
 */
export function create(host, {document, words, send}) {
  let model = null;
  const says = h(document, "p", {class: "hidden-says", tabindex: -1, role: "status"});
  const more = h(document, "p", {class: "fine"});
  const button = h(document, "button", {type: "button", class: "plain", id: "reveal", onclick: press});
  host.append(says, more, button);

  function press() {
    if (model.hidden) send({type: "reveal"});
    else send({type: "remember", yesterday: model.yesterday?.rig ?? null}); // the same day, and nothing more to be told
    says.focus({preventScroll: true});
  }

  return {
    update(next) {
      model = next;
      hide(host, !next.hidden && !next.told);
      if (host.hidden) return;
      setText(says, next.hidden ? words("hidden-says") : toldText(next, words));
      setText(more, next.hidden ? words("hidden-about") : causeWords(words, next.told.cause).follows);
      setText(button, words(next.hidden ? "hidden-reveal" : "hidden-close"));
    },
  };
}

/** What happened, with its size. */
export function toldText({told: {cause, size, unit}, units}, words) {
  const {happened, size: name} = causeWords(words, cause);
  return size === null ? words("hidden-told", {happened}) : words("hidden-told-size", {happened, name, size: sizeText({unit}, size, units)});
}
