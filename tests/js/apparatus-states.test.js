// What the parts that a plant may have besides show for a state, and what they are called.
import assert from "node:assert/strict";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {create} from "../../site/js/views/apparatus.js";
import {pumpKinds} from "../../site/js/views/fitted.js";
import {PARTS} from "../../site/js/views/parts-table.js";
import {foulShare} from "../../site/js/views/symbols.js";
import {pocketRuns} from "../../site/js/views/summit.js";
import {sampleAnswer, samplePlant} from "./drawing-sample.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const FITTED = {
  relief: {state: "sound"}, return_line: {opening: 0.3, bore_mm: 32}, branch: {opening: 0.4, bore_mm: 50, end_m: 6, pours: true},
  burst: {}, filter: {fouling: 3}, second_line: {bore_mm: 65}, summit: {height_m: 18, primed: true}, control: {of: "flow", on: "valve", mode: "automatic"},
};
const EVERYTHING = Object.keys(FITTED);
const PLAIN = ["supply", "suction-line", "strainer", "pump-1", "drive", "check-1", "valve", "discharge-line", "delivery",
  "gauge-suction", "gauge-discharge", "gauge-after-valve", "flow-meter", "ammeter-1", "tachometer-1"];

const words = (id, args) => (args ? `${id} ${Object.values(args).join(" ")}` : id);
const units = createUnits("m3h-bar-m", "en");

/** A drawing of a plant with these tables fitted; `state` is put into its answer. */
function drawn(names, {edits = {}, more = {}, state = {}, notes = [], turning = false, hidden = null, width = 740} = {}) {
  const plant = samplePlant(edits);
  for (const name of names) plant[name] = {...FITTED[name], ...more[name], fitted: true};
  const document = fakeDocument(), host = fakeHost(document, width);
  const answer = sampleAnswer(plant);
  Object.assign(answer.state, {flow_scale: 0.01, aside: {}}, state);
  answer.notes = notes.map((kind) => (typeof kind === "string" ? {kind, where: "", facts: {}} : kind));
  create(host, {document, words, units, send() {}}).update({plant, answer, previous: null, units, words, edits: {}, turning, hidden});
  const nodes = everyNode(host).filter((node) => node.attributes);
  const part = (name) => nodes.find((node) => node.getAttribute("data-part") === name);
  return {nodes, part, within: (name, kind) => everyNode(part(name)).find((node) => node.attributes?.get("class")?.split(" ").includes(kind))};
}

const shown = (node) => node.getAttribute("display") !== "none";

for (const width of [344, 740]) {
  test(`every part has one name for pointer and ear, and no place is unknown: ${width} px wide`, () => {
    for (const arrangement of ["single", "side-by-side", "in-line"]) {
      const {nodes} = drawn(EVERYTHING, {edits: {"pump.arrangement": arrangement}, width});
      const parts = nodes.filter((node) => node.getAttribute("data-part"));
      for (const node of parts.filter((one) => one.getAttribute("role"))) assert.ok(node.getAttribute("aria-label"), node.getAttribute("data-part"));
      const broken = nodes.flatMap((node) => [...node.attributes].filter(([, value]) => /NaN|undefined|Infinity/.test(value)));
      assert.deepEqual(broken, []);
    }
  });
}

test("the plain plant has its parts and no more, and each that is fitted comes with its own", () => {
  const named = ({nodes}) => new Set(nodes.map((node) => node.getAttribute("data-part")).filter(Boolean));
  assert.deepEqual([...named(drawn([]))].sort(), [...PLAIN].sort());
  const all = named(drawn(EVERYTHING));
  for (const name of ["relief", "return-line", "branch", "burst", "filter", "second-line", "summit", "controller"]) assert.ok(all.has(name), name);
});

test("every part that is drawn has a panel", () => {
  const known = new Set(PARTS.flatMap(({drawn: names}) => names));
  const {nodes} = drawn(EVERYTHING, {edits: {"pump.arrangement": "in-line"}});
  const parts = nodes.map((node) => node.getAttribute("data-part")).filter(Boolean);
  assert.deepEqual(parts.filter((name) => !known.has(name)), []);
});

test("under a veil nothing is said of whether the relief valve has lifted", () => {
  const says = (hidden) => drawn(["relief"], {more: {relief: {state: "sound"}}, hidden}).nodes.map((node) => node.textContent).join();
  assert.match(says(null), /draw-relief-shut/);
  assert.doesNotMatch(says("veil"), /draw-relief-(shut|lifted|passing)/);
});

