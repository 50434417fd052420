"""What everything outside the station asks when a flow is forced through the gap where the station was."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from loadfirst.physics.law import Array, Flags
from loadfirst.physics.network import Solution
from loadfirst.plant.build import Built
from loadfirst.plant.choked import settle
from loadfirst.plant.station_curve import spread


def outside(built: Built, flow: Array) -> tuple[Array, Flags]:
    """Head across the gap; the check valves between and behind two pumps are not in it.

    Parameters
    ----------
    flow : (B, F) [m³/s]

    Returns
    -------
    head : (B, F) never falling with the flow. [m]
    known : (B, F) False where no flow can pass: a shut valve answers with any head.
    """
    found = forced(built, flow)
    head = found.head["discharge"] - found.head["suction"]
    known = found.converged & ~found.undefined["discharge"]
    return head.reshape(flow.shape), known.reshape(flow.shape)


def forced(built: Built, flow: Array) -> Solution:
    """All outside the station, balanced, each plant once per flow; flows as in `outside`."""
    through = flow.ravel()
    load = spread(built.network.without(built.layout.station), flow)
    return settle(
        built,
        replace(load, demand={"suction": through, "discharge": -through}),
        np.repeat(built.head_scale, flow.shape[1]),
        np.repeat(built.flow_scale, flow.shape[1]),
        flow.shape[1],
    )
