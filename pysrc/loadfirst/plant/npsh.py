"""What NPSH each pump has at a flow of the suction line, and the laws that the pumps obey with it.

Everything that is drawn comes through the one suction line; what goes back to
the supply goes back to the vessel. So at a flow of that line the NPSH is known
at every pump, before anything is solved: side by side all have the line's, in
line the second has that and the head of the first in its place, less what the
check valve between takes. One that holds takes nothing off and adds nothing: what
is locked in behind it is pressure that nobody knows, and no pump lives on it.

None of these ever rises with that flow: the line's loss grows, the first pump's
head in its place falls (`physics.cavitation`), the check valve's drop grows.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import NamedTuple

import numpy as np

from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.law import Array, Flags, Law
from loadfirst.physics.machine import Machines
from loadfirst.physics.starved import PLENTY, DryDisplacement, StarvedMachines
from loadfirst.plant.build import Built
from loadfirst.plant.machines import MachineLaw


class InPlace(NamedTuple):
    """The pumps of B plants, each with the NPSH that it has.

    Attributes
    ----------
    available : NPSH at each pump's inlet, `starved.PLENTY` where it does not matter. (B, P) [m]
    laws : of the machines, by name.
    """

    available: Array
    laws: Mapping[str, MachineLaw]


def in_place(built: Built, flow: Array) -> InPlace:
    """The machines with the NPSH that goes with a flow of the suction line.

    Parameters
    ----------
    built : of B plants, or of one for all flows.
    flow : (B,) [m³/s]
    """
    first, dry = built.suction.available(flow[:, None])[0], built.suction.at_rest[:, 0] <= 0
    available = np.repeat(first, len(built.layout.pumps), axis=1)
    if built.layout.in_line > 1:
        available[:, 1] = PLENTY
        available[:, 1] = first[:, 0] + behind_first(built, with_npsh(built, available, dry), flow)
    return InPlace(available, with_npsh(built, available, dry))


def with_npsh(built: Built, available: Array, dry: Flags) -> dict[str, MachineLaw]:
    """The laws of the machines in their place.

    Parameters
    ----------
    available : NPSH at each pump, (B, P). [m]
    dry : where the liquid does not even reach the pumps at rest: displacement pumps push nothing then, (B,).
    """
    laws: dict[str, MachineLaw] = {}
    for name, law in built.machines.items():
        laws[name] = law
        if isinstance(law, Machines):
            laws[name] = StarvedMachines.of(law, available[:, pumps_of(built, name)])
        elif isinstance(law, DisplacementMachines) and dry.any():
            laws[name] = DryDisplacement.of(law, dry[:, None])
    return laws


def dry_heads(built: Built) -> Array:
    """What dry displacement pumps do not give: all that they would at no flow, (B, P). [m]"""
    lost = np.zeros((len(built), len(built.layout.pumps)))
    for name, law in built.machines.items():
        if isinstance(law, DisplacementMachines):
            lost[:, pumps_of(built, name)] = DryDisplacement.of(law, built.suction.at_rest <= 0).lost
    return lost


def behind_first(built: Built, laws: Mapping[str, MachineLaw], flow: Array) -> Array:
    """What the first of two pumps in line and its check valve add at a flow, (B,). [m³/s] -> [m]"""
    law, check = built.network.laws["checks"], built.layout.column(built.layout.checks[0])
    holds = law.shut(np.repeat(flow[:, None], law.count, axis=1))[:, check]
    return own_head(built, laws, 0, flow) - np.where(holds, 0.0, _drop(law, check, flow))


def own_head(built: Built, laws: Mapping[str, MachineLaw], number: int, flow: Array) -> Array:
    """Head of one of the pumps at a flow through it, (B,). [m³/s] -> [m]"""
    name, column = built.layout.machines[number]
    return -_drop(laws[name], column, flow)


def equipped(built: Built, laws: Mapping[str, MachineLaw]) -> Built:
    """The plants with these laws for their machines."""
    network = replace(built.network, laws={**built.network.laws, **laws})
    return replace(built, machines=dict(laws), network=network)


def _drop(law: Law, column: int, flow: Array) -> Array:
    """Head lost in one element of a law at a flow, (B,). [m]"""
    drop: Array = law.head_drop(np.repeat(flow[:, None], law.count, axis=1))[0]
    return drop[:, column]


def pumps_of(built: Built, law: str) -> list[int]:
    """Numbers of the pumps that obey a law, in the order of its columns."""
    return [number for number, (name, _) in enumerate(built.layout.machines) if name == law]
