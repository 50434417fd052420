"""Gas in the liquid at the inlet: bubbles that the impeller cannot press outward.

The heavy liquid is flung out, the gas gathers at the eye and takes up room. The
head that is left, as a part of the head with liquid alone, is

    f(a) = 1 / (1 + (a / A)^m),    A = 0.06,  m = 4

with the gas's share a of the volume at the inlet: 99 % at 2 %, 94 % at 3 %,
67 % at 5 %, 35 % at 7 %, 11 % at 10 %. Smooth, always falling, never nought; the
pump stops delivering where the load asks for more than is left, against an
ordinary lift at 7 to 10 %.

What goes through is a mixture, 1 - a as heavy as the liquid, and its volume is
more than the liquid's. In the terms of the network, which counts liquid:

    q = (1 - a) Q,    H(q) = (1 - a) f H(Q),    P(q) = (1 - a) (c + (1 - c) f) P(Q),

where c is the share of the power that an impeller full of gas and froth still
churns away. So pressure, flow and current all fall together.

One number for the share of gas, whatever the flow: then there is one answer. A
leak that draws in a fixed amount of air gives a larger share at a smaller flow,
which makes the flow smaller still; that has several states and is not here. Nor
are the pressure (bubbles shrink where it is high), the size of the bubbles, and
that pumps stand gas worst at part load.

Sources
-------
Own statement of common practice, for ordinary radial impellers: little effect to
1 or 2 % by volume, marked loss at 3 to 5 %, no more delivery at 7 to 10 %. The
form of f and the churning (a pump full of air draws little more than the
motor's idle current) are our choice.
"""

from __future__ import annotations

from dataclasses import replace

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes.outside import Limit, Outside, between, passed

HALF, EXPONENT = 0.06, 4  # [-] share of gas that halves the head
CHURNING = 0.35  # [-] of the power
MOST = 0.3  # [-] beyond it no one would call it a liquid
LIMITS = {
    "fraction": Limit(0.0, 0.1, "-"),
    "specific-speed": Limit(0.0, 80.0, "-"),  # radial; axial impellers stand more
}


def head_factor(fraction: float) -> float:
    """What is left of the head, in metres of the mixture.

    Parameters
    ----------
    fraction : float
        Volume of gas over that of the mixture, at the inlet, 0 to 0.3. [-]

    Returns
    -------
    f : float
        Above 0, 1 without gas, falling. [-]

    Raises
    ------
    InputError
        Outside that range.
    """
    between("liquid.gas", fraction, 0.0, MOST)
    return float(1 / (1 + (fraction / HALF) ** EXPONENT))


def entrain(curve: PumpCurve, fraction: float) -> PumpCurve:
    """The pump with gas in its liquid: flow and head in terms of the liquid alone.

    Parameters
    ----------
    curve : PumpCurve
    fraction : float
        As in `head_factor`. [-]

    Raises
    ------
    InputError
        Outside that range.
    """
    f = head_factor(fraction)
    if fraction == 0:
        return curve
    liquid = 1 - fraction
    return replace(
        curve,
        flow=liquid * curve.flow,
        head=liquid * f * curve.head,
        power=liquid * (CHURNING + (1 - CHURNING) * f) * curve.power,
    )


def notes(curve: PumpCurve, fraction: float) -> tuple[Outside, ...]:
    """Whether the share of gas or the impeller is beyond what the statement is for."""
    if fraction == 0:
        return ()
    return passed("gas", LIMITS, {"fraction": fraction, "specific-speed": curve.specific_speed})
