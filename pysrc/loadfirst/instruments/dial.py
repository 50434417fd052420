"""A gauge of a plant: from the true pressure at its tapping to what a person reads on its dial."""

from __future__ import annotations

from loadfirst.instruments.faults.damping import quietened
from loadfirst.instruments.faults.misread_unit import end, times
from loadfirst.instruments.faults.root_valve import kept
from loadfirst.instruments.instrument import Chance, Instrument, Reading
from loadfirst.instruments.senses import Truth, pressure_sensed
from loadfirst.plant.dials import Gauge
from loadfirst.units import BAR


def read_gauge(
    place: str,
    gauge: Gauge,
    truth: Truth,
    air: float,
    chance: Chance,
    before: Reading | None = None,
    pointer: float | None = None,
) -> Reading:
    """What one gauge of a plant shows.

    Parameters
    ----------
    place : its own tapping, as the state's nodes are named: "after-valve".
    gauge : as the plant has it, its height filled in.
    truth : what is there to be sensed.
    air : absolute pressure of the air. [Pa]
    chance : seed and look.
    before : what it showed before; a gauge that is shut off keeps that.
    pointer : where time has brought its pointer; None: it has long stood where it is led. [Pa]
    """
    fault = gauge.fault
    low, high = (bar * BAR * end(fault.unit) for bar in gauge.range_bar)
    dial = Instrument(
        f"gauge-{place}", "pressure", low, high, gauge.accuracy_class, serial=gauge.serial
    )  # fmt: skip
    taken = times(fault.unit)
    if fault.root_valve == "shut":  # whatever errors it has led it there already
        stays = kept(fault.frozen_bar, before, low, high)
        return dial.show(stays if pointer is None or fault.frozen_bar is not None else pointer, times=taken)
    pressure = pressure_sensed(place, gauge, truth, air)
    if pressure is None:
        return dial.show(None, times=taken)
    noise = quietened(fault.noise_bar * BAR, fault.damping_s)
    return dial.show(pressure if pointer is None else pointer, chance=chance, noise=noise, times=taken)
