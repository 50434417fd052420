"""From a stranger's data to our types, with errors that a person can act on.

msgspec decides what is right; when it refuses, its message is used only to
find the place. What was found there and what would do are looked up in the
data and in the type.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Collection
from typing import Any, TypeVar

import msgspec
from msgspec import inspect

from loadfirst.errors import FileError, InputError
from loadfirst.plant.expect import Expected, expected, plain
from loadfirst.plant.keys import keys_of
from loadfirst.plant.meta import TURNING

T = TypeVar("T")

LARGEST = sys.float_info.max

PLACE = re.compile(r" - at `(?:key` in `)?\$(?P<path>.*)`$")
STEP = re.compile(r"\.(?P<name>[^.\[]+)|\[(?P<index>\d+|\.\.\.)\]")
TURNS = re.compile(f"[{TURNING}]")
NAME = re.compile(r"field `(?P<name>.*?)`(?: - at |$)", re.DOTALL)


def decode(kind: type[T], data: object, file: str = "") -> T:
    """Turn plain data into `kind`, a msgspec type.

    Parameters
    ----------
    kind : type
        The type to make; its declarations hold the ranges.
    data : object
        Dicts, lists, numbers and texts, as a TOML or JSON reader leaves them.
    file : str
        Name of the file it came from, for the error.

    Raises
    ------
    InputError, or FileError where `file` is given
        For the first thing that cannot be used.
    """
    try:
        return msgspec.convert(data, kind)
    except msgspec.ValidationError as refusal:
        cause = explain(kind, data, str(refusal))
    except RecursionError:
        cause = InputError(
            "the file", "it is nested too deeply", "a file that can be read", rule="unreadable"
        )
    raise in_file(cause, file)


def in_file(cause: InputError, file: str) -> InputError:
    """The same error with the file's name in front, where there is one."""
    return FileError(file, cause) if file and not isinstance(cause, FileError) else cause


def explain(kind: type, data: object, message: str) -> InputError:
    """Make our error from msgspec's refusal of `data` as a `kind`."""
    place = PLACE.search(message)
    node, where, value = _walk(inspect.type_info(kind), data, place["path"] if place else "")
    name = NAME.search(message)
    if name and "unknown field" in message:
        return _unknown(kind, node, where, name["name"], value)
    if name and "missing required" in message:
        return _missing(node, where, name["name"], data)
    error = _unfit(expected(node), where, value)
    return _above(error) if _of_the_file(kind, where) else error


def _of_the_file(kind: type, where: str) -> bool:
    """Whether what stands in a table of free names is called like a plain key of the file itself."""
    table, _, name = where.partition(".")
    info = inspect.type_info(kind)
    if not isinstance(info, inspect.StructType) or "[" in table:
        return False
    fields = {field.encode_name: plain(field.type) for field in info.fields}
    tables = inspect.StructType | inspect.DictType | inspect.VarTupleType
    return isinstance(fields.get(table), inspect.DictType) and not isinstance(fields.get(name, info), tables)


def _above(error: InputError) -> InputError:
    """The same error of a key that was written too late, below the line that opens a table."""
    key = error.where.rpartition(".")[2]
    hint = f"{key} is a key of the file itself: it belongs above the first [table]."
    facts = error.facts | {"above": key}
    return InputError(error.where, error.got, error.allowed, hint, rule=error.rule, **facts)


NEAR, SOMEHOW = 0.75, 0.6
"""Likeness of two names that are near; the second is enough where they begin or end alike. [-]"""
ALIKE = 3  # letters at an end
DEEPEST = 3  # tables within tables, in which a key that is missed is looked for


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


