"""An impeller some of whose passages are blocked: rag, a stone, a ball of fibre.

The open passages work as before and each carries what it carried; there are
fewer of them. So the flow axis shrinks to the open share, and the head at no
flow, which is that of liquid turning with the impeller, stays nearly what it
was (kept here as it is). The power of the open passages shrinks with their
number; the blocked ones churn as all do at no flow:

    q = s Q,    H(q) = H(Q),    P(q) = s P(Q) + (1 - s) P(0),    s = open share.

From outside it looks like a smaller pump of the same diameter: against a shut
valve all seems well, well out on the curve the head is far too low. Imbalance
and vibration, which give it away in truth, are not shown.

`plugged` is the impeller whose eye is stopped altogether: it turns what is in
it and gives next to nothing; the motor runs nearly idle.

Sources
-------
None for the sizes: common practice (cause lists of the trade name less flow,
less head, less power; a plugged impeller: pressure gone, current low). The rule
of equal passages is our own statement.
"""

from __future__ import annotations

from dataclasses import replace

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes.outside import between

MOST = 0.9  # [-] blocked; more is `plugged`

PLUGGED_FLOW = 0.02  # [-] of the flow axis: what seeps by (our choice)
PLUGGED_HEAD = 0.1  # [-] of the head: what the liquid in the casing still turns (our choice)
CHURNING = 0.4  # [-] of the power at no flow (our choice)


def block(curve: PumpCurve, share: float) -> PumpCurve:
    """The pump with a share of its passages blocked.

    Parameters
    ----------
    curve : PumpCurve
    share : float
        Blocked passages over all, 0 to 0.9. [-]

    Raises
    ------
    InputError
        Outside that range.

    Notes
    -----
    The required NPSH goes with the flow through an open passage: it rises.
    """
    between("pump.blocked", share, 0.0, MOST)
    if share == 0:
        return curve
    still_open = 1 - share
    power = still_open * curve.power + share * curve.power[0]
    return replace(curve, flow=still_open * curve.flow, power=power)


def plug(curve: PumpCurve) -> PumpCurve:
    """The pump with its impeller completely stopped up: churning, hardly any flow or head."""
    given = PLUGGED_FLOW * PLUGGED_HEAD  # of the power that goes with the flow
    return replace(
        curve,
        flow=PLUGGED_FLOW * curve.flow,
        head=PLUGGED_HEAD * curve.head,
        power=CHURNING * curve.power[0] + given * curve.power,
    )
