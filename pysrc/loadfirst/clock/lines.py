"""The lines of a plant whose liquid resists a change of its flow."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from loadfirst.clock.moment import Moment
from loadfirst.clock.vessel import draw, inflow, is_empty, is_full
from loadfirst.physics.inertia import RigidColumns, inertance
from loadfirst.physics.level import Vessels
from loadfirst.physics.network import Element
from loadfirst.physics.pipe import Pipes
from loadfirst.plant.build import Built
from loadfirst.plant.elements.section import Given
from loadfirst.plant.heights import filling, pours_freely
from loadfirst.plant.plant import Plant

SUPPLY, DELIVERY = "supply-level", "delivery-level"


def inertances(built: Built) -> dict[str, float]:
    """Of every line, by the name of its pipe. [s²/m²] Over a summit all of the line moves."""
    given = Given(built.plants[0].plant, built.liquids[0])
    found = {}
    for spec in built.layout.columns["pipes"]:
        length, bore = spec.values(given)[:2]
        if spec.name == "discharge-line" and given.plant.summit.fitted and not filling(given.plant):
            length = given.plant.discharge.length_m
        found[spec.name] = float(inertance(length, bore))
    return found


def stepping(built: Built, moment: Moment, span: float, flows: Mapping[str, float]) -> Built:
    """The plant at the end of a span of time that began with these flows, its levels moving.

    Parameters
    ----------
    built : one plant, with the levels of the span's beginning.
    moment : in which the step began: whether a vessel is empty or full.
    span : above 0. [s]
    flows : in the lines at the beginning; a line without one follows at once. [m³/s]
    """
    network, plant = built.network, built.plants[0].plant
    pipes, specs = network.laws["pipes"], built.layout.columns["pipes"]
    assert isinstance(pipes, Pipes)
    steep = inertances(built)
    moving = RigidColumns.of(
        pipes,
        np.array([[steep[spec.name] / span if spec.name in flows else 0.0 for spec in specs]]),
        np.array([[flows.get(spec.name, 0.0) for spec in specs]]),
    )
    elements = [*network.elements, Element(SUPPLY, "supply-still", "supply", "levels", 0)]
    fixed = {"supply-still": network.fixed["supply"]}
    fixed |= {node: head for node, head in network.fixed.items() if node != "supply"}
    numbers = [_supply(plant, moment, span)]
    if "delivery" in fixed and not filling(plant):
        elements.append(Element(DELIVERY, "delivery", "delivery-still", "levels", 1))
        fixed["delivery-still"] = fixed.pop("delivery")
        numbers.append(_delivery(plant, moment, span))
    still, below, above, no_back, no_out = np.array(numbers, dtype=float).T[:, None, :]
    levels = Vessels(still, below, above, no_back > 0, no_out > 0)
    laws = {**network.laws, "pipes": moving, "levels": levels}
    about = {name: np.array([flow]) for name, flow in flows.items()}
    network = replace(network, elements=tuple(elements), laws=laws, fixed=fixed, about=about)
    return replace(built, network=network)


def _supply(plant: Plant, moment: Moment, span: float) -> tuple[float, ...]:
    """Into a full one nothing more goes; with air in the suction line nothing leaves."""
    slope = span / plant.supply.area_m2
    below = 0.0 if is_full(plant.supply, moment.supply.volume) else slope
    return inflow(plant), below, slope, 0.0, not moment.primed


def _delivery(plant: Plant, moment: Moment, span: float) -> tuple[float, ...]:
    """A full one runs over; one that is drained gives nothing back, and draws no more than comes in."""
    drawn, volume = draw(plant), moment.delivery.volume
    if pours_freely(plant):
        return drawn, 0.0, 0.0, moment.drained, 0.0
    slope = span / plant.delivery.area_m2
    below = 0.0 if is_empty(volume) else slope
    return drawn, below, 0.0 if is_full(plant.delivery, volume) else slope, moment.drained, 0.0
