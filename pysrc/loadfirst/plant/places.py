"""Where an error stands: one raised on a part is put into the whole it belongs to."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from loadfirst.errors import FileError, InputError


@contextmanager
def inside(where: str) -> Iterator[None]:
    """Put `where` in front of the place of any InputError raised within.

    An error about the part as a whole gets `where` alone. One that names
    another file, such as a packaged pump's, passes as it is.
    """
    try:
        yield
    except FileError:
        raise
    except InputError as cause:
        place = where if cause.where == "the file" else f"{where}.{cause.where}"
        raise InputError(
            place, cause.got, cause.allowed, cause.hint, rule=cause.rule, **cause.facts
        ) from cause
