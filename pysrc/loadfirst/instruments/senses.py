"""What instruments that may follow late sense: gauges and flow meter, before damping, noise and scale."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from loadfirst.instruments.faults.absolute import counted
from loadfirst.instruments.faults.flow_place import passing
from loadfirst.instruments.faults.orifice import scaled, signal, through_plate
from loadfirst.instruments.faults.tapping import tapped
from loadfirst.instruments.faults.zero_and_span import sensed
from loadfirst.instruments.gauge import dial_pressure
from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import Node, State
from loadfirst.plant.dials import Gauge
from loadfirst.plant.plant import Plant
from loadfirst.plant.tables.meters import Meters
from loadfirst.units import BAR, HOUR, PERCENT

METER = "flow-meter"


class Truth(NamedTuple):
    """The part of a true state that they can sense.

    Attributes
    ----------
    converged : nothing is sensed where no steady state was found.
    nodes : at the tappings.
    flow : of the pumps together. [m³/s]
    aside : of the lines beside the way. [m³/s]
    density : of the liquid. [kg/m³]
    """

    converged: bool
    nodes: Mapping[str, Node]
    flow: float
    aside: Mapping[str, float]
    density: float

    @classmethod
    def of(cls, state: State) -> Truth:
        """Of a whole state."""
        return cls(state.converged, state.nodes, state.station.flow, state.aside, state.liquid.density)


def gauges_of(plant: Plant) -> dict[str, Gauge]:
    """The gauges by their tapping, as the state's nodes are named."""
    gauges = plant.gauges
    return {"suction": gauges.suction, "discharge": gauges.discharge, "after-valve": gauges.after_valve}


def pressure_sensed(place: str, gauge: Gauge, truth: Truth, air: float) -> float | None:
    """What reaches a gauge's pointer; None where there is nothing to measure. [Pa]

    Parameters
    ----------
    place : its own tapping: "after-valve".
    gauge : as the plant has it, its height filled in.
    air : absolute pressure of the air. [Pa]
    """
    fault = gauge.fault
    node = tapped(place, fault.tapping, truth.nodes)
    if node is None or node.pressure is None or not truth.converged:
        return None
    assert gauge.height_m is not None  # plant.pumps has seen to it
    at_dial = dial_pressure(node.pressure, node.height, gauge.height_m, truth.density, fault.leg_filled)
    return sensed(counted(at_dial, fault.reads, air), fault.zero_bar * BAR, fault.span_percent)


def flow_sensed(meters: Meters, truth: Truth) -> float | None:
    """What the flow meter senses: the flow [m³/s], an orifice a share of its full pressure difference [-]."""
    assert meters.flow_range_m3h is not None  # plant.pumps has seen to it
    if not truth.converged:
        return None
    high, fault = meters.flow_range_m3h / HOUR, meters.flow_fault
    flow = passing(truth.flow, truth.aside, meters.flow_place)
    zero = fault.zero_percent * PERCENT
    if meters.flow_kind != "orifice":
        return sensed(flow, zero * high, fault.span_percent)
    design = meters.flow_density_kgm3 or truth.density
    believed = through_plate(scaled(flow, truth.density, design), fault.plate)
    return sensed(signal(believed / high), zero, fault.span_percent)


def all_sensed(plant: Plant, truth: Truth) -> dict[str, float | None]:
    """Of every one of them, by the instrument's id."""
    air = air_pressure(plant)
    found = {
        f"gauge-{place}": pressure_sensed(place, gauge, truth, air)
        for place, gauge in gauges_of(plant).items()
    }
    return found | {METER: flow_sensed(plant.meters, truth)}
