"""What the load asks at flows forced through it: any network, with the station taken out."""

from __future__ import annotations

from loadfirst.physics.law import Array, Flags
from loadfirst.plant.build import Built
from loadfirst.plant.outside import outside
from loadfirst.plant.station_curve import Forced, check_loss


def load_curve(built: Built, flow: Array, at: Forced | None = None) -> tuple[Array, Flags]:
    """Head that the load asks at flows through the station.

    Parameters
    ----------
    flow : (B, F) [m³/s]
    at : as `station_curve.station_curve` takes it.

    Returns
    -------
    head : (B, F) that the pumps must add. [m]
    known : (B, F) False where no flow can pass: a shut valve answers with any head.
    """
    checks, within = check_loss(built, flow, at)
    head, known = outside(built, flow)
    return head + checks, known & within