test("a relief valve is seen to lift, to be blocked, to pass", () => {
  const relief = (state, flow, notes) => drawn(["relief"], {more: {relief: {state}}, state: {aside: {relief: flow}}, notes});
  const lifted = relief("sound", 0.002, ["relief-lifted"]);
  assert.ok(lifted.within("relief", "relief-disc").getAttribute("transform"));
  assert.match(lifted.part("relief").getAttribute("aria-label"), /lifted.*7\.2/);
  const blocked = relief("blocked", 0, []);
  assert.ok(shown(blocked.within("relief", "relief-pin")) && !blocked.within("relief", "relief-disc").getAttribute("transform"));
  assert.match(blocked.part("relief").getAttribute("aria-label"), /blocked/);
  assert.ok(shown(relief("passing", 1e-4, []).within("relief", "relief-leak")));
  assert.ok(!shown(relief("sound", 0, []).within("relief", "flow-arrow")));
});

test("an arrow points where the second user's liquid goes, and backward where it feeds back", () => {
  const arrow = (flow) => drawn(["branch"], {state: {aside: {"branch-line": flow}}}).within("branch", "flow-arrow");
  const [forward, back] = [0.002, -0.002].map((flow) => arrow(flow).getAttribute("transform"));
  assert.notEqual(forward, back);
  assert.ok(!shown(arrow(0)));
});

test("liquid moves in a side line only where it flows and the turning is on", () => {
  const marks = (flow, turning) => drawn(["return_line"], {state: {aside: {"return-line": flow}}, turning}).within("return-line", "flow-marks");
  assert.ok(shown(marks(0.001, true)));
  assert.ok(!shown(marks(0.001, false)) && !shown(marks(0, true)));
});

test("a filter's mesh darkens as it fouls, and is never more than full", () => {
  const shares = [0, 1, 10, 99, 1000].map(foulShare);
  shares.slice(1).forEach((share, i) => assert.ok(share >= shares[i]));
  assert.equal(shares[0], 0);
  assert.equal(shares.at(-1), 1);
});

test("gas stands at a summit that is not primed or has broken, and nowhere else", () => {
  const pocket = (notes) => drawn(["summit"], {notes}).within("summit", "pocket");
  assert.ok(shown(pocket(["siphon-broken"])) && shown(pocket(["not-primed"])));
  assert.ok(!shown(pocket([])));
});

test("gas at a summit lies within the pipe", () => {
  const {crest} = pocketRuns({crest: [[100, 40], [140, 40]], foot: 120, width: 12});
  const y = Number(crest.match(/,([\d.]+)H/)[1]);
  assert.ok(y > 40 - 6 && y < 40);
});

test("a check valve that is stuck stands open without flow, one that passes hangs ajar", () => {
  const flap = (check, flow) => {
    const edits = Object.fromEntries(Object.entries(check).map(([key, value]) => [`check.${key}`, value]));
    const {part, within} = drawn([], {edits, state: {station: {flow, head: 30}}});
    return [Number(within("check-1", "flap").getAttribute("transform").match(/-?\d+/)[0]), part("check-1").getAttribute("aria-label")];
  };
  assert.equal(flap({}, 0)[0], 0);
  assert.ok(flap({}, 0.01)[0] < -40);
  const [stuck, says] = flap({stuck_open: true}, -0.001);
  assert.ok(stuck < -40 && says.includes("draw-check-stuck"));
  const [ajar, said] = flap({leak_kv_m3h: 3}, -0.001);
  assert.ok(ajar < 0 && ajar > -40 && said.includes("draw-check-passing"));
});

test("a check valve stands behind the lines back to the supply: with all of the flow going back it is shut", () => {
  const {within} = drawn(["return_line"], {state: {station: {flow: 0.002, head: 30}, aside: {"return-line": 0.002}}});
  assert.match(within("check-1", "flap").getAttribute("transform"), /rotate\(0\)/);
});

test("a pump that turns the wrong way says so, and its arrow shows it though nothing moves", () => {
  const {part, within} = drawn([], {edits: {"pump.rotation": "wrong"}});
  assert.match(part("pump-1").getAttribute("aria-label"), /draw-pump-wrong/);
  assert.ok(shown(within("pump-1", "back-arrow")));
  assert.ok(!shown(drawn([]).within("pump-1", "back-arrow")));
});

test("a pump without speed stands still, in words too", () => {
  const machines = [{name: "pump-1", flow: 0, speed: 0}];
  const {part} = drawn([], {state: {machines}});
  assert.match(part("pump-1").getAttribute("class"), /standing/);
  assert.match(part("pump-1").getAttribute("aria-label"), /draw-pump-standing/);
});

