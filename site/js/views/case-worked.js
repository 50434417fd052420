// A worked case: the check that tells most for its cost, and what it is to part, shown when asked for; the verdict stays the learner's.
import {block, button, make} from "./case-dom.js";
import {bitText, percent, standing} from "./case-debrief.js";
import {createLots} from "./case-lots.js";
import {costText, line, playKey} from "./case-parts.js";

/**
 * @param {object} deps {document, words, ask}
 * @returns {{node: Element, show: (play: object, view: object, units: object, move: (move: object) => void) => void, stop: () => void}}
 */
export function createWorked({document, words, ask}) {
  const lots = createLots({document, words, ask}, "case-worked-wait");
  const body = make(document, "div", {class: "case-debrief-body", role: "status"});
  const node = block(document, "worked", words("case-worked-title"), body);
  let turn = 0;
  let key = null; // the play that `said` is about
  let said = null; // its next step, once it was asked for
  let latest = null; // what was shown last

  function show(play, view, units, move) {
    latest = {play, view, units, move};
    if (key === playKey(play)) return said && tell();
    key = playKey(play);
    said = null;
    turn += 1;
    body.replaceChildren(make(document, "p", {class: "case-soft"}, words("case-worked-note")),
      button(document, "next-worked", words("case-worked-show"), reckon));
  }

  async function reckon() {
    const mine = (turn += 1);
    put(lots.node);
    const answer = await lots.run("worked", latest.play, () => mine === turn).catch(() => null);
    if (mine !== turn) return;
    said = answer?.step ?? null;
    if (said) tell();
    else put(make(document, "p", {}, words("case-debrief-failed")), button(document, "next-worked", words("case-again"), reckon));
  }

  function tell() {
    put(...told(document, said, latest, words));
  }

  /** What the focus was on goes; it stays in this part. */
  function put(...nodes) {
    const held = body.contains(document.activeElement);
    body.replaceChildren(...nodes);
    if (held) node.querySelector("h3").focus({preventScroll: true});
  }

  function stop() {
    turn += 1;
    key = null;
  }

  return {node, show, stop};
}

function told(document, step, {view, units, move}, words) {
  if (!step.check) return [make(document, "p", {}, words(step.sure ? "case-worked-sure" : "case-worked-enough", {share: percent(step.enough)}))];
  const check = view.checks.find(({id}) => id === step.check);
  return [
    make(document, "p", {}, words("case-worked-fits", {standing: standing(step, words)})),
    make(document, "p", {}, make(document, "strong", {}, line(check.says, units)), " ", make(document, "span", {class: "case-cost"}, costText(check, words))),
    make(document, "p", {}, words("case-worked-why", {bits: bitText(step.bits)})),
    button(document, "take-worked", words("case-worked-take"), () => move({do: "check", id: check.id}), "case-button case-main"),
  ];
}
