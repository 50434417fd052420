// Where the notes lie below what is in sight, as on a phone: the most urgent caution, and the way to what it says.
import {h, hide, setText} from "./dom.js";
import {noteEntries} from "./notes.js";

const BELOW = "(max-width: 39.9375em)"; // likewise in styles/header.css

/**
 * @param {HTMLElement} host where the page's news stand
 * @param {{document: Document, words: function}} kit
 * @param {HTMLElement} notes host of the notes
 */
export function create(host, {document, words}, notes) {
  const button = h(document, "button", {type: "button", class: "plain alarm", hidden: true, onclick: lead});
  const below = document.defaultView.matchMedia(BELOW);
  host.append(button);

  function lead() {
    notes.scrollIntoView({block: "center"});
    notes.querySelector(".caution .note-title")?.focus({preventScroll: true});
  }

  return {
    /** @param {object|null} model null where the rig is out of sight */
    update(model) {
      const worst = below.matches && model ? noteEntries({...model, words}).find(({caution}) => caution !== null) : undefined;
      hide(button, !worst);
      setText(button, worst?.title ?? "");
    },
  };
}
