// The examples that both sides are held to: Python must answer them, the engine must understand them.
import assert from "node:assert/strict";
import {readFileSync, readdirSync} from "node:fs";
import {test} from "node:test";
import {EngineError, PROTOCOL, createEngine} from "../../site/js/engine/engine.js";
import {fakeTimers, fakeWorker, outcome} from "./fake-worker.js";

const FOLDER = new URL("../door/messages/", import.meta.url);
const examples = readdirSync(FOLDER).filter((name) => name.endsWith(".json"));

test("there are example messages", () => {
  assert.ok(examples.length > 0);
});

for (const name of examples) {
  test(`the engine understands ${name}`, async () => {
    const {ask, reply} = JSON.parse(readFileSync(new URL(name, FOLDER), "utf8"));
    const worker = fakeWorker();
    const engine = createEngine(() => worker, {timers: fakeTimers()});
    worker.ready();
    const asked = engine.ask(ask.kind, ask.body);
    const [sent] = worker.asks;
    assert.deepEqual([sent.v, sent.kind, sent.body], [PROTOCOL, ask.kind, ask.body]);
    worker.say({reply: JSON.stringify({...reply, id: sent.id})});
    const end = await outcome(asked);
    if (reply.ok) {
      assert.deepEqual(end.value, reply.body);
    } else {
      assert.ok(end.reason instanceof EngineError);
      assert.equal(end.reason.code, reply.error.code);
      assert.equal(end.reason.where, reply.error.where ?? "");
    }
  });
}
