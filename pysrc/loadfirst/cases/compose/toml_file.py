"""A case as the text of its file."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Iterator, Mapping
from typing import Any

WIDTH = 98
"""Characters of a line of prose."""


def toml(data: Mapping[str, Any]) -> str:
    """Plain data as TOML: values first, then tables, then lists of tables.

    Parameters
    ----------
    data : keys are bare; texts hold no quotation mark of the typewriter and no backslash.
    """
    return "\n".join(_table(data, "")) + "\n"


def _table(data: Mapping[str, Any], header: str) -> Iterator[str]:
    if header:
        yield from ("", header)
    for key, value in data.items():
        if not isinstance(value, Mapping) and not _tables(value):
            yield f"{key} = {_value(value)}"
        elif header and isinstance(value, Mapping):
            yield from (f"{key}.{inner} = {_value(one)}" for inner, one in value.items())
    for key, value in data.items():
        if not header and isinstance(value, Mapping):
            yield from _table(value, f"[{key}]")
        elif _tables(value):
            for one in value:
                yield from _table(one, f"[[{key}]]")


def _tables(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and isinstance(value[0], Mapping)


def _value(value: Any) -> str:
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{key} = {_value(one)}" for key, one in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(map(_value, value)) + "]"
    return json.dumps(value)


def _text(text: str) -> str:
    if len(text) <= WIDTH and "\n" not in text:
        return json.dumps(text, ensure_ascii=False)
    parts = [
        textwrap.fill(part, WIDTH, break_long_words=False, break_on_hyphens=False)
        for part in text.split("\n\n")
    ]
    return '"""\n' + "\n\n".join(parts) + '\n"""'
