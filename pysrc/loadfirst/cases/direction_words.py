"""Whether prose that says "rose from … to …" agrees with its own numbers.

Looked at are passages that name yesterday's and today's reading of one
instrument next to each other; the last word of direction before them in the
sentence counts. What would have happened otherwise is left alone.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Literal, NamedTuple

Way = Literal["up", "down"]

WORDS: dict[Way, tuple[str, ...]] = {
    "up": ("rose", "risen", "rises", "climbed", "grew", "grown", "increased", "up"),
    "down": ("fell", "fallen", "falls", "dropped", "sank", "sunk", "decreased", "down"),
}

SUPPOSED = re.compile(r"\b(would|could|should|might|if|had it)\b", re.IGNORECASE)
_PAIR = re.compile(
    r"\{(?P<day>yesterday|today)\.(?P<id>[a-z0-9:-]+)\}(?P<between>[^{}.?!]{1,40})"
    r"\{(?P<other>yesterday|today)\.(?P=id)\}"
)
_SENTENCE = re.compile(r"[.?!:;]")
_WAY = re.compile(
    "|".join(rf"\b{re.escape(word)}\b" for words in WORDS.values() for word in words), re.IGNORECASE
)


class Contradiction(NamedTuple):
    """A passage whose word of direction its numbers deny."""

    passage: str
    id: str
    word: str


def contradictions(text: str, change: Callable[[str], float | None]) -> Iterator[Contradiction]:
    """Passages that say the wrong way.

    Parameters
    ----------
    text : prose with placeholders.
    change : how far an instrument has gone up, by its id; None where nobody can say. [SI]
    """
    text = " ".join(text.split())
    for pair in _PAIR.finditer(text):
        if pair["day"] == pair["other"]:
            continue
        start = max((end.end() for end in _SENTENCE.finditer(text, 0, pair.start())), default=0)
        before = text[start : pair.start()]
        found = list(_WAY.finditer(before))
        moved = change(pair["id"])
        if not found or SUPPOSED.search(before) or moved is None:
            continue
        word = found[-1][0].lower()
        if (word in WORDS["up"]) != (moved > 0):
            yield Contradiction(text[start : pair.end()].strip(), pair["id"], word)
