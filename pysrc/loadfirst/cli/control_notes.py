"""Notes on controllers and on drives at their current limit, in plain words."""

from __future__ import annotations

from collections.abc import Callable

from loadfirst.cli.digits import fine
from loadfirst.units import BAR, HOUR

Facts = dict[str, float]


def _lost(facts: Facts) -> str:
    at = f"control is lost: its output stands at its limit, {facts['output'] * 100:.0f} %"
    if "wanted_height" in facts:
        passing, drawn = (fine(facts[name] * HOUR, 1) for name in ("flow", "draw"))
        return (
            f"{at}, where {passing} m³/h pass and {drawn} m³/h are drawn. "
            f"The surface ends up at {facts['height']:.2f} m, not at {facts['wanted_height']:.2f} m."
        )
    return f"{at}. The reading is {_reading(facts)}, the set point {_wanted(facts)}."


def _hunts(facts: Facts) -> str:
    return (
        f"it cannot come to rest: near {facts['output'] * 100:.1f} % of its output the reading leaps over "
        f"the set point, {_wanted(facts)}. A real loop swings there; the answer shows one side of the leap."
    )


def _reading(facts: Facts) -> str:
    if "pressure" in facts:
        return f"{facts['pressure'] / BAR:.2f} bar"
    return f"{fine(facts['flow'] * HOUR, 1)} m³/h" if "flow" in facts else "undefined"


def _wanted(facts: Facts) -> str:
    if "wanted_pressure" in facts:
        return f"{facts['wanted_pressure'] / BAR:.2f} bar"
    if "wanted_height" in facts:
        return f"{facts['wanted_height']:.2f} m"
    return f"{fine(facts['wanted_flow'] * HOUR, 1)} m³/h"


def _limited(facts: Facts) -> str:
    return (
        f"its current limit has cut the frequency from {facts['asked']:.1f} to {facts['frequency']:.1f} Hz, "
        f"so that {fine(facts['current'], 1)} A flow. The pump turns slower than it is told to; that is the "
        "load, not wear."
    )


def _over(facts: Facts) -> str:
    return (
        f"even at {facts['frequency']:.1f} Hz {fine(facts['current'], 1)} A flow, above its current limit: "
        "it would trip. The torque hardly falls with the speed here."
    )


SENTENCES: dict[str, Callable[[Facts], str]] = {
    "control-lost": _lost,
    "control-hunts": _hunts,
    "current-limited": _limited,
    "current-over-limit": _over,
}
