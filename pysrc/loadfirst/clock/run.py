"""Letting time run: steps as long as accuracy lets them be, each ended where something happens."""

from __future__ import annotations

from math import inf, sqrt
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from loadfirst.clock.account import add
from loadfirst.clock.advance import Step, advance, shut_tight
from loadfirst.clock.begin import resumed
from loadfirst.clock.commanded import limited
from loadfirst.clock.controller import Loop, first_integral, following, loop_of, told
from loadfirst.clock.events import Kind, signals, starting
from loadfirst.clock.happen import by_hand, happened, kind_of
from loadfirst.clock.moment import Moment
from loadfirst.clock.pointers import any_late, pointers
from loadfirst.clock.shafts import asked_frequency, switched
from loadfirst.clock.stage import Start, stage
from loadfirst.plant.automatic import acts
from loadfirst.plant.drives import has_drive
from loadfirst.plant.pumps import ResolvedPlant

TOLERANCE = 2e-3
"""Error of a step of first order that is let pass; that of the step itself is far less. [-]"""
LEAST = 1e-6
"""Shortest step that is still made shorter. [s]"""
MOST = 2000
"""Steps in one run; a run that would need more ends early."""
SOON = 0.1
"""First step tried once a shaft turns by its inertia: one far too long would send it off to any speed. [s]"""
NEAR = 1e-9
"""How closely an event is hit. [s]"""
TRIES = 80
SAFETY, GROWTH, SHRINKING = 0.9, 5.0, 0.1


class Event(Struct, frozen=True):
    """Something that happened.

    Attributes
    ----------
    kind, where : what, and to which pump, valve or vessel.
    time : since the clock was started. [s]
    """

    kind: Kind
    where: str
    time: float


class Run(NamedTuple):
    """Where time has got to.

    Attributes
    ----------
    resolved : the plant, with what it has sent valve and drive to by itself.
    moment : the last.
    step : that led there.
    events : in their order.
    steps : how many there were, events' included.
    """

    resolved: ResolvedPlant
    moment: Moment
    step: Step
    events: tuple[Event, ...]
    steps: int


def run(resolved: ResolvedPlant, moment: Moment, span: float, tolerance: float = TOLERANCE) -> Run:
    """Let time run.

    Parameters
    ----------
    resolved : the plant as it is switched and set now.
    moment : where it stands; of `begin`, or of the last run.
    span : above 0, of any size. [s]
    tolerance : above 0; the steps go with its root. [-]

    Returns
    -------
    Run. Its moment is `span` later, but for a run that would have needed more than `MOST` steps.
    """
    moment, names = by_hand(resolved, resumed(resolved, moment))
    events, left, guess = _told(names, moment), span, inf
    resolved, cut = limited(resolved, moment)
    loop = loop_of(resolved.plant, cut) if acts(resolved.plant) else None
    resolved = following(resolved, moment)
    end = add(moment.time, span)
    loads, moment = _first(resolved, moment, loop)
    step, count, turned = None, 0, False
    late = any_late(resolved.plant)
    while step is None or (left > 0 and count < MOST):
        moment = switched(resolved, moment)
        turns = any(shaft.regime == "turning" for shaft in moment.shafts)
        guess, turned = (min(guess, SOON) if turns and not turned else guess), turns
        longest = min(left, _undisturbed(resolved, moment))
        length = min(longest, guess)
        if longest - length < 0.1 * length:  # no crumb is left over
            length = longest
        tried = advance(resolved, moment, length, loads, tolerance, loop)
        count += 1
        converged = bool(tried.stage.solved.solution.converged[0])
        if (tried.error > 1 or not converged) and length > LEAST:
            guess = length * max(SHRINKING, SAFETY / sqrt(tried.error) if converged else SHRINKING)
            continue
        taken, names = _until(resolved, moment, tried, length, loads, tolerance, loop)
        grown = min(GROWTH, SAFETY / sqrt(taken.error)) if taken.error > 0 else GROWTH
        guess = max(length * grown, LEAST)
        used = taken.moment.time[0] - moment.time[0] if names else length
        left = left - used if used < left else 0.0
        step, moment = taken, shut_tight(resolved, happened(resolved, moment, taken, names))
        if late or not left or count >= MOST:
            shown = pointers(resolved.plant, taken.stage.solved.of(0), moment.pointers, used)
            moment = replace(moment, pointers=shown)
        if not left:  # not the sum of many steps
            moment = replace(moment, time=end)
        events += _told(names, moment)
        loads, resolved = taken.stage.loads, following(resolved, moment)
    resolved = told(resolved, moment, step.stage.solved, loop)
    return Run(resolved, moment, step, tuple(events), count)


def _told(names: tuple[str, ...], moment: Moment) -> list[Event]:
    return [Event(*kind_of(name, moment), moment.seconds) for name in names]


def _undisturbed(resolved: ResolvedPlant, moment: Moment) -> float:
    """Time until the stem or a drive arrives where it was sent. [s]"""
    valve, drive = resolved.plant.valve, resolved.plant.drive
    times = [abs(valve.opening - moment.stem) * valve.stroke_s]
    if has_drive(drive):
        asked = asked_frequency(resolved)
        times += [abs(asked - shaft.frequency) * drive.ramp_s / drive.supply_hz for shaft in moment.shafts]
    return min((time for time in times if time > NEAR), default=inf)


def _first(resolved: ResolvedPlant, moment: Moment, loop: Loop | None) -> tuple[tuple[float, ...], Moment]:
    """Torques over speed squared, where shafts turn by their inertia; a controller that takes over now."""
    none = (0.0,) * len(moment.shafts)
    fresh = loop is not None and moment.controller is not None and moment.controller.integral is None
    if not fresh and all(shaft.regime != "turning" for shaft in moment.shafts):
        return none, moment
    volumes = moment.supply.volume[0], moment.delivery.volume[0]
    start = Start(volumes, dict(moment.flows), tuple(shaft.speed for shaft in moment.shafts), none)
    there = stage(resolved, moment, start, LEAST, 0.0, moment.stem)
    return there.loads, first_integral(resolved.plant, moment, there.solved)


def _until(
    resolved: ResolvedPlant,
    moment: Moment,
    tried: Step,
    length: float,
    loads: tuple[float, ...],
    tolerance: float,
    loop: Loop | None,
) -> tuple[Step, tuple[str, ...]]:
    """The step as far as the first thing that happens in it, and what that is."""
    before = starting(resolved, moment)
    low, high = 0.0, length
    late, names = signals(resolved, before, tried)
    if not names:
        return tried, ()
    early = -late
    if length > LEAST and not moment.flows:  # all has just been set anew
        soon = advance(resolved, moment, LEAST, loads, tolerance, loop)
        value, some = signals(resolved, before, soon)
        if some:
            return soon, some
        low, early = LEAST, value
    at_low, at_high, side = early, late, 0
    for _ in range(TRIES):
        if high - low <= NEAR:
            break
        middle = low + (high - low) * at_low / (at_low - at_high)
        middle = min(max(middle, low + NEAR / 2), high - NEAR / 2)
        one = advance(resolved, moment, middle, loads, tolerance, loop)
        value, some = signals(resolved, before, one)
        if some:
            tried, high, at_high, names = one, middle, value, some
            at_low = at_low / 2 if side < 0 else at_low
            side = -1
        else:
            low, at_low = middle, value
            at_high = at_high / 2 if side > 0 else at_high
            side = 1
    return tried, names
