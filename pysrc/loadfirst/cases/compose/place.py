"""Where a composed case plays, and what things are called there."""

from __future__ import annotations

from typing import Any, NamedTuple

from loadfirst.cases.compose.pieces import fill, pieces
from loadfirst.causes.cause import Cause
from loadfirst.plant.read import plant_data, resolve_data

PREFIXES = {
    "suction-gauge": "gauge-suction", "far-gauge": "gauge-after-valve", "gauge": "gauge-discharge",
    "second-pump": "",
}  # fmt: skip
"""How ids of causes begin that can happen to every gauge, with its instrument, or to either pump."""


class Place(NamedTuple):
    """A place by its words.

    Attributes
    ----------
    at : where people stand.
    who : people, without an article.
    stakes : what hangs on it, whole sentences.
    nouns : what supply, delivery, liquid and second user are called there.
    two : whether there is more than one pump.
    """

    at: str
    who: tuple[str, ...]
    stakes: tuple[str, ...]
    nouns: dict[str, str]
    two: bool

    def instrument(self, id: str) -> dict[str, str]:
        """What a piece may say of an instrument: its name, and placeholders for its readings."""
        names = pieces("stories")["instrument"]
        name = names["of-two"].get(id, names[id]) if self.two else names[id]
        return {
            "name": fill(name, **self.nouns), "today": f"{{today.{id}}}", "yesterday": f"{{yesterday.{id}}}",
        }  # fmt: skip

    def lines(self, cause: Cause) -> list[str]:
        """What people say of a cause here: the verdict first, then what a teller may say."""
        begins, kind = parted(cause.id)
        spoken = pieces("spoken")
        if kind in spoken["pump"]:
            pump = "the second pump" if begins else "the first pump" if self.two else "the pump"
            return [fill(line, pump=pump) for line in spoken["pump"][kind]]
        if begins:
            name = self.instrument(PREFIXES[begins])["name"]
            return [fill(line, name=name) for line in spoken["gauge"][kind]]
        return [fill(line, **self.nouns) for line in spoken["cause"][kind]]


def parted(id: str) -> tuple[str, str]:
    """The id of a cause in two: which gauge or second pump it is about, empty for none; and what happened."""
    if id in pieces("spoken")["cause"]:
        return "", id
    begins = next((prefix for prefix in PREFIXES if id.startswith(f"{prefix}-")), "")
    return begins, id.removeprefix(f"{begins}-") if begins else id


def place_of(plant: str) -> Place:
    """The place of a plant, by the plant's id; `any` where it has none of its own."""
    places = pieces("stories")["place"]
    usual: dict[str, Any] = places["any"]
    own = usual | places.get(plant, {})
    nouns = {noun: own[noun] for noun in ("supply", "delivery", "liquid", "user")}
    arranged = resolve_data(plant_data(plant)).plant.pump.arrangement
    return Place(own["at"], tuple(own["who"]), tuple(own["stakes"]), nouns, arranged != "single")
