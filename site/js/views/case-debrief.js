// What the play was worth: what each step told, what still fitted, what speaks against the verdict, and the points.
import {block, button, make, table} from "./case-dom.js";
import {createLots} from "./case-lots.js";
import {costText, line} from "./case-parts.js";
import {causeWords} from "./cause-words.js";

/**
 * @param {object} deps {document, words, ask}
 * @returns {{node: Element, show: (play: object, view: object, units: object, onscore: (points: number) => void) => void, stop: () => void}}
 */
export function createDebrief({document, words, ask}) {
  const lots = createLots({document, words, ask}, "case-debrief-wait");
  const body = make(document, "div", {class: "case-debrief-body"});
  const node = block(document, "debrief", words("case-debrief-title"), body);
  let turn = 0;
  let known = null; // {key, debrief}

  async function show(play, view, units, onscore) {
    const mine = (turn += 1);
    const key = JSON.stringify([play.case, play.seed, play.moves]);
    if (known?.key !== key) {
      body.replaceChildren(lots.node);
      const answer = await lots.run("debrief", play, () => mine === turn).catch(() => null);
      if (mine !== turn) return;
      const debrief = answer?.debrief;
      if (!debrief) return fail(() => show(play, view, units, onscore));
      known = {key, debrief};
    }
    body.replaceChildren(...told(document, known.debrief, view, {words, units}));
    onscore(known.debrief.score.points);
  }

  const fail = (again) => body.replaceChildren(make(document, "p", {}, words("case-debrief-failed")), button(document, "weigh", words("case-again"), again));

  return {node, show, stop: () => { turn += 1; }};
}

export const percent = (share) => String(Math.round(100 * share));
const FAR = 100; // times its scatter: farther away is no better told by a number
const LEAST = 0.05; // bits that are worth a sentence: they round to 0.1

/** Bits to one digit, without a nought below nought. */
export const bitText = (bits) => (bits.toFixed(1) === "-0.0" ? "0.0" : bits.toFixed(1).replace("-", "−"));

/** Everything that is said of a debrief. */
function told(document, debrief, view, deps) {
  const {words} = deps;
  const names = new Map(view.checks.map((check) => [check.id, line(check.says, deps.units)]));
  return [
    ...points(document, debrief.score, view.verdict, words),
    make(document, "p", {}, words("case-debrief-chosen", {share: percent(debrief.chosen)})),
    against(document, debrief.misfits, view, names, deps),
    table(document, words("case-debrief-steps"), ["", words("case-debrief-bits"), words("case-debrief-truth"), words("case-debrief-fits")],
      debrief.steps.map((step) => [step.check ? names.get(step.check) : words("case-debrief-first"), words("case-bits", {bits: bitText(step.bits)}),
        words("case-percent", {share: percent(step.truth)}), standing(step, words)]), "case-worth-table case-weighed"),
    debrief.next && debrief.next_bits >= LEAST && make(document, "p", {}, words("case-debrief-next", {check: names.get(debrief.next), bits: bitText(debrief.next_bits)})),
    make(document, "p", {}, debrief.way.length ? words("case-debrief-way", {checks: debrief.way.map((id) => names.get(id)).join(" "), cost: costText({minutes: debrief.way_cost}, words)})
      : words("case-debrief-no-way")),
    make(document, "p", {class: "case-soft"}, words("case-debrief-note")),
  ].filter(Boolean);
}

/** Which sentence says how the points came about. */
function pointsId({rightness, outcome}, {verdict, action, of_action: full}) {
  if (Math.round(verdict + action) === 0) return "case-points-of-none";
  if (rightness === "right") return "case-points-of";
  if (rightness !== "wrong") return "case-points-of-near";
  return outcome === "fits" && action < full ? "case-points-of-luck" : "case-points-of-wrong";
}

function points(document, score, judged, words) {
  const {verdict, action, support, thrift, points: sum} = score;
  return [
    make(document, "p", {class: "case-points"}, words("case-points", {points: String(Math.round(sum))})),
    make(document, "p", {class: "case-soft"}, words(pointsId(judged, score), {
      verdict: String(Math.round(verdict)), action: String(Math.round(action)), support: percent(support), thrift: percent(thrift),
      ofverdict: String(score.of_verdict), ofaction: String(score.of_action),
    })),
  ];
}

/** What still fits, each with how likely it is. */
export const standing = ({standing: all}, words) => all
  .map(({causes, probability}) => words("case-standing", {cause: causes.map((id) => causeWords(words, id).title).join(" + "), share: percent(probability)}))
  .join(words("case-or"));

/** Which instrument a reading of the evidence is of, and in which test: "shut-in:gauge-discharge". */
export function placeOf(reading) {
  const [id, test = null] = reading.split(":").reverse();
  return {test, id};
}

function against(document, misfits, {reveal}, names, {words, units}) {
  if (!misfits.length) return null;
  return make(document, "div", {}, make(document, "p", {}, words("case-misfits")), make(document, "ul", {class: "case-list"}, ...misfits.map(({reading, measured, predicted, off}) => {
    const {test, id} = placeOf(reading);
    const {quantity, low, high} = reveal.readings.find((one) => one.id === id);
    const name = words(`case-reading-${id}`);
    const full = (si) => units.full(quantity, si, high - low);
    return make(document, "li", {}, words("case-misfit", {reading: test ? words("case-misfit-tested", {reading: name, check: names.get(test)}) : name, measured: full(measured), predicted: full(predicted), off: Math.min(FAR, Math.round(Math.abs(off)))}));
  })));
}
