"""A pump that turns the wrong way round: two phases exchanged after a motor job.

A radial impeller flings the liquid outward either way, so the pump still pumps
forward, only badly: its blades and its casing stand the wrong way. Nothing but
the shaft tells at once; the gauge shows very roughly half the pressure, the
motor usually takes less current, sometimes more.

The curve is scaled: a share of the head, of the flow and of the efficiency.

    q = f Q,    H(q) = h H(Q),    efficiency(q) = e η(Q),    P(q) = f h / e P(Q)

An axial impeller is a propeller: it pumps backward, and so does every
displacement pump. A propeller's blades and guide vanes then stand the wrong way
as well: it gives the same shares, from its discharge to its suction
(`physics.backward` turns the law round). A displacement pump displaces
backward what it displaced forward.

Sources
-------
From memory, and it varies from pump to pump: 40 to 60 % of the normal head. The
shares of flow and efficiency, and where forward ends: common practice. That a
propeller gives about half its head backward: common practice, and soft.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes.outside import Limit, Outside, between, passed
from loadfirst.physics.impeller import AXIAL, MIXED

LIMITS = {"specific-speed": Limit(0.0, MIXED, "-")}  # radial; a mixed-flow pump may do far worse


@dataclass(frozen=True, slots=True)
class Shares:
    """What is left of head, flow and efficiency, each above 0 and at most 1. [-]"""

    head: float
    flow: float
    efficiency: float


USUAL = Shares(head=0.5, flow=0.7, efficiency=0.5)
"""About the middle of what pumps keep (from memory and common practice)."""


def turn_wrong(curve: PumpCurve, shares: Shares = USUAL) -> PumpCurve:
    """A pump that turns the wrong way, in the sense in which it then pumps.

    Forward still if it is radial or of mixed flow, backward where `pumps_backward`.

    Parameters
    ----------
    curve : PumpCurve
    shares : Shares
        Each from 0.1 to 1.

    Raises
    ------
    InputError
        Where a share is outside its range.
    """
    for name in ("head", "flow", "efficiency"):
        between(f"pump.wrong_rotation.{name}", getattr(shares, name), 0.1, 1.0)
    return replace(
        curve,
        flow=shares.flow * curve.flow,
        head=shares.head * curve.head,
        power=shares.flow * shares.head / shares.efficiency * curve.power,
    )


def pumps_backward(curve: PumpCurve) -> bool:
    """Whether the impeller is a propeller, which reverses the flow with its rotation."""
    return curve.specific_speed > AXIAL


def notes(curve: PumpCurve) -> tuple[Outside, ...]:
    """Whether the impeller is less radial than the shares are known for."""
    return passed("rotation", LIMITS, {"specific-speed": curve.specific_speed})
