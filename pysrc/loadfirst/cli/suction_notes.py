"""Notes on the suction side in plain words: what the readings do, what less flow cures and what not."""

from __future__ import annotations

from collections.abc import Callable

from loadfirst.cli.digits import fine
from loadfirst.units import HOUR, RPM

Facts = dict[str, float]

NEVER_THROTTLED = "Never throttle the suction: that only takes more NPSH away."


def _bubbles(facts: Facts) -> str:
    return (
        f"has {facts['available']:.1f} m NPSH, less than twice the {facts['required']:.1f} m it requires: "
        "bubbles form and collapse in the impeller, and wear it. No gauge shows it: head, flow and current "
        "stand as usual. A crackling can be heard at most."
    )


def _short(facts: Facts) -> str:
    lost = facts.get("lost")
    less = f", {lost:.2f} m of its head are lost" if lost else ""
    cure = (
        f"Throttling the discharge cures it, below {fine(facts['enough'] * HOUR, 1)} m³/h, as less flow "
        "needs less NPSH and loses less on the way"
        if facts["enough"] > 0
        else "Throttling the discharge does not cure it: it is short at any flow"
    )
    return (
        f"has {facts['available']:.1f} m NPSH and requires {facts['required']:.1f} m: it cavitates{less}. "
        f"Gauges and ammeter hunt; it rattles, and is being damaged. {cure}. The cause is on the suction "
        f"side: strainer, level, height, heat. {NEVER_THROTTLED}"
    )


def _not_counted(facts: Facts) -> str:
    return (
        "two pumps stand side by side and the curve of one rises somewhere: this answer counts no head that "
        f"is lost for want of NPSH. At these flows a pump would lose up to {facts['lost']:.2f} m: less flows "
        "than is said, and less still where the liquid boils in front of them. One pump alone, or two in "
        "line, are answered with what is lost."
    )


def _boils(facts: Facts) -> str:
    flow = fine(facts["flow"] * HOUR, 1)
    return (
        f"the liquid boils in front of the pump: no more than {flow} m³/h pass, "
        "whatever the load would take, and the pump gives only what the load asks at that flow. Readings "
        "hunt hard, it hammers: stop it before it runs dry. Opening the discharge brings nothing, throttling "
        f"takes flow and noise away but not the cause. {NEVER_THROTTLED}"
    )


def _dry(facts: Facts) -> str:
    return (
        f"the liquid does not reach the pump: {facts['missing']:.2f} m of NPSH are missing before anything "
        "flows. Vapour stands there and the pump gives nothing; it must not run like that. Lower the pump, "
        "raise the level, cool the liquid or put pressure on it; nothing on the discharge side helps."
    )


def _runs_dry(facts: Facts) -> str:
    return (
        f"it runs dry at {facts['speed'] / RPM:.0f} 1/min: its supply has run empty, it turns in air and "
        "gives nothing. Nothing wets or cools its seals and bearings; they fail within minutes. Stop it, "
        "fill the supply, prime and vent the pump before it starts again."
    )


def _vortex(facts: Facts) -> str:
    return (
        f"{facts['above']:.2f} m of liquid stand above the mouth of the suction line, and "
        f"{facts['needed']:.2f} m are common practice at this flow: a vortex may draw air, by gulps, and "
        "readings hunt with them. This answer does not count that air. Raise the level or take less flow."
    )


SENTENCES: dict[str, Callable[[Facts], str]] = {
    "bubbles": _bubbles,
    "npsh-short": _short,
    "npsh-not-counted": _not_counted,
    "suction-boils": _boils,
    "suction-dry": _dry,
    "runs-dry": _runs_dry,
    "vortex": _vortex,
}
