"""A worn pump: liquid that was pumped already slips back to the suction through the wear rings.

The impeller itself is as good as new. At the head H it passes the flow Q of the
maker's curve and takes the power of that flow; but a part goes round inside,

    leak = k √H,    net flow q = Q - leak,

as through an orifice between discharge and suction. So the pump gives less at
the same head and takes the same power. Seen from outside the whole curve has
moved left by an amount that is largest at no flow, where it hardly shows, since
the curve is flat there: a worn pump holds nearly the pressure of a sound one
against a shut valve, and only a flow well out on the curve tells.

Head and its root's leakage both follow the affinity laws (H ~ n², leak ~ n), so
wear at one speed is wear at every speed; the same holds for a trim.

The curves of the maker include the leakage of new rings; `leak` is what wear adds.

Sources
-------
Leakage through a ring's gap as an orifice under the head of the pump, k from the
gap's area and a coefficient: A. J. Stepanoff, "Centrifugal and Axial Flow Pumps"
(from memory; quoted in discussions of Pump Handbook, section 2.1). That the
impeller's power is that of the flow through it, and that the whole head of the
pump stands across the rings (in truth some three quarters): common practice; a
constant part of the head only changes k.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes.outside import between, never_rising

MOST = 0.5  # [-] of the best-efficiency flow: half of what is pumped goes round inside
LEFT = 0.1  # [-] of the last flow that always gets out
ROUNDS, PARTS = (
    7,
    256,
)  # each round looks at so many parts of what is left of the flow axis: to the last digit


def leakage(curve: PumpCurve, share: float) -> float:
    """The leakage coefficient of rings that lose a share of the flow at best efficiency.

    Parameters
    ----------
    curve : PumpCurve
        The pump to which the share refers: as new, before any other change.
    share : float
        Added leakage over the best-efficiency flow, at the best-efficiency
        head, 0 to 0.5. About 0.1 is a pump in need of new rings (common
        practice). [-]

    Returns
    -------
    k : float
        Leakage over the root of the head. [m³/s/√m]

    Raises
    ------
    InputError
        Outside that range.
    """
    between("pump.wear", share, 0.0, MOST)
    return share * curve.best_efficiency_flow / math.sqrt(curve.best_efficiency_head)


def wear(curve: PumpCurve, k: float) -> PumpCurve:
    """The pump as it works with worn rings.

    Parameters
    ----------
    curve : PumpCurve
    k : float
        From `leakage`, 0 or more; held where less than a tenth of the last
        flow would get out, which takes a blocked impeller besides. [m³/s/√m]

    Returns
    -------
    PumpCurve
        As many points as before, the first where the whole flow of the
        impeller leaks back: no flow outside.

    Raises
    ------
    InputError
        Where k is below 0 or no number.
    """
    between("pump.wear", k, 0.0, math.inf)
    if k == 0:
        return curve
    k = min(k, _largest(curve))
    first = _all_leaks(curve, k)
    inside = first + (curve.last_flow - first) * (curve.flow / curve.last_flow)
    inside[-1] = curve.last_flow
    head, power, npsh = curve.at(inside)
    flow = inside - k * np.sqrt(head)
    flow[0] = 0.0
    return replace(curve, flow=flow, head=never_rising(head, curve.head), power=power, npsh_required=npsh)


def _largest(curve: PumpCurve) -> float:
    """The coefficient that leaves `LEFT` of the last flow, and of steps where the head rises. [m³/s/√m]"""
    head = float(curve.head[-1])
    most = (1 - LEFT) * curve.last_flow / math.sqrt(head) if head > 0 else math.inf
    if (np.diff(curve.head) <= 0).all():
        return most
    inside = np.linspace(0.0, curve.last_flow, 4 * PARTS + 1)
    steepest = float((np.diff(np.sqrt(curve.at(inside)[0])) / np.diff(inside)).max())
    return min(most, (1 - LEFT) / steepest) if steepest > 0 else most


def _all_leaks(curve: PumpCurve, k: float) -> float:
    """The flow of the impeller at which Q = k √H: none gets out. [m³/s]

    Q - k √H rises with Q where the head falls; it is negative at no flow and
    positive at the last.
    """
    low, high = 0.0, curve.last_flow
    for _ in range(ROUNDS):
        inside = np.linspace(low, high, PARTS + 1)
        out = inside >= k * np.sqrt(curve.at(inside)[0])
        out[-1] = True
        first = int(np.argmax(out))
        low, high = float(inside[max(first - 1, 0)]), float(inside[first])
    return high
