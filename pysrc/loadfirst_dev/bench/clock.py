"""Steps of the clock as the page asks for them while time runs: how long each takes, and what a day loses."""

from __future__ import annotations

import json
from collections.abc import Sequence
from math import fsum
from time import perf_counter
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
DAY, HOUR = 86_400.0, 3600.0  # [s]
LIVELY = {"supply.inflow_m3h": 30.0, "delivery.draw_m3h": 30.0}
"""What keeps the plant busy for a day: vessels fill, run over and are drawn from."""
HELD = ("came", "drawn", "overflowed", "elsewhere", "line", "by_hand")
ROUND_OFF = 1e-13  # [-] of all that has moved


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


def day() -> list[Figure]:
    """A day of plant time at the greatest rate, natively: what an hour of it takes, and what is lost."""
    rate, span = max(RATES.items())
    body: dict[str, Any] = {"plant": DEFAULT_PLANT, "edits": LIVELY, "span": span}
    first = moment = _stepped(body)
    began, count = perf_counter(), round(DAY / span) - 1
    for _ in range(count):
        moment = _stepped({**body, "moment": moment})
    took = perf_counter() - began
    moved = max(abs(moment[name][0]) for name in HELD)
    return [
        Figure(
            f"an hour of plant time at {rate}×, natively, in steps of {span:g} s",
            took / (DAY / HOUR),
            "s",
            most=HOUR / rate / 2,
            basis=f"{count} steps, {1e3 * took / count:.1f} ms each; the aim is half of what goes by",
        ),
        Figure(
            "balance of all volumes, lost in that day, of what has moved",
            abs(_all(moment) - _all(first)) / moved,
            most=ROUND_OFF,
            basis=f"{moved:.0f} m³ have moved",
        ),
    ]


def _stepped(body: dict[str, Any]) -> dict[str, Any]:
    reply = json.loads(handle(json.dumps({"v": PROTOCOL, "id": 0, "kind": "step", "body": body})))
    moment: dict[str, Any] = reply["body"]["moment"]
    return moment


def _all(moment: dict[str, Any]) -> float:
    """All liquid that there is, wherever it has gone. [m³]"""
    accounts = [moment["supply"]["volume"], moment["delivery"]["volume"], *(moment[name] for name in HELD)]
    return fsum(part for account in accounts for part in account)
