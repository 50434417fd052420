"""What turns a pump, recomputed: motor, supply, drive and belt, as the pump's shaft sees them.

For the independent checker: plain numbers, the documented rules, nothing of the package's physics.
"""

from __future__ import annotations

from math import inf, log, pi
from typing import NamedTuple

from loadfirst.plant.plant import Drive

SLIPS = [(0.373, 0.05), (3.73, 0.03), (11.2, 0.025), (37.3, 0.017), (186.0, 0.008)]  # [kW], [-]


class Turned(NamedTuple):
    """Speed without torque [rad/s], speed lost per torque [rad/s per N·m], most torque that there is,
    by motor or by belt [N·m], and the speed without torque on a sound supply [rad/s]."""

    field: float
    droop: float
    most: float
    grip: float
    usual: float


def turned(drive: Drive, kw: float, gear: float = 1.0) -> Turned:
    """By a motor of this size; a gearbox makes it slower and stronger, a belt likewise."""
    mains = drive.supply_hz * drive.mains_percent / 100
    asked = drive.frequency_hz
    own = drive.start == "ramp" or (asked is not None and asked != mains)
    hertz = asked if asked is not None else (float(drive.supply_hz) if own else mains)
    volts = drive.voltage_percent / 100
    needed = min(hertz / drive.supply_hz, 1.0)  # of the rated voltage, for a full field
    given = min(volts, needed) if own else volts
    two = drive.phases == 2 and not own  # a drive makes three of its own
    if two:
        given *= 0.87
    field = given / needed / max(hertz / drive.supply_hz, 1.0)
    rated_speed, slip = 4 * pi * drive.supply_hz / drive.poles, _slip(kw)
    torque = kw * 1000 / (rated_speed * (1 - slip))
    lost = rated_speed * slip / torque / field**2
    step, creep, holds = gear, 0.0, inf
    if drive.belt != "none":
        step = gear / drive.belt_ratio
        tight = drive.belt_tension_percent / 100
        creep, holds = (0.01 / tight, 1.5 * tight) if drive.belt == "v-belt" else (0.0, 2.0 * tight)
    speed = 4 * pi * hertz / drive.poles / step
    droop = lost / step**2 + speed * creep / (torque * step)
    most = 2.5 * torque * field**2 * step
    if two:
        apart = slip * (2.5 + (2.5**2 - 1) ** 0.5) * rated_speed  # speed lost at breakdown
        far = (8 * pi * hertz / drive.poles - apart) / apart
        most *= 1 - 2 * far / (1 + far**2)
    return Turned(speed, droop, most, holds * torque * step, rated_speed / step)


def _slip(kw: float) -> float:
    """At rated load, from a table over the logarithm of power. [-]"""
    if kw <= SLIPS[0][0]:
        return SLIPS[0][1]
    for (a, slip_a), (b, slip_b) in zip(SLIPS, SLIPS[1:], strict=False):
        if a < kw <= b:
            return slip_a + (slip_b - slip_a) * log(kw / a) / log(b / a)
    return SLIPS[-1][1]
