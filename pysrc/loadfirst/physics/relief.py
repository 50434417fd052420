"""A relief valve: shut up to its set pressure, open above it.

Three parts, over the flow: on its seat one steep line (`SHUT`) up to the set
head; then the spring gives way in proportion, until the valve is fully open at
its capacity; from there it is an orifice, and the head goes with the square of
the flow. So the head rises at every flow, and at the joints the line gets
steeper or flatter but never falls:

    seat     h = SHUT q                                  to h_set
    lifting  h = h_set + (h_full - h_set) (q - q_seat)/(capacity - q_seat)
    open     h = h_full (q / capacity)²

with h_full = (1 + accumulation) h_set. A seat that passes lets a share of the
capacity through before the valve lifts, as an orifice, both ways.

A spring valve closes a little below the pressure at which it opened
(blowdown). That is left out: the law has one answer, and the difference, a few
per cent, is for the clock to add.

Sources
-------
Set pressure, accumulation and rated capacity as in ISO 4126-1 and API 520
(terms from memory; 10 % accumulation usual, 25 % for liquid in older practice);
lift in proportion to the overpressure, and back to the supply: common practice
for the relief valves of displacement pumps.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import SHUT, Array, Flags, Index, column, pick
from loadfirst.physics.ranges import require
from loadfirst.units import G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

TIGHT = 10.0  # [-] a seat that passes less than this many times what shut leaks at the set head is shut


class ReliefValves:
    """M relief valves in a batch of plants, from the pump's outlet back to the supply.

    Parameters
    ----------
    set_pressure : array_like (B or 1, M)
        Pressure *difference* over the valve at which it begins to lift, above 0. [Pa]
    capacity : array_like (B or 1, M)
        Flow of the liquid pumped, fully open at the set pressure and its
        accumulation, above 0. [m³/s]
    density : array_like (B or 1, M or 1)
        Of the liquid, above 0. [kg/m³]
    accumulation : array_like (B or 1, M)
        Rise of pressure from lifting to fully open, of the set pressure, from
        0.01 to 1. [-]
    leak : array_like (B or 1, M)
        Share of the capacity that the seat passes at the set pressure, from 0
        (tight) and below 1. [-]
    blocked : array_like of bool (B or 1, M)
        Gagged, seized or shut off: it never opens, and passes nothing.

    Raises
    ------
    InputError
        When made with a value outside the ranges above.
    """

    def __init__(
        self,
        set_pressure: ArrayLike,
        capacity: ArrayLike,
        density: ArrayLike,
        *,
        accumulation: ArrayLike = 0.1,
        leak: ArrayLike = 0.0,
        blocked: ArrayLike = False,
    ) -> None:
        set_pressure, capacity, density = map(column, (set_pressure, capacity, density))
        accumulation, leak = column(accumulation), column(leak)
        require("relief.set_pressure", set_pressure, set_pressure > 0, "above 0 Pa")
        require("relief.capacity", capacity, capacity > 0, "above 0 m³/s")
        require("relief.density", density, density > 0, "above 0 kg/m³")
        usual = (accumulation >= 0.01) & (accumulation <= 1)
        require("relief.accumulation", accumulation, usual, "from 0.01 to 1")
        require("relief.leak", leak, (leak >= 0) & (leak < 1), "0 or more and below 1")
        head = set_pressure / (density * G)
        shut_leak = head / SHUT
        roomy = capacity > 2 * shut_leak
        require("relief.capacity", capacity, roomy, "more than a shut valve leaks")
        tight = leak * capacity <= TIGHT * shut_leak
        seat = np.where(tight, shut_leak, leak * capacity)
        heads = head, (1 + accumulation) * head, capacity, seat
        self._set, self._full, self._capacity, self._seat = np.broadcast_arrays(*heads)
        self._tight = np.broadcast_to(tight, self._set.shape)
        self._blocked = np.atleast_2d(np.asarray(blocked, dtype=bool))

    @property
    def count(self) -> int:
        """How many relief valves one plant has (M)."""
        return int(np.broadcast_shapes(self._set.shape, self._blocked.shape)[1])

    @property
    def set_head(self) -> Array:
        """Head over the valve at which it begins to lift. (B or 1, M) [m]"""
        return self._set

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost in the valve, and how fast it grows; see `Law`."""
        rise = (self._full - self._set) / (self._capacity - self._seat)
        bend = self._full / self._capacity**2
        leaky = self._set / self._seat**2 * np.abs(flow)
        on_seat, lifting = flow <= self._seat, flow <= self._capacity
        line = self._blocked | (on_seat & self._tight)
        drop = np.where(
            on_seat,
            leaky * flow,
            np.where(lifting, self._set + rise * (flow - self._seat), bend * flow * flow),
        )
        slope = np.where(on_seat, 2 * leaky, np.where(lifting, rise, 2 * bend * flow))
        return np.where(line, SHUT * flow, drop), np.where(line, SHUT, slope)

    def corners(self) -> Array:
        """Where it lifts off its seat; NaN for one that is blocked. (B or 1, M) [m³/s]"""
        return np.where(self._blocked, np.nan, self._seat)

    def shut(self, flow: Array) -> Flags:
        """Where it is blocked, or tight and on its seat, whichever way it is pushed. (B, M)"""
        return self._blocked | (self._tight & (flow < self._seat))

    def rows(self, index: Index) -> ReliefValves:
        """The same relief valves of some of the plants only."""
        some = object.__new__(ReliefValves)
        for name, values in vars(self).items():
            setattr(some, name, pick(values, index))
        return some
