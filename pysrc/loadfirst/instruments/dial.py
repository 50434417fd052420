"""A gauge of a plant: from the true pressure at its tapping to what a person reads on its dial."""

from __future__ import annotations

from loadfirst.instruments.faults.absolute import counted
from loadfirst.instruments.faults.damping import quietened
from loadfirst.instruments.faults.misread_unit import times
from loadfirst.instruments.faults.root_valve import kept
from loadfirst.instruments.faults.tapping import tapped
from loadfirst.instruments.faults.zero_and_span import sensed
from loadfirst.instruments.gauge import dial_pressure
from loadfirst.instruments.instrument import Chance, Instrument, Reading
from loadfirst.plant.answer import State
from loadfirst.plant.dials import Gauge
from loadfirst.units import BAR


def read_gauge(
    place: str, gauge: Gauge, state: State, air: float, chance: Chance, before: Reading | None = None
) -> Reading:
    """What one gauge of a plant shows.

    Parameters
    ----------
    place : its own tapping, as the state's nodes are named: "after-valve".
    gauge : as the plant has it, its height filled in.
    state : the true state.
    air : absolute pressure of the air. [Pa]
    chance : seed and look.
    before : what it showed before; a gauge that is shut off keeps that.
    """
    low, high = (end * BAR for end in gauge.range_bar)
    fault = gauge.fault
    dial = Instrument(
        f"gauge-{place}", "pressure", low, high, gauge.accuracy_class, serial=gauge.serial
    )  # fmt: skip
    taken = times(fault.unit)
    if fault.root_valve == "shut":  # whatever errors it has led it there already
        return dial.show(kept(fault.frozen_bar, before, low, high), times=taken)
    node = tapped(place, fault.tapping, state.nodes)
    if node is None or node.pressure is None or not state.converged:
        return dial.show(None, times=taken)
    assert gauge.height_m is not None  # plant.pumps has seen to it
    at_dial = dial_pressure(
        node.pressure, node.height, gauge.height_m, state.liquid.density, fault.leg_filled
    )
    pressure = sensed(counted(at_dial, fault.reads, air), fault.zero_bar * BAR, fault.span_percent)
    noise = quietened(fault.noise_bar * BAR, fault.damping_s)
    return dial.show(pressure, chance=chance, noise=noise, times=taken)
