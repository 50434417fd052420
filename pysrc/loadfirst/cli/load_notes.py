"""Notes on the load in plain words: ends that are not reached, lines that take or give elsewhere."""

from __future__ import annotations

from collections.abc import Callable

from loadfirst.units import BAR, HOUR

Facts = dict[str, float]


def _dry(facts: Facts) -> str:
    gives = f", the pumps give {facts['head']:.2f} m" if "head" in facts else ""
    return f"the liquid does not get here: {facts['missing']:.2f} m of head are missing{gives}."


def _not_supplied(facts: Facts) -> str:
    return (
        f"gets nothing although its valve is open: {facts['missing']:.2f} m of head are missing there. "
        "What others take draws the pressure down."
    )


def _backflow(facts: Facts) -> str:
    return f"{-facts['flow'] * HOUR:.1f} m³/h flow backward here."


def _burst(facts: Facts) -> str:
    return (
        f"{facts['flow'] * HOUR:.1f} m³/h leave through a hole in the line. The gauge is low because the "
        "load is light, not because the pump is weak. Keep away from the jet; stop the pump from elsewhere, "
        "isolate and drain before anyone opens or clamps anything."
    )


def _filling(facts: Facts) -> str:
    return (
        f"the line is full over {facts['filled'] * 100:.0f} % of its length, up to {facts['height']:.2f} m; "
        "nothing is delivered yet, and the load still grows."
    )


def _not_primed(facts: Facts) -> str:
    return (
        f"air stands here: the pump lifts over it, {facts['rise']:.2f} m more than the end asks for, and the "
        "leg beyond pulls nothing. Once it runs full the same pump meets a lighter load."
    )


def _broken(facts: Facts) -> str:
    if facts["rise"] < 0:
        return (
            "the pressure has fallen to that at which the liquid boils: no more comes back over the summit."
        )
    return (
        "the pressure has fallen to that at which the liquid boils: the siphon breaks here, and "
        f"{facts['rise']:.2f} m more are asked than a full line would ask. A real one breaks earlier, by "
        "dissolved air."
    )


def _choked(facts: Facts) -> str:
    return (
        f"chokes: {facts['drop'] / BAR:.2f} bar stand across it, but only {facts['most'] / BAR:.2f} bar "
        "drive the flow, the rest makes vapour and noise. Less pressure behind it brings no more flow."
    )


SENTENCES: dict[str, Callable[[Facts], str]] = {
    "not-reached": _dry,
    "not-supplied": _not_supplied,
    "backflow": _backflow,
    "burst": _burst,
    "line-filling": _filling,
    "not-primed": _not_primed,
    "siphon-broken": _broken,
    "choked": _choked,
}
