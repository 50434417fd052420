"""Whether a motor gets its pump up to speed, without following it through time.

A motor runs up as long as it has more torque than the load asks at that speed.
Straight on the supply it has what `physics.breakdown` says, but from standstill
on never less than its pull-up torque: deep rotor bars see to that. Where the
load asks for more, it hangs: it crawls there at several times its rated current.

A variable-speed drive never lets the motor slip that far. It gives at most one
and a half times the rated torque (common practice: for a minute), of which the
run-up itself takes the more the shorter it is. A belt that slips while it starts asks the
motor for no more than it holds.

Sources
-------
IEC 60034-12, design N, from memory: locked-rotor torque from 1.9 times the
rated one for 0.6 kW down to 0.65 for 630 kW, nearly straight on the logarithm
of the power (two poles; more poles have about as much); pull-up torque some
seven tenths of it.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

import numpy as np

from loadfirst.physics.belt import Drives
from loadfirst.physics.breakdown import breakdown_torque, lost_at_breakdown, starting_current, torque_at
from loadfirst.physics.law import Array

LOCKED = (1.9, 0.65)  # [-] of the rated torque, for the smaller and for the larger
SIZES = (0.63e3, 630e3)  # [W]
PULL_UP = 0.7  # [-] of the locked-rotor torque
DRIVE = 1.5  # [-] of the rated torque, from a variable-speed drive
STICKS = 0.05  # [-] of the rated torque, to break loose what sticks; else never felt (common practice)
STEPS = 33

Asked = Callable[[Array], Array]
"""Torque that the load asks at speeds of the pump's shaft, (N, 1). [rad/s] -> [N·m]"""


class Start(NamedTuple):
    """How one motor starts.

    Attributes
    ----------
    current : the most that it draws [A]
    spare : least torque that is left to run up with, over the rated one [-]; it hangs where that is negative
    speed : of the pump's shaft, where it is least; where it hangs, the speed that it does not pass [rad/s]
    """

    current: float
    spare: float
    speed: float

    @property
    def hangs(self) -> bool:
        """Whether it does not get up to speed."""
        return self.spare < 0


def pull_up_torque(motor: Drives) -> Array:
    """Least torque from standstill to breakdown, straight on the supply; none on two phases. (1, 1) [N·m]"""
    size = np.interp(np.log(motor.rated_power), np.log(SIZES), LOCKED)
    starts = np.where(motor.two_phases, 0.0, PULL_UP * size)
    return np.asarray(starts * motor.rated_torque * motor.field_strength**2)


def direct(motor: Drives, asked: Asked) -> Start:
    """One motor (1, 1) switched straight to the supply."""
    at_most = motor.synchronous_speed - lost_at_breakdown(motor)
    speeds = np.linspace(0.0, 1.0, STEPS)[:, None] * np.maximum(at_most, 0.0)
    given = np.maximum(torque_at(motor, speeds), pull_up_torque(motor))
    stuck = np.where((speeds == 0) & motor.two_phases, STICKS * motor.rated_torque, 0.0)
    needed = np.minimum(np.maximum(asked(speeds), stuck), motor.grip)
    return _start(motor, speeds, given - needed, starting_current(motor))


def ramp(motor: Drives, asked: Asked, running: float, own: float) -> Start:
    """One motor (1, 1) run up by a variable-speed drive.

    Parameters
    ----------
    motor : Motor or Belted (1, 1)
    asked : the load's torque
    running : speed of the pump's shaft in the end [rad/s]
    own : torque that the run-up itself takes, inertia times its rate [N·m]
    """
    speeds = np.linspace(0.0, 1.0, STEPS)[:, None] * running
    given = np.minimum(DRIVE * motor.rated_torque * motor.field_strength, breakdown_torque(motor))
    needed = np.minimum(asked(speeds) + own, motor.grip)
    torque = np.minimum(needed.max(), given)
    current = motor.current(motor.input_power(torque, motor.speed(torque)))
    return _start(motor, speeds, given - needed, current)


def _start(motor: Drives, speeds: Array, spare: Array, current: Array) -> Start:
    """From torque left at speeds, (N, 1). [N·m]"""
    short = spare[:, 0] < 0
    at = int(np.argmax(short)) if short.any() else int(np.argmin(spare[:, 0]))
    least = float((spare.min() / motor.rated_torque)[0, 0])
    return Start(float(current[0, 0]), least, float(speeds[at, 0]))
