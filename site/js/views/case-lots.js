// What the engine reckons in lots, so that nothing else has to wait: asked again and again, with a bar that says how far it is.
import {make} from "./case-dom.js";

/**
 * @param {object} deps {document, words, ask}
 * @param {string} wait  id of the words that say what is being reckoned
 * @returns {{node: Element, run: (kind: string, body: object, wanted: () => boolean) => Promise<object|null>}}
 *   `run` gives the answer once all lots are reckoned; null where it is no longer wanted
 */
export function createLots({document, words, ask}, wait) {
  const bar = make(document, "progress", {max: 1, "aria-label": words(wait)});
  const node = make(document, "div", {class: "case-lots"}, make(document, "p", {class: "case-soft"}, words(wait)), bar);

  async function run(kind, body, wanted) {
    bar.removeAttribute("value");
    for (;;) {
      const answer = await ask(kind, body, "debrief");
      if (!wanted()) return null;
      if (answer.done === answer.of) return answer;
      bar.setAttribute("max", String(answer.of));
      bar.setAttribute("value", String(answer.done));
    }
  }

  return {node, run};
}
