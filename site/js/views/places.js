// The two places of the page, the rig and the puzzles, always in sight.
import {h} from "./dom.js";

const PLACES = [["rig", "rig"], ["case", "cases"]]; // place in the state, and the action that goes there

/** @returns {{update: (now: {inCase: boolean, cases: object[]}) => void}} */
export function create(host, {document, words, send}) {
  const buttons = new Map(PLACES.map(([place, action]) => [place, h(document, "button", {
    type: "button", id: `place-${place}`, onclick: () => send({type: action}),
  }, words(`place-${place}`))]));
  host.append(...buttons.values());
  return {
    update({inCase, cases}) {
      for (const [place, button] of buttons) {
        if ((place === "case") === inCase) button.setAttribute("aria-current", "page");
        else button.removeAttribute("aria-current");
      }
      buttons.get("case").disabled = cases.length === 0; // not told yet
    },
  };
}
