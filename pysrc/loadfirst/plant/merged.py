"""Answers for some of the plants put in the place of others."""

from __future__ import annotations

from typing import TypeVar

from loadfirst.physics.law import Array, Counts, Flags, Index
from loadfirst.physics.network import Solution

Some = TypeVar("Some", Array, Flags, Counts)


def put_rows(whole: Solution, rows: Index, part: Solution) -> Solution:
    """The whole with the answers of `part`, which has one for each of the rows, in these rows."""
    reason = list(whole.reason)
    for row, why in zip(rows.tolist(), part.reason, strict=True):
        reason[row] = why
    return Solution(
        flow=_each(whole.flow, rows, part.flow),
        drop=_each(whole.drop, rows, part.drop),
        head=_each(whole.head, rows, part.head),
        converged=_put(whole.converged, rows, part.converged),
        reason=tuple(reason),
        iterations=_put(whole.iterations, rows, part.iterations),
        imbalance=_put(whole.imbalance, rows, part.imbalance),
        undefined=_each(whole.undefined, rows, part.undefined),
        shut=_each(whole.shut, rows, part.shut),
    )


def _each(whole: dict[str, Some], rows: Index, part: dict[str, Some]) -> dict[str, Some]:
    return {name: _put(values, rows, part[name]) for name, values in whole.items()}


def _put(whole: Some, rows: Index, part: Some) -> Some:
    values = whole.copy()
    values[rows] = part
    return values
