"""From plants as people write them to a network in SI, many plants of one shape at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.law import Array, Law
from loadfirst.physics.liquids import Liquid, water
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.physics.network import Network
from loadfirst.plant.elements.section import Given
from loadfirst.plant.laws import LAWS
from loadfirst.plant.layout import Layout, layout, shape_of
from loadfirst.plant.plant import Curve, Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.units import BAR, HOUR, PERCENT, RPM, TO_SI

__all__ = ["Built", "ResolvedPlant", "build"]

KW, MPAS = TO_SI["kw"], TO_SI["mpas"]
LEAST_HEAD = 1e-9  # [m] keeps the head scale above 0


@dataclass(frozen=True, eq=False)
class Built:
    """B plants of one shape, in SI.

    Attributes
    ----------
    plants : as they were given, each with its pump's points.
    layout : which elements stand where.
    network : laws "pipes", "pumps", "valves", "checks" and whatever else the shape has.
    machines : the law "pumps".
    liquids : what each plant pumps.
    head_scale : shut-off head of the station, and how far apart the known heads are, together. (B,) [m]
    flow_scale : flow at best efficiency, of all pumps side by side. (B,) [m³/s]
    """

    plants: tuple[ResolvedPlant, ...]
    layout: Layout
    network: Network
    machines: Machines
    liquids: tuple[Liquid, ...]
    head_scale: Array
    flow_scale: Array

    def __len__(self) -> int:
        return len(self.plants)


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
    shapes = {shape_of(one.plant) for one in plants}
    if len(shapes) != 1:
        raise ValueError(f"plants of {len(shapes)} shapes cannot be built together")
    shape = layout(shapes.pop())
    given = [Given(one.plant, _liquid(one.plant)) for one in plants]
    liquids = tuple(each.liquid for each in given)
    machines = _machines(plants, liquids, len(shape.pumps))
    fixed = {known.node: np.array([known.head(each) for each in given]) for known in shape.fixed}
    static = np.ptp(list(fixed.values()), axis=0)
    return Built(
        plants=tuple(plants),
        layout=shape,
        network=Network(shape.elements, _laws(shape, given, machines), fixed),
        machines=machines,
        liquids=liquids,
        head_scale=shape.in_line * machines.shut_off_head[:, 0] + static + LEAST_HEAD,
        flow_scale=np.broadcast_to(shape.side_by_side * machines.best_efficiency_flow[:, 0], len(plants)),
    )


def _laws(shape: Layout, given: Sequence[Given], machines: Machines) -> dict[str, Law]:
    """Each law with the numbers of all its elements in all plants."""
    laws: dict[str, Law] = {}
    for name, kind in LAWS.items():
        if specs := shape.columns.get(name):
            numbers = np.array([[spec.values(each) for spec in specs] for each in given], dtype=float)
            laws[name] = kind.make(*numbers.transpose(2, 0, 1))
    return {"pipes": laws["pipes"], "pumps": machines, **laws}


def _liquid(plant: Plant) -> Liquid:
    liquid = plant.liquid
    if liquid.name == "water":
        return water(liquid.temperature_c)
    density, viscosity, vapour = liquid.density_kgm3, liquid.viscosity_mpas, liquid.vapour_bar
    assert density is not None and viscosity is not None and vapour is not None  # plant.checks has seen to it
    return Liquid(liquid.name, density, viscosity * MPAS, vapour * BAR)


class _Drive(NamedTuple):
    """What makes one machine differ from another."""

    curve: Curve
    rated_power: float
    poles: int
    supply_frequency: float
    frequency: float
    density: float


def _machines(plants: Sequence[ResolvedPlant], liquids: Sequence[Liquid], pumps: int) -> Machines:
    drives = tuple(_drive(one, liquid) for one, liquid in zip(plants, liquids, strict=True))
    return _equal_machines(drives[:1] if len(set(drives)) == 1 else drives, pumps)


def _drive(one: ResolvedPlant, liquid: Liquid) -> _Drive:
    drive, curve = one.plant.drive, one.curve
    return _Drive(
        curve=curve,
        rated_power=(drive.motor_kw or curve.motor_kw) * KW,
        poles=drive.poles,
        supply_frequency=float(drive.supply_hz),
        frequency=drive.frequency_hz or float(drive.supply_hz),
        density=liquid.density,
    )


@lru_cache(maxsize=16)
def _equal_machines(drives: tuple[_Drive, ...], pumps: int) -> Machines:
    """The same pumps are asked for again and again while a valve is being turned."""
    motor = Motor.rated(
        np.array([[drive.rated_power] for drive in drives]),
        poles=np.array([[drive.poles] for drive in drives]),
        supply_frequency=np.array([[drive.supply_frequency] for drive in drives]),
        frequency=np.array([[drive.frequency] for drive in drives]),
    )
    curves = [[_pump_curve(drive.curve)] * pumps for drive in drives]
    return Machines.build(curves, motor, np.array([[drive.density] for drive in drives]))


@lru_cache(maxsize=64)
def _pump_curve(curve: Curve) -> PumpCurve:
    def numbers(values: tuple[float, ...] | None, factor: float) -> Array | None:
        return None if values is None else np.array(values) * factor

    return PumpCurve.from_points(
        curve.speed_rpm * RPM,
        np.array(curve.flow_m3h) / HOUR,
        np.array(curve.head_m),
        np.array(curve.npshr_m),
        efficiency=numbers(curve.efficiency_percent, PERCENT),
        power=numbers(curve.power_kw, KW),
        density=curve.density_kgm3,
    )
