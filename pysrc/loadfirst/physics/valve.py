"""A control valve: the stem sets its flow coefficient, and that the head it costs."""

from __future__ import annotations

from math import sqrt
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.errors import InputError
from loadfirst.physics.law import SHUT, Array, Flags, Index, column, pick
from loadfirst.physics.ranges import require
from loadfirst.units import BAR, HOUR, G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

CHARACTERISTICS = ("equal-percentage", "linear", "quick-opening")

WATER_15C = 999.1  # [kg/m³] the water that the flow coefficient is defined with
HEAD_KV2 = BAR * HOUR**2 / (WATER_15C * G)  # head × Kv² / flow²
AS_GOOD_AS_SHUT = 10 * sqrt(HEAD_KV2) / SHUT  # [m³/h] passes at 100 m what a shut valve leaks


def inherent_flow(opening: ArrayLike, characteristic: str, rangeability: ArrayLike) -> Array:
    """Share of the full flow coefficient that a stem position gives.

    Parameters
    ----------
    opening : array_like
        Stem position, 0 = on its seat, 1 = fully open. [-]
    characteristic : str
        "equal-percentage": each step of the stem raises the flow by the same
        share of itself; "linear": by the same amount; "quick-opening": much
        at first, little later.
    rangeability : array_like, broadcast against `opening`
        Full over smallest controllable flow coefficient, above 1. [-]
        The quick-opening trim has no use for it.

    Returns
    -------
    ndarray, broadcast shape
        From 1/rangeability (quick-opening: 0) to 1. [-]

    Raises
    ------
    InputError
        For a value outside the ranges above.

    Sources
    -------
    IEC 60534-2-4 for equal percentage, R^(x-1), and linear, 1/R + (1 - 1/R) x.
    Quick-opening is not standardised: √x, the square-root trim, is common
    practice.
    """
    x, r = np.asarray(opening, dtype=float), np.asarray(rangeability, dtype=float)
    require("valve.opening", x, (x >= 0) & (x <= 1), "from 0 (shut) to 1 (open)")
    require("valve.rangeability", r, r > 1, "above 1")
    if characteristic == "equal-percentage":
        return np.asarray(r ** (x - 1))
    if characteristic == "linear":
        return np.asarray(1 / r + (1 - 1 / r) * x)
    if characteristic == "quick-opening":
        return np.asarray(np.sqrt(x) + 0 * r)
    allowed = "one of " + ", ".join(CHARACTERISTICS)
    raise InputError(
        "valve.characteristic", characteristic, allowed, rule="choice", choices=list(CHARACTERISTICS)
    )


def flow_coefficient(
    kv_open: ArrayLike,
    opening: ArrayLike,
    characteristic: str = "equal-percentage",
    rangeability: ArrayLike = 50.0,
) -> Array:
    """Flow coefficient Kv of a valve at a stem position.

    Parameters
    ----------
    kv_open : array_like
        Flow coefficient fully open, above 0. [m³/h]
    opening, characteristic, rangeability
        As `inherent_flow` takes them.

    Returns
    -------
    ndarray, broadcast shape
        Kv; exactly 0 at opening 0, because shut means shut. [m³/h]

    Raises
    ------
    InputError
        For a value outside the ranges above.
    """
    kv = np.asarray(kv_open, dtype=float)
    require("valve.kv_open", kv, kv > 0, "above 0 m³/h")
    share = inherent_flow(opening, characteristic, rangeability)
    return np.asarray(np.where(np.asarray(opening) == 0, 0.0, kv * share))


class Valves:
    """M control valves in a batch of plants, each at its flow coefficient.

    Parameters
    ----------
    kv : array_like (B or 1, M)
        Flow coefficient Kv, from 0 (shut). [m³/h]
        Less than 1.2e-5, which passes at 100 m what a shut valve leaks, is
        shut too.

    Raises
    ------
    InputError
        When made with a Kv that is negative or not a number.

    Notes
    -----
    Turbulent and not choked; a valve passes as much backward as forward.
    Cavitation is not judged here, laminar flow through the seat not at all.

    Sources
    -------
    IEC 60534-2-1, incompressible turbulent flow (N1 = 0.1 for m³/h and kPa):
    Kv passes Kv m³/h of water at 15 °C (999.1 kg/m³) for 1 bar. As a head it
    does not depend on the liquid's density.
    """

    def __init__(self, kv: ArrayLike) -> None:
        kv = column(kv)
        require("valve.kv", kv, kv >= 0, "0 m³/h or more")
        shut = kv <= AS_GOOD_AS_SHUT
        self._line = np.where(shut, SHUT, 0.0)
        self._square = np.where(shut, 0.0, HEAD_KV2 / np.where(shut, 1.0, kv) ** 2)

    @property
    def count(self) -> int:
        """How many valves one plant has (M)."""
        return int(self._line.shape[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost in the valve, and how fast it grows; see `Law`.

        Odd in the flow; a shut valve is one steep line (`SHUT`).
        """
        bent = self._square * np.abs(flow)
        return (self._line + bent) * flow, self._line + 2 * bent

    def corners(self) -> None:
        """None: open or shut, the law is smooth."""
        return None

    def shut(self, flow: Array) -> Flags:
        """Where the valve is shut, whatever the flow. (B, M)"""
        return np.broadcast_to(self._line > 0, np.broadcast_shapes(self._line.shape, flow.shape))

    def rows(self, index: Index) -> Valves:
        """The same valves of some of the plants only."""
        some = object.__new__(Valves)
        some._line, some._square = pick(self._line, index), pick(self._square, index)
        return some
