import assert from "node:assert/strict";
import {test} from "node:test";
import {at, createStore, firstState, withEdits} from "../../site/js/state.js";

const store = () => createStore(firstState("wash-line"));

test("a drag is one step of the history", () => {
  const s = store();
  for (const opening of [0.5, 0.4, 0.3]) s.preview({"valve.opening": opening});
  assert.equal(s.live, true);
  assert.equal(s.canUndo, false);
  s.commit();
  assert.equal(s.live, false);
  assert.equal(s.state.edits["valve.opening"], 0.3);
  s.undo();
  assert.deepEqual(s.state.edits, {});
  s.redo();
  assert.deepEqual(s.state.edits, {"valve.opening": 0.3});
});

test("a drag that is given up leaves no trace", () => {
  const s = store();
  s.commit({"valve.opening": 0.5});
  s.preview({"valve.opening": 0.1});
  s.cancel();
  assert.deepEqual(s.state.edits, {"valve.opening": 0.5});
  s.undo();
  assert.deepEqual(s.state.edits, {});
});

test("undo in the middle of a drag undoes the drag", () => {
  const s = store();
  s.commit({"valve.opening": 0.5});
  s.preview({"valve.opening": 0.1});
  s.undo();
  assert.deepEqual([s.state.edits, s.live], [{"valve.opening": 0.5}, false]);
  s.redo();
  assert.deepEqual(s.state.edits, {"valve.opening": 0.1});
});

test("letting go where one began is no step", () => {
  const s = store();
  s.commit({"valve.opening": 0.5});
  s.preview({"valve.opening": 0.7});
  s.commit({"valve.opening": 0.5});
  s.undo();
  assert.equal(s.canUndo, false);
});

test("an edit taken back leaves the plant's own value", () => {
  const s = store();
  s.commit({"pump.model": "large"});
  s.commit({"pump.model": undefined});
  assert.deepEqual(s.state.edits, {});
});

test("reset and opening another plant can be undone", () => {
  const s = store();
  s.commit({"valve.opening": 0.2});
  s.reset();
  assert.deepEqual(s.state.edits, {});
  s.open("filter");
  assert.equal(s.state.plant, "filter");
  s.undo();
  s.undo();
  assert.deepEqual([s.state.plant, s.state.edits], ["wash-line", {"valve.opening": 0.2}]);
});

test("undo leaves the way things are shown alone", () => {
  const s = store();
  s.commit({"valve.opening": 0.2});
  s.show({units: "gpm-psi-ft"});
  s.undo();
  assert.equal(s.state.view.units, "gpm-psi-ft");
});

test("a link brings its whole view; nothing of the one before stays", () => {
  const s = store();
  s.show({place: "case", case: "some-case", moves: [{do: "hint"}]});
  s.load({format: 1, plant: "filter", edits: {}, view: {place: "rig", units: "ls-kpa-m"}});
  assert.deepEqual(s.state.view, {place: "rig", units: "ls-kpa-m"});
  s.undo();
  assert.equal(s.state.plant, "wash-line");
});

test("the state cannot be changed from outside", () => {
  const s = store();
  assert.throws(() => {
    "use strict";
    s.state.edits["valve.opening"] = 1;
  }, TypeError);
});

test("who listens hears what happened", () => {
  const s = store();
  const heard = [];
  const stop = s.subscribe((state, what) => heard.push(what));
  s.preview({"valve.opening": 0.1});
  s.commit();
  s.undo();
  stop();
  s.redo();
  assert.deepEqual(heard, ["preview", "commit", "undo"]);
});

test("edits go into a copy of the plant", () => {
  const plant = Object.freeze({valve: Object.freeze({opening: 0.6})});
  const edited = withEdits(plant, {"valve.opening": 0.1, "site.barometer_bar": 0.9});
  assert.equal(at(edited, "valve.opening"), 0.1);
  assert.equal(at(edited, "site.barometer_bar"), 0.9);
  assert.equal(at(plant, "valve.opening"), 0.6);
  assert.equal(at(plant, "no.such.key"), undefined);
});
