"""A controller in automatic through time: proportional and integral action on valve or drive.

    v = K e + I,        dI/dt = K e / T,

e how far the reading is from its set point, as a share of its range and counted so that a greater
output makes it less; K `control.gain`, T `control.integral_s`. The output is v within its limits, and
valve or drive follow it at their own pace. Where v would go beyond a limit, the integral is
taken back so far that it does not (no wind-up). In the hand of a person the output stays where it was until
its key is changed, and the controller takes over from wherever it stands then (no bump either way).

A step is implicit: the output at its end goes with the reading at its end. A greater output makes e less, so

    G(s) = s - K (1 + span/T) e(s) - I

rises with the output s everywhere, by 1 at least: there is one, and it lies within |G| of any guess.
Thus steps of any size are stable, and at rest what `plant.automatic` settles on stands still.

Sources
-------
Any textbook on control: PI, limits, bumpless transfer. The signs are those of the plant, see
`physics.control`. The usual gains and times are common practice: quick and weak on flow and
pressure, slow and stronger on levels.
"""

from __future__ import annotations

from collections.abc import Callable
from math import isfinite
from typing import NamedTuple

import numpy as np
from msgspec.structs import replace

from loadfirst.clock.moment import Controller, Moment
from loadfirst.clock.stage import Stage, Start, stage
from loadfirst.clock.vessel import surface
from loadfirst.physics.law import Array
from loadfirst.physics.root import rising_root
from loadfirst.plant.automatic import LOWEST_HZ, acts, frequency_of, full_hz, output_hz
from loadfirst.plant.found import Found, Status
from loadfirst.plant.measured import GAUGES, readings, set_point
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.solved import Solved
from loadfirst.plant.tables.control import tuning
from loadfirst.units import BAR, HOUR, PERCENT

HAIR = 1e-6  # [-] opening at which a valve that is shutting still lets its liquid slow down
NEAR = 1e-5  # [-] to which the output of a step is found
THERE = 0.005  # [-] of the range, within which a reading counts as at its set point


class Loop(NamedTuple):
    """A controller's numbers.

    Attributes
    ----------
    gain : share of the output per share of the reading's range. [-]
    integral : time. [s]
    low, high : limits of the output. [-]
    pace : of what it moves, in shares of the output. [1/s]
    """

    gain: float
    integral: float
    low: float
    high: float
    pace: float


def loop_of(plant: Plant, most_hz: float | None = None) -> Loop:
    """Of a plant whose controller acts; `most_hz` is what the drive's current limit leaves."""
    control, drive = plant.control, plant.drive
    gain, integral = tuning(control)
    low, high = control.low_percent * PERCENT, control.high_percent * PERCENT
    if control.on == "valve":
        return Loop(gain, integral, max(low, HAIR), max(high, HAIR), 1 / plant.valve.stroke_s)
    full = full_hz(plant)
    least = LOWEST_HZ / full
    most = high if most_hz is None else min(high, most_hz / full)
    return Loop(gain, integral, max(low, least), max(most, low, least), drive.supply_hz / drive.ramp_s / full)


def key_of(plant: Plant) -> float:
    """What the key says that a hand would set."""
    return plant.valve.opening if plant.control.on == "valve" else frequency_of(plant)


def taken_over(resolved: ResolvedPlant, moment: Moment) -> Moment:
    """The moment with its controller as it is switched now; None once a hand has set the key."""
    plant, before = resolved.plant, moment.controller
    if acts(plant):
        what = f"{plant.control.of} on {plant.control.on}"
        if before is None or before.what != what:
            return replace(moment, controller=Controller(what, _stands(plant, moment), None, key_of(plant)))
        return replace(moment, controller=replace(before, key=key_of(plant)))
    if before is None:
        return moment
    untouched = before.key == key_of(plant) and before.what.endswith(plant.control.on)
    return replace(moment, controller=replace(before, integral=None) if untouched else None)


def _stands(plant: Plant, moment: Moment) -> float:
    """Where what it moves stands. [-]"""
    if plant.control.on == "valve":
        return moment.stem
    return moment.shafts[0].frequency / full_hz(plant)


def following(resolved: ResolvedPlant, moment: Moment) -> ResolvedPlant:
    """The plant with what a controller moves where it stands; without one the plant itself."""
    return resolved if moment.controller is None else _moved(resolved, moment.controller.output)


def _moved(resolved: ResolvedPlant, output: float) -> ResolvedPlant:
    plant = resolved.plant
    if plant.control.on == "valve":
        return resolved._replace(plant=replace(plant, valve=replace(plant.valve, opening=min(output, 1.0))))
    drive = replace(plant.drive, frequency_hz=output_hz(plant, output))
    return resolved._replace(plant=replace(plant, drive=drive))


