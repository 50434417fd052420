"""The trade's central rule, which people can follow by hand: is the pump on its curve?

Two gauges give the head, the meter the flow, the tachometer the speed. A point on the pump's curve,
within what the instruments may err by, at the measured speed and well out on the curve: hydraulically
healthy. It says nothing of bearings, seals and vibration; and near shut-off even a worn pump looks well.
Off the curve, causes are ruled out in an order, wear last: a pump that cavitates or draws gas is off its
curve and yet healthy.

Sources
-------
Total head from two gauges: ISO 9906, H = Δp/(ρg) + Δz + Δ(v²)/2g (from memory). Uncertainties added in
squares, coverage factor 2: JCGM 100:2008 (GUM), 5.1.2 and 6.2 (from memory). The order: common practice.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from typing import Literal, NamedTuple

import numpy as np
from msgspec.structs import replace

from loadfirst.errors import InputError
from loadfirst.evidence.seen import LEAST
from loadfirst.instruments.instrument import Reading
from loadfirst.physics.pipe import velocity_head
from loadfirst.plant.automatic import settled
from loadfirst.plant.build import Built, build
from loadfirst.plant.plant import Curve
from loadfirst.plant.pumps import ResolvedPlant, Turning, conditions
from loadfirst.plant.station_curve import check_loss, station_curve
from loadfirst.units import TO_SI, G

Side = Literal["below", "on", "above"]
GateName = Literal["instruments", "bypass", "speed", "rotation", "suction-and-gas", "liquid", "machine"]
ORDER: tuple[GateName, ...] = (
    "instruments", "bypass", "speed", "rotation", "suction-and-gas", "liquid", "machine",
)  # fmt: skip
LOWERS: tuple[GateName, ...] = ("bypass", "rotation", "suction-and-gas")
"""These can put a point below the curve only."""
COVERAGE = 2.0
"""Two standard uncertainties hold about 95 of 100 points of a pump that is on its curve. [-]"""
WELL_OUT = 0.5
"""Of the flow at best efficiency: from there on a point is well out on the curve. Common practice. [-]"""
TELLING = 10.0
"""Wear that must put a point off the curve before one on it says anything: the usual size. [%]"""
WEARS = np.arange(1.0, 51.0)
"""Wear, of which the least that would show is told: leakage over the flow at best efficiency. [%]"""
NEEDED = ("gauge-suction", "gauge-discharge", "flow-meter")
MM = TO_SI["mm"]


class Gate(NamedTuple):
    """One kind of cause that is to be ruled out before the next.

    Attributes
    ----------
    open : whether it may still be the cause.
    why : what shut it: "side", "speed-measured", "place", "off-that-curve", "no-impeller", "seen"; or ``""``.
    """

    name: GateName
    open: bool
    why: str = ""


class OnCurve(NamedTuple):
    """A measured point and the curve of the pumps together. SI.

    Attributes
    ----------
    flow, head : measured. [m³/s] [m]
    curve : head that the pumps give at that flow and speed. [m]
    uncertainty : expanded, of head less curve. [m]
    side : where the point lies, beyond that uncertainty.
    speed_measured : whether the curve is that at the measured speed.
    well_out : from half the flow at best efficiency on.
    least_wear : that would have put the point off the curve, leakage over the flow at best
        efficiency; None where none would. [%] Less wear than that stays hidden.
    healthy : on the curve at the measured speed, well out, where 10 % of wear would show.
    gates : in the order in which they are to be ruled out; none for a point on the curve.
    """

    flow: float
    head: float
    curve: float
    uncertainty: float
    side: Side
    speed_measured: bool
    well_out: bool
    least_wear: float | None
    healthy: bool
    gates: tuple[Gate, ...]


def on_curve(plant: ResolvedPlant, shown: Mapping[str, Reading], seen: Collection[GateName] = ()) -> OnCurve:
    """Hold a set of readings against the curve of a plant's pumps.

    Parameters
    ----------
    plant : as it is known; its pumps are taken to be as it says.
    shown : readings by instrument, both gauges at the pumps and the flow meter among them.
    seen : gates that somebody has ruled out by looking.

    Raises
    ------
    InputError
        Where one of the three readings is missing or off its scale, or two pumps side by side droop, so
        that nobody knows how they share the flow.
    """
    for id in NEEDED:
        one = shown.get(id)
        if one is None or one.value is None or not one.low < one.value < one.high:
            raise InputError(id, None if one is None else one.value, "a reading on its scale", rule="missing")
    flow = _value(shown["flow-meter"])
    turned, speed_doubt = _turned(plant, shown)
    built = _built(turned)
    if built.droops.any() and built.layout.side_by_side > 1:
        raise InputError(
            "pump.arrangement", plant.plant.pump.arrangement, "single, or of pumps whose curves do not droop",
            "Nobody knows how they share the flow.", rule="together",
        )  # fmt: skip
    head = _head(built, shown, flow)
    curve = _curve(built, flow)
    doubts = _doubts(built, shown, flow) + [speed_doubt(flow)]
    uncertainty = COVERAGE * float(np.hypot.reduce(doubts))
    side: Side = "on" if abs(head - curve) <= uncertainty else "above" if head > curve else "below"
    measured = turned is not plant
    well_out = flow >= WELL_OUT * float(built.flow_scale[0])
    least_wear = _least_wear(turned, flow, curve - uncertainty)
    healthy = side == "on" and measured and well_out and least_wear is not None and least_wear <= TELLING
    gates = () if side == "on" else _gates(turned, flow, head, uncertainty, side, measured, seen)
    return OnCurve(flow, head, curve, uncertainty, side, measured, well_out, least_wear, healthy, gates)


def _value(reading: Reading) -> float:
    assert reading.value is not None
    return reading.value


def _doubt(reading: Reading) -> float:
    return max(reading.uncertainty or 0.0, LEAST * (reading.high - reading.low))


def _built(plant: ResolvedPlant) -> Built:
    return build(settled([plant]))


def _curve(built: Built, flow: float) -> float:
    """Head between the gauges that the pumps give at a flow. [m]"""
    through = np.array([[flow]])
    return float(station_curve(built, through)[0, 0] - check_loss(built, through)[0][0, 0])


def _head(built: Built, shown: Mapping[str, Reading], flow: float) -> float:
    """Total head from gauge to gauge. [m]"""
    plant, weight = built.plants[0].plant, built.liquids[0].density * G
    before, after = plant.gauges.suction.height_m, plant.gauges.discharge.height_m
    assert before is not None and after is not None  # plant.pumps has seen to it
    pressure = _value(shown["gauge-discharge"]) - _value(shown["gauge-suction"])
    faster = [float(velocity_head(flow, line.bore_mm * MM)) for line in (plant.discharge, plant.suction)]
    return pressure / weight + after - before + faster[0] - faster[1]


def _doubts(built: Built, shown: Mapping[str, Reading], flow: float) -> list[float]:
    """Standard uncertainties of head less curve: of either gauge, and of the flow along the curve. [m]"""
    weight, off = built.liquids[0].density * G, _doubt(shown["flow-meter"])
    ends = [_head(built, shown, at) - _curve(built, at) for at in (flow - off, flow + off)]
    gauges = [_doubt(shown[id]) / weight for id in ("gauge-suction", "gauge-discharge")]
    return [*gauges, (ends[1] - ends[0]) / 2]


def _turned(
    plant: ResolvedPlant, shown: Mapping[str, Reading]
) -> tuple[ResolvedPlant, Callable[[float], float]]:
    """The plant with its shafts held at the speeds read, and the standard uncertainty that they bring. [m]"""
    running = [has.running for has in conditions(plant.plant)][: len(plant.pumps)]
    read = [shown.get(f"tachometer-{number + 1}") for number in range(len(running))]
    if any(turns and (one is None or not one.value) for turns, one in zip(running, read, strict=True)):
        return plant, lambda flow: 0.0

    def held(way: float) -> ResolvedPlant:
        return plant._replace(
            turning=tuple(
                Turning(held=_value(one) + way * _doubt(one)) if turns and one else Turning()
                for turns, one in zip(running, read, strict=True)
            )
        )

    return held(0.0), lambda flow: (_curve(_built(held(1)), flow) - _curve(_built(held(-1)), flow)) / 2


def _least_wear(plant: ResolvedPlant, flow: float, head: float) -> float | None:
    """Wear in every pump, with which they give less than a head at a flow. [%]"""
    built = build(settled([_worn(plant, wear) for wear in WEARS.tolist()]))
    through = np.full((len(WEARS), 1), flow)
    given = (station_curve(built, through) - check_loss(built, through)[0])[:, 0]
    return float(WEARS[np.argmax(given < head)]) if (given < head).any() else None


def _worn(plant: ResolvedPlant, wear: float) -> ResolvedPlant:
    pump = plant.plant.pump
    second = replace(pump.second, wear_percent=max(pump.second.wear_percent, wear))
    pump = replace(pump, wear_percent=max(pump.wear_percent, wear), second=second)
    return plant._replace(plant=replace(plant.plant, pump=pump))


def _gates(
    plant: ResolvedPlant, flow: float, head: float, uncertainty: float, side: Side, measured: bool,
    seen: Collection[GateName],
) -> tuple[Gate, ...]:  # fmt: skip
    shut: dict[GateName, str] = dict.fromkeys(seen, "seen")
    if plant.plant.meters.flow_place == "pump" and len(plant.pumps) == 1:
        shut["bypass"] = "place"
    if measured:
        shut["speed"] = "speed-measured"
    shut |= _backward(plant, flow, head, uncertainty)
    if side == "above":
        shut |= dict.fromkeys(LOWERS, "side")
    return tuple(Gate(name, name not in shut, shut.get(name, "")) for name in ORDER)


def _backward(plant: ResolvedPlant, flow: float, head: float, uncertainty: float) -> dict[GateName, str]:
    """What shuts the gate of rotation: there is no impeller, or the point is not on the curve of a pump
    that turns backward."""
    if not all(isinstance(pump, Curve) for pump in plant.pumps):
        return {"rotation": "no-impeller"}
    pump = replace(plant.plant.pump, rotation="wrong")
    wrong = plant._replace(plant=replace(plant.plant, pump=pump))
    off = abs(head - _curve(_built(wrong), flow)) > uncertainty
    return {"rotation": "off-that-curve"} if off else {}
