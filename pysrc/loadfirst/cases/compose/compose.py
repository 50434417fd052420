"""Draw after draw, until one is a fair case."""

from __future__ import annotations

from typing import Any, NamedTuple

from loadfirst.cases.bit_by_bit import Pieces, Stage, at_once
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.judged import judge
from loadfirst.cases.compose.lead import Lead, lead
from loadfirst.cases.compose.morning import Morning, reckoning_at
from loadfirst.cases.compose.offer import offer
from loadfirst.cases.compose.refused import Refused, TooWide
from loadfirst.cases.compose.rivals import rivals
from loadfirst.cases.compose.sizes import WIDTHS, Sizes
from loadfirst.cases.compose.story import hints, teaches, words
from loadfirst.cases.compose.subject import Subject, Wish, subject
from loadfirst.cases.compose.toml_file import toml
from loadfirst.cases.compose.verdicts import verdicts
from loadfirst.causes.cause import Cause
from loadfirst.errors import InputError

MOST = 100
"""Draws after which it is given up."""
TURN = 0.2
"""How long one piece of reckoning suspects takes. [s]"""
WRITTEN = 6
"""Pieces that the words come in."""
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
    """One draw of a wish, its sizes as far apart as it stays fair.

    Raises
    ------
    Refused
        Where it makes no fair case.
    """
    return at_once(drawing(wish, number))


def drawing(wish: Wish, number: int) -> Pieces[Composed]:
    """`draw` in pieces: suspects, words, then the plays that show whether it is fair."""
    for width in WIDTHS:
        about = subject(wish, number, width)
        try:
            text = yield from _written(about)
        except TooWide:
            if width == WIDTHS[-1] or all(one is None for one in about.sizes):
                raise
        else:
            return Composed(file_name(wish), text, number + 1)
    raise AssertionError("the last width refuses or makes a case")


def file_name(wish: Wish) -> str:
    """The name of a wish's file: all that was wished for, then the seed."""
    wished = [part for part in (wish.plant, wish.group, wish.level) if part is not None]
    return "-".join([FAMILY, *wished, f"{wish.seed}.toml"])


def _written(about: Subject) -> Pieces[str]:
    yield from _reckoned(about)
    chance = Chance(about.seed, ("words",))
    morning = Morning(about)
    of = lead(morning, chance)
    yield Stage("words", 2, WRITTEN)
    text = toml((yield from _case(morning, of, chance)))
    yield from judge(text, about)
    return text


def _reckoned(about: Subject) -> Pieces[None]:
    """What every suspect would show at a plant, two at once too."""
    work, done, of = reckoning_at(about.plant), 0, 1
    while done < of:
        done, of = work.advance(TURN)
        yield Stage("suspects", done, of)
    for number, pairs in enumerate(dict.fromkeys(((), about.pairs))):
        reckoning_at(about.plant, pairs).lay_out()
        yield Stage("words", number, WRITTEN)


def _case(morning: Morning, of: Lead, chance: Chance) -> Pieces[dict[str, Any]]:
    about = morning.subject
    wrong = rivals(morning, of, chance)
    checks = offer(morning, of, wrong, chance)
    yield Stage("words", 3, WRITTEN)
    choices = verdicts(morning, of, wrong, checks, chance)
    yield Stage("words", 4, WRITTEN)
    nudges = yield from hints(morning, of, checks, chance, Stage("words", 4, WRITTEN))
    yield Stage("words", 5, WRITTEN)
    told = words(morning, of, checks, chance)
    return {
        "format": 1, "title": told.title, "level": about.level, "family": FAMILY,
        "teaches": teaches(of), "plant": about.plant, "seed": about.seed, "teller": of.teller,
        "story": told.story, "words": told.drawn,
        "today": [_change(cause, size) for cause, size in zip(about.causes, about.sizes, strict=True)],
        "prediction": told.asks, "shown": {"at_first": list(of.at_first)},
        "checks": checks, "choices": choices, "hints": nudges, "proof": _proof(morning),
    }  # fmt: skip


def _change(cause: Cause, sizes: Sizes | None) -> dict[str, Any]:
    if sizes is None:
        return {"cause": cause.id}
    if sizes.low == sizes.high:
        return {"cause": cause.id, "size": sizes.low}
    return {"cause": cause.id, "between": list(sizes)}


def _proof(morning: Morning) -> dict[str, str]:
    """What other draws of chance, and of the sizes, bear out too."""
    if not morning.sure:
        raise TooWide("no reading is clear enough to be claimed")
    return {id: CLAIMS[way] for id, way in list(morning.sure.items())[:10]}
