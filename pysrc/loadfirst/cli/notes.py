"""Notes on an answer in plain words, for the terminal. The page has words of its own."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import UNSET

from loadfirst.cli import control_notes, drive_notes, load_notes, suction_notes
from loadfirst.cli.digits import fine
from loadfirst.plant.answer import Note
from loadfirst.units import BAR, HOUR, RPM

Facts = dict[str, float]

BEFORE_PUMP = ("supply-surface", "supply-outlet", "suction")
"""Places on the suction side; at all others liquid that boils does the pump no harm."""

OFF = "the discharge line is off."
NEVER = "A thought experiment: never open a flange to try it."
VAPOUR_BEFORE = "Vapour hammers and pits the pump: clear the suction side, or ask for less flow."
VAPOUR_BEHIND = (
    "The liquid column may part here, and hammers where it closes again: throttle at the low end of "
    "the line, not above it."
)


def sentence(note: Note, flows: bool = True) -> str:
    """One or two sentences that say what the note means and what to mind; `flows`: anything at all."""
    if note.kind in drive_notes.REASONED:
        return f"{note.where}: {drive_notes.REASONED[note.kind](note)}"
    if note.rule is not UNSET:
        return f"{note.where}: {_outside(note.rule, note.facts)}"
    said = SENTENCES[note.kind](note.facts) if flows or note.kind != "line-off" else f"{OFF} {NEVER}"
    if note.kind == "below-vapour-pressure":
        said = f"{said} {VAPOUR_BEFORE if note.where in BEFORE_PUMP else VAPOUR_BEHIND}"
    return f"{note.where}: {said}"


def _beyond(facts: Facts) -> str:
    flow, last = (fine(facts[name] * HOUR, 1) for name in ("flow", "last_flow"))
    return (
        f"{flow} m³/h is beyond the last point of the pump's curve ({last} m³/h at this speed). "
        "Head, power and NPSH are extrapolated."
    )


def _boiling(facts: Facts) -> str:
    pressure, vapour = facts["pressure"] / BAR, facts["vapour_pressure"] / BAR
    return (
        f"the pressure comes out at {pressure:.2f} bar, below {vapour:.2f} bar where this liquid boils. "
        "In a real plant vapour would limit the flow; this answer does not count it."
    )


def _reverse(facts: Facts) -> str:
    return f"liquid runs backward through the pump, {fine(-facts['flow'] * HOUR, 1)} m³/h."


def _dead_headed(facts: Facts) -> str:
    return (
        f"runs without flow; {fine(facts['shaft_power'] / 1e3, 2)} kW only heat the liquid. "
        "A centrifugal pump bears that for minutes at most, a displacement pump not at all."
    )


def _overload(facts: Facts) -> str:
    return (
        f"takes {fine(facts['shaft_power'] / 1e3, 2)} kW, {facts['load'] * 100:.0f} % of the motor's rated "
        f"{fine(facts['rated_power'] / 1e3, 2)} kW. No motor bears that for long."
    )


def _undefined(_: Facts) -> str:
    return "the pressure is undefined: shut elements cut this place off, so it depends on what was trapped."


def _several(facts: Facts) -> str:
    states, lasting = facts["states"], facts["lasting"]
    least, most = (fine(facts[name] * HOUR, 1) for name in ("least_flow", "most_flow"))
    said = f"a pump's curve rises with the flow somewhere: the load is met in {states:.0f} states"
    if lasting < 2:
        return f"{said}, of which only one lasts."
    return (
        f"{said}, of which {lasting:.0f} last, from {least} to {most} m³/h. What was before decides: "
        "see history_m3h. A disturbance may lead to another; near such a curve's peak a plant may hunt."
    )


def _level(_: Facts) -> str:
    return (
        "with this motor its head would rise with the flow somewhere; it is held level here. In truth more "
        "than one steady state may be possible; which one holds depends on what went before."
    )


def _other_speed(facts: Facts) -> str:
    return (
        f"runs at {facts['speed'] / RPM:.0f} 1/min, but its points were measured at "
        f"{facts['measured_speed'] / RPM:.0f} 1/min: so far away the affinity laws are a rough guide. "
        "Do the motor's poles, its frequency and its belt suit this pump?"
    )


def _line_off(_: Facts) -> str:
    return (
        f"{OFF} Nothing resists there, so there is hardly any pressure and much flow; "
        f"the pump is sound. What limits the flow is the suction line and the jet. {NEVER}"
    )


def _stalled(facts: Facts) -> str:
    return (
        f"the load asks more torque than the motor has, {facts['torque']:.0f} N·m at "
        f"{facts['speed'] / RPM:.0f} 1/min. "
        "It stands or crawls at several times its current until its protection trips."
    )


def _burst(facts: Facts) -> str:
    return (
        f"{facts['pressure'] / BAR:.1f} bar stand across the pump, whose casing may bear "
        f"{facts['limit'] / BAR:.1f} bar. A pipe or the casing may burst: stop it, never try it."
    )


def _lifted(facts: Facts) -> str:
    return (
        f"has lifted at {facts['set'] / BAR:.1f} bar and lets {facts['flow'] * HOUR:.2f} m³/h back to the "
        f"supply at {facts['pressure'] / BAR:.1f} bar. The pressure now tells of its spring too."
    )


def _unprotected(facts: Facts) -> str:
    return (
        "no relief valve works here. Shut what the pump delivers into, and its pressure climbs until "
        f"something gives way; the casing may bear {facts['limit'] / BAR:.1f} bar."
    )


def _standing(facts: Facts) -> str:
    flow = facts["flow"] * HOUR
    if flow == 0:
        return "stands still; nothing passes it."
    way, lost = ("forward", -facts["head"]) if flow > 0 else ("backward", facts["head"])
    turns = f", turning it at {facts['speed'] / RPM:.0f} 1/min" if facts["speed"] else ""
    return (
        f"its motor is off; {abs(flow):.1f} m³/h are driven {way} through it{turns}; it costs {lost:.2f} m."
    )


def _turning_backward(facts: Facts) -> str:
    return (
        f"its motor is off and its check valve lets {-facts['flow'] * HOUR:.1f} m³/h back: it spins "
        f"backward at {-facts['speed'] / RPM:.0f} 1/min. Never start a machine that spins backward: shaft or "
        "coupling may break. Shut its valve, wait until it stands."
    )


def _held_shut(facts: Facts) -> str:
    return (
        f"the other pump holds it shut: {facts['against']:.1f} m stand behind it, and this pump has "
        f"{facts['head']:.1f} m. It runs without flow."
    )


def _backward(facts: Facts) -> str:
    return (
        f"turns the wrong way and pumps backward: {fine(abs(facts['flow']) * HOUR, 2)} m³/h go from the "
        "discharge to the suction. Stop it, lock it out, have two phases exchanged; do not run it to try."
    )


def _relief_behind(facts: Facts) -> str:
    return (
        f"its outlet is the suction side now, at {facts['pressure'] / BAR:.2f} bar; the casing may bear "
        f"{facts['limit'] / BAR:.1f} bar on its discharge side. The relief valve stands on the other side "
        "and protects nothing: shut the suction line, and it, the strainer or the casing bursts."
    )


def _nothing_comes(facts: Facts) -> str:
    return (
        f"too little comes from behind: its inlet boils at {facts['pressure'] / BAR:.2f} bar and it takes in "
        f"only {fine(abs(facts['flow']) * HOUR, 2)} m³/h. It runs partly dry; gears and seals suffer."
    )


def _outside(rule: str, facts: Facts) -> str:
    name, _, limit = rule.partition(".")
    unit, factor = RULE_UNITS.get(limit, ("", 1.0))
    got, low, high = (facts[key] / factor for key in ("got", "low", "high"))
    done = "held at the end of its range" if facts["held"] else "carried on without the backing of tests"
    return (
        f"the rule for {name} is used outside its range: {limit.replace('-', ' ')} {got:.3g}{unit}, made for "
        f"{low:.3g} to {high:.3g}{unit}. It is {done}."
    )


RULE_UNITS = {
    "viscosity": (" cSt", 1e-6),
    "flow": (" m³/h", 1 / HOUR),
    "head": (" m", 1.0),
    "diameter": (" %", 0.01),
    "fraction": (" %", 0.01),
}
"""Of the limits of rules: how they are written, and that in SI."""

SENTENCES: dict[str, Callable[[Facts], str]] = {
    "beyond-curve": _beyond,
    "below-vapour-pressure": _boiling,
    "reverse-flow": _reverse,
    "dead-headed": _dead_headed,
    "overload": _overload,
    "pressure-undefined": _undefined,
    "more-than-one-state": _several,
    "held-level": _level,
    "line-off": _line_off,
    "stalled": _stalled,
    "pressure-limit": _burst,
    "relief-lifted": _lifted,
    "no-relief": _unprotected,
    "standing": _standing,
    "turning-backward": _turning_backward,
    "held-shut": _held_shut,
    **load_notes.SENTENCES,
    **drive_notes.SENTENCES,
    **control_notes.SENTENCES,
    **suction_notes.SENTENCES,
    "other-speed": _other_speed,
    "pumps-backward": _backward,
    "relief-behind": _relief_behind,
    "nothing-comes": _nothing_comes,
}
