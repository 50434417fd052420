// What two days differ in and why, as sentences made of the engine's codes and numbers. No DOM.
import {keyName, valueText} from "./beside-words.js";
import {trend} from "./trend.js";

const MOST = 3; // changes that one sentence names
const SHORT = {flow: "flow", head: "head"};

/** The whole story in a sentence or two: what was changed, what that did to load and machine, what followed. */
export function dayStory({days, units, catalogue}, words) {
  const {changed, meeting} = days.answer;
  if (!changed.length) return words("days-nothing");
  return [whatChanged(changed, {units, catalogue}, words), whatMoved(meeting, changed, units, words), whatFollowed(meeting, units, words)].filter(Boolean).join(" ");
}

function whatChanged(changed, known, words) {
  const named = changed.slice(0, MOST).map(({key, side, yesterday, today}) => words("days-key", {
    name: keyName(key, words), before: valueText(key, yesterday, {...known, words}), after: valueText(key, today, {...known, words}), side: words(`days-side-${side}`),
  }));
  const more = changed.length - named.length;
  if (more) named.push(words("beside-more", {count: more}));
  return words("days-changed", {changes: named.join(words("days-between"))});
}

/** What both curves say at yesterday's flow. */
function whatMoved({flow, asked, answered, mover}, changed, units, words) {
  const at = units.full("flow", flow[0]);
  const pair = (heads) => heads.map((head) => (head === null ? null : units.full("head", head)));
  const load = curveWords("load", pair(asked), words);
  const machine = curveWords("machine", pair(answered), words);
  if (mover === "neither") return words(changed.every(({side}) => side === "instrument") ? "days-neither-instrument" : "days-neither");
  return words(`days-mover-${mover}`, {flow: at, load, machine});
}

function curveWords(side, [before, after], words) {
  if (before === null && after === null) return words(`days-${side}-unknown`);
  if (after === null) return words(`days-${side}-shut`);
  return before === null ? words(`days-${side}-opened`, {after}) : words(`days-${side}-moved`, {before, after});
}

function whatFollowed({flow, head}, units, words) {
  const ways = Object.entries({flow, head}).map(([quantity, [before, after]]) => {
    const way = trend(before, after);
    return words(`days-then-${quantity}-${way}`, {before: units.full(SHORT[quantity], before), after: units.full(SHORT[quantity], after)});
  });
  return words("days-then", {flow: ways[0], head: ways[1]});
}

/** What each of several changes does to the flow, and whether the order counts; none where one alone was made. */
export function dayParts({days, units}, words) {
  const {parts} = days.answer;
  if (!parts) return null;
  const signed = (flow) => sign(units.full("flow", Math.abs(flow)), flow);
  const lines = parts.each.map(({key, first, last}) => words(parts.order_matters ? "days-part-both" : "days-part", {name: keyName(key, words), first: signed(first), last: signed(last)}));
  return {lines, says: words(parts.order_matters ? "days-order-matters" : "days-order-same")};
}

const sign = (text, value) => `${isNought(text) ? "" : value < 0 ? "−" : value > 0 ? "+" : ""}${text}`;

/** Whether the digits before the unit are all noughts. */
const isNought = (text) => !/[1-9]/.test(text.split("\u00a0")[0]);

const ARROWS = {up: "▲", down: "▼", same: "="};

/**
 * One row per instrument: both days, the change, which way it went, and why.
 * @returns {{id: string, name: string, yesterday: string, today: string, change: string, moved: string|null, arrow: string, says: string, why: string}[]}
 */
export function dayRows({days, units}, words) {
  const {readings, reasons, meeting} = days.answer;
  return readings.map((each) => {
    const {id, quantity, change, explained, moved} = each;
    const known = each.today ?? each.yesterday;
    const span = known.high - known.low;
    const step = change === null ? "" : sign(units.full(quantity, Math.abs(change), span), change);
    const why = reasons[id] ? words(reasonId(each, reasons[id], meeting)) : "";
    return {
      id, name: words(`case-reading-${id}`), yesterday: readingText(each.yesterday, units, words), today: readingText(each.today, units, words),
      change: step, moved, arrow: ARROWS[moved] ?? "", why,
      says: words(moved === null ? "days-moved-unknown" : `days-moved-${moved}`, {explained: explained === null ? "" : units.error(quantity, explained, span)}),
    };
  });
}

/** A reading as it is on its dial. */
function readingText(reading, units, words) {
  if (!reading || reading.value === null) return words("beside-none");
  const full = units.full(reading.quantity, reading.value, reading.high - reading.low);
  return reading.off_scale ? words("draw-off-scale", {reading: full}) : full;
}

/** Reasons whose sentence is the same whichever way the reading went. */
const PLAIN = ["instrument", "both", "set", "controller", "place"];

function reasonId(reading, reason, meeting) {
  const {id, moved} = reading;
  if (id === "flow-meter" && ["load", "both"].includes(reason) && divided(moved, meeting)) return `days-why-divided-${moved}`;
  if (PLAIN.includes(reason)) return `days-why-${reason}`;
  if (id.startsWith("ammeter")) return reason === "curve" ? `days-why-current-curve-${moreFlows(id, meeting) ? "more" : "less"}-${moved}` : `days-why-current-${reason}-${moved}`;
  if (id.startsWith("tachometer") && reason === "machine") return "days-why-motor";
  if (id.startsWith("tachometer") && reason === "slip" && stands(reading)) return `days-why-driven-${moved}`;
  return `days-why-${reason}-${moved}`;
}

/** Whether more flows through a pump than did; what comes to the line may be another matter, where it runs back through a second pump. */
function moreFlows(id, {flow, machines}) {
  const own = machines?.map((all) => all[Number(id.at(-1)) - 1]?.flow ?? null) ?? [null];
  const [before, now] = own.includes(null) ? flow : own;
  return now > before;
}

/** Whether the meter went the other way than what the pumps give: then more, or less, of it goes past the meter. */
function divided(moved, {machines}) {
  const [before, now] = machines?.map((all) => all.reduce((sum, {flow}) => sum + Math.max(flow ?? 0, 0), 0)) ?? [0, 0];
  return moved === "up" ? now < before : now > before;
}

/** A shaft that stood on one of the days, so that no motor turns it on the other. */
const stands = ({yesterday, today}) => [yesterday, today].some((day) => day?.value === 0);
