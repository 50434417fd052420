// Places of the apparatus, and what it shows for an answer.
import assert from "node:assert/strict";
import {test} from "node:test";
import {createUnits} from "../../site/js/units.js";
import {create, lift} from "../../site/js/views/apparatus.js";
import {liftText} from "../../site/js/views/elevation.js";
import {heightMap, share} from "../../site/js/views/apparatus-heights.js";
import {fitted, layout, layoutKey, sheetSize} from "../../site/js/views/apparatus-layout.js";
import {instrument} from "../../site/js/views/instruments.js";
import {createPipe, jetPath, markPace, routes} from "../../site/js/views/pipe.js";
import {shownTurning} from "../../site/js/views/pump.js";
import {stemGeometry} from "../../site/js/views/valve.js";
import {vesselGeometry} from "../../site/js/views/vessel.js";
import {sampleAnswer, samplePlant} from "./drawing-sample.js";
import {everyNode, fakeDocument, fakeHost} from "./fake-document.js";

const WIDTHS = [320, 328, 414, 740, 1120];
const PLANTS = {
  "as usual": {},
  "two side by side": {"pump.arrangement": "side-by-side"},
  "two in line": {"pump.arrangement": "in-line"},
  "supply above delivery": {"supply.bottom_m": 14, "supply.surface_m": 17, "supply.top_m": 18, "delivery.bottom_m": 0, "delivery.surface_m": 2, "delivery.top_m": 4},
  "a sump": {"supply.bottom_m": -3, "supply.surface_m": -1, "supply.top_m": 0},
  "a pump on the roof": {"pump.centre_m": 20, "pump.arrangement": "side-by-side"},
  "very high": {"delivery.bottom_m": 300, "delivery.surface_m": 301, "delivery.top_m": 304},
  "pouring in from above": {"delivery.outlet_m": 17},
};

test("heights keep their order on the sheet, and a place leads back to its height", () => {
  const map = heightMap([0, 0.5, 4, 12, 16], [{from: 0, to: 0.5, least: 40}], 400, 20);
  const places = [0, 0.5, 2, 4, 9, 16].map(map.y);
  places.slice(1).forEach((y, i) => assert.ok(y < places[i]));
  for (const h of [0, 0.3, 7, 16]) assert.ok(Math.abs(map.height(map.y(h)) - h) < 1e-9);
  assert.ok(Math.abs(map.y(0) - 400) < 1e-6 && Math.abs(map.y(16) - 20) < 1e-3);
});

test("a sheet with room enough is drawn to one scale", () => {
  const map = heightMap([0, 4, 12, 16], [{from: 0, to: 4, least: 50}], 400, 80);
  for (const h of [2, 4, 10, 16]) assert.ok(Math.abs(map.y(h) - (400 - 20 * h)) < 1e-3);
});

test("room is shared out whole, and nobody gets less than the least", () => {
  const rooms = share([1, 100, 2], [50, 0, 60], 300);
  assert.ok(Math.abs(rooms.reduce((a, b) => a + b) - 300) < 1e-3);
  assert.ok(rooms[0] >= 50 && rooms[2] >= 60);
});

/** A plant laid out for a host, as the drawing does it; half as high as wide, which is the least there is. */
function placed(plant, hostWidth) {
  return layout(plant, fitted(plant, sheetSize(hostWidth, hostWidth < 640 ? 0 : hostWidth / 2)));
}

