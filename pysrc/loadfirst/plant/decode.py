"""From a stranger's data to our types, with errors that a person can act on.

msgspec decides what is right; when it refuses, its message is used only to
find the place. What was found there and what would do are looked up in the
data and in the type.
"""

from __future__ import annotations

import re
import sys
from typing import Any, TypeVar

import msgspec
from msgspec import inspect

from loadfirst.errors import FileError, InputError
from loadfirst.plant.expect import Expected, expected, plain
from loadfirst.plant.keys import keys_of
from loadfirst.plant.meta import TURNING
from loadfirst.plant.misplaced import above, below_which, join, of_the_file
from loadfirst.plant.near import nearest
from loadfirst.plant.slips import nearest_choice, number_hint, place_hint, quoted_hint

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
    return above(error) if of_the_file(kind, where) else error


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
            node, value, where = node.value_type, value[name], join(where, name)
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


def _unknown(kind: type, node: inspect.Type, where: str, name: str, value: Any) -> InputError:
    """A key nobody knows: offer the one most like it, one that is not there yet first, here or elsewhere."""
    inner = plain(node)
    fields = inner.fields if isinstance(inner, inspect.StructType) else ()
    here = value if isinstance(value, dict) else {}
    known = [field.encode_name for field in fields]
    near = nearest(name, [key for key in known if key not in here]) or nearest(name, known)
    elsewhere = "" if near else next((k for k in keys_of(kind) if k.rpartition(".")[2] == name), "")
    error = InputError(join(where, name), here.get(name), "left out", rule="unknown")
    if where and elsewhere == name:
        error.facts["nearest"] = name
        return above(error)
    if near := join(where, near) if near else elsewhere:
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
    below = "" if where else below_which(data, name)
    hint = f"It stands below [{below}], but belongs above the first [table]." if below else ""
    facts = wanted.facts | ({"below": below} if below else {})
    return InputError(join(where, name), None, wanted.text, hint, rule="missing", **facts)


def _unfit(wanted: Expected, where: str, value: Any) -> InputError:
    """A value of the wrong kind, or of the right kind and out of its range."""
    where = where or "the file"
    if where == "format":
        return InputError(where, value, wanted.text, rule="version", **wanted.facts)
    if wanted.kind == "text" and _turns(value):
        return InputError(where, value, "without characters that turn the direction of writing", rule="turns")
    if wanted.kind == "choice":
        choices = wanted.facts["choices"]
        near = nearest_choice(value, choices)
        hint = quoted_hint(value, choices) or place_hint(where, near)
        facts = wanted.facts | ({"nearest": near} if near else {})
        return InputError(where, value, wanted.text, hint, rule="choice", **facts)
    if _right_kind(wanted.kind, value):
        rule = "points" if wanted.kind == "list" else "range"
        return InputError(
            where, value, wanted.bounds or wanted.text, place_hint(where), rule=rule, **wanted.facts
        )
    hint = number_hint(value) if wanted.kind in ("number", "whole") else ""
    facts = wanted.facts | {"kind": wanted.kind}
    if wanted.kind == "list" and isinstance(value, dict) and facts.get("of") == "tables":
        hint, facts["double"] = f"Write [[{where}]] above each of them.", where
    if wanted.kind == "list" and isinstance(value, str):
        hint = 'Put it in square brackets: ["…"].'
    return InputError(where, value, wanted.text, hint or place_hint(where), rule="type", **facts)


def _turns(value: object) -> bool:
    """Whether a text holds characters that turn the direction of writing."""
    return isinstance(value, str) and TURNS.search(value) is not None


def _right_kind(kind: str, value: object) -> bool:
    kinds: dict[str, tuple[type, ...]] = {
        "number": (int, float), "whole": (int,), "text": (str,), "list": (list, tuple), "flag": (bool,),
    }  # fmt: skip
    return isinstance(value, kinds.get(kind, ())) and (kind == "flag" or not isinstance(value, bool))
