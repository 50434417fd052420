"""Draw after draw, until one is a fair case."""

from __future__ import annotations

from typing import Any, NamedTuple

from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.lead import Lead, lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.offer import offer
from loadfirst.cases.compose.refused import Refused
from loadfirst.cases.compose.story import hints, prediction, story, teaches, title
from loadfirst.cases.compose.subject import Subject, Wish, subject
from loadfirst.cases.compose.toml_file import toml
from loadfirst.cases.compose.verdicts import rivals, verdicts
from loadfirst.cases.fairness import fairness, unfair
from loadfirst.cases.load import load_case
from loadfirst.cases.players import SURE, led
from loadfirst.cases.proof import Proven
from loadfirst.cases.weighing import Weighing
from loadfirst.errors import InputError

MOST = 100
"""Draws after which it is given up."""
LEAST_CHECKS = 2
"""That the player needs who is led by information, above the first steps."""
PLAYS = 3
"""Draws of chance that the led player plays, besides the case's own; it takes its time."""
CLAIMS = {"up": "rises", "down": "falls", "same": "same"}
FAMILY = "practice"


class Composed(NamedTuple):
    """A finished case: name and text of its file, how many draws it took, why the others were refused."""

    name: str
    text: str
    tried: int
    refused: tuple[str, ...] = ()


def compose(wish: Wish) -> Composed:
    """A fair case for a wish; the same for the same wish.

    Raises
    ------
    InputError
        Where no draw makes one.
    """
    reasons: list[str] = []
    for number in range(MOST):
        try:
            return draw(wish, number)._replace(refused=tuple(reasons))
        except Refused as why:
            reasons.append(str(why))
    raise given_up(wish, reasons[-1])


def given_up(wish: Wish, last: str) -> InputError:
    """The error of a wish that no draw fulfils."""
    return InputError(
        "seed", wish.seed, f"one of which a case comes in {MOST} draws", f"The last was refused: {last}. "
        "Try another seed, plant, group or level.", rule="fair",
    )  # fmt: skip


def draw(wish: Wish, number: int) -> Composed:
    """One draw of a wish.

    Raises
    ------
    Refused
        Where it makes no fair case.
    """
    about = subject(wish, number)
    chance = Chance(about.seed, ("words",))
    morning = Morning(about)
    of = lead(morning, chance)
    name, text = f"practice-{wish.seed}.toml", toml(_case(morning, of, chance))
    try:
        proven = load_case((name, text))
    except InputError as error:
        raise Refused(f"it does not hold: {error.text}") from error
    _is_fair(proven, about)
    return Composed(name, text, number + 1)


def _case(morning: Morning, of: Lead, chance: Chance) -> dict[str, Any]:
    about = morning.subject
    wrong = rivals(morning, of)
    checks = offer(morning, of, wrong, chance)
    change = {"cause": about.cause.id} | ({} if about.size is None else {"size": about.size})
    return {
        "format": 0, "title": title(of, chance), "level": about.level, "family": FAMILY,
        "teaches": teaches(morning, of), "plant": about.plant, "seed": about.seed, "teller": of.teller,
        "story": story(morning, of, chance), "today": [change],
        "prediction": prediction(morning, of, checks, chance), "shown": {"at_first": list(of.at_first)},
        "checks": checks, "choices": verdicts(morning, of, wrong, checks, chance),
        "hints": hints(morning, of, checks, chance), "proof": _proof(morning),
    }  # fmt: skip


def _proof(morning: Morning) -> dict[str, str]:
    """What other draws of chance bear out too."""
    clear = [one for id, one in morning.shifts.items() if morning.clear(id)]
    if not clear:
        raise Refused("no reading is clear enough to be claimed")
    return {one.id: CLAIMS[one.moved or "same"] for one in clear[:10]}


def _is_fair(proven: Proven, about: Subject) -> None:
    if proven.refusals:
        raise Refused(f"a test would do harm today: {', '.join(proven.refusals.values())}")
    weighing = Weighing(proven)
    look = weighing.looks([about.seed])
    if weighing.of_choices(weighing.weigh(look, []))[0].max() >= SURE:
        raise Refused("what stands open at first tells all")
    found = fairness(weighing, plays_each=PLAYS)
    for fault in unfair(found, weighing):
        raise Refused(f"it is not fair: {fault.text}")
    needed = min(found.checks, len(led(weighing, look).checks))
    if about.level != "first-steps" and needed < LEAST_CHECKS:
        raise Refused(f"it is too easy: {needed:g} checks are enough")
