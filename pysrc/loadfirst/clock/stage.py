"""One implicit stage of a step: the plant balanced at the end of a span, and how fast all changes there."""

from __future__ import annotations

from typing import NamedTuple

from msgspec.structs import replace

from loadfirst.clock.lines import DELIVERY, stepping
from loadfirst.clock.moment import Moment, Shaft
from loadfirst.clock.present import LEAST_SPEED, present
from loadfirst.clock.shafts import Motors, ramped, wanted
from loadfirst.clock.vessel import draw, inflow, is_empty, is_full
from loadfirst.plant.build import build, liquid_of
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.services import motors as motors_of
from loadfirst.plant.services import services
from loadfirst.plant.shaft import field_speed
from loadfirst.plant.solved import OnePlant, Solved, solve_plants

IDLE = 0.05
"""Torque of a pump that turns in air, of the motor's rated one (our choice). [-]"""
OUTLETS = ("end", "branch-end", "burst")
"""Elements through which liquid leaves the plant."""


class Start(NamedTuple):
    """What a stage begins with.

    Attributes
    ----------
    volumes : of supply and delivery. [m³]
    flows : in the lines. [m³/s]
    speeds : of the shafts. [rad/s]
    loads : torque that each pump takes, over its speed squared. [N·m s²]
    """

    volumes: tuple[float, float]
    flows: dict[str, float]
    speeds: tuple[float, ...]
    loads: tuple[float, ...]


class Stage(NamedTuple):
    """A balanced plant, and the rates there.

    Attributes
    ----------
    solved : with the shafts at `shafts`.
    shafts : as they are at the end of the span.
    out : flow through each of `OUTLETS`. [m³/s]
    came, drawn : into the supply from elsewhere, and from the delivery. [m³/s]
    volumes : rates of supply and delivery. [m³/s]
    flows : of the lines, at the end of the span. [m³/s]
    changes : their rates. [m³/s²]
    gains : of the shafts. [rad/s²]
    currents, rated : of the motors: what they draw, and the name plates'. [A]
    loads : as in `Start`.
    """

    solved: Solved
    shafts: tuple[Shaft, ...]
    out: dict[str, float]
    came: float
    drawn: float
    volumes: tuple[float, float]
    flows: dict[str, float]
    changes: dict[str, float]
    gains: tuple[float, ...]
    loads: tuple[float, ...]
    currents: tuple[float, ...]
    rated: tuple[float, ...]


def stage(
    resolved: ResolvedPlant, moment: Moment, start: Start, span: float, at: float, stem: float
) -> Stage:
    """Balance the plant at the end of a span.

    Parameters
    ----------
    moment : in which the step began.
    start : what the span begins with.
    span : above 0. [s]
    at : time of the span's end since the step began. [s]
    stem : position of the control valve then. [-]
    """
    fed = ramped(resolved, moment, at)
    motors = _motors(resolved, moment, fed)
    shafts = tuple(
        replace(shaft, frequency=hertz, speed=motor.after(speed, span, load))
        if shaft.regime == "turning"
        else replace(shaft, frequency=hertz)
        for shaft, hertz, motor, speed, load in zip(
            moment.shafts, fed, motors, start.speeds, start.loads, strict=True
        )
    )
    built = build([present(resolved, moment, start.volumes, stem, shafts)])
    solved = solve_plants(stepping(built, moment, span, start.flows))
    return _rates(resolved, moment, start, span, solved, shafts, motors)


def _motors(resolved: ResolvedPlant, moment: Moment, fed: tuple[float, ...]) -> tuple[Motors, ...]:
    """The motors, for as long as any of their shafts is between two speeds."""
    if all(shaft.regime != "turning" for shaft in moment.shafts):
        return (NO_MOTOR,) * len(moment.shafts)
    on = zip(moment.shafts, wanted(resolved), strict=True)
    powered = [want and not shaft.tripped for shaft, want in on]
    each = services(resolved, liquid_of(resolved.plant))
    return tuple(
        Motors.of(resolved, number, service._replace(frequency=fed[number]), powered[number])
        for number, service in enumerate(each)
    )


NO_MOTOR = Motors(0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0, False, False)


