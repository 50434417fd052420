"""The words that composed cases are made of, and the way they are put together."""

from __future__ import annotations

import re
from typing import Any

from loadfirst.cases.compose.chance import Chance
from loadfirst.plant import library

_TOKEN = re.compile(r"<([A-Za-z]+)>")


def pieces(file: str) -> dict[str, Any]:
    """A file of `scenarios/compose`, by its name without ``.toml``."""
    return library.data("compose", file)


def fill(text: str, **words: str) -> str:
    """A piece with words in place of its tokens; ``<Name>`` is ``name`` with a capital letter.

    Raises
    ------
    KeyError
        For a token that has no word.
    """

    def word(found: re.Match[str]) -> str:
        name = found[1]
        return words[name] if name.islower() else capital(words[name.lower()])

    return _TOKEN.sub(word, text)


def capital(text: str) -> str:
    """The text as a sentence begins."""
    return text[:1].upper() + text[1:]


def story_piece(chance: Chance, table: str, key: str = "pieces", **words: str) -> str:
    """One of the pieces of a table of the stories, filled."""
    return fill(chance.pick(f"{table}.{key}", pieces("stories")[table][key]), **words)
