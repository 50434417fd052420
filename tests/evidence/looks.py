"""What tests of the evidence share: plants, what became of them, and what their instruments show."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from pathlib import Path

from msgspec.structs import replace

from loadfirst.causes.catalogue import cause
from loadfirst.evidence.predict import Predictions, predict
from loadfirst.instruments.instrument import Reading
from loadfirst.instruments.panel import readings
from loadfirst.plant import library, toml_text
from loadfirst.plant.automatic import settled
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import changed, resolve_data
from loadfirst.plant.state import true_states

OTHERS = Path(__file__).parents[1] / "causes" / "plants"

Shown = dict[str, Reading]


@lru_cache(maxsize=4)
def plant(name: str) -> ResolvedPlant:
    """A packaged plant, or one of those of the tests of causes."""
    path = OTHERS / f"{name}.toml"
    return resolve_data(toml_text.read(path) if path.exists() else library.data("plants", name))


@lru_cache(maxsize=4)
def predictions(name: str) -> Predictions:
    """Of all causes."""
    return predict(plant(name))


def happened(name: str, *changes: tuple[str, float | None]) -> ResolvedPlant:
    """The plant with causes at sizes, None: the usual one."""
    one = plant(name)
    for id, size in changes:
        one = changed(one, cause(id).edits(one, size))
    return one


def shown(plants: Sequence[ResolvedPlant], seeds: Sequence[int]) -> list[tuple[Shown, Shown]]:
    """Both days of many plants: the first of them yesterday, each of the others today, each with its seed."""
    rest = settled(plants)
    first, *others = true_states(rest)
    found = []
    for one, state, seed in zip(rest[1:], others, seeds, strict=True):
        before = by_id(readings(first, seeded(rest[0], seed).plant, look=0))
        found.append((before, by_id(readings(state, seeded(one, seed).plant, look=1, before=before))))
    return found


def both(name: str, *changes: tuple[str, float | None], seed: int = 0) -> tuple[Shown, Shown]:
    """Yesterday's readings and today's."""
    return shown([plant(name), happened(name, *changes)], [seed])[0]


def seeded(one: ResolvedPlant, seed: int) -> ResolvedPlant:
    """With instruments that err as the seed draws it."""
    return one._replace(plant=replace(one.plant, meters=replace(one.plant.meters, seed=seed)))


def by_id(found: Sequence[Reading]) -> Shown:
    """Readings by their instruments."""
    return {reading.id: reading for reading in found}


def only(readings: Mapping[str, Reading], *ids: str) -> Shown:
    """Some of them."""
    return {id: readings[id] for id in ids}
