"""The worker by itself: how it tells of its start, of its failure, and that it answers in order."""

from __future__ import annotations

import json
from typing import Any

import pytest

BLANK = "<!doctype html><html lang='en'><link rel='icon' href='data:,'><title>bare</title></html>"

TALK = """
async (asks) => {
  const worker = new Worker(new URL("js/engine/worker.js", location.href), {type: "module"});
  const boots = [], replies = [];
  for (const ask of asks) worker.postMessage({ask});
  await new Promise((resolve, reject) => {
    setTimeout(() => reject(new Error("nothing came for 30 s")), 30000);
    worker.onmessage = ({data}) => {
      if (data.boot) boots.push(data.boot);
      else replies.push(data.reply);
      const stage = boots.at(-1)?.stage;
      if (stage === "failed" || (stage === "ready" && replies.length === asks.length)) resolve();
    };
  });
  worker.terminate();
  return {boots, replies};
}
"""


@pytest.fixture
def bare(context: Any, site: str) -> Any:
    """An empty page at the site's own address: no other script asks the worker anything."""
    page = context.new_page()
    page.route(f"{site}bare", lambda route: route.fulfill(body=BLANK, content_type="text/html"))
    page.goto(f"{site}bare")
    return page


def asks(count: int) -> list[str]:
    """Questions of growing number, each to be told from the others by its id."""
    return [
        json.dumps({"v": 1, "id": number, "kind": "answer", "body": {"plant": "rinse-transfer"}})
        for number in range(count)
    ]


def test_progress_counts_bytes_up_to_all_of_them(bare: Any) -> None:
    """Never backward, never beyond the total, and the total is there before Python starts."""
    boots = bare.evaluate(TALK, [])["boots"]
    stages = [boot["stage"] for boot in boots]
    assert stages == sorted(stages, key=["runtime", "packages", "ready"].index)
    assert stages[-2:] == ["packages", "ready"]
    done = [boot["done"] for boot in boots if "done" in boot]
    assert done == sorted(done) and done[-1] == boots[0]["total"]


def test_questions_put_before_python_is_there_are_answered_in_order(bare: Any) -> None:
    """They wait for the start, and none is lost."""
    told = bare.evaluate(TALK, asks(5))
    assert [json.loads(reply)["id"] for reply in told["replies"]] == [0, 1, 2, 3, 4]
    assert all(json.loads(reply)["ok"] for reply in told["replies"])


def test_a_server_that_knows_no_wasm_is_no_hindrance(bare: Any) -> None:
    """Sent as mere bytes, the runtime is compiled when it is all there."""

    def plain(route: Any) -> None:
        reply = route.fetch()
        route.fulfill(response=reply, headers={**reply.headers, "content-type": "application/octet-stream"})

    bare.context.route("**/*.wasm", plain)
    told = bare.evaluate(TALK, asks(1))
    assert json.loads(told["replies"][0])["ok"]


@pytest.mark.parametrize(
    "missing", ["manifest.json", "pyodide.*", "module.*", "wasm.*", "stdlib.*", "loadfirst.*"]
)
def test_a_missing_file_of_the_runtime_is_told_as_a_failure(bare: Any, missing: str) -> None:
    """At once and with a text, where the runtime itself would wait for ever."""
    bare.context.route(f"**/runtime/{missing}", lambda route: route.fulfill(status=404, body="gone"))
    last = bare.evaluate(TALK, asks(1))["boots"][-1]
    assert last["stage"] == "failed"
    assert last["text"]


def test_a_damaged_runtime_is_told_as_a_failure(bare: Any) -> None:
    """Half a file, as a broken proxy may send it."""
    bare.context.route("**/runtime/wasm.*", lambda route: route.fulfill(body=b"\0asm\1\0\0\0 and no more"))
    assert bare.evaluate(TALK, asks(1))["boots"][-1]["stage"] == "failed"


@pytest.mark.parametrize("damaged", ["stdlib.*", "packages.*"])
def test_damaged_python_files_are_told_as_a_failure(bare: Any, damaged: str) -> None:
    """The runtime starts, and Python in it cannot."""
    bare.context.route(f"**/runtime/{damaged}", lambda route: route.fulfill(body=b"\2\0\0\0[]"))
    assert bare.evaluate(TALK, asks(1))["boots"][-1]["stage"] == "failed"
