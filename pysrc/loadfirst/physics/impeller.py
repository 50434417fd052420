"""Which way an impeller sends the liquid, judged by the specific speed of its pump.

A narrow wheel flings the liquid outward (radial), a wide one outward and along
(mixed flow), a propeller along its shaft (axial). The shapes go over into each
other; the boundaries are conventions.

Sources
-------
From memory, ranges that handbooks give: radial to about nq 80, mixed flow to
about 160, axial beyond.
"""

from __future__ import annotations

from typing import Literal

ImpellerShape = Literal["radial", "mixed", "axial"]

MIXED = 80.0  # [1/min, m³/s, m] specific speed from which an impeller is called mixed-flow
AXIAL = 160.0  # [1/min, m³/s, m] beyond which it is a propeller


def impeller_shape(specific_speed: float) -> ImpellerShape:
    """The shape that goes with a specific speed nq, above 0. [1/min, m³/s, m]"""
    if specific_speed > AXIAL:
        return "axial"
    return "mixed" if specific_speed >= MIXED else "radial"
