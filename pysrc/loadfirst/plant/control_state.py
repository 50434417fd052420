"""What is true of a plant's controller and its drive's current limit, and what a person should know of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from loadfirst.plant.answer import Control, Node, Note
from loadfirst.plant.automatic import acts, frequency_of, in_place, output_of
from loadfirst.plant.measured import BACK, GAUGES, set_point

if TYPE_CHECKING:
    from loadfirst.plant.solved import OnePlant
    from loadfirst.plant.told import Told

QUANTITY = {"flow": "flow", "pressure": "pressure", "level": "height"}


def quantity_of(of: str) -> str:
    """What a controller measures: a flow, a pressure or a height."""
    return QUANTITY[of.rpartition("-")[2]]


def control_of(one: OnePlant, nodes: Mapping[str, Node]) -> Control:
    """The controller of a plant that has one."""
    plant, found = one.plant, one.built.plants[one.row].found
    automatic = found is not None and found.output is not None
    return Control(
        of=plant.control.of,
        on=plant.control.on,
        automatic=automatic and acts(plant),
        output=found.output if found is not None and found.output is not None else output_of(plant),
        reading=_reading(one, nodes) if in_place(plant) else None,
        set_point=plant.control.set_m if quantity_of(plant.control.of) == "height" else set_point(plant),
        status=found.status if found is not None else None,
    )


def _reading(one: OnePlant, nodes: Mapping[str, Node]) -> float | None:
    plant, of = one.plant, one.plant.control.of
    if of in GAUGES:
        name = GAUGES[of]
        node, gauge = nodes[name], getattr(plant.gauges, name.replace("-", "_"))
        return None if node.pressure is None else node.pressure - one.weight * (gauge.height_m - node.height)
    if quantity_of(of) == "height":
        return plant.supply.surface_m if of == "supply-level" else plant.delivery.surface_m
    return one.flow("suction-line")


def control_notes(one: OnePlant, told: Told) -> Iterator[Note]:
    """Control that is lost, and control that can find no rest."""
    control = told.control
    if control is None:
        return
    if control.status == "hunting":
        yield Note("control-hunts", control.of, _facts(one, control))
    elif control.status in ("lost-low", "lost-high"):
        yield Note("control-lost", control.of, _facts(one, control))


def _facts(one: OnePlant, control: Control) -> dict[str, float]:
    quantity = quantity_of(control.of)
    facts = {"output": control.output, f"wanted_{quantity}": control.set_point}
    if control.reading is not None:
        facts[quantity] = control.reading
    if quantity == "height":
        facts["flow"], facts["draw"] = _passing(one), set_point(one.plant)
    return facts


def _passing(one: OnePlant) -> float:
    """Flow into the delivery vessel, or out of the supply. [m³/s]"""
    if one.plant.control.of == "delivery-level":
        return one.flow("end")
    return one.flow("suction-line") - sum(one.flow(name) for name in BACK if name in one.layout.aside)


def limit_notes(one: OnePlant, told: Told) -> Iterator[Note]:
    """A drive that has cut its frequency, or would have to go below its lowest."""
    found = one.built.plants[one.row].found
    if found is None or found.asked is None:
        return
    facts = {
        "frequency": frequency_of(one.plant),
        "asked": found.asked,
        "current": max(machine.current for machine in told.machines),
    }
    yield Note("current-over-limit" if found.overloaded else "current-limited", "drive", facts)