for (const [name, edits] of Object.entries(PLANTS)) {
  test(`every part lies on the sheet at every width: ${name}`, () => {
    for (const hostWidth of WIDTHS) {
      const plan = placed(samplePlant(edits), hostWidth);
      for (const {x, y, r} of plan.dials) {
        assert.ok(x - r >= 0 && x + r <= plan.width && y - r >= 0 && y + r <= plan.height, `${hostWidth}: dial at ${x}, ${y}`);
      }
      const {meters} = plan;
      assert.ok(meters.x >= 0 && meters.motors.at(-1) + meters.slim <= plan.width && meters.y >= 0 && meters.y + meters.tall <= plan.height, `${hostWidth}: meters`);
      for (const run of Object.values(routes(plan, samplePlant(edits)))) {
        for (const [x, y] of run.filter(Array.isArray)) assert.ok(x >= 0 && x <= plan.width && y >= 0 && y <= plan.height, `${hostWidth}: pipe at ${x}, ${y}`);
      }
    }
  });

  test(`no dial covers a pump: ${name}`, () => {
    for (const hostWidth of WIDTHS) {
      const {dials, line} = placed(samplePlant(edits), hostWidth);
      const pumps = ["pump-1", "pump-2"].slice(0, line.pumps).map((pump) => [line.x[pump], line.pumpY[pump]]);
      for (const {x, y, r} of dials) {
        for (const [px, py] of pumps) assert.ok(Math.hypot(x - px, y - py) >= r + line.r - 4, `${hostWidth}: dial at ${x}, ${y}`);
      }
    }
  });

  test(`no dial covers another or a meter: ${name}`, () => {
    for (const hostWidth of WIDTHS) {
      const {dials: [a, b, c], meters} = placed(samplePlant(edits), hostWidth);
      for (const [one, other] of [[a, b], [b, c]]) {
        assert.ok(Math.hypot(one.x - other.x, one.y - other.y) >= 2 * one.r, `${hostWidth}: ${one.name} and ${other.name}`);
      }
      for (const {y, r, name: dial} of [a, b, c]) {
        assert.ok(y - r >= meters.y + meters.tall || y + r <= meters.y, `${hostWidth}: ${dial} and the meters`);
      }
    }
  });
}

test("parts stand along the line in the order of the flow", () => {
  const order = {
    "single": ["strainer", "suction", "pump-1", "discharge", "check-1", "valve", "after-valve"],
    "side-by-side": ["strainer", "suction", "pump-1", "check-1", "discharge", "valve", "after-valve"],
    "in-line": ["strainer", "suction", "pump-1", "check-1", "pump-2", "check-2", "discharge", "valve", "after-valve"],
  };
  for (const hostWidth of WIDTHS) {
    for (const [arrangement, names] of Object.entries(order)) {
      const {line, columns} = placed(samplePlant({"pump.arrangement": arrangement}), hostWidth);
      const places = [...names.map((name) => line.x[name]), columns.riser];
      places.slice(1).forEach((x, i) => assert.ok(x > places[i], `${arrangement} at ${hostWidth}: ${names[i]}`));
    }
  }
});

test("moving a control does not place everything anew, but another arrangement does", () => {
  const key = layoutKey(samplePlant());
  assert.equal(layoutKey(samplePlant({"valve.opening": 0.1, "supply.surface_m": 3, "drive.frequency_hz": 40})), key);
  assert.notEqual(layoutKey(samplePlant({"pump.arrangement": "in-line"})), key);
});

test("a level stays within its vessel", () => {
  const place = {x: 0, width: 80, top: 20, bottom: 100};
  assert.equal(vesselGeometry(place, 5, NaN).surface, 20);
  assert.equal(vesselGeometry(place, 60, NaN).liquid.height, 40);
  assert.equal(vesselGeometry(place, 60, 60.5).ghost, null);
});

test("the stem rises with the opening, and a shut valve is filled", () => {
  assert.ok(stemGeometry(1, 18).wheel < stemGeometry(0, 18).wheel);
  assert.ok(stemGeometry(0, 18).plug > 0);
  assert.equal(stemGeometry(1, 18).plug, 0);
});

test("the impeller turns in proportion to the speed, at most once a second at 4500 1/min", () => {
  assert.ok(Math.abs(shownTurning((4500 * 2 * Math.PI) / 60) - 360) < 1e-9);
  assert.ok(Math.abs(shownTurning(150) * 2 - shownTurning(300)) < 1e-9);
});

test("marks stand where nothing flows and run backward with a reverse flow", () => {
  assert.equal(markPace(0, 80), 0);
  assert.ok(markPace(-0.01, 80) < 0 && markPace(0.01, 80) > 0);
});

test("liquid begins before its wall, so that two runs of pipe meet without a seam", () => {
  const {node} = createPipe(fakeDocument(), [[20, 10], [60, 10], [60, 40]], {width: 10, bore: 80});
  const [wall, bore] = node.childNodes.map((path) => path.getAttribute("d"));
  assert.match(wall, /^M20,10/);
  assert.equal(bore, wall.replace("M20,10", "M18.5,10"));
});

