"""Displacement pumps on their motors: head over flow in four pieces, each solved in closed form.

The pump (`physics.displacement_pump`), as heads h = Δp/(ρ g), and the motor:

    q = L ω - s                 L = (1 - gas) D, the liquid swept per radian
    h = a s + b s |s|           slip through the clearances
    T = W h r + C μ ω + T_c     W = D ρ g; r = 1 + f where the pump gives
                                head, 1/(1 + f) where the liquid drives it
    ω = ω_i - d_i T             the motor, piece i of its torque line

so on each piece the speed falls with the head along a line, ω = n_i - k_i h,
with n_i = (ω_i - d_i T_c)/(1 + d_i C μ) and k_i = d_i W r/(1 + d_i C μ), and

    L n_i - q  =  s + L k_i h  =  (1 + L k_i a) s + L k_i b s |s|  =  A s + B s |s|.

With u = L n_i - q the slip is s = 2 u / (A + √(A² + 4 B |u|)): no iteration.

Why the head never rises with the flow, and is finite at any
------------------------------------------------------------
A >= 1 and B >= 0, so s falls as q rises; h rises with s; so h falls:
dh/dq = -(a + 2 b |s|) / √(A² + 4 B |u|), finite and never positive. The pieces
meet: their ends are heads, and both T(h, ω) and the motor's line are
continuous and monotone there, so q falls with h from one to the next as well.

The motor's line
----------------
Straight with the slip of `physics.motor` up to the breakdown torque. A real
motor that is asked for more stalls: its torque falls off while the current
climbs to several times the rated, and it stands or crawls until something
trips it (`physics.breakdown` has that line, with more than one answer). Here
the torque stays at the breakdown torque and grows by a fiftieth from there to
standstill, so that there is one answer, and the pressure of a stalled pump is
rather over- than understated. The same where the liquid drives the pump: the
motor brakes up to its breakdown torque, then it is run away with. So a pump
forced backwards turns back against that torque; its friction is then left as
it was (our choice).

A belt that slips (`physics.belt`) holds its torque likewise: it ends the
running part before the motor does, and slips in its stead.

Where bearings alone ask more than the motor has, the shaft stands still: dry
friction takes what there is, and no more.

Sources
-------
Slip and torque of the pump: `physics.displacement_pump`. Breakdown torque:
`physics.breakdown`. r for a driven pump: the same share of the torque is lost
either way (our choice).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from loadfirst.physics import drive
from loadfirst.physics.belt import Drives
from loadfirst.physics.breakdown import breakdown_torque
from loadfirst.physics.displacement_pump import DisplacementPump
from loadfirst.physics.law import SHUT, Array, Index, pick
from loadfirst.units import G

PIECES = 4
STALLING = 0.02  # [-] part of the breakdown torque gained from there to standstill


@dataclass(frozen=True, slots=True)
class Pumps:
    """Numbers of pumps side by side, each (B|1, M); as in `DisplacementPump`."""

    per_radian: Array
    laminar: Array
    inertia: Array
    friction: Array
    drag: Array
    bearings: Array
    speed: Array
    npsh_required: Array
    pressure_limit: Array
    rated_flow: Array

    def rows(self, index: Index) -> Pumps:
        """The pumps of some of the plants only."""
        return Pumps(**{name: pick(getattr(self, name), index) for name in self.__slots__})


@dataclass(frozen=True, slots=True)
class Curves:
    """The four pieces of B plants' M machines.

    Attributes
    ----------
    knots : ndarray (3, B|1, M)
        Flows where the pieces meet, rising: stall, no head, run away with
        (the first two change places where the motor stalls before there is
        any head). [m³/s]
    table : ndarray (rows, 6)
        Of each piece: L n, L k, A, B, a, b. [m³/s] [m²/s] [-] [s/m³] [s/m²] [s²/m⁵]
    start : ndarray (B|1, M) of int
        Row of each machine's first piece, the one of the least flow.
    torque_per_head : ndarray (B|1, M)
        W. [N·m per m]
    drag : ndarray (B|1, M)
        C μ. [N·m·s]
    bearings : ndarray (B|1, M)
        T_c, not more than the motor holds at standstill. [N·m]
    stall : ndarray (B|1, M)
        Flow below which the motor is past its breakdown torque. [m³/s]
    free_flow : ndarray (B|1, M)
        Flow against no head. [m³/s]
    """

    knots: Array
    table: Array
    start: Index
    torque_per_head: Array
    drag: Array
    bearings: Array
    stall: Array
    free_flow: Array

    def rows(self, index: Index) -> Curves:
        """The pieces of some of the plants only; the table is shared."""
        return Curves(
            knots=self.knots[:, index] if self.knots.shape[1] > 1 else self.knots,
            table=self.table,
            start=self.start[index] if len(self.start) > 1 else self.start,
            **{name: pick(getattr(self, name), index) for name in self.__slots__[3:]},
        )


def stack(rows: Sequence[Sequence[DisplacementPump]]) -> Pumps:
    """Rows of pumps as arrays; a single row when all plants have the same pumps."""
    if all(a is b for row in rows for a, b in zip(row, rows[0], strict=True)):
        rows = rows[:1]
    table = {name: [[getattr(pump, name) for pump in row] for row in rows] for name in Pumps.__slots__}
    return Pumps(**{name: np.array(numbers, dtype=float) for name, numbers in table.items()})


def curves(
    pumps: Pumps, motor: Drives, density: Array, viscosity: Array, clearance: Array, gas: Array
) -> Curves:
    """The pieces of pumps on their motors with a liquid; parameters as of `DisplacementMachines.build`.

    A gap `clearance` times as high passes its cube more by friction and its
    square more by speed. No pump is tighter than a shut valve (`SHUT`).
    """
    a = np.minimum(pumps.laminar * viscosity / (clearance**3 * density * G), SHUT)
    b = pumps.inertia / (clearance**2 * G)
    swept, weight, drag = (1 - gas) * pumps.per_radian, pumps.per_radian * density * G, pumps.drag * viscosity
    origins, droops, most, held = _torque_lines(motor)
    bearings = np.minimum(pumps.bearings, held)
    push, brake = 1 + pumps.friction, 1 / (1 + pumps.friction)
    spare = most - bearings - drag * motor.speed(most)
    away = (-most - bearings - drag * motor.speed(-most)) / (weight * brake)
    weak = spare <= 0
    stall = spare / (weight * np.where(weak, brake, push))

    def four(*pieces: Array) -> Array:
        return np.stack(np.broadcast_arrays(*pieces, swept + weight + a)[:PIECES])

    origin = four(origins[0], np.where(weak, *origins[:2]), origins[1], origins[2])
    droop = four(droops[0], np.where(weak, *droops), droops[1], droops[0])
    share = four(push, np.where(weak, brake, push), brake, brake)
    free = swept * (origin - droop * bearings) / (1 + droop * drag)
    loss = swept * droop * weight * share / (1 + droop * drag)
    ends = np.stack(np.broadcast_arrays(np.maximum(stall, 0.0), np.minimum(stall, 0.0), away))
    knots = free[:-1] - loss[:-1] * ends - slip(ends, a, b)
    parts = np.broadcast_arrays(free, loss, 1 + loss * a, loss * b, a, b)
    table = np.moveaxis(np.stack(parts, axis=-1), 0, -2)
    shape = table.shape[:2]
    return Curves(
        knots=knots,
        table=table.reshape(-1, 6),
        start=np.arange(0, table[..., 0].size, PIECES, dtype=np.intp).reshape(shape),
        torque_per_head=weight,
        drag=drag,
        bearings=bearings,
        stall=np.where(weak, knots[1], knots[0]),
        free_flow=np.where(weak, knots[0], knots[1]),
    )


def slip(head: Array, a: Array, b: Array) -> Array:
    """The slip s of h = a s + b s |s|, a above 0. [m], [s/m²], [s²/m⁵] -> [m³/s]"""
    return np.asarray(2 * head / (a + np.sqrt(a**2 + 4 * b * np.abs(head))))


def _torque_lines(motor: Drives) -> tuple[tuple[Array, Array, Array], tuple[Array, Array], Array, Array]:
    """The motor's line in three parts: stalled, running, run away with.

    Returns
    -------
    origins : speed where each part, drawn on, meets no torque. [rad/s]
    droops : speed lost per torque, stalled (or run away with) and running. [rad/s per N·m]
    most : breakdown torque, or what a belt holds if that is less. [N·m]
    held : torque at standstill. [N·m]
    """
    most, droop = np.minimum(breakdown_torque(motor), motor.grip), motor.droop
    field = drive.synchronous_speed(motor.supply_frequency, motor.poles)
    steep = droop + field / (STALLING * most)
    at_most = motor.speed(most)
    held = np.where(at_most >= 0, most + at_most / steep, motor.synchronous_speed / np.maximum(droop, 1e-300))
    origins = at_most + steep * most, motor.synchronous_speed, motor.speed(-most) - steep * most
    return origins, (steep, droop), most, held
