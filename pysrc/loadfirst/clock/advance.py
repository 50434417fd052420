"""One step of time: two implicit stages, and every volume moved from one account to another.

The method is Alexander's: of second order, and with no memory of what is fast (L-stable), so that
a step of any size stays stable. With γ = 1 - 1/√2 and rates k, each taken from a plant in balance,

    y₁ = y + γ h k₁,        y₂ = y + (1-γ) h k₁ + γ h k₂.

A step in which next to nothing changes is one stage, the implicit Euler's y₁ = y + h k₁: what it is
off is a half of what the flows have changed.

Source: R. Alexander, "Diagonally implicit Runge–Kutta methods for stiff O.D.E.'s", SIAM J.
Numer. Anal. 14 (1977); from memory, the order is tested.
"""

from __future__ import annotations

from math import sqrt
from typing import NamedTuple

from msgspec.structs import replace

from loadfirst.clock.account import Account, add
from loadfirst.clock.controller import HAIR, Loop, Steered, steered
from loadfirst.clock.lines import DELIVERY
from loadfirst.clock.moment import Moment, Shaft, Stock
from loadfirst.clock.present import through
from loadfirst.clock.relay import warmed
from loadfirst.clock.shafts import asked_frequency
from loadfirst.clock.stage import Stage, Start, stage
from loadfirst.clock.vessel import draw, inflow, is_empty, is_full, room
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.shaft import field_speed

GAMMA = 1 - 1 / sqrt(2)
STILL, SHARE = 1e-4, 0.05
"""Change of every flow up to which a step is one stage: of the usual flow, and of the tolerance. [-]"""
SLOW = 1e-3
"""Share of a vessel that may come or go in a step for that to be tried. [-]"""


class Step(NamedTuple):
    """A step that may be taken.

    Attributes
    ----------
    moment : at its end; its `marks` are still those of the beginning.
    stage : the last of it.
    error : of the step, over what is allowed: 1 is just enough. [-]
    """

    moment: Moment
    stage: Stage
    error: float


def advance(
    resolved: ResolvedPlant,
    moment: Moment,
    span: float,
    loads: tuple[float, ...],
    tolerance: float,
    loop: Loop | None = None,
) -> Step:
    """Try a step of `span` seconds, above 0; `loads` as in `Start`, `loop` of a controller that acts."""
    quiet = None
    if _is_slow(resolved, moment, span):
        quiet = _at_once(resolved, moment, span, loads, tolerance, loop)
    return _in_two(resolved, moment, span, loads, tolerance, loop) if quiet is None else quiet


def _is_slow(resolved: ResolvedPlant, moment: Moment, span: float) -> bool:
    """Whether a step may well be one in which next to nothing changes."""
    plant, fed = resolved.plant, asked_frequency(resolved)
    if not moment.flows or plant.valve.opening != moment.stem:
        return False
    if any(shaft.regime == "turning" or abs(shaft.frequency - fed) > 0 for shaft in moment.shafts):
        return False
    moved = span * max(inflow(plant), draw(plant), *map(abs, moment.flows.values()))
    return moved <= SLOW * min(room(plant.supply), room(plant.delivery))


def _at_once(
    resolved: ResolvedPlant,
    moment: Moment,
    span: float,
    loads: tuple[float, ...],
    tolerance: float,
    loop: Loop | None,
) -> Step | None:
    """The step in one stage; None where flows have changed."""
    held = moment.supply.volume[0], moment.delivery.volume[0]
    start = Start(held, moment.flows, tuple(shaft.speed for shaft in moment.shafts), loads)
    found = _stage(resolved, moment, loop, start, span, span, _integral(moment))
    only = found.stage
    if not only.flows.keys() <= moment.flows.keys():
        return None
    usual = float(only.solved.built.flow_scale[0])
    off = max(abs(flow - moment.flows[name]) for name, flow in only.flows.items()) / usual
    if not off <= min(STILL, SHARE * tolerance):
        return None
    return Step(_ended(resolved, moment, span, only, found), only, off / tolerance)


def _in_two(
    resolved: ResolvedPlant,
    moment: Moment,
    span: float,
    loads: tuple[float, ...],
    tolerance: float,
    loop: Loop | None,
) -> Step:
    held = moment.supply.volume[0], moment.delivery.volume[0]
    speeds = tuple(shaft.speed for shaft in moment.shafts)
    start = Start(held, dict(moment.flows), speeds, loads)
    early = _stage(resolved, moment, loop, start, GAMMA * span, GAMMA * span, _integral(moment))
    first, on = early.stage, (1 - GAMMA) * span
    start = Start(
        volumes=(held[0] + on * first.volumes[0], held[1] + on * first.volumes[1]),
        flows={
            name: moment.flows.get(name, flow) + on * first.changes[name]
            for name, flow in first.flows.items()
        },
        speeds=tuple(max(speed + on * gain, 0.0) for speed, gain in zip(speeds, first.gains, strict=True)),
        loads=first.loads,
    )
    late = _stage(resolved, moment, loop, start, GAMMA * span, span, _integral(moment) + on * early.rate)
    error = max(_error(resolved, span, first, late.stage), span * abs(late.rate - early.rate))
    return Step(_ended(resolved, moment, span, first, late), late.stage, error / tolerance)


def _integral(moment: Moment) -> float:
    return 0.0 if moment.controller is None else moment.controller.integral or 0.0


