"""What is true of one motor, its relay and its belt, as data: plain numbers in SI."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

Reason = Literal[
    "little-load", "much-load", "stalled", "phase-lost", "low-voltage", "set-low", "speed", "liquid",
    "small-motor",
]  # fmt: skip
"""Why a relay trips; see `plant.drive_state`."""


class Relay(Struct, frozen=True):
    """The overload relay of one motor.

    Attributes
    ----------
    setting : current that it is set to [A]
    trips : whether it trips under the current that flows, within two hours
    after : time until then, from running at the set current; None where it does not trip [s]
    reason : why it trips, None likewise
    """

    setting: float
    trips: bool
    after: float | None
    reason: Reason | None


class Belt(Struct, frozen=True):
    """The belt between one motor and its pump.

    Attributes
    ----------
    slips : whether it holds no more torque (a toothed one jumps)
    torque : most that it holds, at the pump's shaft [N·m]
    heat : what it turns into heat [W]
    """

    slips: bool
    torque: float
    heat: float


class Start(Struct, frozen=True):
    """How one motor starts against the load that it runs on, see `physics.starting`.

    Attributes
    ----------
    way : straight on the supply, or run up by a variable-speed drive
    current : the most that it draws [A]
    spare : least torque left to run up with, over the rated one; negative where it hangs [-]
    hangs : whether it does not get up to speed
    speed : of the pump's shaft where the least is left, or where it hangs [rad/s]
    """

    way: Literal["direct", "ramp"]
    current: float
    spare: float
    hangs: bool
    speed: float
