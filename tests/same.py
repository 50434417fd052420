"""Whether two answers are the same to a relative tolerance of each quantity's own scale."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

FRACTIONS = {"efficiency": 1.0, "load": 1.0}
"""Scales of quantities that are parts of a whole, however small they happen to be."""


def leaves(value: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Every leaf of nested JSON with its path: ``state.nodes.suction.head``, ``curves.load[3]``."""
    if isinstance(value, dict):
        for name, part in value.items():
            yield from leaves(part, f"{path}.{name}".lstrip("."))
    elif isinstance(value, list):
        for number, part in enumerate(value):
            yield from leaves(part, f"{path}[{number}]")
    else:
        yield path, value


def kind(path: str) -> str:
    """What a leaf is: the last name of its path, without its number."""
    return re.sub(r"\[\d+\]", "", path).rpartition(".")[2]


def is_number(value: Any) -> bool:
    """Whether a leaf is a number; a flag is none."""
    return isinstance(value, int | float) and not isinstance(value, bool)


def differences(one: Any, other: Any, relative: float) -> list[str]:
    """Leaves that differ: words at all, numbers by more than `relative` of their scale.

    The scale of a number is the greatest of its kind in the same answer: the
    head of a node at the floor is compared as the other heads are.
    """
    first, second = dict(leaves(one)), dict(leaves(other))
    if first.keys() != second.keys():
        return sorted(first.keys() ^ second.keys())
    scales = dict(FRACTIONS)
    for path, value in first.items():
        if is_number(value):
            scales[kind(path)] = max(scales.get(kind(path), 0.0), abs(value))
    found = []
    for path, value in first.items():
        against = second[path]
        if is_number(value) and is_number(against):
            if abs(value - against) > relative * scales[kind(path)]:
                found.append(f"{path}: {value!r} and {against!r}")
        elif value != against:
            found.append(f"{path}: {value!r} and {against!r}")
    return found
