"""Every key of a kind of file as a flat list: what the guide prints and the page offers."""

from __future__ import annotations

from functools import lru_cache
from typing import Any, NamedTuple

import msgspec
from msgspec import inspect

from loadfirst.plant.expect import Expected, expected, note, plain


class Key(NamedTuple):
    """One key of a file.

    Attributes
    ----------
    path : str
        Where it stands: ``valve.opening``.
    unit : str
        As it is written in the guide: ``m³/h``; ``-`` for a plain number, empty for words.
    says : str
        One sentence on what it means.
    expected : Expected
        Its kind and range.
    required : bool
        True where the file must give it.
    default : object
        What holds when it is left out, None where nothing does.
    """

    path: str
    unit: str
    says: str
    expected: Expected
    required: bool
    default: Any


@lru_cache(maxsize=32)
def keys_of(kind: type) -> dict[str, Key]:
    """All keys of a msgspec type by their path, tables within tables included, in file order."""
    found: dict[str, Key] = {}
    _collect(inspect.type_info(kind), "", found, {})
    return found


def _collect(node: inspect.Type, above: str, found: dict[str, Key], defaults: dict[str, Any]) -> None:
    inner = plain(node)
    if not isinstance(inner, inspect.StructType):
        return
    for field in inner.fields:
        path = f"{above}.{field.encode_name}" if above else field.encode_name
        default = defaults.get(field.encode_name, _default(field))
        if isinstance(plain(field.type), inspect.StructType):
            _collect(field.type, path, found, default if isinstance(default, dict) else {})
        else:
            found[path] = _key(path, field, default)


def _key(path: str, field: inspect.Field, default: Any) -> Key:
    wanted = expected(field.type)
    unit = note(field.type, "unit") or ("" if wanted.kind == "text" else str(wanted.facts.get("unit", "")))
    return Key(path, unit, note(field.type, "description"), wanted, field.required, default)


def _default(field: inspect.Field) -> Any:
    value = field.default if field.default_factory is msgspec.NODEFAULT else field.default_factory()
    return None if value in (msgspec.NODEFAULT, msgspec.UNSET) else msgspec.to_builtins(value)
