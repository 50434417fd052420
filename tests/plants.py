"""Plants as plain data, for tests that need one to change."""

from __future__ import annotations

import copy
from typing import Any

CURVE: dict[str, Any] = {
    "motor_kw": 3,
    "flow_m3h": [0, 10, 20, 30],
    "head_m": [30, 28, 23, 14],
    "efficiency_percent": [0, 50, 65, 55],
    "npshr_m": [1, 1.1, 1.5, 2.4],
}

LEAST: dict[str, Any] = {"format": 1, "title": "A test stand", "pump": {"curve": CURVE}}
"""The least that makes a plant; needs no other file."""


def with_table(table: str, **keys: Any) -> dict[str, Any]:
    """`LEAST` with the keys of one table set."""
    data = copy.deepcopy(LEAST)
    data.setdefault(table, {}).update(keys)
    return data


def with_curve(**keys: Any) -> dict[str, Any]:
    """`LEAST` with some keys of its pump's points changed; None takes a key away."""
    curve = {**CURVE, **keys}
    return {**LEAST, "pump": {"curve": {key: value for key, value in curve.items() if value is not None}}}
