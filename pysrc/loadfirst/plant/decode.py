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
        return _missing(node, where, name["name"])
    return _unfit(expected(node), where, value)


def nearest(name: str, known: list[str]) -> str:
    """The known name that is written most like `name`; empty where none comes near."""
    import difflib  # only a mistake needs it

    found = difflib.get_close_matches(name[:80], known, n=1, cutoff=0.6)
    return found[0] if found else ""


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
    """A key nobody knows: offer the one most like it, here or elsewhere in the file."""
    inner = plain(node)
    known = [f.encode_name for f in inner.fields] if isinstance(inner, inspect.StructType) else []
    near = nearest(name, known)
    elsewhere = "" if near else next((k for k in keys_of(kind) if k.rpartition(".")[2] == name), "")
    near = _join(where, near) if near else elsewhere
    hint = f"Did you mean {near}?" if near else f"Known here: {', '.join(known)}."
    got = value.get(name) if isinstance(value, dict) else None
    facts = {"nearest": near} if near else {"choices": known}
    return InputError(_join(where, name), got, "left out", hint, rule="unknown", **facts)


def _missing(node: inspect.Type, where: str, name: str) -> InputError:
    inner = plain(node)
    assert isinstance(inner, inspect.StructType)
    field = next(f for f in inner.fields if f.encode_name == name)
    wanted = expected(field.type)
    return InputError(_join(where, name), None, wanted.text, rule="missing", **wanted.facts)


def _unfit(wanted: Expected, where: str, value: Any) -> InputError:
    """A value of the wrong kind, or of the right kind and out of its range."""
    where = where or "the file"
    if where == "format":
        return InputError(where, value, wanted.text, rule="version", **wanted.facts)
    if wanted.kind == "text" and _turns(value):
        return InputError(where, value, "without characters that turn the direction of writing", rule="turns")
    if wanted.kind == "choice":
        choices = wanted.facts["choices"]
        hint = _quoted_hint(value, choices) or _hint(where, _nearest_choice(value, choices))
        return InputError(where, value, wanted.text, hint, rule="choice", **wanted.facts)
    if _right_kind(wanted.kind, value):
        rule = "points" if wanted.kind == "list" else "range"
        return InputError(where, value, wanted.bounds or wanted.text, _hint(where), rule=rule, **wanted.facts)
    hint = _number_hint(value) if wanted.kind in ("number", "whole") else ""
    facts = wanted.facts | {"kind": wanted.kind}
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
