"""Shafts between two speeds: torque balance with inertia, run up straight on the supply or on a ramp.

    J dω/dt = T_motor(ω) - T_pump(ω)

A shaft that turns with its motor's slip follows it at once (`plant.machines`); only while it runs
up or down does its inertia count. The pump's torque at another speed goes with the square of the
speed for as long as a step's stage lasts, and is taken anew from the pump at the next.

A motor that is off coasts: pump and bearings brake it. A drive that is switched off lets go of
the shaft as well (common practice: coast to stop). A drive on a ramp begins at a tenth of the
supply's frequency (common practice: a few hertz). A belt passes on no more than it holds; that
the motor then runs up before the pump is left out.

Sources
-------
Torque balance: any textbook. The motor's torque: `physics.breakdown`, `physics.starting`.
Bearings and seals take 1 % of the rated torque (our choice).
"""

from __future__ import annotations

from math import sqrt
from typing import NamedTuple

from msgspec.structs import replace

from loadfirst.clock.moment import Moment, Shaft
from loadfirst.physics.breakdown import breakdown_torque, lost_at_breakdown, starting_current
from loadfirst.physics.starting import DRIVE, pull_up_torque
from loadfirst.plant import drives
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.services import Service, motors
from loadfirst.plant.shaft import inertia

FIRST = 0.1  # [-] of the supply's frequency, where a drive's ramp begins
FRICTION = 0.01  # [-] of the rated torque
SAME = 1e-3  # [-] frequencies and speeds that differ by less are one
SETTLED = 0.05  # [s] a shaft has arrived when it gains less than `SAME` in that time
HALVINGS = 80


class Motors(NamedTuple):
    """What the torque balance of one shaft needs, in plain numbers; make it with `Motors.of`.

    Attributes
    ----------
    field : its speed without slip, at the frequency that reaches the motor. [rad/s]
    lost : speed lost at breakdown. [rad/s]
    most : torque there. [N·m]
    least : torque between standstill and breakdown, where the motor is straight on the supply. [N·m]
    highest : torque that drive and belt let through. [N·m]
    rated : torque. [N·m]
    first : current at standstill. [A]
    inertia : at the pump's shaft. [kg·m²]
    powered : the motor is on.
    backward : it has lost a phase, and half of its field turns the other way.
    """

    field: float
    lost: float
    most: float
    least: float
    highest: float
    rated: float
    first: float
    inertia: float
    powered: bool
    backward: bool

    @classmethod
    def of(cls, resolved: ResolvedPlant, number: int, service: Service, powered: bool) -> Motors:
        """The motor of one pump as it is fed."""
        motor, ramped = motors([(service,)]), drives.has_drive(resolved.plant.drive)
        rated = float(motor.rated_torque[0, 0])
        grip = float(motor.grip[0, 0])
        return cls(
            field=float(motor.synchronous_speed[0, 0]),
            lost=float(lost_at_breakdown(motor)[0, 0]),
            most=float(breakdown_torque(motor)[0, 0]),
            least=0.0 if ramped else float(pull_up_torque(motor)[0, 0]),
            highest=min(grip, DRIVE * rated) if ramped else grip,
            rated=rated,
            first=float(starting_current(motor)[0, 0]),
            inertia=inertia(resolved, number, service.rated_power),
            powered=powered,
            backward=bool(motor.two_phases[0, 0]),
        )

    def torque(self, speed: float) -> float:
        """Of the motor, less what bearings take of a shaft that coasts. [rad/s] -> [N·m]"""
        if not self.powered:
            return -FRICTION * self.rated if speed > 0 else 0.0
        share, other = (self.field - speed) / self.lost, (self.field + speed) / self.lost
        own = 2 * self.most * share / (1 + share * share)
        if self.backward:
            own -= 2 * self.most * other / (1 + other * other)
        elif share > 1:
            own = max(own, self.least)
        return max(min(own, self.highest), -self.highest)

    def current(self, speed: float) -> float:
        """While it runs up: as at standstill until near breakdown, then it falls (circle diagram). [A]

        A drive keeps it to the torque that it lets through.
        """
        if not self.powered:
            return 0.0
        slip = abs(self.field - speed) / self.lost
        share = slip / sqrt(1 + slip * slip)
        return self.first * (share if self.least else min(share, self.highest / self.most))

    def after(self, speed: float, span: float, load: float) -> float:
        """Speed at the end of a span of time, where the load takes `load` ω². [rad/s], [s], [N·m s²]

        Liquid that drives the shaft does so with the torque that it has: with the square of the speed it
        would have no end.
        """

        def ahead(end: float) -> float:
            taken = load * (end if load > 0 else speed) ** 2
            return self.inertia * (end - speed) - span * (self.torque(end) - taken)

        low, high = 0.0, max(speed, self.field)
        if ahead(low) >= 0:
            return 0.0
        while ahead(high) < 0:
            high *= 1.1
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            if not low < middle < high:
                break
            low, high = (middle, high) if ahead(middle) < 0 else (low, middle)
        return (low + high) / 2


def wanted(resolved: ResolvedPlant) -> tuple[bool, ...]:
    """Which pumps the plant has switched on."""
    pump = resolved.plant.pump
    return (pump.running, pump.second.running)[: len(resolved.pumps)]


def asked_frequency(resolved: ResolvedPlant) -> float:
    """Frequency that the plant asks of its drive, or has on its supply. [Hz]"""
    return drives.frequency(resolved.plant.drive)


def switched(resolved: ResolvedPlant, moment: Moment) -> Moment:
    """The moment with every shaft in the regime that its switch and its drive ask for now.

    A relay that has tripped is reset by switching its pump off.
    """
    shafts = zip(moment.shafts, wanted(resolved), strict=True)
    return replace(moment, shafts=tuple(_switched(resolved, shaft, on) for shaft, on in shafts))


def _switched(resolved: ResolvedPlant, shaft: Shaft, on: bool) -> Shaft:
    drive, asked = resolved.plant.drive, asked_frequency(resolved)
    if not on or shaft.tripped:
        off = replace(shaft, regime="turning") if shaft.regime == "running" else shaft
        return replace(off, tripped=False) if not on and shaft.tripped else off
    ramped = drives.has_drive(drive)
    if shaft.regime == "standing":
        first = min(FIRST * drive.supply_hz, asked) if ramped else asked
        return replace(shaft, regime="turning", speed=max(shaft.speed, 0.0), frequency=first)
    if ramped or abs(asked - shaft.frequency) <= SAME * asked:
        return shaft
    return replace(shaft, regime="turning", frequency=asked)


def ramped(resolved: ResolvedPlant, moment: Moment, span: float) -> tuple[float, ...]:
    """Frequencies after a span of time. [s] -> [Hz]"""
    drive, asked = resolved.plant.drive, asked_frequency(resolved)
    if not drives.has_drive(drive):
        return tuple(shaft.frequency for shaft in moment.shafts)
    most = span * drive.supply_hz / drive.ramp_s
    return tuple(_toward(shaft.frequency, asked, most) for shaft in moment.shafts)


def _toward(now: float, asked: float, most: float) -> float:
    return asked if abs(asked - now) <= most else now + (most if asked > now else -most)
