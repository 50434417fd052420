// The record of the instruments: bounded, and nothing of a peak lost.
import assert from "node:assert/strict";
import {test} from "node:test";
import {createTrend} from "../../site/js/trend.js";

const shown = (flow, level = null) => [
  {id: "flow-meter", quantity: "flow", value: flow, low: 0, high: 10},
  ...(level === null ? [] : [{id: "level-supply", quantity: "height", value: level, low: 0, high: 4}]),
];

test("each instrument is a column, one that comes later too", () => {
  const trend = createTrend();
  trend.add(0, shown(1));
  trend.add(1, shown(2, 3));
  const {columns, rows} = trend.record;
  assert.deepEqual(columns.map(({id}) => id), ["flow-meter", "level-supply"]);
  assert.deepEqual(rows.map(({values}) => values), [[1], [2, 3]]);
});

test("an instrument that is gone leaves a gap", () => {
  const trend = createTrend();
  trend.add(0, shown(1, 3));
  trend.add(1, shown(2));
  assert.deepEqual(trend.record.rows[1].values, [2, null]);
});

test("a day at a hundred times, ten steps a second, stays within its rows and keeps a peak of one step", () => {
  const trend = createTrend(500);
  for (let n = 0; n <= 8640; n++) trend.add(10 * n, shown(n === 1234 ? 9 : 1));
  const {rows} = trend.record;
  assert.ok(rows.length <= 500 && rows.length >= 125, String(rows.length));
  assert.equal(Math.max(...rows.map(({high}) => high[0])), 9);
  assert.equal(Math.min(...rows.map(({low}) => low[0])), 1);
  assert.equal(rows[0].from, 0);
  assert.equal(rows.at(-1).time, 86400);
  for (let n = 1; n < rows.length; n++) assert.ok(rows[n].from > rows[n - 1].time);
});

test("what is kept comes back, in few rows", () => {
  const [trend, again] = [createTrend(), createTrend()];
  for (let n = 0; n < 3000; n++) trend.add(n, shown(n === 700 ? 9.1234567 : 1, 2), n === 5 ? [{kind: "trips", where: "pump-1", time: 5}] : []);
  again.restore(JSON.parse(JSON.stringify(trend.kept(200))));
  const {rows, events, columns} = again.record;
  assert.ok(rows.length <= 200);
  assert.equal(Math.max(...rows.map(({high}) => high[0])), 9.12346);
  assert.deepEqual(events, [{kind: "trips", where: "pump-1", time: 5}]);
  assert.deepEqual(columns, trend.record.columns);
});

test("what was kept damaged is not taken", () => {
  for (const bad of [null, 3, {}, {columns: [{}], rows: [], events: []}, {columns: [], events: [], rows: [{from: 0, time: "1", values: []}]}, {columns: [], events: [{kind: 1}], rows: []}]) {
    const trend = createTrend();
    trend.restore(bad);
    assert.equal(trend.record.rows.length, 0);
  }
});