test("a pump whose motor is off is drawn as standing, though the liquid may turn it either way", () => {
  const says = (speed) => drawn([], {state: {machines: [{name: "pump-1", flow: -0.001, speed, standing: true}]}}).part("pump-1");
  assert.match(says(40).getAttribute("class"), /running standing/);
  assert.match(says(40).getAttribute("aria-label"), /draw-pump-driven 382/);
  assert.match(says(-40).getAttribute("aria-label"), /draw-pump-driven-back 382/);
});

test("each kind of pump has its own rotors", () => {
  const has = (kind) => drawn([], {state: {machines: [{name: "pump-1", kind, flow: 0.01, speed: 300}]}});
  for (const [kind, rotor] of [["gear", "gear"], ["lobe", "lobe"], ["screw", "thread"], ["axial", "axial"], ["mixed", "mixed"], ["radial", "radial"]]) {
    const {within, part} = has(kind);
    assert.ok(within("pump-1", rotor), kind);
    assert.match(part("pump-1").getAttribute("aria-label"), new RegExp(`draw-kind-${kind}`));
  }
});

test("a pump is what the engine says of it, then what the catalogue says of its model, then what its rating is of", () => {
  const catalogue = {pumps: [{id: "tall", kind: "axial"}, {id: "wide", kind: "mixed"}]};
  const plant = (pump) => samplePlant(Object.fromEntries(Object.entries(pump).map(([key, value]) => [`pump.${key}`, value])));
  const answer = (pump, ...kinds) => ({plant: plant(pump), state: {machines: kinds.map((kind) => ({kind}))}});
  assert.deepEqual(pumpKinds({plant: plant({model: "tall"}), answer: null, catalogue}), ["axial", "axial"]);
  assert.deepEqual(pumpKinds({plant: plant({model: "tall", second: {model: "wide"}}), answer: null, catalogue}), ["axial", "mixed"]);
  assert.deepEqual(pumpKinds({plant: plant({displacement: {kind: "lobe"}}), answer: null, catalogue}), ["lobe", "lobe"]);
  assert.deepEqual(pumpKinds({plant: plant({}), answer: answer({}, "mixed"), catalogue}), ["mixed", "radial"]);
  assert.deepEqual(pumpKinds({plant: plant({model: "wide"}), answer: answer({model: "tall"}, "axial"), catalogue})[0], "mixed", "an answer of before");
});

test("the gaps of a worn pump are drawn wider the more it is worn, whatever its kind", () => {
  for (const kind of ["radial", "gear", "screw"]) {
    const gap = (wear) => drawn([], {edits: {"pump.wear_percent": wear}, state: {machines: [{name: "pump-1", kind, flow: 0.01, speed: 300}]}}).within("pump-1", "gap");
    assert.ok(!shown(gap(0)) && shown(gap(5)));
    assert.ok(Number(gap(20).getAttribute("stroke-width")) > Number(gap(5).getAttribute("stroke-width")));
  }
});

test("bubbles and a vortex are drawn only where the answer speaks of them", () => {
  const notes = [{kind: "npsh-short", where: "pump-1", facts: {}}, {kind: "vortex", where: "supply-outlet", facts: {}}];
  const bad = drawn([], {notes}), good = drawn([]);
  assert.ok(shown(bad.within("pump-1", "bubbles")) && !shown(good.within("pump-1", "bubbles")));
  assert.ok(bad.within("supply", "vortex").getAttribute("d"));
  assert.equal(good.within("supply", "vortex").getAttribute("d"), "");
});

test("a hunting pointer has its swing marked, and its reading is called an average", () => {
  const {part, within} = drawn([], {state: {hunting: true}});
  assert.ok(shown(within("gauge-discharge", "dial-band")));
  assert.match(within("gauge-discharge", "dial-reading").textContent, /^≈/);
  assert.match(part("gauge-discharge").getAttribute("aria-valuetext"), /draw-hunting/);
  assert.ok(!shown(drawn([]).within("gauge-discharge", "dial-band")));
});

test("a controller shows its output, and that it has lost its grip", () => {
  const {part, within} = drawn(["control"], {state: {control: {output: 0.62}}, notes: ["control-lost"]});
  assert.match(within("controller", "controller-output").textContent, /^62/);
  assert.match(within("controller", "controller").getAttribute("class"), /lost/);
  assert.match(part("controller").getAttribute("aria-label"), /flow valve automatic 62/);
});

test("a line that is still filling is wet up to its front only", () => {
  const wet = (filled) => drawn([], {edits: {"discharge.filled": filled}}).nodes.filter((node) => node.getAttribute("class") === "pipe-bore").at(-1).getAttribute("d");
  assert.notEqual(wet(0.4), wet(1));
  assert.ok(wet(0.4).length < wet(1).length);
});
