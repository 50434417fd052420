"""From plants as people write them to a network in SI, many plants of one shape at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache, reduce

import numpy as np

from loadfirst.physics.law import Array, Flags, Index, Law
from loadfirst.physics.liquids import Liquid, water
from loadfirst.physics.machine import Machines
from loadfirst.physics.network import Network
from loadfirst.physics.pipe import Pipes
from loadfirst.physics.suction import Suction, npsh_at_rest
from loadfirst.plant.air import air_pressure
from loadfirst.plant.elements.section import Given
from loadfirst.plant.laws import LAWS
from loadfirst.plant.layout import Layout, layout, shape_of
from loadfirst.plant.machines import MachineLaw, machines
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.services import Service, services
from loadfirst.units import BAR, TO_SI

__all__ = ["Built", "ResolvedPlant", "build", "liquid_of"]

MM, MPAS = TO_SI["mm"], TO_SI["mpas"]
Numbers = tuple[tuple[tuple[float, ...], ...], ...]
LEAST_HEAD = 1e-9  # [m] keeps the head scale above 0


@dataclass(frozen=True, eq=False)
class Built:
    """B plants of one shape, in SI.

    Attributes
    ----------
    plants : as they were given, each with its pumps' numbers.
    layout : which elements stand where.
    network : with all laws, the machines' too.
    machines : the laws of the pumps alone, by name.
    services : what each pump is put to, of each plant.
    liquids : what each plant pumps.
    head_scale : usual head of the station, and how far apart the known heads are, together. (B,) [m]
        Of a centrifugal pump its highest, of a displacement pump that at its casing's limit.
    flow_scale : usual flow, of all pumps side by side. (B,) [m³/s]
    """

    plants: tuple[ResolvedPlant, ...]
    layout: Layout
    network: Network
    machines: Mapping[str, MachineLaw]
    services: tuple[tuple[Service, ...], ...]
    liquids: tuple[Liquid, ...]
    head_scale: Array
    flow_scale: Array

    def __len__(self) -> int:
        return len(self.plants)

    @cached_property
    def droops(self) -> Flags:
        """Which plants have a pump whose head rises with the flow somewhere, (B,)."""
        laws = [law.droops.any(axis=1) for law in self.machines.values() if isinstance(law, Machines)]
        return np.broadcast_to(np.any(np.broadcast_arrays(*laws), axis=0) if laws else False, len(self))

    @cached_property
    def suction(self) -> Suction:
        """The suction lines, (B, 1)."""
        pipes = self.network.laws["pipes"]
        assert isinstance(pipes, Pipes)
        pairs = list(zip((one.plant for one in self.plants), self.liquids, strict=True))
        rest = [
            npsh_at_rest(
                plant.supply.gas_bar * BAR + air_pressure(plant),
                liquid.vapour_pressure,
                liquid.density,
                plant.supply.surface_m - plant.pump.centre_m,
            )
            for plant, liquid in pairs
        ]
        bore = [[plant.suction.bore_mm * MM] for plant, _ in pairs]
        return Suction(np.array(rest)[:, None], pipes.one(self.layout.column("suction-line")), np.array(bore))

    def rows(self, index: Index) -> Built:
        """Some of the plants only, in this order; a plant may come more than once."""
        machines = {name: law.rows(index) for name, law in self.machines.items()}
        network = self.network.rows(index)
        return Built(
            plants=tuple(self.plants[row] for row in index),
            layout=self.layout,
            network=replace(network, laws={**network.laws, **machines}),
            machines=machines,
            services=tuple(self.services[row] for row in index),
            liquids=tuple(self.liquids[row] for row in index),
            head_scale=self.head_scale[index],
            flow_scale=self.flow_scale[index],
        )

    def pump(self, number: int) -> tuple[MachineLaw, int]:
        """The law of one of the pumps, counted from 0, and its column there."""
        law, column = self.layout.machines[number]
        return self.machines[law], column


def build(plants: Sequence[ResolvedPlant]) -> Built:
    """Build the network of plants of one shape.

    Parameters
    ----------
    plants : at least one; all of one `layout.shape_of`.
        Checked plants: every value in its range, see `plant.checks`.

    Raises
    ------
    ValueError
        When the shapes differ (a fault of the caller).
    """
    shapes = {shape_of(one) for one in plants}
    if len(shapes) != 1:
        raise ValueError(f"plants of {len(shapes)} shapes cannot be built together")
    shape = layout(shapes.pop())
    given = [Given(one.plant, liquid_of(one.plant)) for one in plants]
    rows = tuple([services(one, each.liquid) for one, each in zip(plants, given, strict=True)])
    made = _machines(shape, rows)
    fixed = {known.node: np.array([known.head(each) for each in given]) for known in shape.fixed}
    static = np.ptp(list(fixed.values()), axis=0)
    head, flow = _usual(shape, made)
    return Built(
        plants=tuple(plants),
        layout=shape,
        network=Network(shape.elements, _laws(shape, given, made), fixed),
        machines=made,
        services=rows,
        liquids=tuple(each.liquid for each in given),
        head_scale=head + static + LEAST_HEAD,
        flow_scale=np.broadcast_to(flow, len(plants)),
    )


def _machines(shape: Layout, rows: Sequence[tuple[Service, ...]]) -> dict[str, MachineLaw]:
    """The laws of the pumps, each with those that obey it."""
    places: dict[str, list[int]] = {}
    for number, (law, _) in enumerate(shape.machines):
        places.setdefault(law, []).append(number)
    return {law: machines([tuple([row[k] for k in at]) for row in rows]) for law, at in places.items()}


def _usual(shape: Layout, made: Mapping[str, MachineLaw]) -> tuple[Array, Array]:
    """Usual head and flow of the station: in line heads add up, side by side flows do. (B|1,) [m] [m³/s]"""
    heads, flows = [], []
    for name, column in shape.machines:
        law = made[name]
        head = law.peak_head if isinstance(law, Machines) else law.limit_head
        heads.append(head[:, column])
        flows.append(law.best_efficiency_flow[:, column])
    together, most = np.add, np.maximum
    return (
        reduce(together if shape.in_line > 1 else most, heads),
        reduce(together if shape.side_by_side > 1 else most, flows),
    )


def _laws(shape: Layout, given: Sequence[Given], made: Mapping[str, MachineLaw]) -> dict[str, Law]:
    """Each law with the numbers of all its elements in all plants."""
    laws: dict[str, Law] = {}
    for name, kind in LAWS.items():
        if specs := shape.columns.get(name):
            rows = tuple([tuple([spec.values(each) for spec in specs]) for each in given])
            laws[name] = _law(name, rows) if len(rows) == 1 else kind.make(*_columns(rows))
    return {"pipes": laws["pipes"], **made, **laws}


@lru_cache(maxsize=64)
def _law(name: str, rows: Numbers) -> Law:
    """The elements of one plant are asked for again and again while one of them is turned, or time runs."""
    return LAWS[name].make(*_columns(rows))


def _columns(rows: Numbers) -> Array:
    """One array (B, M) per parameter."""
    return np.array(rows, dtype=float).transpose(2, 0, 1)


def liquid_of(plant: Plant) -> Liquid:
    """What a plant pumps."""
    liquid = plant.liquid
    if liquid.name == "water":
        return water(liquid.temperature_c)
    density, viscosity, vapour = liquid.density_kgm3, liquid.viscosity_mpas, liquid.vapour_bar
    assert density is not None and viscosity is not None and vapour is not None  # plant.checks has seen to it
    return Liquid(liquid.name, density, viscosity * MPAS, vapour * BAR)
