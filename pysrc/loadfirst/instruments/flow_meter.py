"""The flow meter of a plant: from the true flow at its place to what a person reads."""

from __future__ import annotations

from loadfirst.instruments.faults.damping import quietened
from loadfirst.instruments.faults.flow_place import passing
from loadfirst.instruments.faults.orifice import extracted, scaled, signal, through_plate
from loadfirst.instruments.faults.zero_and_span import sensed
from loadfirst.instruments.instrument import Chance, Instrument, Reading
from loadfirst.plant.answer import State
from loadfirst.plant.tables.meters import Meters
from loadfirst.units import HOUR, PERCENT


def read_flow_meter(meters: Meters, state: State, chance: Chance) -> Reading:
    """What the flow meter shows; it stays when the line is taken off.

    Parameters
    ----------
    meters : as the plant has them, the range filled in.
    state : the true state.
    chance : seed and look.
    """
    assert meters.flow_range_m3h is not None  # plant.pumps has seen to it
    high, orifice = meters.flow_range_m3h / HOUR, meters.flow_kind == "orifice"
    meter = Instrument(
        "flow-meter", "flow", 0.0, high, meters.flow_percent, square_root=orifice, serial=meters.flow_serial
    )  # fmt: skip
    if not state.converged:
        return meter.show(None)
    flow = passing(state.station.flow, state.aside, meters.flow_place)
    fault = meters.flow_fault
    zero, noise = fault.zero_percent * PERCENT, quietened(fault.noise_percent * PERCENT, fault.damping_s)
    if not orifice:
        return meter.show(sensed(flow, zero * high, fault.span_percent), chance=chance, noise=noise * high)
    design = meters.flow_density_kgm3 or state.liquid.density
    believed = through_plate(scaled(flow, state.liquid.density, design), fault.plate)
    got = sensed(signal(believed / high), zero, fault.span_percent)
    ends = [extracted(got + way * noise, fault.root) for way in (-1, 1)]  # noise of what is sensed, as flow
    return meter.show(
        extracted(got, fault.root) * high, chance=chance, noise=(ends[1] - ends[0]) / 2 * high
    )  # fmt: skip
