"""What the engine answers outside any browser."""

from __future__ import annotations

import json
from typing import Any

from loadfirst.door.handle import handle

PLANTS = ("rinse-transfer", "must-filter", "pit-lift", "warm-makeup")
CASE = "the-dropped-gauge"


def ask(kind: str, body: dict[str, Any]) -> dict[str, Any]:
    """The body of the door's reply."""
    reply = json.loads(handle(json.dumps({"v": 1, "id": 1, "kind": kind, "body": body})))
    assert reply["ok"], reply
    return reply["body"]


def answer(plant: Any = "rinse-transfer", edits: dict[str, Any] | None = None) -> dict[str, Any]:
    """The live answer for a plant with edits."""
    return ask("answer", {"plant": plant, "edits": edits or {}, "curve_points": 60})


def days(yesterday: dict[str, Any], today: dict[str, Any], plant: Any = "rinse-transfer") -> dict[str, Any]:
    """A plant with edits yesterday against the same with edits today."""
    rigs = {"yesterday": yesterday, "today": today}
    return ask("days", {day: {"plant": plant, "edits": edits} for day, edits in rigs.items()})


def case(*moves: dict[str, str]) -> dict[str, Any]:
    """The case as it stands after some moves."""
    return ask("case", {"case": CASE, "moves": list(moves)})


def reckoned(kind: str, body: dict[str, Any]) -> dict[str, Any]:
    """The reply to what is reckoned in lots, once all are done."""
    while (reply := ask(kind, body))["done"] < reply["of"]:
        pass
    return reply
