"""The command that says which cause explains the readings of two days, and what to look at next."""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path

from msgspec.structs import replace

from loadfirst.causes.catalogue import CAUSES, NOTHING, cause
from loadfirst.causes.cause import Cause
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.cli.convert import SHAPES
from loadfirst.cli.digits import fine
from loadfirst.cli.plant_file import plant_of
from loadfirst.cli.report import UNITS, reading_text
from loadfirst.errors import InputError
from loadfirst.evidence.on_curve import NEEDED, OnCurve, on_curve
from loadfirst.evidence.predict import Predictions, predict
from loadfirst.evidence.readings_file import Taken, read_readings
from loadfirst.evidence.seen import Scale, instruments_of
from loadfirst.evidence.suspects import Agreement, Fitted, Suspect, strangers, suspects, unexplained
from loadfirst.evidence.weigh import Posterior, row, weigh
from loadfirst.evidence.worth import worth
from loadfirst.instruments.panel import readings
from loadfirst.physics.law import Array
from loadfirst.plant.automatic import settled
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import true_state
from loadfirst.units import HOUR, PERCENT

CAUTION = (
    "What stands neither in the plant's file nor in the catalogue of causes is not weighed here.\n"
    "Isolate, lock, drain and verify before anything is opened; local rules and licensed practice decide."
)
ROWS = 8
"""Causes and checks that are printed, at most."""
GATES = {
    "instruments": "an instrument, or where it stands",
    "bypass": "a line back to the supply, or a check valve that passes",
    "speed": "the speed",
    "rotation": "the direction of rotation",
    "suction-and-gas": "want of pressure at the suction, or gas",
    "liquid": "another liquid",
    "machine": "the pump itself: wear, or another impeller",
}


def evidence_text(path: Path, file: Path, beside: str | None = None) -> str:
    """What ``evidence`` prints.

    Parameters
    ----------
    path, file : the plant's file, as it was known yesterday, and that of the readings.
    beside : id of a cause with which each of the others is weighed as a pair too.

    Raises
    ------
    FileError
        For the first thing in either file that cannot be used.
    InputError
        For an unknown cause.
    """
    plant = plant_of(path)
    taken = read_readings(file, instruments_of(plant))
    predictions = predict(plant, pairs=[] if beside is None else _pairs(beside))
    today, yesterday = row(predictions, taken.today), row(predictions, taken.yesterday)
    posterior = weigh(predictions, today, yesterday, taken.seen, fresh=taken.replaced)
    found = suspects(posterior)
    scales = {scale.id: scale for scale in predictions.scales}
    lines = [
        plant.plant.title,
        *_strangers(predictions, yesterday),
        "",
        "What explains the readings",
        *_ranked(found),
    ]
    lines += ["", "Where it sits", *_groups(posterior)]
    if found[0].readings:
        lines += ["", f"Readings, if it is {found[0].hypothesis.id}", *_against(found[0], scales)]
    lines += [*_left_over(found[0]), "", "The pump's curve", *_curve(plant, taken)]
    lines += ["", "Checks that would tell most", *_checks(posterior)]
    return "\n".join([*lines, "", CAUTION])


def _pairs(beside: str) -> list[tuple[Cause, Cause]]:
    one = cause(beside)
    if one is NOTHING:
        raise InputError("--with", beside, "a cause that changes something", rule="together")
    return [(one, other) for other in CAUSES if other not in (one, NOTHING)]


def _strangers(predictions: Predictions, yesterday: Array) -> Iterator[str]:
    odd = strangers(predictions, yesterday)
    if odd:
        yield f"Yesterday's {', '.join(odd)} does not fit the plant's file. Mend that first."


def _ranked(found: tuple[Suspect, ...]) -> Iterator[str]:
    standing = [one for one in found if one.stands]
    wide = max(len(one.hypothesis.id) for one in standing[:ROWS])
    for one in standing[:ROWS]:
        sizes = "; ".join(text for text in map(_size, one.fitted) if text)
        yield f"  {_percent(one.probability):>7}  {one.hypothesis.id:<{wide}}  {sizes}".rstrip()
    rest = 1 - sum(one.probability for one in standing[:ROWS])
    yield f"  {_percent(rest):>7}  {len(found) - len(standing[:ROWS])} others together"


