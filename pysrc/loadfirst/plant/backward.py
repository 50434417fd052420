"""Plants with a pump that pumps backward and is given too little: its inlet is the plant's discharge side.

Such a pump takes from the load, and a check valve, a shut valve or a thin line
gives little or nothing. The pressure at its inlet then falls to the vapour
pressure and no further. In such a state the pump gives the share t of the head
that it would have, filled: t scales its law (`physics.backward`), so that the
plant with it is an ordinary network again. The less head it gives, the less it
draws, and the higher stands the pressure at its inlet; so there is one t where
the inlet just boils, or none is needed.

At rest a column that stands too high may boil there whatever the pump does;
t is then 0, and the note on vapour pressure says the rest.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from loadfirst.physics.backward import Backward
from loadfirst.physics.law import Array
from loadfirst.physics.network import Solution
from loadfirst.physics.pipe import velocity_head
from loadfirst.physics.root import rising_root
from loadfirst.plant.air import air_pressure
from loadfirst.plant.build import Built
from loadfirst.plant.in_place import Settled, settle_in_place
from loadfirst.units import TO_SI, G

MM = TO_SI["mm"]
WITHIN = 1e-10
"""How near to the vapour pressure is there, of the head scale; the answer stands that much above it. [-]"""


def settle_filled(built: Built) -> tuple[Built, Settled]:
    """The plants balanced, with the share of their head that pumps turned backward have left."""
    settled = settle_in_place(built)
    if not any(isinstance(law, Backward) for law in built.machines.values()):
        return built, settled
    filled = spare(built, settled.solution)
    rows = np.flatnonzero(settled.solution.converged & (filled < -WITHIN * built.head_scale))
    if not len(rows):
        return built, settled
    left = np.ones(len(built))
    left[rows] = _share(built.rows(rows), filled[rows])
    built = with_left(built, left)
    return built, settle_in_place(built)


def _share(some: Built, filled: Array) -> Array:
    """Share of the head that is left; `filled` is the spare head with all of it. (B,) [-]"""

    def missing(left: Array) -> Array:
        changed = with_left(some, left)
        return above - spare(changed, settle_in_place(changed).solution)

    none, above = np.zeros(len(some)), 2 * WITHIN * some.head_scale
    ends = missing(none), above - filled
    found, _ = rising_root(missing, none, none + 1, within=WITHIN * some.head_scale, ends=ends)
    return found


def with_left(built: Built, left: Array) -> Built:
    """The same plants, where pumps that pump backward have a share of their head left. (B,) [-]"""
    changed = {
        name: law.with_left(left[:, None])
        for name, law in built.machines.items()
        if isinstance(law, Backward)
    }
    return replace(
        built,
        machines={**built.machines, **changed},
        network=replace(built.network, laws={**built.network.laws, **changed}),
    )


def inlets(built: Built) -> dict[str, str]:
    """Node at which each pump that pumps backward takes its liquid in, by the pump's name."""
    elements = {element.name: element for element in built.layout.elements}
    return {
        name: elements[name].outlet
        for name, (law, _) in zip(built.layout.pumps, built.layout.machines, strict=True)
        if isinstance(built.machines[law], Backward)
    }


def spare(built: Built, solution: Solution) -> Array:
    """Head at the inlets of the pumps that pump backward above that at which liquid boils there. (B,) [m]

    The static pressure counts, with the speed of their own flow or the station's, whichever is more.
    """
    rest, square = np.array([_boils(built, row) for row in range(len(built))]).T
    through, heads = np.abs(solution.flow["suction-line"]), []
    for name, node in inlets(built).items():
        flow = np.maximum(np.abs(solution.flow[name]), through)
        heads.append(solution.head[node] - rest - square * flow**2)
    return np.asarray(np.min(heads, axis=0))


def starved(built: Built, number: int, row: int) -> bool:
    """Whether too little comes to one of the pumps, counted from 0, for what it would pump backward."""
    law, _ = built.pump(number)
    return isinstance(law, Backward) and bool(law.left[row if len(law.left) > 1 else 0, 0] < 1)


def _boils(built: Built, row: int) -> tuple[float, float]:
    """Energy head at which liquid at rest boils at the pumps' height [m], and v²/2g there over q²."""
    plant, liquid = built.plants[row].plant, built.liquids[row]
    head = plant.pump.centre_m + (liquid.vapour_pressure - air_pressure(plant)) / (liquid.density * G)
    return head, float(velocity_head(1.0, plant.discharge.bore_mm * MM))
