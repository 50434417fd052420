"""Everything that an element, or a table of keys, must have; what is missing is said by name.

An element stands in `elements.WAY`; it needs a law, keys, a drawing, a panel,
words, its rows in the author's guide, its group of causes, and its line in the
independent checker. DEVELOPERS.md, "How to add", says where each belongs.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from tests.checker import Fluid, plant_pieces
from tests.rig import rig

from loadfirst.days.groups import group_of
from loadfirst.plant.build import build
from loadfirst.plant.elements import WAY
from loadfirst.plant.keys import keys_of
from loadfirst.plant.laws import LAWS
from loadfirst.plant.layout import layout, shape_of
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant

pytestmark = pytest.mark.native

REPO = Path(__file__).parents[2]
VIEWS = {path.stem: path.read_text(encoding="utf-8") for path in (REPO / "site/js/views").glob("*.js")}
WORDS = "\n".join(path.read_text(encoding="utf-8") for path in (REPO / "site/words").glob("*.ftl"))
GUIDE = (REPO / "scenarios/AUTHORS.md").read_text(encoding="utf-8")

TABLE_OF = {
    "suction-line": "suction",
    "station": "pump",
    "check-valve": "check",
    "discharge-line": "discharge",
    "open-end": "discharge",
}
"""Table of an element's keys, where it has another name than the element."""

NO_ELEMENT = {
    "liquid": "flows through all of them",
    "site": "is the air around",
    "supply": "is where the way begins; its pressure is the suction line's",
    "drive": "turns the pumps of the station",
    "control": "sets a key of another element",
    "gauges": "only read",
    "meters": "only read",
}
"""Tables without an element of their own: they …"""

NOT_DRAWN = {
    "liquid": "it is what all pipes hold",
    "site": "it is around everything",
    "levels": "the vessels' own surfaces",
    "chance": "no thing of the plant",
}
"""Panels that nothing in the drawing opens."""


class Panel(NamedTuple):
    """One row of `parts-table.js`: its id, the beginnings of its keys, the names in the drawing."""

    id: str
    keys: tuple[str, ...]
    drawn: tuple[str, ...]


def panels() -> list[Panel]:
    """All of them, read from the page's own table."""
    pipe = re.search(r'const PIPE = "([^"]+)"', VIEWS["parts-table"])
    assert pipe
    found = []
    for id_, keys, more in re.findall(r'row\("([\w-]+)", \[([^\]]*)\](.*)\),\n', VIEWS["parts-table"]):
        claims = [pipe[1] if "PIPE" in key and '"' not in key else key.strip(' "') for key in keys.split(",")]
        drawn = re.search(r"drawn: \[([^\]]*)\]", more)
        names = re.findall(r'"([^"]+)"', drawn[1]) if drawn else [id_]
        found.append(Panel(id_, tuple(claims), tuple(names)))
    return found


def table_of(section: str) -> str:
    """The table of Plant that has an element's keys."""
    return TABLE_OF.get(section, section.replace("-", "_"))


def tables() -> set[str]:
    """Every table of a plant."""
    return {path.partition(".")[0] for path in keys_of(Plant) if "." in path}


def plant_with(table: str) -> ResolvedPlant:
    """A plant that has it."""
    there = {table: {"fitted": True}} if f"{table}.fitted" in keys_of(Plant) else {}
    return rig(**there)


def without_a_law(section: str) -> Iterator[str]:
    """Every element of the section obeys a law of the registry, or a machine's."""
    one = plant_with(table_of(section)) if section != "open-end" else rig(discharge={"attached": False})
    shape = layout(shape_of(one))
    specs = {spec.name: spec for specs in shape.columns.values() for spec in specs}
    known = LAWS.keys() | {law for law, _ in shape.machines}
    yield from (
        f"law: {spec.law} of {name} is not known" for name, spec in specs.items() if spec.law not in known
    )
    if section not in {each.name for each in shape.sections}:
        yield "way: a plant that has it does not show it"


def without_keys(section: str) -> Iterator[str]:
    """Its table is one of Plant."""
    if table_of(section) not in tables():
        yield f"keys: Plant has no table {table_of(section)}"


