"""What a composed case is about: plant, causes and sizes, drawn."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple, get_args

from loadfirst.cases.case import LEVELS, Check, Level
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.pieces import pieces
from loadfirst.cases.compose.plausible import Span, beside, plausible, spans, thinkable
from loadfirst.cases.compose.refused import Refused
from loadfirst.cases.compose.sizes import WIDTHS, Sizes, drawn
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

GROUPS: tuple[Group, ...] = get_args(Group)
AT_ONE_PLANT = 12
"""Draws after which another plant is taken, where none is wished: to reckon all suspects takes a while."""
SEEDS = 999_999
UNFIT = frozenset({"late-second"})
"""Plants that are about something else than what changes overnight."""
NIGHTS = 2
"""How many times likelier a night lies between the two days than anything longer."""
BOTH = 0.25
"""Share of the draws with two causes at once, above the first steps and where no group is wished. [-]"""
MISTAKEN = 0.35
"""Share of the other draws, above the first steps, that offer two at once which did not happen. [-]"""
HALF = 0.6
"""Share of those in which one of the two did. [-]"""


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
    """What is to be told.

    Attributes
    ----------
    seed : the case's own.
    plant : its id.
    causes : what happened, one or two; of two groups where they are two.
    sizes : of each cause; None where it has none.
    mistaken : two causes that did not both happen, to be on offer together; None as a rule.
    span : what lies between the two days.
    """

    seed: int
    plant: str
    level: Level
    causes: tuple[Cause, ...]
    sizes: tuple[Sizes | None, ...]
    mistaken: tuple[Cause, Cause] | None
    span: Span

    @property
    def groups(self) -> frozenset[Group]:
        """Where it sits."""
        return frozenset(cause.group for cause in self.causes)

    @property
    def families(self) -> frozenset[str]:
        """What no reading tells from it."""
        return frozenset(family(cause.id) for cause in self.causes)

    @property
    def pairs(self) -> tuple[tuple[str, str], ...]:
        """Ids of two causes at once that have to be weighed."""
        both = self.causes if len(self.causes) == 2 else self.mistaken
        return () if both is None else ((both[0].id, both[1].id),)


def plant_of(wish: Wish, number: int) -> str:
    """The plant of a draw."""
    fit = [id for id in library.ids("plants") if id not in UNFIT]
    return wish.plant or Chance(wish.seed, ("plant", number // AT_ONE_PLANT)).pick("id", fit)


def subject(wish: Wish, number: int, width: float = WIDTHS[0]) -> Subject:
    """Draw number `number`, from 0.

    Parameters
    ----------
    width : how far apart the ends of the sizes are, of `sizes.WIDTHS`; nothing else depends on it.

    Raises
    ------
    Refused
        Where nothing of the group that is wished for can happen to the plant that was drawn.
    InputError
        Where it cannot to the plant that is wished for.
    """
    chance = Chance(wish.seed, ("subject", number))
    plant = plant_of(wish, number)
    resolved = resolve_data(plant_data(plant))
    level = Chance(wish.seed, ("level",)).pick("level", LEVELS) if wish.level is None else wish.level
    can = possible(plant)
    first = _cause(chance, can, _group(wish, number, plant))
    several = level != "first-steps" and first.group != "nothing" and beside(first)
    both = several and wish.group is None and chance.share("both") < BOTH
    causes = (first, _another(chance, _beside(can, first), "second")) if both else (first,)
    within = spans(*causes)
    span = chance.pick("span", [one for one in within for _ in range(NIGHTS if one == "night" else 1)])
    mistaken = None
    if several and not both and chance.share("mistaken") < MISTAKEN:
        mistaken = _mistaken(chance, tuple(one for one in can if thinkable(plant, one, span)), first)
    sizes = tuple(drawn(chance, cause, (plant, resolved), level, width) for cause in causes)
    return Subject(1 + chance.whole("seed", SEEDS), plant, level, causes, sizes, mistaken, span)


@lru_cache(maxsize=32)
def possible(plant: str) -> tuple[Cause, ...]:
    """What can happen at a plant, and what somebody there would think of."""
    resolved: ResolvedPlant = resolve_data(plant_data(plant))
    return tuple(one for one in CAUSES if plausible(plant, one) and one.applies(resolved) is None)


def _group(wish: Wish, number: int, plant: str) -> Group:
    """Each is as likely, nothing half as likely; drawn with the plant, lest easy ones crowd out others."""
    can = {one.group for one in possible(plant)}
    here = [one for one in GROUPS for _ in range(1 if one == "nothing" else 2) if one in can]
    chosen = wish.group or Chance(wish.seed, ("group", number // AT_ONE_PLANT)).pick("group", here)
    if chosen not in can:
        if wish.plant is not None:
            raise InputError(
                "group", chosen, "one of which something is plausible at this plant",
                "Another plant, or another group, has cases.", rule="choice", choices=sorted(can),
            )  # fmt: skip
        raise Refused(f"nothing of the group {chosen} can happen to this plant")
    return chosen


def _cause(chance: Chance, can: tuple[Cause, ...], group: Group, name: str = "cause") -> Cause:
    """Within a group, families of causes that look alike are as likely as each other."""
    members = [one for one in can if one.group == group]
    families = list(dict.fromkeys(family(one.id) for one in members))
    kin = chance.pick(f"family.{name}", families)
    return chance.pick(name, [one for one in members if family(one.id) == kin])


def _beside(can: tuple[Cause, ...], *others: Cause) -> tuple[Cause, ...]:
    """What may have happened too: of other groups, and by other keys."""
    groups = {"nothing", *(one.group for one in others)}
    keys = {key for one in others for key in one.keys}
    return tuple(one for one in can if one.group not in groups and not keys & {*one.keys} and beside(one))


def _mistaken(chance: Chance, can: tuple[Cause, ...], first: Cause) -> tuple[Cause, Cause]:
    """Two that did not both happen; often one of them did."""
    half = first if chance.share("half") < HALF else _another(chance, _beside(can, first), "half")
    return half, _another(chance, _beside(can, half, first), "other")


def _another(chance: Chance, fit: tuple[Cause, ...], name: str) -> Cause:
    groups = [group for group in GROUPS if any(one.group == group for one in fit)]
    return _cause(chance, fit, chance.pick(f"group.{name}", groups), name)


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
