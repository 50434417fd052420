"""From plants as people write them to a network in SI, many plants of one shape at once."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.check import CheckValves
from loadfirst.physics.law import Array, Law
from loadfirst.physics.liquids import Liquid, water
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.physics.network import Network
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.physics.valve import Valves, flow_coefficient
from loadfirst.plant.layout import Layout, layout
from loadfirst.plant.plant import Curve, Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.units import BAR, HOUR, PERCENT, RPM, TO_SI, G

__all__ = ["Built", "ResolvedPlant", "build"]

MM, KW, MPAS = TO_SI["mm"], TO_SI["kw"], TO_SI["mpas"]
LEAST_HEAD = 1e-9  # [m] keeps the head scale above 0


@dataclass(frozen=True, eq=False)
class Built:
    """B plants of one shape, in SI.

    Attributes
    ----------
    plants : as they were given, each with its pump's points.
    layout : which elements stand where.
    network : laws "pipes", "pumps", "valves", "checks".
    pipes, machines, valves, checks : these laws.
    liquids : what each plant pumps.
    head_scale : shut-off head of the station and the static head, together. (B,) [m]
    flow_scale : flow at best efficiency, of all pumps side by side. (B,) [m³/s]
    """

    plants: tuple[ResolvedPlant, ...]
    layout: Layout
    network: Network
    pipes: Pipes
    machines: Machines
    valves: Valves
    checks: CheckValves
    liquids: tuple[Liquid, ...]
    head_scale: Array
    flow_scale: Array

    def __len__(self) -> int:
        return len(self.plants)


def build(plants: Sequence[ResolvedPlant]) -> Built:
    """Build the network of plants of one shape.

    Parameters
    ----------
    plants : at least one; all with the same `pump.arrangement` and `discharge.attached`.
        Checked plants: every value in its range, see `plant.checks`.

    Raises
    ------
    ValueError
        When the shapes differ (a fault of the caller).
    """
    shapes = {(one.plant.pump.arrangement, one.plant.discharge.attached) for one in plants}
    if len(shapes) != 1:
        raise ValueError(f"plants of {len(shapes)} shapes cannot be built together")
    shape = layout(*shapes.pop())
    every = [one.plant for one in plants]
    liquids = tuple(_liquid(plant) for plant in every)
    machines = _machines(plants, liquids, len(shape.pumps))
    pipes, valves, checks = _pipes(every, liquids, shape), _valves(every), _checks(every, shape)
    fixed = _fixed(every, liquids, shape)
    static = fixed["delivery" if shape.attached else "open"] - fixed["supply"]
    laws: dict[str, Law] = {"pipes": pipes, "pumps": machines, "valves": valves, "checks": checks}
    return Built(
        plants=tuple(plants),
        layout=shape,
        network=Network(shape.elements, laws, fixed),
        pipes=pipes,
        machines=machines,
        valves=valves,
        checks=checks,
        liquids=liquids,
        head_scale=shape.in_line * machines.shut_off_head[:, 0] + np.abs(static) + LEAST_HEAD,
        flow_scale=np.broadcast_to(shape.side_by_side * machines.best_efficiency_flow[:, 0], len(plants)),
    )


def _each(plants: Sequence[Plant], value: Callable[[Plant], float | tuple[float, ...]]) -> Array:
    """One number or a row of them per plant, as (B, M)."""
    return np.array([np.atleast_1d(value(plant)) for plant in plants], dtype=float)


def _liquid(plant: Plant) -> Liquid:
    liquid = plant.liquid
    if liquid.name == "water":
        return water(liquid.temperature_c)
    density, viscosity, vapour = liquid.density_kgm3, liquid.viscosity_mpas, liquid.vapour_bar
    assert density is not None and viscosity is not None and vapour is not None  # plant.checks has seen to it
    return Liquid(liquid.name, density, viscosity * MPAS, vapour * BAR)


def _pipes(plants: Sequence[Plant], liquids: Sequence[Liquid], shape: Layout) -> Pipes:
    def both(value: Callable[[Plant, str], float]) -> Array:
        lines = ("suction", "discharge") if shape.attached else ("suction",)
        return np.array([[value(plant, line) for line in lines] for plant in plants])

    def k(plant: Plant, line: str) -> float:
        return (
            plant.suction.fittings_k + plant.suction.strainer_k
            if line == "suction"
            else plant.discharge.fittings_k
        )

    return Pipes(
        length=both(lambda plant, line: getattr(plant, line).length_m),
        bore=both(lambda plant, line: getattr(plant, line).bore_mm * MM),
        roughness=both(lambda plant, line: getattr(plant, line).roughness_mm * MM),
        k=both(k),
        viscosity=np.array([[liquid.kinematic] for liquid in liquids]),
    )


def _valves(plants: Sequence[Plant]) -> Valves:
    return Valves(
        np.array(
            [
                [float(flow_coefficient(v.kv_open_m3h, v.opening, v.characteristic, v.rangeability))]
                for v in (plant.valve for plant in plants)
            ]
        )
    )


def _checks(plants: Sequence[Plant], shape: Layout) -> CheckValves:
    """The check valves, and last the pipe's end: an open station loses its jet there."""
    pumps = len(shape.pumps)

    def loss(plant: Plant) -> tuple[float, ...]:
        unit = float(velocity_head(1.0, plant.discharge.bore_mm * MM))
        return (*[plant.check.k * unit * plant.check.fitted] * pumps, 0.0 if shape.attached else unit)

    def holds(plant: Plant) -> list[bool]:
        return [plant.check.fitted] * pumps + [not shape.attached or _end_holds(plant)]

    return CheckValves(_each(plants, loss), np.array([holds(plant) for plant in plants]))


def pours_freely(plant: Plant) -> bool:
    """Whether the pipe ends above the delivery's surface, so that nothing can flow back."""
    outlet = plant.delivery.outlet_m
    return outlet is not None and outlet > plant.delivery.surface_m


def _end_holds(plant: Plant) -> bool:
    """A check valve lets nothing back already: the line behind it stands full up to its end."""
    return pours_freely(plant) and not plant.check.fitted


def pipe_end_height(plant: Plant) -> float:
    """Height at which the discharge pipe ends; at the vessel's bottom when nothing is said. [m]"""
    outlet = plant.delivery.outlet_m
    return plant.delivery.bottom_m if outlet is None else outlet


def _fixed(plants: Sequence[Plant], liquids: Sequence[Liquid], shape: Layout) -> dict[str, Array]:
    weight = np.array([liquid.density * G for liquid in liquids])
    supply = np.array([plant.supply.surface_m for plant in plants])
    gas = np.array([plant.supply.gas_bar * BAR for plant in plants])
    heads = {"supply": supply + gas / weight}
    if not shape.attached:
        return heads | {"open": np.array([plant.pump.centre_m for plant in plants])}
    end = [pipe_end_height(plant) if pours_freely(plant) else plant.delivery.surface_m for plant in plants]
    back = np.array([plant.delivery.gas_bar * BAR for plant in plants])
    return heads | {"delivery": np.array(end) + back / weight}


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
