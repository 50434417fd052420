"""Which elements stand where, in each shape of plant.

The names of elements and nodes are the ones used everywhere else: in readings,
notes and on the page.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from loadfirst.physics.network import Element
from loadfirst.plant.elements import WAY
from loadfirst.plant.elements.section import Fixed, Section, Shape, Spec, Stand
from loadfirst.plant.pumps import ResolvedPlant, conditions
from loadfirst.plant.services import law_of

__all__ = ["Layout", "Shape", "layout", "shape_of"]

PUMPS = ("pump-1", "pump-2")
CHECKS = ("check-1", "check-2")
ASIDE = ("relief", "return-line", "burst", "branch-line", "second-line")


class Layout(NamedTuple):
    """One shape of plant.

    Attributes
    ----------
    attached : the discharge line is on.
    sections : those that this shape has, in the order of `elements.WAY`.
    elements : all of them, supply to delivery, as the network knows them.
    columns : specifications of the elements of each law, in the order of its columns.
    fixed : heads that are known.
    way : nodes at which one section hands on to the next.
    pumps, checks : names of the pumps and of their check valves.
    machines : law and column of each pump.
    station : names of the elements between the nodes "suction" and "discharge": the pumps, and
        the check valves of two.
    aside : names of the elements whose flow is not on the way to the delivery.
    side_by_side : how many pumps share the flow.
    in_line : how many pumps add their heads.
    """

    attached: bool
    sections: tuple[Section, ...]
    elements: tuple[Element, ...]
    columns: dict[str, tuple[Spec, ...]]
    fixed: tuple[Fixed, ...]
    way: tuple[str, ...]
    pumps: tuple[str, ...]
    machines: tuple[tuple[str, int], ...]
    checks: tuple[str, ...]
    station: tuple[str, ...]
    aside: tuple[str, ...]
    side_by_side: int
    in_line: int

    @property
    def check_in_load(self) -> bool:
        """Whether the check valve stands behind the discharge gauge: after a single pump."""
        return self.attached and len(self.pumps) == 1

    def column(self, element: str) -> int:
        """Which column of its law an element takes."""
        return next(found.column for found in self.elements if found.name == element)


def shape_of(one: ResolvedPlant) -> Shape:
    """What stands where in a plant: which of the sections it has, which pumps and how arranged."""
    plant = one.plant
    return Shape(
        arrangement=plant.pump.arrangement,
        machines=tuple([law_of(*each) for each in zip(one.pumps, conditions(plant), strict=False)]),
        fitted=tuple(
            [section.name for section in WAY if section.fitted is not None and section.fitted(plant)]
        ),
    )


@lru_cache(maxsize=256)
def layout(shape: Shape) -> Layout:
    """Walk the way from the supply and let each section of the shape take its stand."""
    sections = tuple(section for section in WAY if section.fitted is None or section.name in shape.fitted)
    node = "supply"
    stands: dict[str, Stand] = {}
    for section in sections:
        stands[section.name] = section.stand(shape, node)
        node = stands[section.name].on
    specs = [spec for stand in stands.values() for spec in stand.specs]
    laws = dict.fromkeys(spec.law for spec in specs)
    columns = {law: tuple(spec for spec in specs if spec.law == law) for law in laws}
    elements = tuple(Element(*spec[:4], columns[spec.law].index(spec)) for spec in specs)
    places = {element.name: (element.law, element.column) for element in elements}
    return Layout(
        attached="delivery" in shape.fitted,
        sections=sections,
        elements=elements,
        columns=columns,
        fixed=tuple(known for stand in stands.values() for known in stand.fixed),
        way=tuple(dict.fromkeys(stand.on for stand in stands.values())),
        pumps=tuple(name for name in PUMPS if name in places),
        machines=tuple(places[name] for name in PUMPS if name in places),
        checks=tuple(name for name in CHECKS if name in places),
        station=tuple(spec.name for spec in stands["station"].specs),
        aside=tuple(name for name in ASIDE if name in places),
        side_by_side=2 if shape.arrangement == "side-by-side" else 1,
        in_line=2 if shape.arrangement == "in-line" else 1,
    )
