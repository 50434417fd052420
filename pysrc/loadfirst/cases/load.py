"""From an id or a file's text to a proven case; the last few are kept, because every move asks again."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from loadfirst.cases.case import Case
from loadfirst.cases.draw import drawn, other_words
from loadfirst.cases.proof import Proven, prove
from loadfirst.cases.proof_texts import texts_hold
from loadfirst.cases.read import decode_case, packaged
from loadfirst.errors import FileError, InputError


@lru_cache(maxsize=4)
def load_case(asked: str | tuple[str, str], seed: int | None = None) -> Proven:
    """A case, drawn, with both days computed and every claim tested.

    Parameters
    ----------
    asked : str or (str, str)
        Id of a packaged case, or name and text of a file.
    seed : int, optional
        Draws it; its own where left out.

    Raises
    ------
    InputError
        For an unknown id.
    FileError
        For a case that cannot be read or whose claims do not hold.
    """
    if isinstance(asked, str):
        return proven(asked, packaged(asked), f"{asked}.toml", seed)
    name, text = asked
    return proven(name.removesuffix(".toml"), decode_case(text, name), name, seed)


def proven(id: str, case: Case, file: str, seed: int | None = None) -> Proven:
    """Draw a case, compute both days and test its claims, whatever words are drawn. Raises FileError."""
    try:
        found = prove(id, drawn(case, case.seed if seed is None else seed))
        for other in other_words(case, found.case):
            texts_hold(replace(found.happened, case=other))
        return found
    except FileError:
        raise
    except InputError as cause:
        raise FileError(file, cause) from cause
