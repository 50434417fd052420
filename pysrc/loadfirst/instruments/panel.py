"""All instruments of a plant, reading its true state."""

from __future__ import annotations

from collections.abc import Iterator

from loadfirst.instruments.gauge import dial_pressure
from loadfirst.instruments.instrument import Instrument, Reading, Shown
from loadfirst.instruments.scales import ammeter_scale
from loadfirst.plant.answer import Machine, State
from loadfirst.plant.dials import Gauge
from loadfirst.plant.plant import Delivery, Plant, Supply
from loadfirst.units import BAR, HOUR, RPM

__all__ = ["Instrument", "Reading", "Shown", "readings"]


def readings(state: State, plant: Plant) -> Shown:
    """What every instrument of the plant shows.

    Parameters
    ----------
    state : State
        The true state of that plant.
    plant : Plant
        The plant, resolved, which says where the instruments are and how good they are.

    Returns
    -------
    tuple of Reading
        Gauges at the suction, at the discharge and after the control valve;
        flow meter; ammeters and tachometers, one per pump; level gauges. An
        instrument without anything to measure (its line is off, its pressure
        is undefined, or no steady state was found) has no value.
    """
    return (
        _gauge("suction", plant.gauges.suction, state),
        _gauge("discharge", plant.gauges.discharge, state),
        _gauge("after-valve", plant.gauges.after_valve, state),
        _flow_meter(state, plant),
        *_ammeters(state, plant),
        *_tachometers(state, plant),
        _level("level-supply", plant.supply, plant),
        _level("level-delivery", plant.delivery, plant),
    )


def _gauge(place: str, gauge: Gauge, state: State) -> Reading:
    low, high = (end * BAR for end in gauge.range_bar)
    dial = Instrument(f"gauge-{place}", "pressure", low, high, gauge.accuracy_class)
    node = state.nodes.get(place)
    if node is None or node.pressure is None or not state.converged:
        return dial.show(None)
    assert gauge.height_m is not None  # plant.pumps has seen to it
    return dial.show(dial_pressure(node.pressure, node.height, gauge.height_m, state.liquid.density))


def _flow_meter(state: State, plant: Plant) -> Reading:
    """It stands at the station's discharge flange, so it stays when the line is taken off."""
    meters = plant.meters
    assert meters.flow_range_m3h is not None  # plant.pumps has seen to it
    meter = Instrument("flow-meter", "flow", 0.0, meters.flow_range_m3h / HOUR, meters.flow_percent)
    return meter.show(state.station.flow if state.converged else None)


def _ammeters(state: State, plant: Plant) -> Iterator[Reading]:
    for number, machine in enumerate(state.machines, start=1):
        high = plant.meters.current_range_a or ammeter_scale(machine.rated_current)
        dial = Instrument(f"ammeter-{number}", "current", 0.0, high, plant.meters.current_percent)
        yield dial.show(_if(state, machine, "current"))


def _tachometers(state: State, plant: Plant) -> Iterator[Reading]:
    """They look at the pumps' shafts: with a belt the motors turn otherwise."""
    high = plant.meters.speed_range_rpm * RPM
    for number, machine in enumerate(state.machines, start=1):
        error = plant.meters.speed_percent
        dial = Instrument(f"tachometer-{number}", "speed", 0.0, high, reading_percent=error)
        yield dial.show(abs(machine.speed) if state.converged else None)  # it counts turns, either way


def _if(state: State, machine: Machine, name: str) -> float | None:
    return float(getattr(machine, name)) if state.converged else None


def _level(name: str, vessel: Supply | Delivery, plant: Plant) -> Reading:
    dial = Instrument(name, "height", vessel.bottom_m, vessel.top_m, plant.meters.level_percent)
    return dial.show(vessel.surface_m)
