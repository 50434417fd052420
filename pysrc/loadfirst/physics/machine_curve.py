"""The maker's points of a pump, moved to the speeds that its motor holds there.

The maker's points hold at the test's speed ω0: head H0(φ), torque T0(φ) and
required NPSH N0(φ) over the flow φ. At speed ω = x ω0, with a liquid r times
as dense, the affinity laws move each point:

    flow x φ,   head x² H0,   torque r x² T0,   required NPSH x² N0.

The motor answers that torque with the speed ω = ωs - d T (`physics.motor`), so
x = a - c x² with a = ωs / ω0 and c(φ) = d r T0 / ω0, which has one positive root

    x = 2 a / (1 + √(1 + 4 a c)).

So the speed at each point is known without search, and so are the slopes there:

    dx/dφ = -c' x² / (1 + 2 c x),        dq/dφ = x + φ dx/dφ,
    dH/dq = (x² H0' + 2 x x' H0) / (dq/dφ), and likewise the others.

The machine's own curve is the chain of cubics with these values and slopes at
the moved points: exact at the points, and exact everywhere when the speed does
not depend on the load (a cubic scales to a cubic). Between points of a pump on
its usual motor it differs from the implicit equation by less than 1e-5 of the
shut-off head (tested); nothing has to be inverted while a plant is solved.

Why the head never rises with flow, whatever the curve and the motor
--------------------------------------------------------------------
1. The moved points fall where the maker's do. From one point to the next φ grows and H0 does not
   rise; so with x unchanged the flow would grow and the head not rise. There is
   always room for x to change: up to x₋ √(H0₋/H0) before the head rises, down
   to x₋ φ₋/φ before the flow falls back. A power that leaps or drops on a weak
   motor can leave this room; then x is held at its edge (a tenth of the step
   in flow is always kept), the torque there is what the motor has at that
   speed, and `limited` says so. No pump on a motor of its size comes near it.
   Where the maker's own heads rise (a curve that droops towards no flow, or has
   a saddle) nothing is held but the flow: `droops` says so, and `plant.drooping`
   then looks for all states.
2. Between the points Fritsch and Carlson's limit on the slopes keeps every
   cubic monotone (`interpolate.limit_slopes`).
3. Outside the points a parabola goes on with the slope it meets, steeper and
   steeper: ± H(0) (q - q_end)² / q_last² (our choice), so a pump forced
   backwards or far out becomes a resistance. H(0) stands for the highest of the
   points; a slope that rises is not gone on with.

A belt that slips (`physics.belt`) holds the torque: there x = √(T_grip / (r T0))
where that is less, with dx/dφ = -x T0' / (2 T0). The speed then does not follow
from the torque alone: what it is lower by is a fourth curve through the same points.

The power is constant for reversed flow and goes on along a straight line, not
falling, beyond the last point; so does the required NPSH.

Sources
-------
Affinity laws: HI Engineering Data Book, part 1.B (read in part); ISO 9906 for
NPSH as the square of the speed (from memory). Efficiency is taken as unchanged.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from loadfirst.physics.belt import Belted, Drives
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.interpolate import STEEPEST, Pieces, limit_slopes, pieces
from loadfirst.physics.law import Array, Flags, Index
from loadfirst.units import G

HEAD, TORQUE, NPSH, SLOWER = 0, 1, 2, 3
LEAST_STEP = 0.1  # [-] part of a step in flow that slip can never take away
EDGE = 1 - 1e-9  # [-] keeps a held point falling, rounding included


class Points(NamedTuple):
    """Pump curves side by side; one with fewer points is filled up behind its last.

    Attributes
    ----------
    flow : ndarray (B|1, M, K) [m³/s]
    values, slopes : ndarray (3, B|1, M, K)
        Head [m], torque [N·m] and required NPSH [m] at the test's speed, and
        their slopes over flow.
    last : ndarray (B|1, M) of int
        Index of the last point.
    speed, density : ndarray (B|1, M)
        Of the test. [rad/s] [kg/m³]
    best_flow, best_torque : ndarray (B|1, M)
        At best efficiency. [m³/s] [N·m]
    """

    flow: Array
    values: Array
    slopes: Array
    last: Index
    speed: Array
    density: Array
    best_flow: Array
    best_torque: Array


class Moved(NamedTuple):
    """Curves at the speeds that the motors hold; each field as in `machine.Machines`."""

    curves: Pieces
    shut_off_head: Array
    peak_head: Array
    last_flow: Array
    best_efficiency_flow: Array
    limited: Flags
    droops: Flags
    steepest: Array


def stack(rows: Sequence[Sequence[PumpCurve]]) -> Points:
    """Rows of pumps as arrays; a single row when all plants have the same pumps."""
    if all(a is b for row in rows for a, b in zip(row, rows[0], strict=True)):
        rows = rows[:1]
    shape = len(rows), len(rows[0])
    longest = max(len(pump.flow) for row in rows for pump in row)
    flow, last = np.empty((*shape, longest)), np.empty(shape, dtype=np.intp)
    values, slopes = np.empty((3, *flow.shape)), np.zeros((3, *flow.shape))
    speed, density, best_flow, best_torque = np.empty((4, *shape))
    for at in np.ndindex(shape):
        pump = rows[at[0]][at[1]]
        k = len(pump.flow)
        flow[at] = np.append(pump.flow, pump.last_flow * (1 + np.arange(1, longest - k + 1)))
        points = np.stack([pump.head, pump.power / pump.speed, pump.npsh_required])
        values[:, *at, :k], values[:, *at, k:] = points, points[:, -1:]
        slopes[:, *at, :k] = pump.slopes / np.array([[1.0], [pump.speed], [1.0]])
        last[at], speed[at], density[at] = k - 1, pump.speed, pump.density
        best_flow[at] = pump.best_efficiency_flow
        hydraulic = pump.density * G * pump.best_efficiency_flow * pump.best_efficiency_head
        best_torque[at] = hydraulic / pump.best_efficiency / pump.speed
    return Points(flow, values, slopes, last, speed, density, best_flow, best_torque)


def move(points: Points, motor: Drives, density: Array) -> Moved:
    """The curves of pumps on their motors, with a liquid of this density.

    Parameters
    ----------
    points : Points (B|1, M)
    motor : Motor or Belted (B|1, M|1)
    density : ndarray (B|1, M|1) [kg/m³]
    """
    no_load = motor.synchronous_speed / points.speed
    heavier = density / points.density
    weakness = motor.droop * heavier / points.speed  # c = weakness T0
    asked = heavier[..., None] * points.values[TORQUE]
    held_by_motor = _speed_ratio(no_load[..., None], weakness[..., None] * points.values[TORQUE])
    most = np.sqrt(motor.grip[..., None] / asked)
    slipping = most < held_by_motor
    free = np.where(slipping, most, held_by_motor)
    ratio = _hold(free, points)
    flow, values, slopes = _affine(points, ratio, weakness[..., None], heavier[..., None], slipping)
    held = ratio != free
    if held.any():
        spare = (no_load[..., None] - ratio) * points.speed[..., None]
        spare = np.minimum(spare / np.maximum(motor.droop[..., None], 1e-300), motor.grip[..., None])
        values[TORQUE] = np.where(held, spare, values[TORQUE])
    if isinstance(motor, Belted):
        speed = motor.synchronous_speed[..., None] - motor.droop[..., None] * values[TORQUE]
        slower = np.where(slipping, np.maximum(speed - ratio * points.speed[..., None], 0.0), 0.0)
        values, slopes = _with_slower(slower, flow, values, slopes)
    last = np.broadcast_to(points.last, flow.shape[:2])
    slopes = _limit(flow, values, slopes, last)
    last_flow = _at(flow, last)
    below, beyond = _ends(values, slopes, last, last_flow)
    best = _speed_ratio(no_load, weakness * points.best_torque)
    gripped = np.sqrt(motor.grip / (heavier * points.best_torque))
    # none behind the last point, which is repeated there
    rise = np.maximum(np.diff(values[HEAD]) / np.diff(flow), 0.0)
    return Moved(
        curves=pieces(flow, last, values, slopes, below, beyond),
        shut_off_head=values[HEAD][..., 0],
        peak_head=values[HEAD].max(axis=-1),
        last_flow=last_flow,
        best_efficiency_flow=points.best_flow * np.minimum(best, gripped),
        limited=held.any(axis=-1),
        droops=rise.any(axis=-1),
        steepest=STEEPEST * rise.max(axis=-1),
    )


def _speed_ratio(a: Array, c: Array) -> Array:
    """The positive root of x = a - c x². [-]"""
    return np.asarray(2 * a / (1 + np.sqrt(1 + 4 * a * c)))


def _hold(free: Array, points: Points) -> Array:
    """Speed ratios at the points, held where flow would fall back or head would rise. (B, M, K)"""
    flow, head = points.flow, points.values[HEAD]
    growing = np.diff(free * flow) >= LEAST_STEP * free[..., :-1] * np.diff(flow)
    rises = np.diff(head) > 0
    fine = (growing & (rises | (np.diff(free**2 * head) <= 0))).all(axis=-1, keepdims=True)
    if fine.all():
        return free
    held = free.copy()
    for k in range(1, free.shape[-1]):
        before = held[..., k - 1]
        step = flow[..., k] - flow[..., k - 1]
        least = before * (flow[..., k - 1] + LEAST_STEP * step) / flow[..., k]
        positive = np.where(head[..., k] > 0, head[..., k], 1.0)
        level = before * np.sqrt(head[..., k - 1] / positive) * EDGE
        most = np.where((head[..., k] > 0) & ~rises[..., k - 1], level, np.inf)
        held[..., k] = np.clip(free[..., k], least, most)
    return np.where(fine, free, held)  # so that a batch equals its plants one by one


def _affine(
    points: Points, x: Array, weakness: Array, heavier: Array, slipping: Flags
) -> tuple[Array, Array, Array]:
    """Flow, (3, …) values and (3, …) slopes over flow at the speed ratios `x`."""
    c, dc = weakness * points.values[TORQUE], weakness * points.slopes[TORQUE]
    dx = -dc * x**2 / (1 + 2 * c * x)
    if slipping.any():
        dx = np.where(slipping, -x * points.slopes[TORQUE] / (2 * points.values[TORQUE]), dx)
    stretch = np.maximum(x + points.flow * dx, LEAST_STEP * x)
    values = x**2 * points.values
    slopes = (x**2 * points.slopes + 2 * x * dx * points.values) / stretch
    values[TORQUE] *= heavier
    slopes[TORQUE] *= heavier
    return x * points.flow, values, slopes


def _with_slower(slower: Array, flow: Array, values: Array, slopes: Array) -> tuple[Array, Array]:
    """The speed lost by slipping as a fourth curve, its slopes those of its chords."""
    chord = np.diff(slower) / np.diff(flow)
    chord = np.concatenate([chord, chord[..., -1:]], axis=-1)
    return np.concatenate([values, slower[None]]), np.concatenate([slopes, chord[None]])


def _limit(flow: Array, values: Array, slopes: Array, last: Index) -> Array:
    """Slopes held to what keeps each cubic monotone; what is behind the last point does not count."""
    secant = np.diff(values) / np.diff(flow)
    left = np.concatenate([secant[..., :1], secant], axis=-1)
    right = np.concatenate([secant, secant[..., -1:]], axis=-1)
    ends = np.arange(flow.shape[-1]) == last[..., None]
    return limit_slopes(slopes, left, np.where(ends, left, right))


def _ends(values: Array, slopes: Array, last: Index, last_flow: Array) -> tuple[Array, Array]:
    """Slope and half second derivative below no flow and beyond the last point: (3, B, M, 2) each."""
    below, beyond = np.zeros((2, len(values), *last.shape, 2))
    bend = values[HEAD].max(axis=-1) / last_flow**2
    below[HEAD, ..., 0], below[HEAD, ..., 1] = np.minimum(slopes[HEAD][..., 0], 0.0), bend
    for quantity in (HEAD, TORQUE, NPSH):  # a belt slips on as at the last point
        beyond[quantity, ..., 0] = _at(slopes[quantity], last)
    beyond[HEAD, ..., 0] = np.minimum(beyond[HEAD, ..., 0], 0.0)
    beyond[TORQUE : NPSH + 1, ..., 0] = np.maximum(beyond[TORQUE : NPSH + 1, ..., 0], 0.0)
    beyond[HEAD, ..., 1] = -bend
    return below, beyond


def _at(values: Array, last: Index) -> Array:
    """The value at each curve's last point. (B, M, K) -> (B, M)"""
    return np.take_along_axis(values, last[..., None], axis=-1)[..., 0]
