// The one sentence: the load asks, the pump answers. Then what the last change did. Computed, never typed.
import {differences, sidesOf} from "../sides.js";
import {at} from "../state.js";
import {dayStory} from "./day-words.js";
import {h, hide, setText} from "./dom.js";
import {trend} from "./trend.js";


export function create(host, {document, words}) {
  const make = (...parts) => h(document, ...parts);
  const asks = make("span", {class: "load"});
  const answers = make("span", {class: "machine"});
  const rest = make("span", {class: "rest"});
  const line = make("p", {class: "why", id: "why-line"}, asks, " ", answers, " ", rest);
  const then = make("p", {class: "then"});
  const about = make("p", {class: "about"});
  host.append(line, then, about);

  return {
    update(model) {
      const said = why(model);
      setText(asks, said.asks);
      setText(answers, said.answers);
      setText(rest, said.rest);
      setText(then, said.then);
      const purpose = aboutPlant(model, said);
      setText(about, purpose);
      hide(about, purpose === "");
      hide(then, (said.off && said.then === "") || purpose !== "");
    },
  };
}

/** The sentences, from data alone. `off`: the discharge pipe is off, and `rest` says all there is to say. */
export function why(model) {
  const {answer, previous, yesterday, plant, units, words, origin} = model;
  const off = at(plant, "discharge.attached") === false;
  if (!answer || !answer.converged) {
    const none = origin === "refused" ? "why-refused" : "why-no-answer";
    return {asks: "", answers: "", rest: words("why-idea"), then: words(answer ? "why-not-converged" : none), off: false};
  }
  const {station, machines} = answer.state;
  const turned = station.flow <= 0 && machines.some(({backward}) => backward);
  const kind = turned ? "turned-" : station.flow < 0 ? "back-" : station.flow === 0 ? "still-" : off ? "off-" : "";
  const args = {flow: units.full("flow", Math.abs(station.flow)), head: units.full("head", turned ? Math.abs(station.head) : station.head), pumps: machines.length};
  return {
    asks: words(`why-${kind}${turned && station.flow === 0 ? "idles" : "asks"}`, args), answers: words(`why-${kind}${turned && station.head > 0 ? "driven" : "answers"}`, args), off,
    rest: kind === "off-" ? limits(answer, units, words) : kind ? missing(answer, off, units, words) : biggest(answer, units, words),
    then: yesterday ? sinceYesterday(model) : !off && origin === "live" ? change(previous, answer, words) : "",
  };
}

/** What moved since the remembered day; nothing while nothing has, or before the engine has said it. */
function sinceYesterday(model) {
  const {days, words, clock} = model;
  if (clock && clock.status !== "off") return ""; // it speaks of the plant as it is set, and time has moved that
  return days?.answer?.changed.length ? dayStory(model, words) : "";
}

/** What the plant is there for, while nothing else is to be said and it stands as its author describes it. */
export function aboutPlant({plant, edits = {}}, {then}) {
  return then === "" && Object.keys(edits).length === 0 ? (plant?.about ?? "").trim() : "";
}

/** At no flow: how much is missing for the liquid to come out at the open end, where it does not. */
function missing({notes}, off, units, words) {
  const note = notes.find(({kind}) => kind === "not-reached");
  return note ? words("why-not-reached", {where: words(endOf(off)), missing: units.full("head", note.facts.missing)}) : "";
}

/** With the pipe off the liquid comes out at the flange, else at the end of the pipe. */
export const endOf = (off) => (off ? "place-open-flange" : "place-pipe-end");

/** With the pipe off: why that is no fault of the pump, and what limits the flow. A block too small to be shown is none. */
function limits({stack, notes}, units, words) {
  const shown = ({head}) => head > 0 && units.text("head", head) !== units.text("head", 0);
  const parts = stack.filter(shown)
    .map(({block, head}) => words("why-off-part", {block: words(`block-${block}`), part: units.full("head", head)}));
  if (notes.some(({kind}) => ["npsh-short", "suction-boils", "below-vapour-pressure"].includes(kind))) parts.push(words("why-off-npsh"));
  const sound = words("why-off-sound");
  return parts.length ? `${sound} ${words("why-off-limits", {limits: listed(parts, words)})}` : sound;
}

/** "a, b and c". */
const listed = (parts, words) => [parts.slice(0, -1).join(words("comma")), parts.at(-1)].filter(Boolean).join(words("and"));

/** Which block of the load is the heaviest. */
function biggest({stack, state}, units, words) {
  const block = stack.filter(({head}) => head !== null).reduce((most, each) => (most && most.head >= each.head ? most : each), null);
  if (!block || block.head <= 0 || block.head > state.station.head) return ""; // others are below zero: no simple part
  return words("why-most", {block: words(`block-${block.block}`), part: units.full("head", block.head)});
}

/** What changed between two answers, by the side it changed on. */
export function change(before, after, words) {
  if (!before?.converged || before === after) return "";
  const sides = sidesOf(differences(before.plant, after.plant));
  if (sides !== "load" && sides !== "machine") return sides === "both" ? words("then-both") : "";
  const flow = trend(before.state.station.flow, after.state.station.flow);
  const head = trend(before.state.station.head, after.state.station.head);
  if (flow === "same" && head === "same") return words("then-nothing");
  const side = sides === "machine" && checksCame(before.plant, after.plant) ? "checks" : sides;
  return words(`then-${side}-${flow}`);
}

/** Each pump brings a check valve, and those belong to the load. */
const checksCame = (before, after) => at(after, "check.fitted") === true && at(before, "pump.arrangement") !== at(after, "pump.arrangement");
