"""Which elements stand where, in each arrangement of the pump station.

The names of elements and nodes are the ones used everywhere else: in readings,
notes and on the page.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from loadfirst.physics.network import Element

CHECKS = ("check-1", "check-2")


class Layout(NamedTuple):
    """One shape of plant.

    Attributes
    ----------
    attached : the discharge line is on.
    elements : all of them, supply to delivery.
    pumps : names of the pumps, in the order of the columns of the law "pumps".
    station : names of the elements between the nodes "suction" and "discharge": the pumps, and
        the check valves of two.
    side_by_side : how many pumps share the flow.
    in_line : how many pumps add their heads.
    """

    attached: bool
    elements: tuple[Element, ...]
    pumps: tuple[str, ...]
    station: tuple[str, ...]
    side_by_side: int
    in_line: int

    @property
    def check_in_load(self) -> bool:
        """Whether the check valve stands behind the discharge gauge: after a single pump."""
        return self.attached and len(self.pumps) == 1

    @property
    def checks(self) -> tuple[str, ...]:
        """Names of the check valves; a single pump's goes with the line."""
        return CHECKS[: len(self.pumps)] if self.attached or len(self.pumps) > 1 else ()


@lru_cache(maxsize=6)
def layout(arrangement: str, attached: bool) -> Layout:
    """The shape of a plant.

    Parameters
    ----------
    arrangement : "single", "side-by-side" or "in-line".
    attached : False takes the discharge line off: the station's outlet is open.
    """
    station = {"single": _single, "side-by-side": _side_by_side, "in-line": _in_line}[arrangement]()
    pumps = tuple(element.name for element in station if element.law == "pumps")
    suction = Element("suction-line", "supply", "suction", "pipes", 0)
    return Layout(
        attached=attached,
        elements=(suction, *station, *(_line(len(pumps)) if attached else _open_end(len(pumps)))),
        pumps=pumps,
        station=tuple(element.name for element in station),
        side_by_side=2 if arrangement == "side-by-side" else 1,
        in_line=2 if arrangement == "in-line" else 1,
    )


def _single() -> tuple[Element, ...]:
    return (Element("pump-1", "suction", "discharge", "pumps", 0),)


def _side_by_side() -> tuple[Element, ...]:
    return (
        Element("pump-1", "suction", "pump-1-out", "pumps", 0),
        Element("check-1", "pump-1-out", "discharge", "checks", 0),
        Element("pump-2", "suction", "pump-2-out", "pumps", 1),
        Element("check-2", "pump-2-out", "discharge", "checks", 1),
    )


def _in_line() -> tuple[Element, ...]:
    return (
        Element("pump-1", "suction", "pump-1-out", "pumps", 0),
        Element("check-1", "pump-1-out", "between", "checks", 0),
        Element("pump-2", "between", "pump-2-out", "pumps", 1),
        Element("check-2", "pump-2-out", "discharge", "checks", 1),
    )


def _line(pumps: int) -> tuple[Element, ...]:
    """From the station to the delivery vessel; a single pump's check valve comes first."""
    check = (Element("check-1", "discharge", "after-check", "checks", 0),) if pumps == 1 else ()
    return (
        *check,
        Element("valve", "after-check" if check else "discharge", "after-valve", "valves", 0),
        Element("discharge-line", "after-valve", "pipe-end", "pipes", 1),
        Element("end", "pipe-end", "delivery", "checks", pumps),
    )


def _open_end(pumps: int) -> tuple[Element, ...]:
    """Nothing at the station's outlet but the air: the jet takes its velocity head along."""
    return (Element("end", "discharge", "open", "checks", pumps),)
