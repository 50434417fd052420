"""The flow meter of a plant: from the true flow at its place to what a person reads."""

from __future__ import annotations

from loadfirst.instruments.faults.damping import quietened
from loadfirst.instruments.faults.orifice import extracted
from loadfirst.instruments.instrument import Chance, Instrument, Reading
from loadfirst.instruments.senses import METER, Truth, flow_sensed
from loadfirst.plant.tables.meters import Meters
from loadfirst.units import HOUR, PERCENT


def read_flow_meter(meters: Meters, truth: Truth, chance: Chance, pointer: float | None = None) -> Reading:
    """What the flow meter shows; it stays when the line is taken off.

    Parameters
    ----------
    meters : as the plant has them, the range filled in.
    truth : what is there to be sensed.
    chance : seed and look.
    pointer : what time has brought it to, as `senses.flow_sensed`; None: it has long followed.
    """
    assert meters.flow_range_m3h is not None  # plant.pumps has seen to it
    high, orifice = meters.flow_range_m3h / HOUR, meters.flow_kind == "orifice"
    meter = Instrument(
        METER, "flow", 0.0, high, meters.flow_percent, square_root=orifice, serial=meters.flow_serial
    )  # fmt: skip
    got = flow_sensed(meters, truth)
    if got is None:
        return meter.show(None)
    got = got if pointer is None else pointer
    fault = meters.flow_fault
    noise = quietened(fault.noise_percent * PERCENT, fault.damping_s)
    if not orifice:
        return meter.show(got, chance=chance, noise=noise * high)
    ends = [extracted(got + way * noise, fault.root) for way in (-1, 1)]  # noise of what is sensed, as flow
    return meter.show(
        extracted(got, fault.root) * high, chance=chance, noise=(ends[1] - ends[0]) / 2 * high
    )  # fmt: skip