def _walk(node: inspect.Type, value: Any, path: str) -> tuple[inspect.Type, str, Any]:
    """Follow a path through the type and the data at once; stop where either ends."""
    where = ""
    for step in STEP.finditer(path):
        node = plain(node)
        if step["name"] and isinstance(node, inspect.StructType):
            field = next((f for f in node.fields if f.encode_name == step["name"]), None)
            if field is None or not isinstance(value, dict):
                break
            node, value = field.type, value.get(step["name"])
            where = f"{where}.{step['name']}" if where else step["name"]
        elif isinstance(value, list | tuple) and (step["index"] or "").isdecimal():
            index = min(int(step["index"]), len(value) - 1)
            node, value, where = _item(node, index), value[index], f"{where}[{index}]"
        elif isinstance(node, inspect.DictType) and (name := _unfit_entry(node, value)):
            node, value, where = node.value_type, value[name], _join(where, name)
        else:
            break
    return node, where, value


def _unfit_entry(node: inspect.DictType, value: Any) -> str:
    """The key of a table whose entry was refused: msgspec does not name it."""
    entries = value.items() if isinstance(value, dict) else ()
    return next((str(name) for name, entry in entries if not _fits(node.value_type, entry)), "")


def _fits(node: inspect.Type, value: Any) -> bool:
    """Whether an entry of a table would do: a number, a text, a choice, a flag, or a list of these."""
    wanted, inner = expected(node), plain(node)
    if isinstance(inner, inspect.AnyType):
        return True
    if wanted.kind == "choice":
        return value in wanted.facts["choices"]
    if wanted.kind == "table" or not _right_kind(wanted.kind, value):
        return wanted.kind == "table" and isinstance(value, dict)
    if wanted.kind in ("number", "whole"):
        return bool(wanted.facts.get("low", -LARGEST) <= value <= wanted.facts.get("high", LARGEST))
    if isinstance(inner, inspect.StrType):
        return _long_enough(inner, value) and re.search(inner.pattern or "", value) is not None
    if isinstance(inner, inspect.VarTupleType):
        return _long_enough(inner, value) and all(_fits(inner.item_type, one) for one in value)
    return True


def _long_enough(node: inspect.StrType | inspect.VarTupleType, value: Any) -> bool:
    return (node.min_length or 0) <= len(value) <= (node.max_length or len(value))


def _item(node: inspect.Type, index: int) -> inspect.Type:
    if isinstance(node, inspect.TupleType):
        return node.item_types[min(index, len(node.item_types) - 1)]
    return node.item_type if isinstance(node, inspect.VarTupleType | inspect.ListType) else node


def _join(where: str, name: str) -> str:
    """A dotted path; a key that TOML would have in quotation marks gets them."""
    name = name if re.fullmatch(r"[A-Za-z0-9_-]+", name) else f'"{name}"'
    return f"{where}.{name}" if where else name


def _unknown(kind: type, node: inspect.Type, where: str, name: str, value: Any) -> InputError:
    """A key nobody knows: offer the one most like it that is not there yet, here or elsewhere in the file."""
    inner = plain(node)
    fields = inner.fields if isinstance(inner, inspect.StructType) else ()
    here = value if isinstance(value, dict) else {}
    known = [field.encode_name for field in fields]
    near = nearest(name, [key for key in known if key not in here])
    elsewhere = "" if near else next((k for k in keys_of(kind) if k.rpartition(".")[2] == name), "")
    error = InputError(_join(where, name), here.get(name), "left out", rule="unknown")
    if where and elsewhere == name:
        error.facts["nearest"] = name
        return _above(error)
    if near := _join(where, near) if near else elsewhere:
        error.facts["nearest"], error.hint = near, f"Did you mean {near}?"
        return error
    needed = ", ".join(
        field.encode_name for field in fields if field.required and field.encode_name not in here
    )
    error.facts |= {"choices": known} | ({"needed": needed} if needed else {})
    error.hint = f"Known here: {', '.join(known)}." + (f" Still missing: {needed}." if needed else "")
    return error


def _missing(node: inspect.Type, where: str, name: str, data: object) -> InputError:
    inner = plain(node)
    assert isinstance(inner, inspect.StructType)
    field = next(f for f in inner.fields if f.encode_name == name)
    wanted = expected(field.type)
    below = "" if where else _below(data, name)
    hint = f"It stands below [{below}], but belongs above the first [table]." if below else ""
    facts = wanted.facts | ({"below": below} if below else {})
    return InputError(_join(where, name), None, wanted.text, hint, rule="missing", **facts)


