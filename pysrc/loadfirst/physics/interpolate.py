"""Smooth curves through measured points that never overshoot, many at a time.

A curve is a chain of cubics, one between two neighbouring points, that agree
in value and slope where they meet. The slopes are chosen so that the curve is
monotone wherever the points are.

Sources
-------
F. N. Fritsch and R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM
J. Numer. Anal. 17 (1980): a cubic is monotone when both end slopes have the
sign of the secant and are at most three times as steep (`limit_slopes`).
F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984): the slope at
a point as a weighted harmonic mean of its two secants (`monotone_slopes`).
Both from memory; `monotone_slopes` is compared with scipy's PchipInterpolator.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from loadfirst.physics.law import Array, Flags, Index, pick

STEEPEST = 3.0  # [-] times the secant: Fritsch and Carlson's sufficient condition


def monotone_slopes(x: Array, y: Array) -> Array:
    """Slopes of a smooth curve through points, monotone wherever the points are.

    Parameters
    ----------
    x, y : ndarray (…, K), K >= 3
        Points, `x` rising strictly along the last axis.

    Returns
    -------
    slopes : ndarray (…, K)
        dy/dx at the points: zero at a local extreme, else a weighted harmonic
        mean of the two secants; at both ends a three-point formula, limited.
    """
    step = np.diff(x)
    secant = np.diff(y) / step
    left, right = secant[..., :-1], secant[..., 1:]
    weight_left = 2 * step[..., 1:] + step[..., :-1]
    weight_right = step[..., 1:] + 2 * step[..., :-1]
    alike = left * right > 0
    divisor = np.where(alike, weight_left * right + weight_right * left, 1.0)
    slopes = np.empty_like(y)
    slopes[..., 1:-1] = np.where(alike, (weight_left + weight_right) * left * right / divisor, 0.0)
    slopes[..., 0] = _end_slope(step[..., 0], step[..., 1], secant[..., 0], secant[..., 1])
    slopes[..., -1] = _end_slope(step[..., -1], step[..., -2], secant[..., -1], secant[..., -2])
    return slopes


def _end_slope(step: Array, next_step: Array, secant: Array, next_secant: Array) -> Array:
    """Slope at an end from the last two secants: never against the first, never beyond 3 times it."""
    slope = ((2 * step + next_step) * secant - step * next_secant) / (step + next_step)
    turns = (secant * next_secant <= 0) & (np.abs(slope) > STEEPEST * np.abs(secant))
    return np.where(slope * secant <= 0, 0.0, np.where(turns, STEEPEST * secant, slope))


def limit_slopes(slopes: Array, left: Array, right: Array) -> Array:
    """The nearest slopes with which the cubics on both sides are monotone.

    Parameters
    ----------
    slopes, left, right : ndarray, same shape
        Slope at each point, and the secants on its left and right; at an end
        the one secant counts for both.
    """
    steepest = STEEPEST * np.minimum(np.abs(left), np.abs(right))
    sign = np.where(left * right > 0, np.sign(left), 0.0)
    return sign * np.clip(sign * slopes, 0.0, steepest)


class Pieces(NamedTuple):
    """Curves of Q quantities over one variable, for M elements of B plants, found with one search.

    Attributes
    ----------
    knots : ndarray (B|1, M, K)
        Where the pieces meet, rising; infinite where a curve has fewer.
    table : ndarray (rows, 1 + 4 Q)
        One row per piece: where it starts, then four coefficients per quantity.
    start : ndarray (B|1, M) of int
        Row of each curve's first piece, the one below its first knot.
    """

    knots: Array
    table: Array
    start: Index

    def find(self, x: Array) -> tuple[Array, Array]:
        """The rows in force at `x` (B, M), and how far `x` is into them."""
        piece = (x[..., None] >= self.knots).sum(axis=-1)
        row = self.table.take(self.start + piece, axis=0)
        return row, x - row[..., 0]

    def beyond(self, x: Array) -> Flags:
        """Where `x` (B, M) is past the last knot."""
        last = np.isfinite(self.knots).sum(axis=-1)
        return np.asarray((x[..., None] > self.knots).sum(axis=-1) == last)

    def rows(self, index: Index) -> Pieces:
        """The curves of some of the plants only; the table is shared."""
        start = self.start[index] if len(self.start) > 1 else self.start
        return Pieces(pick(self.knots, index), self.table, start)


def value(row: Array, into: Array, quantity: int = 0) -> Array:
    """Value of one quantity, given what `Pieces.find` returned. [unit of the quantity]"""
    at = 1 + 4 * quantity
    return row[..., at] + into * (row[..., at + 1] + into * (row[..., at + 2] + into * row[..., at + 3]))


def slope(row: Array, into: Array, quantity: int = 0) -> Array:
    """Slope of one quantity, given what `Pieces.find` returned. [unit of the quantity per unit of x]"""
    at = 1 + 4 * quantity
    return row[..., at + 1] + into * (2 * row[..., at + 2] + into * (3 * row[..., at + 3]))


def pieces(knots: Array, last: Index, values: Array, slopes: Array, below: Array, beyond: Array) -> Pieces:
    """Build curves from points, slopes and how they go on outside the points.

    Parameters
    ----------
    knots : ndarray (B, M, K)
        Rising, also where a curve has ended (those are not used).
    last : ndarray (B, M) of int
        Index of each curve's last point.
    values, slopes : ndarray (Q, B, M, K)
    below, beyond : ndarray (Q, B, M, 2)
        Slope and half the second derivative of the parabola that goes on
        below the first and beyond the last point.
    """
    plants, elements, count = knots.shape
    quantities = len(values)
    table = np.zeros((plants, elements, count + 1, 1 + 4 * quantities))
    table[..., 0, 0], table[..., 1:, 0] = knots[..., 0], knots
    step = np.diff(knots)
    plant, element = np.ogrid[:plants, :elements]
    for q in range(quantities):
        y, m, at = values[q], slopes[q], 1 + 4 * q
        secant = np.diff(y) / step
        table[..., 1:, at], table[..., 1:, at + 1] = y, m
        table[..., 1:-1, at + 2] = (3 * secant - 2 * m[..., :-1] - m[..., 1:]) / step
        table[..., 1:-1, at + 3] = (m[..., :-1] + m[..., 1:] - 2 * secant) / step**2
        table[..., 0, at], table[..., 0, at + 1 : at + 3] = y[..., 0], below[q]
        table[plant, element, last + 1, at + 1 : at + 3] = beyond[q]
        table[plant, element, last + 1, at + 3] = 0.0
    ended = np.where(np.arange(count) > last[..., None], np.inf, knots)
    start = np.arange(plants * elements, dtype=np.intp).reshape(plants, elements) * (count + 1)
    return Pieces(ended, table.reshape(-1, 1 + 4 * quantities), start)
