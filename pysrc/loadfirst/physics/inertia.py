"""What resists a change of speed: the liquid in a pipe, and the shaft of a pump with its motor.

Liquid that fills a rigid pipe moves as one body, the rigid column. To change its
flow takes head besides what friction takes:

    h = L/(g A) dq/dt,

L/(g A) the inertance of the pipe. In a step of time `span` that ends at the flow q,
dq/dt is (q - before)/span, so the pipe obeys a law like any other, steeper by the
inertance over the span: it rises with the flow at any step, and the network's answer
stays the only one.

Liquid and wall are taken as rigid: right for changes slower than several times 2 L/a,
a the speed of sound (some 1000 m/s in a pipe). Faster ones are water hammer, and
more than this says.

Sources
-------
E. B. Wylie and V. L. Streeter, "Fluid Transients": rigid column (from memory).
A. R. D. Thorley and A. Faithfull, "Inertias of pumps and their driving motors"
(1992), the fits for pump and motor: from memory; single machines differ by half.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array, Index, pick
from loadfirst.physics.pipe import Pipes
from loadfirst.units import RPM, G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

KRPM = 1000 * RPM


def inertance(length: ArrayLike, bore: ArrayLike) -> Array:
    """Head that it takes to change the flow of a full pipe, over the change per time.

    Parameters
    ----------
    length : array_like
        From 0. [m]
    bore : array_like, broadcast against it
        Inside diameter, above 0. [m]

    Returns
    -------
    ndarray, broadcast shape [s²/m²]
    """
    return np.asarray(4 / (np.pi * G) * np.asarray(length, dtype=float) / np.asarray(bore, dtype=float) ** 2)


def pump_inertia(power: ArrayLike, speed: ArrayLike) -> Array:
    """Typical moment of inertia of a pump's impeller, shaft and liquid in it.

    Parameters
    ----------
    power : array_like
        Rated power, above 0. [W]
    speed : array_like
        Above 0. [rad/s]

    Returns
    -------
    ndarray, broadcast shape [kg·m²]
    """
    kw, krpm = np.asarray(power, dtype=float) / 1000, np.asarray(speed, dtype=float) / KRPM
    return np.asarray(0.03768 * (kw / krpm**3) ** 0.9556)


def motor_inertia(power: ArrayLike, speed: ArrayLike) -> Array:
    """Typical moment of inertia of a motor's rotor; as `pump_inertia`. [W], [rad/s] -> [kg·m²]"""
    kw, krpm = np.asarray(power, dtype=float) / 1000, np.asarray(speed, dtype=float) / KRPM
    return np.asarray(0.0043 * (kw / krpm) ** 1.48)


class RigidColumns(Pipes):
    """M pipes at the end of a step of time; make them with `RigidColumns.of`.

    The drop is the pipe's own and what changes the flow; `breakdown` gives the
    pipe's own two parts as ever, `acceleration` the rest.
    """

    _steep: Array
    _before: Array

    @classmethod
    def of(cls, pipes: Pipes, steep: ArrayLike, before: ArrayLike) -> RigidColumns:
        """Pipes whose liquid resists a change of its flow.

        Parameters
        ----------
        pipes : Pipes
        steep : array_like (B or 1, M)
            Inertance over the span of the step, from 0. [s/m²]
        before : array_like (B or 1, M)
            Flow at the beginning of the span. [m³/s]
        """
        some = object.__new__(cls)
        vars(some).update(vars(pipes))
        some._steep, some._before = (np.atleast_2d(np.asarray(part, dtype=float)) for part in (steep, before))
        return some

    def acceleration(self, flow: Array) -> Array:
        """Head that changes the flow, negative where the liquid is slowed. (B, M) [m³/s] -> [m]"""
        return np.asarray(self._steep * (flow - self._before))

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """The pipes' own drop and what changes the flow; see `Law`."""
        drop, slope = super().head_drop(flow)
        return drop + self.acceleration(flow), slope + self._steep

    def rows(self, index: Index) -> RigidColumns:
        """The same pipes of some of the plants only."""
        some = object.__new__(RigidColumns)
        for name, values in vars(self).items():
            setattr(some, name, pick(values, index))
        return some
