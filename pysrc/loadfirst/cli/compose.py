"""Puzzles from a seed, as files: what is printed of them, and of the draws that were refused."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from loadfirst.cases.compose.compose import Composed, compose
from loadfirst.cases.compose.subject import Wish
from loadfirst.errors import FileError, InputError


class Order(NamedTuple):
    """The first wish, how many, into which folder (None: printed), and whether refusals are told."""

    wish: Wish
    times: int
    folder: Path | None
    explain: bool


def composed(order: Order) -> Iterator[Composed]:
    """One puzzle after the other, of seeds that follow each other; each is written as soon as it is there.

    Raises
    ------
    InputError
        Where no draw makes one.
    FileError
        Where a file cannot be written.
    """
    for number in range(order.times):
        one = compose(order.wish._replace(seed=order.wish.seed + number))
        for draw, why in enumerate(one.refused if order.explain else (), start=1):
            print(f"{one.name}: draw {draw} refused: {why}", file=sys.stderr)
        if order.folder is None:
            print(one.text, flush=True)
        else:
            _write(order.folder / one.name, one.text)
            print(order.folder / one.name, flush=True)
        yield one


def share(every: list[Composed]) -> str:
    """How many draws made a puzzle."""
    tried = sum(one.tried for one in every)
    return f"{len(every)} of {tried} draws made a puzzle ({len(every) / tried:.0%})."


def _write(path: Path, text: str) -> None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    except OSError as trouble:
        allowed = "a file that can be written"
        raise FileError(
            str(path), InputError("the file", trouble.strerror, allowed, rule="unreadable")
        ) from None
