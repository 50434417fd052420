"""An orifice meter: it senses a differential pressure, and makes a flow of it by a square root.

q = k √(Δp/ρ): its scale holds for one density and for a plate that faces the right way.

Sources
-------
ISO 5167-1:2003, the flow goes with √Δp and √(1/ρ) (from memory); size of a reversed plate's
error: 15 to 17 % low of a natural-gas meter (quoted on a public page), 10 to 20 % by common practice.
"""

from __future__ import annotations

import math
from typing import Literal

REVERSED = 0.85
"""What a plate with its bevelled side upstream shows of the flow: its coefficient of discharge is larger,
so the differential pressure is smaller. [-]"""


def scaled(flow: float, density: float, design_density: float) -> float:
    """Flow that a meter made for one density shows of a liquid of another. [m³/s], [kg/m³]"""
    return flow * math.sqrt(density / design_density)


def through_plate(flow: float, plate: Literal["right", "reversed"]) -> float:
    """Flow that a plate lets believe. [m³/s]"""
    return flow * REVERSED if plate == "reversed" else flow


def signal(share: float) -> float:
    """Differential pressure over that at the end of the scale, from the flow likewise; of its sign. [-]"""
    return share * abs(share)


def extracted(signal: float, root: Literal["right", "missing", "doubled"]) -> float:
    """Flow over that at the end of the scale, as the meter works it out from its signal. [-]

    Parameters
    ----------
    signal : differential pressure over that at the end of the scale.
    root : taken once; not at all: the signal passes for the flow; or twice, in transmitter and receiver.
    """
    if root == "missing":
        return signal
    once = math.copysign(math.sqrt(abs(signal)), signal)
    return once if root == "right" else math.copysign(math.sqrt(abs(once)), once)