def deviation(plant: Plant, reached: Solved, volumes: tuple[float, float]) -> float:
    """How far the reading is from its set point, above 0 where more output is wanted. [-]

    Parameters
    ----------
    reached : the plant in balance.
    volumes : of supply and delivery there. [m³]
    """
    control = plant.control
    if control.of.endswith("level"):
        below = control.of == "supply-level"
        vessel, volume = (plant.supply, volumes[0]) if below else (plant.delivery, volumes[1])
        away = (control.set_m - surface(vessel, volume)) / (vessel.top_m - vessel.bottom_m)
        return -away if below else away
    away = (set_point(plant) - float(readings(reached)[0])) / _range(plant)
    falls = control.of == "suction-pressure" or (control.of, control.on) == ("discharge-pressure", "valve")
    return (-away if falls else away) if isfinite(away) else 0.0


def _range(plant: Plant) -> float:
    """Of the reading: that of the instrument there. [m³/s] [Pa]"""
    if plant.control.of in GAUGES:
        low, high = getattr(plant.gauges, GAUGES[plant.control.of].replace("-", "_")).range_bar
        return float(high - low) * BAR
    assert plant.meters.flow_range_m3h is not None  # plant.pumps has seen to it
    return plant.meters.flow_range_m3h / HOUR


class Steered(NamedTuple):
    """A stage with its controller at its end.

    Attributes
    ----------
    stage : balanced, with the output there.
    stem : of the control valve. [-]
    controller : as in `Moment`.
    rate : of its integral; none at a limit. [1/s]
    """

    stage: Stage
    stem: float
    controller: Controller | None
    rate: float


def steered(
    resolved: ResolvedPlant, moment: Moment, loop: Loop, start: Start, span: float, at: float, integral: float
) -> Steered:
    """Balance the plant at the end of a span, its controller with it.

    Parameters
    ----------
    start, span, at : as `stage.stage` takes them.
    integral : with which the span begins. [-]
    """
    plant, now = resolved.plant, moment.controller
    assert now is not None
    low = max(loop.low, min(now.output - loop.pace * at, loop.high))
    high = min(loop.high, max(now.output + loop.pace * at, loop.low))
    seen: dict[float, tuple[Stage, float]] = {}
    action = loop.gain * (1 + span / loop.integral)

    def there(output: float) -> tuple[Stage, float]:
        if output not in seen:
            stem = output if plant.control.on == "valve" else moment.stem
            reached = stage(_moved(resolved, output), moment, start, span, at, stem)
            held = start.volumes[0] + span * reached.volumes[0], start.volumes[1] + span * reached.volumes[1]
            seen[output] = reached, deviation(plant, reached.solved, held)
        return seen[output]

    def miss(outputs: Array) -> Array:
        return np.array([output - action * there(output)[1] - integral for output in outputs.tolist()])

    output = _found(miss, min(max(now.output, low), high), low, high, NEAR * (1 + action))
    reached, away = there(output)
    wished = action * away + integral
    within = min(max(wished, loop.low), loop.high)
    controller = replace(now, output=output, integral=within - loop.gain * away)
    rate = loop.gain * away / loop.integral if wished == within else 0.0
    return Steered(reached, output if plant.control.on == "valve" else moment.stem, controller, rate)


def _found(miss: Callable[[Array], Array], guess: float, low: float, high: float, within: float) -> float:
    """Where `miss`, which rises by 1 at least, is nought, or the limit beyond which it would be."""
    left = float(miss(np.array([guess]))[0])
    if abs(left) <= within:
        return guess
    far = max(guess - left, low) if left > 0 else min(guess - left, high)
    if far == guess:
        return guess
    beyond = float(miss(np.array([far]))[0])
    if beyond * left >= 0:
        return far
    ends = (far, guess) if left > 0 else (guess, far)
    values = (beyond, left) if left > 0 else (left, beyond)
    lows, highs = (np.array([end]) for end in ends)
    root, _ = rising_root(
        miss, lows, highs, within=within, ends=(np.array([values[0]]), np.array([values[1]]))
    )
    return float(root[0])


def first_integral(plant: Plant, moment: Moment, reached: Solved) -> Moment:
    """The moment with an integral that leaves the output where it stands, where it has none yet."""
    now = moment.controller
    if now is None or now.integral is not None or not acts(plant):
        return moment
    volumes = moment.supply.volume[0], moment.delivery.volume[0]
    away = deviation(plant, reached, volumes)
    return replace(moment, controller=replace(now, integral=now.output - loop_of(plant).gain * away))


def told(resolved: ResolvedPlant, moment: Moment, reached: Solved, loop: Loop | None) -> ResolvedPlant:
    """The plant with what is to be said of its controller; nothing of one that is on its way."""
    now = moment.controller
    if loop is None or now is None:
        return resolved
    volumes = moment.supply.volume[0], moment.delivery.volume[0]
    away = deviation(resolved.plant, reached, volumes)
    status: Status | None = None
    if abs(away) <= THERE:
        status = "reached"
    elif away > 0 and now.output >= loop.high:
        status = "lost-high"
    elif away < 0 and now.output <= loop.low:
        status = "lost-low"
    before, valve = resolved.found or Found({}), resolved.plant.control.on == "valve"
    key = {"valve.opening": moment.stem} if valve else {"drive.frequency_hz": frequency_of(resolved.plant)}
    found = before._replace(moved=before.moved | key, output=now.output, status=status)
    return resolved._replace(found=found)
