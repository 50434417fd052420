"""Names that are written nearly alike: what somebody probably meant."""

from __future__ import annotations

from collections.abc import Collection

NEAR, SOMEHOW = 0.75, 0.6
"""Likeness of two names that are near; the second is enough where they begin or end alike. [-]"""
ALIKE = 3  # letters at an end


def nearest(name: str, known: list[str]) -> str:
    """The known name that is written most like `name`; empty where none comes near.

    Words of a name in another order make no difference: ``suction-gauge`` is near ``gauge-suction``.
    """
    import difflib  # only a mistake needs it

    name = name[:80]
    sorted_words = {_sorted_words(one): one for one in known}
    if (same := sorted_words.get(_sorted_words(name))) is not None:
        return same
    found = difflib.get_close_matches(name, known, n=5, cutoff=SOMEHOW)
    return next(
        (one for one in found if _near(name, one, difflib.SequenceMatcher(a=name, b=one).ratio())), ""
    )


def _sorted_words(name: str) -> str:
    return "-".join(sorted(name.split("-")))


def _near(name: str, known: str, ratio: float) -> bool:
    ends_alike = name[:ALIKE] == known[:ALIKE] or name[-ALIKE:] == known[-ALIKE:]
    return ratio >= NEAR or (ratio >= SOMEHOW and ends_alike)


def meant(name: str, known: Collection[str], otherwise: str = "") -> str:
    """The question whether the known name most like it was meant; `otherwise` where none comes near."""
    near = nearest(name, list(known))
    return f"Did you mean {near}?" if near else otherwise
