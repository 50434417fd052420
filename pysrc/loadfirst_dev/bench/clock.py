"""Steps of the clock as the page asks for them while time runs; how long each takes, in frames."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from loadfirst.door.handle import handle
from loadfirst.door.messages import PROTOCOL
from loadfirst_dev.bench.figures import FRAME, Figure, percentile
from loadfirst_dev.links import DEFAULT_PLANT

WARM = 20  # steps that do not count
STEPS = 200
RATES = {1: 0.1, 100: 10.0}
"""Times faster than real time, and the plant time of a step then. [s]"""
SHARE = 0.25  # of a frame


def asks() -> list[str]:
    """Runs of steps without curves, each from the moment at which the one before ended."""
    return [text for span in RATES.values() for text in chain(span)]


def chain(span: float) -> list[str]:
    """Steps of one length, answered natively so that each has its moment. [s]"""
    found: list[str] = []
    moment: dict[str, Any] = {}
    for number in range(WARM + STEPS):
        body = {"plant": DEFAULT_PLANT, "span": span, **moment}
        found.append(json.dumps({"v": PROTOCOL, "id": number, "kind": "step", "body": body}))
        moment = {"moment": json.loads(handle(found[-1]))["body"]["moment"]}
    return found


def figures(took: Sequence[float]) -> list[Figure]:
    """How long the steps of `asks` took in the worker. [ms]"""
    size = WARM + STEPS
    found = []
    for number, rate in enumerate(RATES):
        counted = took[number * size + WARM : (number + 1) * size]
        basis = (
            f"median {percentile(counted, 50):.1f} ms, 95th percentile {percentile(counted, 95):.1f} ms, "
            f"of {len(counted)} steps"
        )
        name = f"one step of the clock at {rate}× inside the worker, in frames"
        found.append(Figure(name, percentile(counted, 50) / FRAME, most=SHARE, basis=basis))
    return found
