"""How the keys of a controller fit together."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.errors import InputError

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant


def control_faults(plant: Plant) -> Iterator[InputError]:
    """Output limits in their order, and a level's set point inside its vessel."""
    control = plant.control
    if control.low_percent > control.high_percent:
        yield _beside(
            "control.low_percent", control.low_percent, "at or below", "control.high_percent",
            control.high_percent, "%",
        )  # fmt: skip
    if not control.fitted or control.mode == "manual" or not control.of.endswith("level"):
        return
    name = control.of.removesuffix("-level")
    vessel = plant.delivery if name == "delivery" else plant.supply
    if control.set_m < vessel.bottom_m:
        yield _beside("control.set_m", control.set_m, "at or above", f"{name}.bottom_m", vessel.bottom_m, "m")
    if control.set_m > vessel.top_m:
        yield _beside("control.set_m", control.set_m, "at or below", f"{name}.top_m", vessel.top_m, "m")


def _beside(where: str, got: float, word: str, other: str, limit: float, unit: str) -> InputError:
    """Two keys that do not fit each other."""
    return InputError(
        where, got, f"{word} {other}, {limit:g} {unit}", rule="together", order=word, other=other,
        limit=limit, unit=unit,
    )  # fmt: skip
