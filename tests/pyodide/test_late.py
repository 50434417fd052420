"""What the first download leaves out: not asked for by the engine's work, and there when imported."""

from __future__ import annotations

import json
from typing import Any

import pytest

PLAYED = [
    {"do": "predict", "says": "up", "suspects": "machine"},
    {"do": "decide", "choice": "worn", "action": "overhaul"},
]


def late(asked: list[str]) -> list[str]:
    """The late files among the requests."""
    return [name for name in asked if "late-" in name]


def test_the_engine_needs_no_late_file(chromium: Any, test_site: str) -> None:
    """Every plant and every kind of mistake is answered from the first download."""
    page = chromium.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{test_site}tests/index.html")
    asks = [
        {
            "v": 1,
            "id": 1,
            "kind": "answer",
            "body": {"plant": "rinse-transfer", "edits": {"valve.openning": 1}},
        },
        {"v": 1, "id": 2, "kind": "answer", "body": {"plant": "rinse-transfer"}},
        {"v": 1, "id": 3, "kind": "file", "body": {"name": "a.toml", "text": "x = ["}},
        {"v": 1, "id": 4, "kind": "catalogue", "body": {}},
        {"v": 0, "id": 5},
        {"v": 1, "id": 6, "kind": "debrief", "body": {"case": "the-dropped-gauge", "moves": PLAYED}},
        {"v": 1, "id": 7, "kind": "hide", "body": {"plant": "rinse-transfer", "edits": {}, "seed": 1}},
    ]
    told = page.evaluate(ASK_ALL, [json.dumps(ask) for ask in asks])
    assert [json.loads(text)["ok"] for text in told] == [False, True, False, True, False, True, True]
    assert late(asked) == []
    page.close()


ASK_ALL = """
async (asks) => {
  const worker = new Worker("../js/engine/worker.js", {type: "module"});
  const told = [];
  await new Promise((resolve, reject) => {
    worker.onmessage = ({data}) => {
      if (data.boot?.stage === "failed") reject(new Error(data.boot.text));
      if (data.reply) told.push(data.reply);
      if (told.length === asks.length) resolve();
    };
    for (const ask of asks) worker.postMessage({ask});
  });
  worker.terminate();
  return told;
}
"""


REPEAT = """
async ([kind, body]) => {
  const worker = new Worker("../js/engine/worker.js", {type: "module"});
  const ask = (body) => new Promise((resolve, reject) => {
    worker.onmessage = ({data}) => {
      if (data.boot?.stage === "failed") reject(new Error(data.boot.text));
      if (data.reply) resolve(JSON.parse(data.reply));
    };
    worker.postMessage({ask: JSON.stringify({v: 1, id: 1, kind, body})});
  });
  let reply = await ask(body);
  const over = ({done, of, tried}) => (tried === undefined ? done === of : done);
  while (reply.ok && !over(reply.body)) {
    if (reply.body.tried !== undefined) body = {...body, tried: reply.body.tried};
    reply = await ask(body);
  }
  worker.terminate();
  return reply;
}
"""


@pytest.mark.parametrize(
    ("kind", "body", "key"),
    [
        ("debrief", {"case": "the-dropped-gauge", "moves": PLAYED}, "debrief"),
        ("worked", {"case": "the-soft-gauge", "moves": PLAYED[:1]}, "step"),
        ("fair", {"case": "the-dropped-gauge", "moves": []}, "fairness"),
        ("compose", {"seed": 3, "level": "first-steps", "tried": 0}, "text"),
    ],
)
def test_what_is_reckoned_in_pieces_needs_no_late_file(
    chromium: Any, test_site: str, kind: str, body: dict[str, Any], key: str
) -> None:
    """To its very end: on the way the network may be gone."""
    page = chromium.new_page()
    page.set_default_timeout(120_000)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{test_site}tests/index.html")
    reply = page.evaluate(REPEAT, [kind, body])
    assert reply["ok"] and reply["body"][key] is not None
    assert late(asked) == []
    page.close()


@pytest.mark.parametrize(
    ("code", "value"),
    [
        ("import json.tool; json.tool.__name__", "json.tool"),
        ("import wave; wave.__file__.startswith('/lib/late/')", True),
        ("import numpy.polynomial; float(numpy.polynomial.Polynomial([1, 2])(3))", 7.0),
        ("import numpy.fft; float(abs(numpy.fft.fft([1.0, 2.0, 3.0]))[0])", 6.0),
    ],
)
def test_what_was_left_out_is_there_when_imported(run: Any, code: str, value: object) -> None:
    """Modules of both late files, beside and below what is there already."""
    assert run(code) == value


@pytest.mark.parametrize(
    ("code", "value"),
    [
        ("import asyncio.events, asyncio; asyncio.Future.__module__", "_asyncio"),
        ("import asyncio; issubclass(asyncio.Queue, object) and asyncio.Queue.__module__", "asyncio.queues"),
        (
            "from asyncio import locks, sleep; sleep.__module__ + ' ' + locks.__name__",
            "asyncio.tasks asyncio.locks",
        ),
        ("from pyodide.webloop import WebLoop; WebLoop.__module__", "pyodide.webloop"),
        ("from pyodide._package_loader import unpack_buffer; callable(unpack_buffer)", True),
        ("from numpy._typing import _SupportsArray as a; a.__module__", "numpy._typing._array_like"),
    ],
)
def test_what_a_leaner_module_stands_in_for_is_there_when_asked_for(
    run: Any, code: str, value: object
) -> None:
    """The real one's names can be had, in any order."""
    assert run(code) == value


def test_a_module_from_memory_says_where_its_file_would_be(run: Any) -> None:
    """As `__file__`, on which the engine finds its plants; packages have a path, and tracebacks lines."""
    code = """
import json, traceback, loadfirst.errors
try:
    json.loads("{")
except ValueError as error:
    line = traceback.extract_tb(error.__traceback__)[-1].lineno
" ".join([loadfirst.errors.__file__, *json.__path__, str(line > 1)])
"""
    assert run(code) == "/lib/python3.14/site-packages/loadfirst/errors.pyc /lib/python3.14/json True"


def test_a_module_that_does_not_exist_is_still_not_found(run: Any) -> None:
    """The late files promise no more than they hold."""
    code = """
try:
    import json.no_such_module
except ModuleNotFoundError as error:
    said = error.name
said
"""
    assert run(code) == "json.no_such_module"
