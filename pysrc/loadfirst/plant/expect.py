"""What the declaration of a key allows, in words and in numbers.

One description serves the sentence of an error, the facts that the page words
itself, and the tables of the author's guide.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct, inspect


class Expected(Struct, frozen=True):
    """What would do.

    Attributes
    ----------
    kind : str
        ``number``, ``whole``, ``text``, ``choice``, ``flag``, ``list`` or ``table``.
    bounds : str
        The range alone, in words: ``from 0 to 1``; empty where there is none.
    text : str
        The whole in words: ``a number from 0 to 1``.
    facts : dict
        The same for programs: ``low``, ``high``, ``unit``, ``choices`` …
    """

    kind: str
    text: str
    bounds: str = ""
    facts: dict[str, Any] = {}


def plain(node: inspect.Type) -> inspect.Type:
    """The type itself, without its notes and without "or nothing"."""
    if isinstance(node, inspect.Metadata):
        return plain(node.type)
    if isinstance(node, inspect.UnionType):
        return plain(next(option for option in node.types if not _is_nothing(option)))
    return node


def _options(node: inspect.Type) -> list[inspect.Type]:
    """What a value may be, without "or nothing"."""
    if isinstance(node, inspect.Metadata):
        return _options(node.type)
    if isinstance(node, inspect.UnionType):
        return [option for option in node.types if not _is_nothing(option)]
    return [node]


def note(node: inspect.Type, name: str) -> str:
    """A note on a type: its ``unit`` or its ``description``; empty where there is none."""
    if isinstance(node, inspect.UnionType):
        return next((text for option in node.types if (text := note(option, name))), "")
    if not isinstance(node, inspect.Metadata):
        return ""
    return str((node.extra_json_schema or {}).get(name, "")) or note(node.type, name)


def expected(node: inspect.Type) -> Expected:
    """Describe what a type allows."""
    inner = plain(node)
    if isinstance(node, inspect.Metadata | inspect.UnionType) and len(either := _options(node)) > 1:
        first, *others = map(expected, either)
        return Expected(first.kind, " or ".join([first.text, *(one.text for one in others)]))
    if isinstance(inner, inspect.FloatType | inspect.IntType):
        return _number(inner, note(node, "unit"))
    if isinstance(inner, inspect.LiteralType):
        choices = list(inner.values)
        return Expected("choice", one_of(choices), facts={"choices": choices})
    if isinstance(inner, inspect.StrType):
        return _text(inner, note(node, "form"))
    if isinstance(inner, inspect.BoolType):
        return Expected("flag", "true or false", facts={"choices": [True, False]})
    if isinstance(inner, inspect.VarTupleType | inspect.ListType):
        return _list(inner.item_type, inner.min_length, inner.max_length)
    if isinstance(inner, inspect.TupleType):
        return _list(inner.item_types[0], len(inner.item_types), len(inner.item_types))
    if isinstance(inner, inspect.DictType) and inner.max_length is not None:
        return Expected("table", f"a table of {inner.min_length or 0} to {inner.max_length} keys")
    return Expected("table", "a table")


def one_of(choices: list[Any]) -> str:
    """``a, b or c``."""
    names = [f"{choice}" for choice in choices]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"


def _is_nothing(node: inspect.Type) -> bool:
    return isinstance(node, inspect.NoneType) or type(node).__name__ == "UnsetType"


def _number(node: inspect.FloatType | inspect.IntType, unit: str) -> Expected:
    kind, name = ("whole", "a whole number") if isinstance(node, inspect.IntType) else ("number", "a number")
    facts: dict[str, Any] = {"unit": unit} if unit else {}
    facts |= {key: value for key, value in (("low", node.ge), ("high", node.le)) if value is not None}
    bounds = _bounds(facts.get("low"), facts.get("high"), "" if unit == "-" else unit)
    return Expected(kind, f"{name} {bounds}".rstrip(), bounds, facts)


def _bounds(low: float | None, high: float | None, unit: str) -> str:
    if low is not None and high is not None:
        return f"from {low:g} to {high:g} {unit}".rstrip()
    if low is not None:
        return f"at least {low:g} {unit}".rstrip()
    return f"at most {high:g} {unit}".rstrip() if high is not None else ""


def _text(node: inspect.StrType, form: str) -> Expected:
    if node.max_length is None:
        return Expected("text", "a text")
    facts: dict[str, Any] = {"low": node.min_length} if node.min_length else {}
    filled = f"{form}, " if form else "not empty, " if node.min_length else ""
    bounds = f"{filled}at most {node.max_length} characters long"
    return Expected(
        "text", f"a text, {bounds}", bounds, facts | {"high": node.max_length, "unit": "characters"}
    )


def _list(item: inspect.Type, least: int | None, most: int | None) -> Expected:
    entry = expected(item)
    count = f"{least} to {most} " if least != most else f"{least} "
    what = {"number": "numbers", "whole": "whole numbers", "text": "texts", "table": "tables"}
    name = what.get(entry.kind, "entries")
    bounds = f"({entry.bounds})" if entry.kind == "text" and entry.bounds else entry.bounds
    text = f"a list of {count if most is not None else ''}{name} {bounds}".rstrip()
    facts = entry.facts | {"least": least, "most": most, "of": name}
    return Expected("list", text, text, facts)