def _rates(
    resolved: ResolvedPlant,
    moment: Moment,
    start: Start,
    span: float,
    solved: Solved,
    shafts: tuple[Shaft, ...],
    motors: tuple[Motors, ...],
) -> Stage:
    one = solved.of(0)
    names = {element.name for element in one.layout.elements}
    out = {name: one.exact_flow(name) for name in OUTLETS if name in names}
    out = {name: flow if abs(flow) > one.leakage else 0.0 for name, flow in out.items()}
    flows = {spec.name: one.exact_flow(spec.name) for spec in one.layout.columns["pipes"]}
    before = {name: start.flows.get(name, flow) for name, flow in flows.items()}
    came, drawn, volumes = _volumes(resolved, moment, out, DELIVERY in solved.solution.flow)
    speeds, torques = _turned(one, shafts, moment.primed)
    gains, loads, currents, rated = [], [], [], []
    for number, (shaft, motor) in enumerate(zip(shafts, motors, strict=True)):
        load = torques[number]
        law, running, column = one.running(number)
        drawn_now = float(running.current[0, column])
        if shaft.regime == "turning":
            least = min(drawn_now, motor.first)
            drawn_now = max(motor.current(speeds[number]), least) if motor.powered else 0.0
        elif shaft.regime == "running" and not moment.primed:
            drawn_now = idle(one, number)[1]
        currents.append(drawn_now)
        rated.append(float(one.per_machine(law.motor.rated_current)[column]))
        turning = shaft.regime == "turning"
        gains.append((motor.torque(speeds[number]) - load) / motor.inertia if turning else 0.0)
        enough = speeds[number] > LEAST_SPEED * field_speed(resolved, number)
        loads.append(load / speeds[number] ** 2 if enough else start.loads[number])
    return Stage(
        solved=solved,
        shafts=tuple(replace(shaft, speed=speed) for shaft, speed in zip(shafts, speeds, strict=True)),
        out=out,
        came=came,
        drawn=drawn,
        volumes=volumes,
        flows=flows,
        changes={name: (flow - before[name]) / span for name, flow in flows.items()},
        gains=tuple(gains),
        loads=tuple(loads),
        currents=tuple(currents),
        rated=tuple(rated),
    )


def idle(one: OnePlant, number: int) -> tuple[float, float, float]:
    """Speed, current and power of a motor whose pump turns in air. [rad/s] [A] [W]"""
    motor = motors_of([(one.built.services[0][number],)])
    torque = IDLE * motor.rated_torque
    speed = motor.speed(torque)
    power = motor.input_power(torque, speed)
    return float(speed[0, 0]), float(motor.current(power)[0, 0]), float(power[0, 0])


def _volumes(
    resolved: ResolvedPlant, moment: Moment, out: dict[str, float], joined: bool
) -> tuple[float, float, tuple[float, float]]:
    """What comes, what is drawn, and the rates of both volumes."""
    plant = resolved.plant
    came, asked = inflow(plant), draw(plant)
    arrives = out["end"] if joined else 0.0
    empty = is_empty(moment.delivery.volume)
    drawn = min(asked, max(arrives, 0.0)) if empty else asked
    gained = [came - sum(out.values()), arrives - drawn]
    supply, delivery = moment.supply.volume, moment.delivery.volume
    return (
        came,
        drawn,
        (
            _held(gained[0], is_empty(supply), is_full(plant.supply, supply)),
            _held(gained[1], is_empty(delivery), is_full(plant.delivery, delivery)),
        ),
    )


def _held(gained: float, empty: bool, full: bool) -> float:
    """A vessel's rate: an empty one loses nothing, a full one gains nothing."""
    return max(gained, 0.0) if empty else min(gained, 0.0) if full else gained


def _turned(one: OnePlant, shafts: tuple[Shaft, ...], primed: bool) -> tuple[list[float], list[float]]:
    """Speeds and torques of all pumps in their order; one that has lost its prime keeps its speed."""
    speeds, torques = [], []
    for number, shaft in enumerate(shafts):
        _, running, column = one.running(number)
        speed, torque = float(running.speed[one.row, column]), float(running.torque[one.row, column])
        if shaft.regime == "turning" or (shaft.regime == "running" and not primed):
            speed = shaft.speed
        speeds.append(speed)
        torques.append(torque)
    return speeds, torques
