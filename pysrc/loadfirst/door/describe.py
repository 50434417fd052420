"""An error as the page gets it: a code to decide by, facts to word it from, a sentence for the log."""

from __future__ import annotations

import math
import traceback
from typing import Any

from loadfirst.errors import FileError, InputError, LoadfirstError, quoted

LONGEST_DETAIL = 20_000  # [characters] of a traceback


def describe(error: Exception) -> dict[str, Any]:
    """Make the ``error`` part of a reply.

    Returns
    -------
    dict
        ``code`` and ``text`` always; for a value that cannot be used also
        ``where``, ``got``, ``rule``, ``facts``, ``hint`` and, where it came
        from a file, ``file``; for a bug ``detail`` with the traceback.
    """
    if isinstance(error, InputError):
        return _input(error)
    if isinstance(error, LoadfirstError):
        return {"code": error.code, "text": str(error)}
    detail = "".join(traceback.format_exception(error))
    text = f"Loadfirst made a mistake: {type(error).__name__}."
    return {"code": "bug", "text": text, "detail": detail[-LONGEST_DETAIL:]}


def _input(error: InputError) -> dict[str, Any]:
    described = {
        "code": error.code,
        "where": error.where,
        "got": _plain(error.got),
        "rule": error.rule,
        "facts": {name: _plain(fact) for name, fact in error.facts.items()},
        "text": error.text,
        "hint": error.hint,
    }
    return described | ({"file": error.file} if isinstance(error, FileError) else {})


def _plain(value: Any) -> Any:
    """A stranger's value as JSON can hold it: numbers and short texts as they are, the rest in words."""
    if value is None or isinstance(value, bool):
        return value
    if isinstance(value, float):
        return value if math.isfinite(value) else str(value)
    if isinstance(value, int):
        return value if abs(value) <= 2**53 else quoted(value)
    if isinstance(value, str):
        return value[:200]
    if isinstance(value, list | tuple) and all(isinstance(entry, str | int | float) for entry in value):
        return [_plain(entry) for entry in value[:100]]
    return quoted(value)