test("a jet falls as far as gravity says: 4.9 m in a second", () => {
  const end = jetPath([0, 0], 3, 0.5 * 9.80665 * 20, 20).split("L").at(-1).split(",").map(Number);
  assert.ok(Math.abs(end[0] - 60) < 0.05 && Math.abs(end[1] - 98.07) < 0.05);
});

const words = (id, args) => (args ? `${id} ${Object.values(args).join(" ")}` : id);
const units = createUnits("m3h-bar-m", "en");
const model = (plant, more = {}) => ({plant, answer: sampleAnswer(plant), previous: null, units, words, edits: {}, turning: false, ...more});

test("an instrument shows the reading in the chosen unit, and nothing before there is one", () => {
  const plant = samplePlant();
  const shown = instrument("gauge-discharge", model(plant), words);
  assert.equal(shown.value, 3);
  assert.deepEqual(shown.range, [0, 6]);
  const blank = instrument("gauge-discharge", model(plant, {answer: null}), words);
  assert.equal(blank.value, null);
  assert.equal(blank.says, "draw-no-reading");
});

function drawn(plant, more, width = 740) {
  const document = fakeDocument();
  const host = fakeHost(document, width);
  const sent = [];
  const view = create(host, {document, words, units, send: (action) => sent.push(action)});
  view.update(model(plant, more));
  const nodes = () => everyNode(host).filter((node) => node.attributes);
  return {view, nodes, sent, by: (name, value) => nodes().filter((node) => node.getAttribute(name) === value)};
}

test("every dial and meter is a meter with a name and a reading in words", () => {
  const {by} = drawn(samplePlant({"pump.arrangement": "in-line"}));
  const meters = by("role", "meter");
  assert.equal(meters.length, 8);
  for (const node of meters) assert.ok(node.getAttribute("aria-label") && node.getAttribute("aria-valuetext"));
});

test("beside the name of each dial stands how high it hangs, in the chosen unit, and nothing while nobody knows", () => {
  const said = (id, args) => (id === "draw-gauge-height" ? `at ${args.height}` : words(id, args));
  const heights = (id, plant = samplePlant()) => {
    const document = fakeDocument(), host = fakeHost(document, 740);
    create(host, {document, words: said, send() {}}).update(model(plant, {units: createUnits(id, "en"), words: said}));
    return everyNode(host).filter((node) => node.attributes?.get("class") === "gauge-height").map(({textContent}) => textContent);
  };
  assert.deepEqual(heights("m3h-bar-m"), ["at 0.50\u00a0m", "at 1.25\u00a0m", "at −3.00\u00a0m"]);
  assert.deepEqual(heights("gpm-psi-ft"), ["at 1.6\u00a0ft", "at 4.1\u00a0ft", "at −9.8\u00a0ft"]);
  const unknown = {suction: {}, discharge: {height_m: null}};
  assert.deepEqual(heights("m3h-bar-m", {...samplePlant(), gauges: unknown}), ["", "", ""]);
});

test("the lift has as many decimals as the levels that it lies between", () => {
  const {supply, delivery, discharge} = samplePlant();
  const plant = {supply: {...supply, surface_m: 2}, delivery: {...delivery, surface_m: 14, outlet_m: null}, discharge};
  assert.equal(lift(plant, units, words).shown, "draw-lift 12.00\u00a0m");
  assert.equal(lift(plant, createUnits("gpm-psi-ft", "en"), words).shown, "draw-lift 39.4\u00a0ft");
});

test("the words of a lift that falls keep clear of the suction line", () => {
  const suction = 300;
  const words = (from, to, lanes = 0) => liftText(150, from, to, false, {pipe: 290, suction, over: 64, up: false, lanes}, 200);
  assert.ok(words(280, 370).y > suction + 14 && words(280, 370).transform === null);
  for (const [from, to, lanes] of [[230, 290, 0], [280, 370, 2], [295, 310, 0]]) {
    const y = Number(words(from, to, lanes).transform.match(/,([\d.]+)\)/)[1]);
    assert.ok(y + 42 <= suction || y - 42 >= suction, `${from} to ${to}`);
  }
});

