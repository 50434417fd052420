"""What a composed case is about: plant, cause and size, drawn."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, NamedTuple, get_args

from loadfirst.cases.case import Change, Check
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.pieces import pieces
from loadfirst.cases.compose.refused import Refused
from loadfirst.cases.happened import yesterday_of
from loadfirst.cases.safety import refusal
from loadfirst.cases.truth import family
from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.cause import Cause
from loadfirst.causes.group import Group
from loadfirst.days.two_days import two_days
from loadfirst.errors import InputError
from loadfirst.plant import library
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import plant_data, resolve_data

Level = Literal["first-steps", "operator", "engineer"]
LEVELS: tuple[Level, ...] = get_args(Level)
GROUPS: tuple[Group, ...] = get_args(Group)
AT_ONE_PLANT = 12
"""Draws after which another plant is taken, where none is wished: to reckon all suspects takes a while."""
SEEDS = 999_999
SIZES: dict[Level, tuple[float, float]] = {
    "first-steps": (1.0, 1.8), "operator": (0.7, 1.4), "engineer": (0.4, 1.1)
}  # fmt: skip
"""Least and greatest size of a cause, over one worth showing. Own choice. [-]"""
EDGE = 0.02
"""So much of the room that a plant leaves a cause is not used at either end. [-]"""
UNFIT = frozenset({"late-second"})
"""Plants that are about something else than what changes overnight."""


class Wish(NamedTuple):
    """What is asked for; what is left out is drawn.

    Attributes
    ----------
    seed : from 1 to 999999.
    """

    seed: int
    plant: str | None = None
    group: Group | None = None
    level: Level | None = None


class Subject(NamedTuple):
    """What is to be told: the case's own seed, its plant by id, its level, its cause and its size."""

    seed: int
    plant: str
    level: Level
    cause: Cause
    size: float | None

    @property
    def change(self) -> Change:
        """As a case file has it."""
        return Change(cause=self.cause.id, size=self.size)


def plant_of(wish: Wish, number: int) -> str:
    """The plant of a draw."""
    fit = [id for id in library.ids("plants") if id not in UNFIT]
    return wish.plant or Chance(wish.seed, ("plant", number // AT_ONE_PLANT)).pick("id", fit)


def subject(wish: Wish, number: int) -> Subject:
    """Draw number `number`, from 0.

    Raises
    ------
    Refused
        Where nothing of the group that is wished for can happen to the plant.
    """
    chance = Chance(wish.seed, ("subject", number))
    plant = plant_of(wish, number)
    resolved = resolve_data(plant_data(plant))
    level = Chance(wish.seed, ("level",)).pick("level", LEVELS) if wish.level is None else wish.level
    cause = _cause(chance, resolved, _group(wish, number, resolved))
    return Subject(
        1 + chance.whole("seed", SEEDS), plant, level, cause, _size(chance, cause, resolved, level)
    )


def _group(wish: Wish, number: int, plant: ResolvedPlant) -> Group:
    """Each is as likely, nothing half as likely; drawn with the plant, lest easy ones crowd out others."""
    can = {one.group for one in CAUSES if one.applies(plant) is None}
    here = [one for one in GROUPS for _ in range(1 if one == "nothing" else 2) if one in can]
    chosen = wish.group or Chance(wish.seed, ("group", number // AT_ONE_PLANT)).pick("group", here)
    if chosen not in can:
        raise Refused(f"nothing of the group {chosen} can happen to this plant")
    return chosen


def _cause(chance: Chance, plant: ResolvedPlant, group: Group) -> Cause:
    """Within a group, families of causes that look alike are as likely as each other.

    What makes a single pointer tremble moves no reading that a story could tell.
    """
    trembling = [one for one in CAUSES if one.hunts and one.group == "instrument"]
    can = [one for one in CAUSES if one.group == group and one.applies(plant) is None]
    members = [one for one in can if one not in trembling]
    families = list(dict.fromkeys(family(one.id) for one in members))
    kin = chance.pick("family", families)
    return chance.pick("cause", [one for one in members if family(one.id) == kin])


def _size(chance: Chance, cause: Cause, plant: ResolvedPlant, level: Level) -> float | None:
    """A size round the one worth showing, three digits; to either side where the range has both."""
    if cause.size is None:
        return None
    least, most = SIZES[level]
    low, high = cause.sizes(plant)
    room = (low + EDGE * (high - low), high - EDGE * (high - low))
    far = (cause.size.usual - cause.size.none) * (least + (most - least) * chance.share("size"))
    if cause.size.low < cause.size.none < cause.size.high and chance.share("side") < 0.5:
        far = -far
    return float(f"{min(max(cause.size.none + far, room[0]), room[1]):.3g}")


def shut_in() -> Check:
    """The test in which the pump pushes against a shut valve."""
    test = pieces("checks")["shut-in"]
    return Check(
        id="shut-in", says=test["says"][0], minutes=test["minutes"], does={"valve": {"opening": 0.0}},
        reads=("gauge-discharge",),
    )  # fmt: skip


@lru_cache(maxsize=32)
def may_shut_in(plant: str) -> bool:
    """Whether that test harms nothing at a plant, and a hand moves its valve."""
    data = yesterday_of(plant, 1)
    valve = next(one for one in CAUSES if one.id == "valve-throttled")
    if valve.applies(resolve_data(data)) is not None:
        return False
    shut = apply_edits(data, {"valve.opening": 0.0})
    try:
        return refusal(shut_in(), two_days(shut, shut).today) is None
    except InputError:
        return False


def tests_at(plant: str) -> list[Check]:
    """Tests on offer at a plant."""
    return [shut_in()] if may_shut_in(plant) else []