def _size(fitted: Fitted) -> str:
    """The best size, and between which it may lie."""
    size = cause(fitted.cause).size
    if size is None:
        return ""
    unit = "" if size.unit == "-" else f" {size.unit}"
    best, low, high = (f"{number:.3g}" for number in fitted[1:])
    return f"{best}{unit} ({low} to {high}): {size.says}"


def _groups(posterior: Posterior) -> Iterator[str]:
    given = {group: float(chance[0]) for group, chance in posterior.groups.items()}
    for group, chance in sorted(given.items(), key=lambda one: -one[1]):
        if chance >= PERCENT / 10:
            yield f"  {_percent(chance):>7}  {group}"


def _against(suspect: Suspect, scales: dict[str, Scale]) -> Iterator[str]:
    for one in suspect.readings:
        scale = scales[one.id]
        yield f"  {one.id:<18}{_measured(one, scale):>18}   predicted {_predicted(one, scale)}"


def _measured(one: Agreement, scale: Scale) -> str:
    if math.isfinite(one.measured):
        return _number(one.measured, scale)
    return "on the upper stop" if one.measured > 0 else "on the lower stop"


def _predicted(one: Agreement, scale: Scale) -> str:
    if one.predicted is None or one.spread is None:
        return "nothing that is known"
    key, unit = _unit(scale)
    within = fine(one.spread / unit, UNITS[key][1])
    off = "" if one.off is None else f"   {one.off:+.1f} of that off"
    return f"{_number(one.predicted, scale)} ± {within}{off}"


def _unit(scale: Scale) -> tuple[str, float]:
    shape, unit = SHAPES[scale.quantity]
    return shape.__struct_fields__[1], unit


def _number(value: float, scale: Scale) -> str:
    key, unit = _unit(scale)
    return f"{reading_text(key, value / unit)} {UNITS[key][0]}"


def _left_over(first: Suspect) -> Iterator[str]:
    odd = ", ".join(one.id for one in unexplained(first))
    if odd:
        yield f"  Even so, {odd} is not explained: perhaps two causes; `--with CAUSE` weighs pairs."


def _curve(plant: ResolvedPlant, taken: Taken) -> Iterator[str]:
    """The rule by hand; instruments err as they do where they stood yesterday."""
    usual = {one.id: one for one in readings(true_state(plant), settled([plant])[0].plant)}
    try:
        found = on_curve(plant, {id: replace(usual[id], value=value) for id, value in taken.today.items()})
    except InputError as why:
        reason = f"{why.where} was not read, or stood off its scale." if why.rule == "missing" else why.text
        yield f"  The pump cannot be judged: {reason} It takes {', '.join(NEEDED)} and a tachometer."
        return
    yield (
        f"  measured {fine(found.flow * HOUR, 1)} m³/h at {found.head:.2f} m; the pump gives "
        f"{found.curve:.2f} ± {found.uncertainty:.2f} m there"
    )
    yield f"  {_verdict(found)}"
    for gate in found.gates:
        if gate.open:
            yield f"  rule out   {GATES[gate.name]}"


def _verdict(found: OnCurve) -> str:
    if found.side != "on":
        return f"The point lies {found.side} the curve. Rule out, in this order:"
    if found.healthy:
        return (
            "On the curve at the measured speed and well out on it: hydraulically healthy.\n"
            f"  Wear below {found.least_wear:.0f} % would not show, nor do bearings, seals and vibration."
        )
    reasons = {
        "the speed was not measured": not found.speed_measured,
        "it is not well out on the curve": not found.well_out,
        "the instruments would not show usual wear here": found.least_wear is None or found.least_wear > 10,
    }
    return f"On the curve, which says little: {', '.join(why for why, holds in reasons.items() if holds)}."


def _checks(posterior: Posterior) -> Iterator[str]:
    for one in worth(posterior)[:ROWS]:
        says = OBSERVATIONS[one.check].says if one.check in OBSERVATIONS else "Read it."
        yield f"  {one.cause:5.2f} bit  {one.check:<18} {says}"


def _percent(chance: float) -> str:
    return f"{chance / PERCENT:.1f} %"
