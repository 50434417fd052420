"""Built plants with their network's answer, and what every pump does there."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple, TypeVar

import numpy as np

from loadfirst.physics.backward import Backward
from loadfirst.physics.displacement import DisplacementMachines, DisplacementRunning
from loadfirst.physics.inertia import RigidColumns
from loadfirst.physics.law import SHUT, Array
from loadfirst.physics.liquids import Liquid
from loadfirst.physics.machine import Running
from loadfirst.physics.network import Solution
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.physics.starved import lacking, unfilled
from loadfirst.plant.air import air_pressure
from loadfirst.plant.backward import settle_filled
from loadfirst.plant.build import Built
from loadfirst.plant.drooping import States
from loadfirst.plant.in_place import Settled
from loadfirst.plant.machines import MachineLaw
from loadfirst.plant.npsh import pumps_of
from loadfirst.plant.plant import Plant
from loadfirst.plant.shares import shares
from loadfirst.units import TO_SI, G

if TYPE_CHECKING:
    from numpy.typing import NDArray

Kind = TypeVar("Kind", bound=np.generic)

MM = TO_SI["mm"]
SEEN = 1e-5
"""Least flow that is shown, of the usual flow. [-]"""


class Solved(NamedTuple):
    """B plants of one shape, balanced.

    Attributes
    ----------
    built : what was solved; a pump that pumps backward for want of liquid with what is left of its law.
    solution : flows, drops and heads, exact, leakage included.
    running : the pumps at these flows, (B, M) of each law.
    most : the flow at which the suction line boils; infinite where it does not matter, (B,). [m³/s]
    pipes : head lost in every pipe along its wall, and in its fittings, (B, M). [m]
    states : by row, of the plants with a pump whose curve droops.
    """

    built: Built
    solution: Solution
    running: Mapping[str, Running | DisplacementRunning]
    pipes: tuple[Array, Array]
    most: Array
    states: Mapping[int, States]

    def through(self, number: int) -> Array:
        """Flows through all pumps of the law that one of them, counted from 0, obeys, (B, M). [m³/s]"""
        return _through(self.built, self.solution, self.built.layout.machines[number][0])

    def of(self, row: int) -> OnePlant:
        """One of the plants."""
        return OnePlant(self, row)


def solve_plants(built: Built) -> Solved:
    """Balance the plants and run their pumps."""
    built, settled = settle_filled(built)
    solution = settled.solution
    pipes = built.network.laws["pipes"]
    assert isinstance(pipes, Pipes)
    return Solved(
        built=built,
        solution=solution,
        running={name: _running(built, settled, name) for name in built.machines},
        pipes=pipes.breakdown(_through(built, solution, "pipes")),
        most=settled.most,
        states=settled.states,
    )


def _running(built: Built, settled: Settled, name: str) -> Running | DisplacementRunning:
    """What the machines of a law do in their place."""
    law, flow = settled.laws[name], _through(built, settled.solution, name)
    lost = settled.lost[:, pumps_of(built, name)]
    running = law.running(flow)
    if not lost.any():
        return running
    if isinstance(law, Backward):
        return law.lacking(running, lost)
    if isinstance(law, DisplacementMachines):
        short = unfilled(law, flow, lost)
        pairs = zip(running, short, strict=True)
        return DisplacementRunning(*[np.where(lost > 0, less, whole) for whole, less in pairs])
    assert isinstance(running, Running)
    return lacking(running, lost)


def _through(built: Built, solution: Solution, law: str) -> Array:
    """Flows through all elements of one law, (B, M). [m³/s]"""
    return np.stack([solution.flow[spec.name] for spec in built.layout.columns[law]], axis=1)


class OnePlant:
    """One row of `Solved`, as plain numbers."""

    def __init__(self, solved: Solved, row: int) -> None:
        self.solved, self.row = solved, row
        self.built, self.layout = solved.built, solved.built.layout
        self.plant: Plant = self.built.plants[row].plant
        self.liquid: Liquid = self.built.liquids[row]
        self.flow_scale = float(self.built.flow_scale[row])
        solution = solved.solution
        self._flow, self._drop, self._head = solution.flow, solution.drop, solution.head
        self._undefined, self._shut = solution.undefined, solution.shut
        self._velocity: dict[tuple[str, float], float] = {}

    @property
    def weight(self) -> float:
        """Specific weight of the liquid, ρg. [N/m³]"""
        return self.liquid.density * G

    @property
    def states(self) -> States | None:
        """All its states, where a pump's curve droops."""
        return self.solved.states.get(self.row)

    def exact_flow(self, element: str) -> float:
        """Flow through an element, leakage included. [m³/s]"""
        return float(self._flow[element][self.row])

    def flow(self, element: str) -> float:
        """Flow through an element as it is shown: 0 below `least_flow`. [m³/s]"""
        flow = self.exact_flow(element)
        return flow if abs(flow) >= self.least_flow else 0.0

    def shut(self, element: str) -> bool:
        """Whether an element is shut, or holds against backward flow."""
        return bool(self._shut[element][self.row])

    def running(self, number: int) -> tuple[MachineLaw, Running | DisplacementRunning, int]:
        """The law of one of the pumps, counted from 0, what those of that law do, and which of them it is."""
        law, column = self.layout.machines[number]
        return self.built.machines[law], self.solved.running[law], column

    @cached_property
    def shares(self) -> tuple[float, ...]:
        """How much each pump counts in the station's own head, and its check valve in the load's.

        In line each counts in full. Side by side equal pumps count by halves;
        others, and those whose curves droop, as `shares.shares` says.
        """
        count = len(self.layout.pumps)
        if self.layout.side_by_side == 1:
            return (1.0,) * count
        if self.built.plants[self.row].alike and not self.built.droops[self.row]:
            return (1 / count,) * count
        flows = [self.flow(pump) for pump in self.layout.pumps]
        heads = [running.head[self.row, column] for _, running, column in map(self.running, range(count))]
        return tuple(shares(np.array(flows), np.array(heads)).tolist())

    @cached_property
    def not_reached(self) -> bool:
        """Whether the liquid does not get as far as the pipe's end, or as the open flange."""
        return self.shut("end") and not (self.layout.attached and self.shut("valve"))

    @cached_property
    def dry(self) -> bool:
        """Whether no liquid stands behind the pumps: the line is off, the flange not reached."""
        return self.not_reached and not self.layout.attached

    @cached_property
    def npsh_at_rest(self) -> float:
        """NPSH that the suction line leaves without flow; below 0 no liquid reaches the pumps. [m]"""
        air = air_pressure(self.plant) - self.liquid.vapour_pressure
        return self.exact_head("supply") - self.plant.pump.centre_m + air / self.weight

    @cached_property
    def suction_dry(self) -> bool:
        """Whether vapour stands at the pumps, and nothing comes back through them."""
        return self.npsh_at_rest <= 0 and self.flow("suction-line") == 0

    @property
    def mouth(self) -> float:
        """Height of the suction line's mouth. [m]"""
        plant = self.plant
        return plant.supply.bottom_m if plant.suction.mouth_m is None else plant.suction.mouth_m

    @cached_property
    def end(self) -> str:
        """The node where the liquid leaves."""
        return next(element.inlet for element in self.layout.elements if element.name == "end")

    @cached_property
    def least_flow(self) -> float:
        """Least flow that is shown: `SEEN`, or what leaks through all that is shut. [m³/s]"""
        return max(SEEN * self.flow_scale, self.leakage)

    @cached_property
    def leakage(self) -> float:
        """The most that leaks through all that is shut; 0 where nothing is. [m³/s]"""
        held = [abs(self.drop(name)) for name, shut in self._shut.items() if shut[self.row]]
        most = max(float(self.built.head_scale[self.row]), *held) if held else 0.0
        return max(2, len(held)) * most / SHUT

    def drop(self, element: str) -> float:
        """Head lost in an element. [m]"""
        return float(self._drop[element][self.row])

    @property
    def changing(self) -> bool:
        """Whether this is a moment at which flows may change, and not a plant at rest."""
        return isinstance(self.built.network.laws["pipes"], RigidColumns)

    def pipe_breakdown(self, element: str) -> tuple[float, float]:
        """Head lost in a pipe along its wall, and in its fittings. [m]"""
        friction, fittings = self.solved.pipes
        place = self.row, self.layout.column(element)
        return float(friction[place]), float(fittings[place])

    def velocity_head(self, element: str, bore_mm: float) -> float:
        """v²/2g in an element's bore; it is asked for at every place along the way. [m]"""
        place = element, bore_mm
        if place not in self._velocity:
            self._velocity[place] = float(velocity_head(self.flow(element), bore_mm * MM))
        return self._velocity[place]

    def exact_head(self, node: str) -> float:
        """Head of a node, also where it is but the solver's guess. [m]"""
        return float(self._head[node][self.row])

    def head(self, node: str) -> float | None:
        """Energy head of a node; None where nothing defines it, or where there is no liquid. [m]"""
        dry = self.not_reached and node == self.end
        return None if dry or self._undefined[node][self.row] else self.exact_head(node)

    def per_machine(self, values: NDArray[Kind]) -> NDArray[Kind]:
        """This plant's row of something that each machine has; one row may serve all plants."""
        row: NDArray[Kind] = values[self.row if len(values) > 1 else 0]
        return row

    def trapped(self, node: str) -> bool:
        """Whether only shut elements join a node to a known head."""
        return bool(self._undefined[node][self.row])

    @property
    def nodes(self) -> tuple[str, ...]:
        """Every node."""
        return tuple(self._head)