def without_checker(section: str) -> Iterator[str]:
    """The independent checker knows each of its elements, between the same nodes."""
    one = plant_with(table_of(section)) if section != "open-end" else rig(discharge={"attached": False})
    liquid = build([one]).liquids[0]
    pieces = plant_pieces(one, Fluid(liquid.density, liquid.viscosity, liquid.vapour_pressure))
    for element in layout(shape_of(one)).elements:
        piece = pieces.get(element.name)
        if piece is None:
            yield f"checker: it does not know {element.name}"
        elif (piece.inlet, piece.outlet) != (element.inlet, element.outlet):
            yield f"checker: it puts {element.name} elsewhere"


def of_table(table: str) -> list[Panel]:
    """The panels that have some of a table's keys."""
    return [panel for panel in panels() if any(key.startswith(f"{table}.") for key in panel.keys)]


def without_a_panel(table: str) -> Iterator[str]:
    """Some panel of the page has its keys."""
    if not of_table(table):
        yield "panel: no row of site/js/views/parts-table.js has its keys"


def without_a_drawing(table: str) -> Iterator[str]:
    """Each name that opens its panel is drawn by some view."""
    code = "\n".join(text for name, text in VIEWS.items() if name != "parts-table")
    for panel in of_table(table):
        if not panel.drawn and panel.id not in NOT_DRAWN:
            yield f"drawing: nothing opens the panel {panel.id}"
        for name in panel.drawn:
            stem, _, number = name.rpartition("-")
            numbered = number.isdigit() and re.search(rf'[`"]{stem}-?(\$\{{|"|`)', code)
            if not (re.search(rf'["`.]{name}\b', code) or numbered):
                yield f"drawing: no view draws {name}"


def without_words(table: str) -> Iterator[str]:
    """Its panels have names."""
    for panel in of_table(table):
        if not re.search(rf"^part-{panel.id} =", WORDS, re.MULTILINE):
            yield f"words: part-{panel.id} is missing"


def without_a_guide(table: str) -> Iterator[str]:
    """The author's guide has its keys."""
    if f"**`[{table}" not in GUIDE:
        yield f"guide: scenarios/AUTHORS.md has no table [{table}]"


def without_a_group(table: str) -> Iterator[str]:
    """Each of its keys belongs to a group of causes."""
    keys = [path for path in keys_of(Plant) if path.startswith(f"{table}.")]
    yield from (f"causes: {key} has no group in cases/groups.py" for key in keys if group_of(key) is None)


Look = Callable[[str], Iterator[str]]
OF_ELEMENTS: tuple[Look, ...] = (without_keys, without_a_law, without_checker)
OF_TABLES: tuple[Look, ...] = (
    without_a_panel,
    without_a_drawing,
    without_words,
    without_a_guide,
    without_a_group,
)


def missing() -> list[str]:
    """Everything that some element or table lacks."""
    found: list[str] = []

    def look(name: str, looks: tuple[Look, ...]) -> None:
        found.extend(f"{name}: {said}" for each in looks for said in each(name))

    for section in WAY:
        look(section.name, OF_ELEMENTS)
    for table in sorted(tables()):
        look(table, OF_TABLES)
    homes = {table_of(section.name) for section in WAY} | NO_ELEMENT.keys()
    found += [f"{table}: no element of elements.WAY has its keys" for table in sorted(tables() - homes)]
    return found


def test_nothing_is_missing() -> None:
    """One list of what is: the names, and what each lacks."""
    assert len(panels()) == VIEWS["parts-table"].count('  row("')  # all of the page's table is understood
    assert missing() == []


def test_what_is_missing_is_said_by_name(monkeypatch: pytest.MonkeyPatch) -> None:
    """Here the guide is empty, a panel is gone, an element has no line in the checker."""
    here = without_a_guide.__globals__
    monkeypatch.setitem(here, "GUIDE", "")
    shorter = re.sub(r'.*row\("burst".*\n', "", VIEWS["parts-table"])
    monkeypatch.setitem(VIEWS, "parts-table", shorter)

    whole = plant_pieces

    def forgetful(*given: Any) -> dict[str, Any]:
        return {name: piece for name, piece in whole(*given).items() if name != "relief"}

    monkeypatch.setitem(here, "plant_pieces", forgetful)
    found = missing()
    assert "relief: checker: it does not know relief" in found
    assert "burst: panel: no row of site/js/views/parts-table.js has its keys" in found
    assert "valve: guide: scenarios/AUTHORS.md has no table [valve]" in found
