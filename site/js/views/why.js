// The one sentence: the load asks, the pump answers. Then what the last change did. Computed, never typed.
import {at} from "../state.js";
import {h, setText} from "./dom.js";

const SMALL = 0.005; // a change below half a per cent is none

export function create(host, {document, words}) {
  const make = (...parts) => h(document, ...parts);
  const asks = make("span", {class: "load"});
  const answers = make("span", {class: "machine"});
  const rest = make("span", {class: "rest"});
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
      then.hidden = said.off;
    },
  };
}

/** The sentences, from data alone. `off`: the discharge pipe is off, and `rest` says all there is to say. */
export function why({answer, previous, plant, units, words, origin}) {
  const off = at(plant, "discharge.attached") === false;
  if (!answer || !answer.converged) {
    return {asks: words("why-idea"), answers: "", rest: "", then: answer ? words("why-not-converged") : "", off: false};
  }
  const {station, machines} = answer.state;
  const kind = station.flow < 0 ? "back-" : station.flow === 0 ? "still-" : off ? "off-" : "";
  const head = kind === "still-" ? ownHead(machines, plant) : station.head;
  const args = {flow: units.full("flow", Math.abs(station.flow)), head: units.full("head", head), pumps: machines.length};
  return {
    asks: words(`why-${kind}asks`, args), answers: words(`why-${kind}answers`, args), off,
    rest: kind === "off-" ? limits(answer, units, words) : kind ? "" : biggest(answer, units, words),
    then: !off && origin === "live" ? change(previous, answer, words) : "",
  };
}

/** What the pumps themselves answer at no flow: check valves inside a station may hold back far more than that. */
function ownHead(machines, plant) {
  const heads = machines.map(({head}) => head);
  return at(plant, "pump.arrangement") === "in-line" ? heads.reduce((sum, head) => sum + head, 0) : Math.max(...heads);
}

/** With the pipe off: why that is no fault of the pump, and what limits the flow. */
function limits({stack, notes}, units, words) {
  const parts = stack.filter(({head}) => head > 0)
    .map(({block, head}) => words("why-off-part", {block: words(`block-${block}`), part: units.full("head", head)}));
  const noted = (...kinds) => notes.some(({kind}) => kinds.includes(kind));
  if (noted("overload")) parts.push(words("why-off-overload"));
  if (noted("npsh-short", "below-vapour-pressure")) parts.push(words("why-off-npsh"));
  const sound = words("why-off-sound");
  return parts.length ? `${sound} ${words("why-off-limits", {limits: listed(parts, words)})}` : sound;
}

/** "a, b and c". */
const listed = (parts, words) => [parts.slice(0, -1).join(words("comma")), parts.at(-1)].filter(Boolean).join(words("and"));

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
  return words(`then-${load ? "load" : "machine"}-${flow}`);
}

/** "up", "down" or "same", relative to the greater of the two. */
export function trend(before, after) {
  const scale = Math.max(Math.abs(before), Math.abs(after));
  if (scale === 0 || Math.abs(after - before) < SMALL * scale) return "same";
  return after > before ? "up" : "down";
}
