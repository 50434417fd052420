// For the author of a case that is open from a file: whether it is fair, in plain words, from many plays by the engine.
import {block, button, make, table} from "./case-dom.js";
import {percent} from "./case-debrief.js";
import {createLots} from "./case-lots.js";
import {costText, line, playKey} from "./case-parts.js";
import {sentence} from "./sentence.js";

const STAYS = 0.03; // probability from which a wrong verdict is named, as in the debrief

/**
 * @param {object} deps {document, words, ask}
 * @returns {{node: Element, show: (play: object, view: object, units: object) => void, stop: () => void}}
 */
export function createFair({document, words, ask}) {
  const lots = createLots({document, words, ask}, "case-fair-wait");
  const body = make(document, "div", {class: "case-debrief-body", role: "status"});
  const node = block(document, "fair", words("case-fair-title"), make(document, "p", {class: "case-soft"}, words("case-fair-note")), body);
  let turn = 0;
  let key = null; // the case that `found` is about
  let found = null;
  let latest = null;

  function show(play, view, units) {
    latest = {play: {...play, moves: []}, view, units};
    if (key === playKey(latest.play)) return found && tell();
    key = playKey(latest.play);
    found = null;
    turn += 1;
    put(button(document, "fair-ask", words("case-fair-ask"), reckon));
  }

  async function reckon() {
    const mine = (turn += 1);
    put(lots.node);
    const answer = await lots.run("fair", latest.play, () => mine === turn).catch(() => null);
    if (mine !== turn) return;
    found = answer?.fairness ?? null;
    if (found) tell();
    else put(make(document, "p", {}, words("case-debrief-failed")), button(document, "fair-ask", words("case-again"), reckon));
  }

  function tell() {
    put(...told(document, found, latest, words));
  }

  function put(...nodes) {
    const held = body.contains(document.activeElement);
    body.replaceChildren(...nodes);
    if (held) node.querySelector("h3").focus({preventScroll: true});
  }

  return {node, show, stop: () => { turn += 1; key = null; }};
}

const whole = (number) => String(Math.round(number));

/** Wrong verdicts that stay likely after all checks, the likeliest first. */
export const rivalsOf = ({rivals}) => Object.entries(rivals).filter(([, chance]) => chance >= STAYS).sort(([, a], [, b]) => b - a);

function told(document, found, {view, units}, words) {
  const {faults} = found;
  const says = (id) => line(view.choices.find((choice) => choice.id === id).says, units);
  const rivals = rivalsOf(found);
  return [
    make(document, "p", {class: "case-points"}, words(faults.length ? "case-fair-no" : "case-fair-yes")),
    faults.length > 0 && make(document, "ul", {class: "case-list"}, ...faults.map((fault) => make(document, "li", {}, sentence(fault, {words, units})))),
    make(document, "p", {}, words("case-fair-found", {group: percent(found.group)}), " ",
      found.told ? words("case-fair-cause", {cause: percent(found.cause)}) : words("case-fair-untold")),
    make(document, "p", {}, rivals.length ? words("case-fair-rivals", {rivals: rivals.map(([id, chance]) => words("case-fair-rival", {says: says(id), share: percent(chance)})).join(words("case-or"))})
      : words("case-fair-no-rivals")),
    make(document, "p", {}, words("case-fair-way", {checks: found.checks, cost: costText({minutes: found.cost}, words), decided: percent(found.decided), points: whole(found.led)})),
    table(document, words("case-fair-habits"), ["", words("case-fair-points")],
      Object.entries(found.habits).map(([habit, points]) => [words(`case-habit-${habit}`), whole(points)])),
  ].filter(Boolean);
}
