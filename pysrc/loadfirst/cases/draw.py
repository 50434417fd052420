"""What a seed draws of a case: sizes between their ends, words of the story, the instruments' chance.

A drawn case is a case like any other, its sizes fixed and its words in place, so that
nothing after this knows of chance. The same seed draws the same everywhere.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import product
from math import exp, log
from typing import Any

from msgspec import to_builtins
from msgspec.structs import replace

from loadfirst.cases.case import Case, Change
from loadfirst.causes.catalogue import cause
from loadfirst.errors import InputError
from loadfirst.instruments.generator import bits, stream, uniform
from loadfirst.plant.decode import decode
from loadfirst.plant.places import inside

INSTRUMENT_SEEDS = 999
"""Seeds of the instruments' own errors: 1 to this."""

_WORD = re.compile(r"\{word\.([a-z0-9-]{1,40})\}")


def drawn(case: Case, seed: int) -> Case:
    """The case that a seed draws.

    Parameters
    ----------
    case : as its file has it.
    seed : from 1.

    Raises
    ------
    InputError
        For a `{word.…}` that the file does not have, and for an empty range of sizes.
    """
    chosen = {name: some[_pick(seed, name, len(some))] for name, some in case.words.items()}
    today = tuple(_sized(change, seed, number) for number, change in enumerate(case.today))
    return _with_words(replace(case, today=today, seed=seed), chosen)


def other_words(case: Case, one: Case) -> Iterator[Case]:
    """A drawn case with words that other seeds draw: the longest of all, then each of them at least once.

    Parameters
    ----------
    case : as its file has it.
    one : the same, as some seed draws it.

    Raises
    ------
    InputError
        For a text that would overrun its limit.
    """
    whole = replace(case, today=one.today, seed=one.seed)
    if case.words:
        yield _with_words(whole, {name: max(some, key=len) for name, some in case.words.items()})
    for number in range(max(map(len, case.words.values()), default=0)):
        yield _with_words(whole, {name: some[number % len(some)] for name, some in case.words.items()})


def at_ends(case: Case) -> list[Case]:
    """A case once for each way in which all sizes that are drawn between two come out at one of them."""
    return [replace(case, today=sizes) for sizes in product(*map(_ends, case.today))]


def _ends(change: Change) -> list[Change]:
    if change.between is None:
        return [change]
    return [replace(change, between=None, size=end) for end in change.between]


def _with_words(case: Case, chosen: dict[str, str]) -> Case:
    filled: Any = _fill(to_builtins(replace(case, words={})), chosen, "")
    try:
        return decode(Case, filled)
    except InputError as error:  # nothing else has changed
        raise InputError(
            error.where, error.got, error.allowed, "So it is once its words are drawn.", rule=error.rule,
            **error.facts,
        ) from error  # fmt: skip


def _pick(seed: int, name: str, count: int) -> int:
    return bits(stream(seed, "word", name), 0) % count


def instrument_seed(seed: int) -> int:
    """The plant's `meters.seed` for a case's seed."""
    return 1 + bits(stream(seed, "instruments"), 0) % INSTRUMENT_SEEDS


def shows(seed: int, check: str, chance: float) -> bool:
    """Whether an observation shows something this time, of a chance. [-]"""
    return uniform(stream(seed, "observation", check)) < chance


def _sized(change: Change, seed: int, number: int) -> Change:
    if change.between is None:
        return change
    with inside(f"today[{number}]"):
        (low, high), size = change.between, cause(change.cause).size
    if size is None or change.size is not None:
        why = "this cause happens or does not" if size is None else "`size` is given"
        raise InputError(f"today[{number}].between", [low, high], f"left out: {why}", rule="together")
    if low >= high:
        raise InputError(
            f"today[{number}].between", f"{low:g}, {high:g}", "a smaller, then a larger size", rule="together"
        )
    share = uniform(stream(seed, "size", number))
    if size.scale == "log" and low > 0:
        chosen = exp(log(low) + share * log(high / low))
    else:
        chosen = low + share * (high - low)
    return replace(change, size=chosen)


def _fill(data: Any, chosen: dict[str, str], where: str) -> Any:
    """The same data with every drawn word put in."""
    if isinstance(data, str):
        return _WORD.sub(lambda found: _word(found[1], chosen, where), data)
    if isinstance(data, dict):
        return {key: _fill(value, chosen, f"{where}.{key}" if where else key) for key, value in data.items()}
    if isinstance(data, list | tuple):
        return [_fill(value, chosen, f"{where}[{number}]") for number, value in enumerate(data)]
    return data


def _word(name: str, chosen: dict[str, str], where: str) -> str:
    if name not in chosen:
        raise InputError(
            where, f"{{word.{name}}}", "a word that `words` draws", rule="lookup", choices=list(chosen)
        )
    return chosen[name]
