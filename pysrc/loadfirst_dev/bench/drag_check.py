"""Which input each painted frame shows, how late it is, and whether it is true. Plain data, no browser."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import isclose
from typing import Any

CLOSE = 1e-6  # [-] between the browser's answer and ours
Readings = tuple[float, ...]
"""Suction gauge, discharge gauge and flow meter in shown units: bar, bar, m³/h."""


@dataclass(frozen=True)
class Painted:
    """What a drag showed.

    Attributes
    ----------
    delays : from each input to the first frame that shows it or a newer one. [ms]
    openings : the opening that this frame showed, for each of `delays`.
    pointer_delays : the same from the pointer's own time, before the browser handed it on. [ms]
    frames : frames that showed something while the drag went on.
    strange : frames that showed what is the answer to none of the inputs.
    misread : frames whose digits were not those of the values beside them.
    ages : for each frame, since when a newer input was there; 0 where none was. [ms]
    """

    delays: list[float]
    openings: list[float]
    pointer_delays: list[float]
    frames: int
    strange: int
    misread: int
    ages: list[float]


def judge(marks: Mapping[str, Any], first: float, answer: Callable[[float], Readings]) -> Painted:
    """Match every frame with the input whose answer it shows.

    Parameters
    ----------
    marks : what marks.js noted: `inputs` and `paints`, in order of time.
    first : the opening before the drag. [-]
    answer : the readings at an opening.
    """
    inputs: Sequence[Mapping[str, Any]] = marks["inputs"]
    openings = [first, *(each["opening"] for each in inputs)]
    since = [float("-inf"), *(each["at"] for each in inputs)]
    paints = [paint for paint in marks["paints"] if paint["at"] >= since[1]]
    shows: list[int | None] = []
    for paint in paints:
        newest = bisect_right(since, paint["at"]) - 1
        shows.append(shown_input(paint, openings, newest, answer))
    ages = [
        max(0.0, paint["at"] - since[shown + 1]) if shown + 1 < len(since) else 0.0
        for paint, shown in zip(paints, shows, strict=True)
        if shown is not None
    ]
    firsts = [first_frame(number, paints, shows) for number in range(1, len(openings))]
    found = [(number, paints[k], shows[k]) for number, k in enumerate(firsts, 1) if k is not None]
    return Painted(
        delays=[paint["at"] - since[number] for number, paint, _ in found],
        openings=[openings[shown or 0] for _, _, shown in found],
        pointer_delays=[paint["at"] - inputs[number - 1]["moved"] for number, paint, _ in found],
        frames=len(paints),
        strange=sum(shown is None for shown in shows),
        misread=sum(not reads_right(paint) for paint in paints),
        ages=ages,
    )


def shown_input(
    paint: Mapping[str, Any], openings: Sequence[float], newest: int, answer: Callable[[float], Readings]
) -> int | None:
    """The newest input up to `newest` whose answer a frame shows; None if there is none."""
    values = [value for value, _ in paint["shown"]]
    for number in range(newest, -1, -1):
        right = answer(openings[number])
        if all(isclose(a, b, rel_tol=CLOSE, abs_tol=CLOSE) for a, b in zip(values, right, strict=True)):
            return number
    return None


def first_frame(number: int, paints: Sequence[Mapping[str, Any]], shows: Sequence[int | None]) -> int | None:
    """The first frame that shows an input or a newer one; None when none did."""
    return next((k for k in range(len(paints)) if (shown := shows[k]) is not None and shown >= number), None)


def reads_right(paint: Mapping[str, Any]) -> bool:
    """Whether the digits that a person reads are the values, rounded to as many places."""
    return all(rounds_to(value, digits) for value, digits in paint["shown"])


def rounds_to(value: float, digits: str) -> bool:
    """Whether a number written with so many decimals is this value."""
    plain = digits.lstrip("<> ").replace("−", "-").replace(",", "")
    try:
        written = float(plain)
    except ValueError:
        return False
    places = len(plain.partition(".")[2])
    half: float = 0.5 * 10.0**-places
    return abs(written - value) <= half * (1 + 1e-9)