def _below(data: object, name: str, where: str = "") -> str:
    """The table in which a key stands that the file itself misses; those of lists are not looked into."""
    if where.count(".") >= DEEPEST:
        return ""
    inner = {key: one for key, one in data.items() if isinstance(one, dict)} if isinstance(data, dict) else {}
    for key, table in inner.items():
        path = _join(where, str(key))
        if found := path if name in table else _below(table, name, path):
            return found
    return ""


def _unfit(wanted: Expected, where: str, value: Any) -> InputError:
    """A value of the wrong kind, or of the right kind and out of its range."""
    where = where or "the file"
    if where == "format":
        return InputError(where, value, wanted.text, rule="version", **wanted.facts)
    if wanted.kind == "text" and _turns(value):
        return InputError(where, value, "without characters that turn the direction of writing", rule="turns")
    if wanted.kind == "choice":
        choices = wanted.facts["choices"]
        near = _nearest_choice(value, choices)
        hint = _quoted_hint(value, choices) or _hint(where, near)
        facts = wanted.facts | ({"nearest": near} if near else {})
        return InputError(where, value, wanted.text, hint, rule="choice", **facts)
    if _right_kind(wanted.kind, value):
        rule = "points" if wanted.kind == "list" else "range"
        return InputError(where, value, wanted.bounds or wanted.text, _hint(where), rule=rule, **wanted.facts)
    hint = _number_hint(value) if wanted.kind in ("number", "whole") else ""
    facts = wanted.facts | {"kind": wanted.kind}
    if wanted.kind == "list" and isinstance(value, dict) and facts.get("of") == "tables":
        hint, facts["double"] = f"Write [[{where}]] above each of them.", where
    if wanted.kind == "list" and isinstance(value, str):
        hint = 'Put it in square brackets: ["…"].'
    return InputError(where, value, wanted.text, hint or _hint(where), rule="type", **facts)


def _turns(value: object) -> bool:
    """Whether a text holds characters that turn the direction of writing."""
    return isinstance(value, str) and TURNS.search(value) is not None


def _nearest_choice(value: object, choices: list[Any]) -> str:
    """The choice that was probably meant: 4 for 4.0 and for "4", linear for lineal."""
    if isinstance(value, float):
        return next((str(choice) for choice in choices if choice == value), "")
    return nearest(value, [str(choice) for choice in choices]) if isinstance(value, str) else ""


def _right_kind(kind: str, value: object) -> bool:
    kinds: dict[str, tuple[type, ...]] = {
        "number": (int, float), "whole": (int,), "text": (str,), "list": (list, tuple), "flag": (bool,),
    }  # fmt: skip
    return isinstance(value, kinds.get(kind, ())) and (kind == "flag" or not isinstance(value, bool))


def _hint(where: str, near: str = "") -> str:
    """Point at the entry of a list in words, or at the nearest choice."""
    if near:
        return f"Did you mean {near}?"
    index = re.search(r"\[(\d+)\]$", where)
    return f"It is number {int(index[1]) + 1} of the list." if index else ""


def _quoted_hint(value: object, choices: list[Any]) -> str:
    """A word of digits written as a number looks like the word itself: say what is missing."""
    if not isinstance(value, int) or isinstance(value, bool):
        return ""
    words = (word for word in choices if isinstance(word, str) and word.isdecimal() and int(word) == value)
    return next((f'Write it in quotation marks: "{word}".' for word in words), "")


def _number_hint(value: object) -> str:
    """A number written as text is the commonest slip: say how to write it."""
    if not isinstance(value, str):
        return ""
    if re.fullmatch(r"\s*[-+]?[\d.]+(e[-+]?\d+)?\s*", value, re.IGNORECASE):
        return "Write it without quotation marks."
    if re.fullmatch(r"\s*[-+]?\d+,\d+\s*", value):
        return "Write it with a decimal point and without quotation marks."
    return ""
