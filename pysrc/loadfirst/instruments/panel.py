"""All instruments of a plant, reading its true state."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import UNSET

from loadfirst.instruments.ammeter import read_ammeters
from loadfirst.instruments.dial import read_gauge
from loadfirst.instruments.flow_meter import read_flow_meter
from loadfirst.instruments.instrument import Chance, Instrument, Reading, Shown
from loadfirst.instruments.senses import METER, Truth, gauges_of
from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import State
from loadfirst.plant.plant import Delivery, Plant, Supply
from loadfirst.units import RPM

OUTPUT_PERCENT = 1.0
"""Greatest error of the output that a controller shows; valve and drive stand near it. Own choice. [%]"""

__all__ = ["Instrument", "Reading", "Shown", "readings"]


def readings(
    state: State,
    plant: Plant,
    *,
    look: int = 0,
    before: Mapping[str, Reading] | None = None,
    pointers: Mapping[str, float] | None = None,
    bare: bool = False,
) -> Shown:
    """What every instrument of the plant shows.

    Parameters
    ----------
    state : State
        The true state of that plant.
    plant : Plant
        The plant, resolved: where its instruments are, how good they are, what is wrong with them.
    look : int
        Number of the look: two looks share an instrument's lasting error, and differ in what does not repeat.
    before : mapping of Reading by id, optional
        What was read before; a gauge that is shut off keeps it.
    pointers : mapping of float, optional
        Where time has brought what follows late, by the instrument's id; see `clock.pointers`.
    bare : bool
        Each value is what its instrument senses: without chance, and beyond the ends of its scale too.

    Returns
    -------
    tuple of Reading
        Gauges at the suction, at the discharge and after the control valve;
        flow meter; ammeters and tachometers, one per pump; level gauges; the
        output that a controller shows, where there is one. An
        instrument without anything to measure (its line is off, its pressure
        is undefined, or no steady state was found) has no value.
    """
    chance = Chance(plant.meters.seed, look, bare)
    truth, pointers = Truth.of(state), pointers or {}
    return (
        *_gauges(truth, plant, chance, before or {}, pointers),
        read_flow_meter(plant.meters, truth, chance, pointers.get(METER)),
        *read_ammeters(state, plant, chance),
        *_tachometers(state, plant, chance),
        _level("level-supply", plant.supply, plant, chance),
        _level("level-delivery", plant.delivery, plant, chance),
        *_output(state),
    )


def _gauges(
    truth: Truth,
    plant: Plant,
    chance: Chance,
    before: Mapping[str, Reading],
    pointers: Mapping[str, float],
) -> Iterator[Reading]:
    air = air_pressure(plant)
    for place, gauge in gauges_of(plant).items():
        name = f"gauge-{place}"
        yield read_gauge(place, gauge, truth, air, chance, before.get(name), pointers.get(name))


def _tachometers(state: State, plant: Plant, chance: Chance) -> Iterator[Reading]:
    """They look at the pumps' shafts: with a belt the motors turn otherwise."""
    high = plant.meters.speed_range_rpm * RPM
    for number, machine in enumerate(state.machines, start=1):
        error = plant.meters.speed_percent
        dial = Instrument(f"tachometer-{number}", "speed", 0.0, high, reading_percent=error)
        speed = abs(machine.speed) if state.converged else None  # it counts turns, either way
        yield dial.show(speed, chance=chance)


def _level(name: str, vessel: Supply | Delivery, plant: Plant, chance: Chance) -> Reading:
    dial = Instrument(name, "height", vessel.bottom_m, vessel.top_m, plant.meters.level_percent)
    return dial.show(vessel.surface_m, chance=chance)


def _output(state: State) -> Iterator[Reading]:
    """What a controller shows as its output, in automatic and by hand."""
    if state.control is not UNSET:
        scale = Instrument("controller-output", "output", 0.0, 1.0, OUTPUT_PERCENT)
        yield scale.show(state.control.output if state.converged else None)
