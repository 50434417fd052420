// The one sentence: the load asks, the pump answers. Then what the last change did. Computed, never typed.
import {at} from "../state.js";
import {h, setText} from "./dom.js";

const SMALL = 0.005; // a change below half a per cent is none

export function create(host, {document, words}) {
  const make = (...parts) => h(document, ...parts);
  const asks = make("span", {class: "load"});
  const answers = make("span", {class: "machine"});
  const rest = make("span", {});
  const line = make("p", {class: "why", id: "why-line"}, asks, " ", answers, " ", rest);
  const then = make("p", {class: "then"});
  host.append(line, then);

  return {
    update(model) {
      const said = why(model);
      setText(asks, said.asks);
      setText(answers, said.answers);
      setText(rest, said.rest);
      setText(then, said.then);
    },
  };
}

/** The sentences, from data alone. */
export function why({answer, previous, plant, units, words, origin}) {
  if (!answer || !answer.converged) {
    return {asks: words("why-idea"), answers: "", rest: "", then: answer ? words("why-not-converged") : ""};
  }
  const {station} = answer.state;
  const args = {flow: units.full("flow", station.flow), head: units.full("head", station.head)};
  const then = origin === "live" ? change(previous, answer, words) : "";
  if (at(plant, "discharge.attached") === false) {
    return {asks: words("why-off-asks", args), answers: words("why-off-answers", args), rest: biggest(answer, units, words), then};
  }
  if (station.flow <= 0) {
    return {asks: words("why-still-asks", args), answers: words("why-still-answers", args), rest: "", then};
  }
  return {asks: words("why-asks", args), answers: words("why-answers", args), rest: biggest(answer, units, words), then};
}

/** Which block of the load is the heaviest. */
function biggest({stack, state}, units, words) {
  const block = stack.reduce((most, each) => (each.head > most.head ? each : most), stack[0]);
  if (!block || block.head <= 0 || block.head > state.station.head) return ""; // others are below zero: no simple part
  return words("why-most", {block: words(`block-${block.block}`), part: units.full("head", block.head)});
}

const LOAD_PARTS = ["valve", "supply", "delivery", "discharge", "suction", "liquid"];
const MACHINE_PARTS = ["pump", "drive"];

/** What changed between two answers, by the side it changed on. */
export function change(before, after, words) {
  if (!before?.converged || before === after) return "";
  const differs = (part) => JSON.stringify(before.plant[part]) !== JSON.stringify(after.plant[part]);
  const load = LOAD_PARTS.some(differs);
  const machine = MACHINE_PARTS.some(differs);
  if (load === machine) return load ? words("then-both") : "";
  const flow = trend(before.state.station.flow, after.state.station.flow);
  const head = trend(before.state.station.head, after.state.station.head);
  if (flow === "same" && head === "same") return words("then-nothing");
  const way = flow === "same" ? head : flow;
  return words(`then-${load ? "load" : "machine"}-${way}`, {head});
}

/** "up", "down" or "same", relative to the greater of the two. */
export function trend(before, after) {
  const scale = Math.max(Math.abs(before), Math.abs(after));
  if (scale === 0 || Math.abs(after - before) < SMALL * scale) return "same";
  return after > before ? "up" : "down";
}
