"""The lists of the cases' guide, made from catalogues and packaged plants so that they cannot go stale."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any, get_args

from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.cause import Cause
from loadfirst.causes.group import Group
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.cli.causes import size_text
from loadfirst.plant import library
from loadfirst.plant.pump_kind import pump_kind
from loadfirst.plant.pumps import ResolvedPlant, read_pump
from loadfirst.plant.read import resolve_data

CAUSES_HEADER = "| cause | what happened | size | shown by |\n|---|---|---|---|"
OBSERVATIONS_HEADER = "| observation | what is looked at | hit | false alarm |\n|---|---|---|---|"
PLANTS_HEADER = "| plant | what it is | pumps | what else is there |\n|---|---|---|---|"
PUMPS_HEADER = "| pump | kind | what it is |\n|---|---|---|"
FITTED = {
    "branch": "a second user", "return_line": "a return line", "filter": "a filter",
    "second_line": "a second line", "summit": "a summit", "relief": "a relief valve",
    "check": "a check valve",
}  # fmt: skip
"""Tables of a plant file without which some causes cannot happen, in words."""


def causes() -> str:
    """Every cause of the catalogue, group after group."""
    return "\n\n".join(
        "\n".join(
            [f"**`{group}`**", "", CAUSES_HEADER, *(_cause(one) for one in CAUSES if one.group == group)]
        )
        for group in get_args(Group)
    )


def _cause(one: Cause) -> str:
    size = "–" if one.size is None else size_text(one.size)
    alike = f" No reading tells it from `{one.alike}`." if one.alike else ""
    return f"| `{one.id}` | {one.says}{alike} | {size} | {_ids(one.shown_by)} |"


def observations() -> str:
    """Everything that can be looked at, with its two chances."""
    rows = (
        f"| `{id}` | {one.says} | {one.hit:.0%} | {one.false_alarm:.0%} |" for id, one in OBSERVATIONS.items()
    )
    return "\n".join([OBSERVATIONS_HEADER, *rows])


def plants() -> str:
    """The packaged plants, and what of each some causes need."""
    rows = (_plant(id, library.data("plants", id)) for id in library.ids("plants"))
    return "\n".join([PLANTS_HEADER, *rows])


def pumps() -> str:
    """The packaged pumps, which `pump.model` may name."""
    every = ((id, read_pump(library.path("pumps", id))) for id in library.ids("pumps"))
    return "\n".join([PUMPS_HEADER, *(f"| `{id}` | {pump_kind(one)} | {one.title} |" for id, one in every)])


def _plant(id: str, data: dict[str, Any]) -> str:
    plant = resolve_data(data)
    return f"| `{id}` | {plant.plant.title} | {_pumps(plant)} | {', '.join(_fitted(plant, data)) or '–'} |"


def _pumps(plant: ResolvedPlant) -> str:
    kinds = [pump_kind(pump) for pump in plant.pumps]
    return kinds[0] if len(kinds) == 1 else f"two {kinds[0]}, {plant.plant.pump.arrangement}"


def _fitted(plant: ResolvedPlant, data: dict[str, Any]) -> Iterator[str]:
    yield from (words for key, words in FITTED.items() if key in data)
    if data.get("drive", {}).get("frequency_hz") is not None:
        yield "a variable-speed drive"
    if plant.plant.control.fitted:
        yield "a controller"


def _ids(ids: tuple[str, ...]) -> str:
    return " ".join(f"`{id}`" for id in ids) or "–"


LISTS: dict[str, Callable[[], str]] = {
    "causes": causes, "observations": observations, "plants": plants, "pumps": pumps,
}  # fmt: skip
"""By what stands in its marks."""
