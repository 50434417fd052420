"""A pump with an impeller of another diameter: turned down on the lathe, or the wrong one fitted.

Flow goes with the diameter, head with its square, power with its cube. Each
point moves along a parabola through the origin, as with speed, and the
efficiency goes with it. The inlet of the impeller is untouched, so the required
NPSH stays what it was at each flow.

The rule is good for small trims. In truth the flow falls less and the
efficiency more than it says, the more so the more is cut away and the higher
the specific speed; a limit of about 75 to 80 % of the full diameter is common
practice, and so is asking the maker.

Sources
-------
HI Engineering Data Book, eq. 1.B.7 (read); limited changes only, see ANSI/HI 14.3.
It is not the rule for similar pumps of two sizes (Q ~ D³, H ~ D², P ~ D⁵).
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes.outside import Limit, Outside, between, passed
from loadfirst.physics.law import Array

LEAST, MOST = 0.7, 1.2  # [-] of the diameter the curve stands for: what is computed at all
LIMITS = {"diameter": Limit(0.8, 1.05, "-")}  # common practice; above 1: another impeller of the series


def trim(curve: PumpCurve, diameter: float) -> PumpCurve:
    """The pump with its impeller of another diameter.

    Parameters
    ----------
    curve : PumpCurve
    diameter : float
        Over the diameter for which `curve` holds, 0.7 to 1.2; above 1 for a
        larger impeller of the same series. [-]

    Raises
    ------
    InputError
        Outside that range.

    Notes
    -----
    Beyond the last point of the curve, where a larger impeller leads, the
    required NPSH goes on along a straight line.
    """
    between("pump.diameter", diameter, LEAST, MOST)
    if diameter == 1:
        return curve
    flow = diameter * curve.flow
    return replace(
        curve,
        flow=flow,
        head=diameter**2 * curve.head,
        power=diameter**3 * curve.power,
        npsh_required=_same_npsh(curve, flow),
    )


def notes(diameter: float) -> tuple[Outside, ...]:
    """Whether the trim is more than the rule is good for."""
    return passed("trim", LIMITS, {"diameter": diameter})


def _same_npsh(curve: PumpCurve, flow: Array) -> Array:
    """Required NPSH of the same inlet at other flows. [m]"""
    beyond = np.maximum(flow - curve.last_flow, 0.0)
    return curve.at(flow)[2] + max(float(curve.slopes[2, -1]), 0.0) * beyond
