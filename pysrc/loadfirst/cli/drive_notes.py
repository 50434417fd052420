"""Notes on motors, relays and belts in plain words, for the terminal."""

from __future__ import annotations

from collections.abc import Callable

from loadfirst.cli.digits import fine
from loadfirst.plant.answer import Note
from loadfirst.units import RPM

Facts = dict[str, float]

REASONS = {
    "little-load": (
        "The load asks too little head and gets too much flow, which takes more power here: the pump "
        "is sound. Throttle, do not repair."
    ),
    "much-load": (
        "The load asks more pressure, and this pump takes the more power the harder it is held back: it "
        "is sound. Open what is shut."
    ),
    "stalled": "The load asks more torque than the motor has.",
    "low-voltage": "The voltage is low, so the same power takes more current. Neither pump nor load changed.",
    "phase-lost": "One phase is lost, and the other two carry it all. Neither pump nor load has changed.",
    "set-low": "The current is within what the motor is rated for: the relay is set too low.",
    "speed": "The pump is turned faster than it was measured, and power grows faster than speed.",
    "liquid": "The liquid is heavier or thicker than the one that the motor was chosen for.",
    "small-motor": "The motor is too small for this pump.",
}
"""Why a relay trips."""

WAIT = "Never set a relay higher or start again before the reason is found."


def _trips(note: Note) -> str:
    facts = note.facts
    return (
        f"draws {fine(facts['current'], 1)} A; its overload relay, set to {fine(facts['setting'], 1)} A, "
        f"trips after {_time(facts['after'])}. {REASONS[str(note.rule)]} {WAIT}"
    )


def _hangs(note: Note) -> str:
    speed, current = f"{note.facts['speed'] / RPM:.0f} 1/min", f"{fine(note.facts['current'], 1)} A"
    if note.rule == "ramp":
        return (
            f"would not run up: near {speed} load and ramp together ask more torque than its drive gives. "
            "Give it a longer ramp or less load. The numbers here are those of a motor that got there."
        )
    return (
        f"would not run up: near {speed} the load asks more torque than the motor has, and it hangs there at "
        f"up to {current} until something trips. Start against less load, or mend the voltage. The numbers "
        "here are those of a motor that got there."
    )


def _slips(facts: Facts) -> str:
    return (
        f"its belt holds {fine(facts['torque'], 1)} N·m and no more: it slips, the pump turns at only "
        f"{facts['speed'] / RPM:.0f} 1/min, and {fine(facts['heat'] / 1e3, 2)} kW heat the belt. It squeals "
        "and soon burns; stop it, lock it out, then tighten it. The pump is sound."
    )


def _low_voltage(facts: Facts) -> str:
    return (
        f"has only {facts['voltage'] * 100:.0f} % of its voltage, so it draws {fine(facts['current'], 1)} A "
        f"instead of {fine(facts['usual_current'], 1)} A. The speed hardly falls: an ammeter alone does not "
        "tell of the load."
    )


def _phase_lost(facts: Facts) -> str:
    return (
        f"has lost a phase: the other two carry {fine(facts['current'], 1)} A instead of "
        f"{fine(facts['usual_current'], 1)} A. It runs on a little slower and would not start again. "
        "Stop it, lock it out, and let an electrician look at fuses and contactor."
    )


def _time(seconds: float) -> str:
    """As one would say it."""
    return f"{seconds:.0f} s" if seconds < 100 else f"{seconds / 60:.0f} min"


REASONED: dict[str, Callable[[Note], str]] = {"trips": _trips, "start-hangs": _hangs}
"""Notes that say why."""

SENTENCES: dict[str, Callable[[Facts], str]] = {
    "belt-slips": _slips, "low-voltage": _low_voltage, "phase-lost": _phase_lost,
}  # fmt: skip
