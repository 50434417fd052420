"""Several changes of one pump at once, in the order in which they meet the liquid.

First the impeller: its diameter, its sense of rotation, its passages. Then the
leakage round it, through the same gaps whatever became of the impeller: the
share of wear refers to the pump with nothing wrong but its diameter. Then the
liquid: the viscosity, whose parameter B looks at the best-efficiency point on
water, and the gas.

Trim, rotation and blocking scale a curve and may change places with each other.
All but viscosity may change places with the affinity laws of speed; viscosity
takes the speed as an argument. Trim and wear leave the same head and power in
either order.
"""

from __future__ import annotations

from dataclasses import dataclass

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes import blocked, gas, rotation, trim, viscosity, wear
from loadfirst.physics.changes.outside import Outside


@dataclass(frozen=True, slots=True, kw_only=True)
class Changes:
    """What has become of a pump; as it stands, nothing has.

    Attributes
    ----------
    diameter : float
        Of the impeller, over that of the curve. [-] See `trim`.
    blocked : float
        Share of its passages; 1 is plugged. [-] See `blocked`.
    wear : float
        Added leakage, share of the best-efficiency flow. [-] See `wear`.
    wrong_rotation : rotation.Shares or None
        What is left when it turns the wrong way. See `rotation`.
    viscosity : float
        Kinematic, of the liquid; nought leaves the curve as it is. [m²/s]
    speed : float or None
        At which the pump will run, for the viscosity. [rad/s]
    gas : float
        Share of the volume at the inlet. [-] See `gas`.
    """

    diameter: float = 1.0
    blocked: float = 0.0
    wear: float = 0.0
    wrong_rotation: rotation.Shares | None = None
    viscosity: float = 0.0
    speed: float | None = None
    gas: float = 0.0


def apply(curve: PumpCurve, changes: Changes) -> tuple[PumpCurve, tuple[Outside, ...]]:
    """The pump as it has become, and where the rules for that do not reach.

    Parameters
    ----------
    curve : PumpCurve
        As the maker measured it.
    changes : Changes

    Returns
    -------
    curve : PumpCurve
        The same object where nothing has changed.
    notes : tuple of Outside

    Raises
    ------
    InputError
        Where a size is outside its range.
    """
    notes = list(trim.notes(changes.diameter))
    pump = trimmed = trim.trim(curve, changes.diameter)
    if changes.wrong_rotation is not None:
        notes += rotation.notes(trimmed)
        pump = rotation.turn_wrong(trimmed, changes.wrong_rotation)
    k = wear.leakage(trimmed, changes.wear)
    if changes.blocked == 1:
        pump = blocked.plug(pump)
    else:
        pump = wear.wear(blocked.block(pump, changes.blocked), k)
    notes += gas.notes(trimmed, changes.gas)
    factors = viscosity.factors(pump, changes.viscosity, changes.speed)
    notes += factors.notes
    if factors.head_best < factors.head_best_water:
        pump = viscosity.thicken(pump, factors)
    return gas.entrain(pump, changes.gas), tuple(notes)
