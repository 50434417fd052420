"""The site in Firefox and WebKit: Python starts and answers, the rig moves, the case is played."""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from tests.engines import WAIT, Engine, firefox, until, webkit

from page.parts import native
from page.parts.links import link, state, unpack
from page.parts.play import ACTION, PREDICTION, WITNESSED, decided
from page.parts.rig import SEEN, same
from page.parts.words import say

ENGINES = {"firefox": firefox, "webkit": webkit}

ASK = json.dumps(
    {"v": 1, "id": 1, "kind": "answer", "body": {"plant": "rinse-transfer", "edits": {"valve.opening": 0.4}}}
)
TALK = f"""
new Promise((resolve) => {{
  const worker = new Worker(new URL("js/engine/worker.js", location.href), {{type: "module"}});
  setTimeout(() => resolve("nothing came for 50 s"), 50000);
  worker.onmessage = ({{data}}) => {{
    if (data.boot?.stage === "failed") resolve(data.boot.text);
    if (data.reply) {{
      worker.terminate();
      resolve(data.reply);
    }}
  }};
  worker.postMessage({{ask: {json.dumps(ASK)}}});
}})
"""


@pytest.fixture(scope="module", params=ENGINES)
def engine(request: pytest.FixtureRequest) -> Iterator[Engine]:
    """Each of the two other browser engines in turn."""
    with ENGINES[request.param]() as engine:
        yield engine


def test_python_starts_and_answers_as_it_does_natively(engine: Engine, site: str) -> None:
    """From a page without scripts of its own: worker, runtime, numpy, door."""
    from tests.same import differences

    from loadfirst.door.handle import handle

    engine.open(f"{site}licences.txt")
    told: Any = json.loads(engine.run(TALK))
    assert told["ok"]
    assert differences(json.loads(handle(ASK)), told, 1e-9) == []


def looked(engine: Engine, good: Callable[[dict[str, Any]], bool], seconds: float = WAIT) -> dict[str, Any]:
    """Look at the page until what is seen will do."""
    end = time.monotonic() + seconds
    while True:
        seen, why = engine.run(f"({SEEN})()"), ""
        try:
            if good(seen):
                return seen
        except AssertionError as error:
            why = str(error)
        assert time.monotonic() < end, f"{why}: {seen}"
        time.sleep(0.1)


def test_the_rig_starts_and_the_valve_moves_by_keys(engine: Engine, site: str) -> None:
    """What is shown is the native engine's answer, before and after; the address follows."""
    engine.open(site)
    live = json.dumps(say("live"))
    until(engine, f"document.querySelector('#status [role=status]')?.textContent === {live}")
    looked(engine, lambda seen: same(seen, native.answer()))
    engine.run("document.querySelector('#valve-opening').focus()")
    for _ in range(3):
        engine.press("ArrowLeft")
    opening = float(until(engine, "document.querySelector('#valve-opening').value"))
    assert opening < native.answer()["plant"]["valve"]["opening"]
    looked(engine, lambda seen: same(seen, native.answer(edits={"valve.opening": opening})))
    kept = unpack(str(until(engine, "location.hash")))
    assert kept and kept["edits"] == {"valve.opening": opening}


def test_the_case_is_played_to_its_end(engine: Engine, site: str) -> None:
    """From the story by way of one check to the verdict that holds."""
    view = native.case(PREDICTION, {"do": "check", "id": "flow"})
    right = next(
        choice["id"]
        for choice in view["choices"]
        if native.case(PREDICTION, decided(choice["id"]))["verdict"]["rightness"] == "right"
    )
    engine.open("about:blank")
    engine.open(site + link(state(place="case", case=native.CASE, moves=[])))
    steps = [
        f'input[name="case-says"][value="{PREDICTION["says"]}"]',
        f'input[name="case-suspects"][value="{PREDICTION["suspects"]}"]',
        '[data-key="commit"]',
        '[data-key="take-flow"]',
        *(f'input[name="case-saw-{reading}"][value="{says}"]' for reading, says in WITNESSED.items()),
        f'input[name="case-choice"][value="{right}"]',
        f'input[name="case-action"][value="{ACTION}"]',
        '[data-key="decide"]',
    ]
    for query in steps:
        node = f"document.querySelector({json.dumps(query)})"
        until(engine, f"{node} !== null && !document.querySelector('#case [aria-busy=true]')")
        engine.run(f"{node}.click()")
    heading = until(engine, "document.querySelector('[data-key=verdict]')?.textContent ?? null")
    assert heading == say("case-rightness-right")
    until(engine, "document.querySelector('#case svg .duty-before') !== null")
    assert engine.run("document.scrollingElement.scrollWidth <= document.documentElement.clientWidth")
