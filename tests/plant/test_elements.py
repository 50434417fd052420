"""The registry of a plant's sections: complete, consistent, and open to one more."""

from __future__ import annotations

import inspect
import pkgutil
from importlib import import_module

import pytest
from tests.rig import rig

from loadfirst.physics.machine import Machines
from loadfirst.plant import elements
from loadfirst.plant.build import build
from loadfirst.plant.elements import WAY
from loadfirst.plant.elements.section import Given, Section
from loadfirst.plant.laws import LAWS, LawKind
from loadfirst.plant.layout import layout, shape_of

SHAPES = [
    {"pump": {"arrangement": arrangement}, "discharge": {"attached": attached}}
    for arrangement in ("single", "side-by-side", "in-line")
    for attached in (True, False)
]


@pytest.mark.native  # the browser imports from memory: there is no folder to look through
def test_every_module_of_an_element_is_in_the_way() -> None:
    """A file that is not registered would never be seen by a plant."""
    names = [module.name for module in pkgutil.iter_modules(elements.__path__) if module.name != "section"]
    modules = [import_module(f"loadfirst.plant.elements.{name}") for name in names]
    found = {
        section.name
        for module in modules
        for section in vars(module).values()
        if isinstance(section, Section)
    }
    assert found == {section.name for section in WAY}
    assert len(found) == len(WAY) >= len(names)


@pytest.mark.parametrize("kind", LAWS.values(), ids=LAWS)
def test_a_law_names_its_parameters_as_its_constructor_does(kind: LawKind) -> None:
    """Numbers are handed over by their order: the names are what keeps it right."""
    assert kind.parameters == tuple(inspect.signature(kind.make).parameters)[: len(kind.parameters)]


@pytest.mark.parametrize("tables", SHAPES)
def test_each_element_gives_as_many_numbers_as_its_law_asks(tables: dict[str, dict[str, object]]) -> None:
    """Every element of every shape, and no name twice."""
    one = rig(**tables)
    shape = layout(shape_of(one))
    given = Given(one.plant, build([one]).liquids[0])
    specs = [spec for specs in shape.columns.values() for spec in specs]
    assert len({spec.name for spec in specs}) == len(specs) == len(shape.elements)
    for spec in specs:
        if spec.law in LAWS:
            assert len(spec.values(given)) == len(LAWS[spec.law].parameters)


@pytest.mark.parametrize("tables", SHAPES)
def test_the_columns_of_a_law_are_those_of_the_network(tables: dict[str, dict[str, object]]) -> None:
    """No column is without an element, and each element knows its own."""
    built = build([rig(**tables)])
    for law, specs in built.layout.columns.items():
        assert built.network.laws[law].count == len(specs)
        assert [built.layout.column(spec.name) for spec in specs] == list(range(len(specs)))
    assert isinstance(built.network.laws["pumps"], Machines)


def test_a_section_is_left_out_where_a_plant_does_not_have_it() -> None:
    """With the line off nothing of the line is in the network."""
    shape = layout(shape_of(rig(discharge={"attached": False})))
    assert [section.name for section in shape.sections] == ["suction-line", "station", "open-end"]
    assert [element.name for element in shape.elements] == ["suction-line", "pump-1", "end"]
