"""The engine of the site starts and answers in Firefox and WebKit too."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

import pytest
from tests.engines import Engine, firefox, webkit

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