test("what stands below the dials of a phone keeps clear of the meters", () => {
  for (const hostWidth of WIDTHS.slice(0, 3)) {
    const {dials, meters} = placed(samplePlant(), hostWidth);
    for (const {label} of dials) assert.ok(label.y + 13 <= meters.y - 3, `${hostWidth}`);
  }
});

test("valve, levels and drive are sliders that can be reached by keys", () => {
  const {by} = drawn(samplePlant());
  const keys = by("role", "slider").map((node) => node.getAttribute("data-control")).sort();
  assert.deepEqual(keys, ["delivery.surface_m", "drive.frequency_hz", "supply.surface_m", "valve.opening"]);
});

test("an arrow key on the valve commits the next opening", () => {
  const {by, sent} = drawn(samplePlant());
  by("data-control", "valve.opening")[0].tell("keydown", {key: "ArrowDown"});
  assert.deepEqual(sent, [{type: "commit", edits: {"valve.opening": 0.59}}]);
});

test("with the line off, valve and delivery level are out of reach and the jet is shown", () => {
  const {by} = drawn(samplePlant({"discharge.attached": false}));
  assert.equal(by("data-control", "valve.opening")[0].getAttribute("aria-disabled"), "true");
  assert.equal(by("class", "open-end")[0].getAttribute("display"), null);
});

test("an update with a new answer changes nodes and makes none", () => {
  const plant = samplePlant();
  const {view, nodes} = drawn(plant);
  const before = nodes();
  const writes = before.reduce((sum, node) => sum + node.writes, 0);
  view.update(model(plant, {answer: sampleAnswer(plant, {flow: 0.012, head: 28})}));
  const after = nodes();
  assert.equal(after.length, before.length);
  assert.ok(after.every((node, i) => node === before[i]));
  const changed = after.reduce((sum, node) => sum + node.writes, 0) - writes;
  assert.ok(changed > 0 && changed < 40, `${changed} changes`);
});

test("nothing moves while the turning is paused", () => {
  const {nodes} = drawn(samplePlant(), {turning: false});
  const marks = nodes().filter((node) => node.getAttribute("class") === "flow-marks");
  assert.ok(marks.length && marks.every((node) => node.getAttribute("display") === "none"));
});

test("a low place gets the wide composition, however narrow it is", () => {
  assert.equal(sheetSize(360, 0).narrow, true);
  assert.equal(sheetSize(510, 260).narrow, false);
  assert.equal(sheetSize(510, 500).narrow, true);
});

test("the stem of a gauge that is tapped elsewhere leads there, beside the one that belongs there", () => {
  for (const hostWidth of WIDTHS) {
    const plant = samplePlant();
    const sound = placed(plant, hostWidth).dials;
    plant.gauges.discharge = {...plant.gauges.discharge, fault: {tapping: "after-valve"}};
    const [, strays, other] = placed(plant, hostWidth).dials;
    assert.deepEqual([strays.x, strays.y], [sound[1].x, sound[1].y], "the dial itself hangs where it hung");
    assert.ok(Math.abs(strays.tap[0] - other.tap[0]) <= 10 && strays.tap[0] !== other.tap[0], `${hostWidth}`);
    assert.notEqual(layoutKey(plant), layoutKey(samplePlant()));
  }
});

test("the flow meter stands behind the tees that it is said to stand behind", () => {
  const x = (place, attached = true) => {
    const plant = samplePlant({"discharge.attached": attached});
    Object.assign(plant, {relief: {fitted: true}, return_line: {fitted: true, bore_mm: 32}, meters: {...plant.meters, flow_place: place}});
    return placed(plant, 1120).line.x;
  };
  const order = (at) => ["flow", "relief", "back"].sort((a, b) => at[a] - at[b]);
  assert.deepEqual(order(x("pump")), ["flow", "relief", "back"]);
  assert.deepEqual(order(x("before-return")), ["relief", "flow", "back"]);
  assert.deepEqual(order(x("after-return")), ["relief", "back", "flow"]);
  assert.deepEqual(order(x("after-return", false))[0], "flow", "with the line off it is at the flange");
});
