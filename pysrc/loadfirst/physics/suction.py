"""What the suction side leaves for the pump: NPSH available over the flow, and the flow where it boils.

NPSH is the energy head at the pump's inlet above the vapour head, both
absolute, measured from the pump's centre. At rest it is given by pressure on
the liquid, its vapour pressure and the height; flow takes the line's loss away.
So it never rises with the flow.

The static pressure at the inlet flange is the NPSH less the velocity head: where
nothing is left of it the liquid boils in the line, and no more flow passes,
whatever the pump does.

Sources
-------
ISO 9906 and ANSI/HI 9.6.1 for NPSH as total head above vapour pressure (from
memory); Bernoulli for the rest.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array, Index, Law, pick
from loadfirst.physics.pipe import velocity_head
from loadfirst.physics.ranges import require
from loadfirst.physics.root import rising_root
from loadfirst.units import G

if TYPE_CHECKING:  # costs a page that starts more than it says
    from numpy.typing import ArrayLike


def npsh_at_rest(
    pressure: ArrayLike, vapour_pressure: ArrayLike, density: ArrayLike, above_pump: ArrayLike
) -> Array:
    """NPSH available when nothing flows.

    Parameters
    ----------
    pressure : array_like
        Absolute, on the liquid's surface, from 0. [Pa]
    vapour_pressure : array_like
        Absolute, from 0. [Pa]
    density : array_like
        Above 0. [kg/m³]
    above_pump : array_like
        Height of the surface above the pump's centre, negative for a lift. [m]

    Returns
    -------
    npsh : ndarray, broadcast shape
        May be negative: the liquid does not reach the pump. [m]

    Raises
    ------
    InputError
        For a value outside these ranges.
    """
    given = (np.asarray(x, dtype=float) for x in (pressure, vapour_pressure, density, above_pump))
    pressure, vapour, density, height = given
    require("suction.pressure", pressure, pressure >= 0, "0 Pa absolute or more")
    require("liquid.vapour_pressure", vapour, vapour >= 0, "0 Pa absolute or more")
    require("liquid.density", density, density > 0, "above 0 kg/m³")
    return np.asarray((pressure - vapour) / (density * G) + height)


@dataclass(frozen=True, slots=True)
class Suction:
    """The suction sides of M pumps in B plants, each with its own line.

    Attributes
    ----------
    at_rest : ndarray (B|1, M)
        NPSH without flow. [m]
    line : Law of M elements
        Everything between surface and pump.
    bore : ndarray (B|1, M)
        At the pump's inlet, above 0. [m]
    """

    at_rest: Array
    line: Law
    bore: Array

    def available(self, flow: Array) -> tuple[Array, Array]:
        """NPSH available and its slope, never positive. (B, M) [m³/s] -> [m], [m/(m³/s)]"""
        drop, slope = self.line.head_drop(flow)
        return self.at_rest - drop, -slope

    def boiling_flow(self) -> Array:
        """The most flow that passes before the liquid boils at the inlet flange. (B, M) [m³/s]

        0 where the liquid does not even reach the pump.
        """
        head = np.maximum(self.at_rest, 0.0)
        most = np.sqrt(head / velocity_head(1.0, self.bore))  # all of it turned into speed
        at, _ = rising_root(lambda q: velocity_head(q, self.bore) - self.available(q)[0], 0 * most, most)
        return at

    def rows(self, index: Index) -> Suction:
        """The suction sides of some of the plants only."""
        return Suction(pick(self.at_rest, index), self.line.rows(index), pick(self.bore, index))