def _stage(
    resolved: ResolvedPlant,
    moment: Moment,
    loop: Loop | None,
    start: Start,
    span: float,
    at: float,
    integral: float,
) -> Steered:
    """One stage, with its controller where one acts."""
    if loop is not None:
        return steered(resolved, moment, loop, start, span, at, integral)
    stem = stem_after(resolved, moment, at)
    return Steered(stage(resolved, moment, start, span, at, stem), stem, moment.controller, 0.0)


def _ended(resolved: ResolvedPlant, moment: Moment, span: float, first: Stage, end: Steered) -> Moment:
    last = end.stage
    ended = _moved(resolved, moment, span, first, last)
    shafts = _warmed(resolved, moment, span, first, last)
    return replace(
        ended,
        stem=end.stem,
        shafts=shafts,
        flows=last.flows,
        through=through(last.solved.of(0)),
        controller=end.controller,
    )


def stem_after(resolved: ResolvedPlant, moment: Moment, span: float) -> float:
    """Position of the control valve's stem after a time: it moves at one speed. [s] -> [-]

    A valve that shuts stays a hair open for as long as its stem moves; see `shut_tight`.
    """
    valve = resolved.plant.valve
    most = span / valve.stroke_s
    away = valve.opening - moment.stem
    if abs(away) > most:
        return moment.stem + (most if away > 0 else -most)
    return min(HAIR, moment.stem) if not valve.opening else valve.opening


def shut_tight(resolved: ResolvedPlant, moment: Moment) -> Moment:
    """A valve whose stem has arrived at its seat shuts the least flow that it can hold, without a blow.

    A rigid column that was stopped in no time would push without bound.
    """
    if resolved.plant.valve.opening or not 0 < moment.stem <= HAIR:
        return moment
    return replace(moment, stem=0.0, flows={})


def _warmed(
    resolved: ResolvedPlant, moment: Moment, span: float, first: Stage, last: Stage
) -> tuple[Shaft, ...]:
    """The shafts at the end with their relays as the currents have left them."""
    shafts = []
    for number, shaft in enumerate(last.shafts):
        early, late = first.currents[number], last.currents[number]
        current = sqrt((1 - GAMMA) * early**2 + GAMMA * late**2)
        heat = warmed(resolved.plant, moment.shafts[number].heat, current, last.rated[number], span)
        shafts.append(replace(shaft, heat=heat))
    return tuple(shafts)


def _moved(resolved: ResolvedPlant, moment: Moment, span: float, first: Stage, last: Stage) -> Moment:
    """The moment with all that has flowed taken from one account and put into another."""
    plant, joined = resolved.plant, DELIVERY in last.solved.solution.flow

    def amount(early: float, late: float) -> float:
        return span * ((1 - GAMMA) * early + GAMMA * late)

    supply, delivery = moment.supply.volume, moment.delivery.volume
    elsewhere, line, drawn, over = moment.elsewhere, moment.line, moment.drawn, moment.overflowed
    for name, late in last.out.items():
        much = amount(first.out[name], late)
        supply = add(supply, -much)
        if name != "end" or not plant.discharge.attached:
            elsewhere = add(elsewhere, much)
        elif joined:
            delivery = add(delivery, much)
        else:
            line = add(line, much)
    much = amount(first.came, last.came)
    supply, came = add(supply, much), add(moment.came, -much)
    much = amount(first.drawn, last.drawn)
    delivery, drawn = add(delivery, -much), add(drawn, much)
    if is_full(plant.supply, moment.supply.volume):
        supply, over = _spilled(supply, room(plant.supply), over)
    if is_full(plant.delivery, moment.delivery.volume):
        delivery, over = _spilled(delivery, room(plant.delivery), over)
    if is_empty(moment.supply.volume) and supply[0] < 0:  # what leaks through a line that is as good as shut
        supply, elsewhere = _spilled(supply, 0.0, elsewhere)
    if is_empty(moment.delivery.volume) and delivery[0] < 0:
        delivery, drawn = _spilled(delivery, 0.0, drawn)
    return replace(
        moment,
        time=add(moment.time, span),
        supply=_with(moment.supply, supply),
        delivery=_with(moment.delivery, delivery),
        came=came,
        drawn=drawn,
        overflowed=over,
        elsewhere=elsewhere,
        line=line,
    )


def _with(stock: Stock, volume: Account) -> Stock:
    return replace(stock, volume=volume)


def _spilled(volume: Account, most: float, over: Account) -> tuple[Account, Account]:
    """What is above a volume put into another account; of an empty vessel what it lacks taken from there."""
    value, rest = volume
    if most and value <= most:
        return volume, over
    return (most, 0.0), add(add(over, value - most), rest)


def _error(resolved: ResolvedPlant, span: float, first: Stage, last: Stage) -> float:
    """How far a method of first order would be off: of the usual flow, the vessels, the speeds. [-]"""
    built, plant = last.solved.built, resolved.plant
    usual = float(built.flow_scale[0])
    off = [abs(last.changes[name] - first.changes.get(name, 0.0)) / usual for name in last.changes]
    rooms = room(plant.supply), room(plant.delivery)
    off += [abs(b - a) / whole for a, b, whole in zip(first.volumes, last.volumes, rooms, strict=True)]
    for number, (a, b) in enumerate(zip(first.gains, last.gains, strict=True)):
        off.append(abs(b - a) / field_speed(resolved, number))
    return span * max(off)
