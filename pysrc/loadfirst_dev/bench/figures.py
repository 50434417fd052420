"""One measured figure with its aim, and how it is told."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

FRAME = 1000 / 60  # [ms] of a screen that shows 60 pictures a second


@dataclass(frozen=True)
class Figure:
    """What was measured.

    Attributes
    ----------
    what : str
        In one line.
    value : float
    unit : str
        "" for a ratio.
    most, least : float, optional
        The aim: not more than `most`, or not less than `least`; without either it is only told.
    basis : str
        What the figure was made from.
    """

    what: str
    value: float
    unit: str = ""
    most: float | None = None
    least: float | None = None
    basis: str = ""

    @property
    def met(self) -> bool | None:
        """Whether the aim is met; None without an aim."""
        if self.most is not None:
            return self.value <= self.most
        if self.least is not None:
            return self.value >= self.least
        return None

    @property
    def aim(self) -> str:
        """The aim in words; "" without one."""
        if self.most is not None:
            return f"at most {number(self.most)}"
        if self.least is not None:
            return f"at least {number(self.least)}"
        return ""


def number(value: float) -> str:
    """Three figures that count, never as a power of ten."""
    if value == 0 or abs(value) >= 100:
        return f"{value:.0f}"
    return f"{value:.3g}" if abs(value) >= 1e-3 else f"{value:.1e}"


def table(figures: Sequence[Figure]) -> str:
    """A line for each figure, what it was made from below it."""
    lines = []
    for figure in figures:
        verdict = {True: "met", False: "MISSED", None: ""}[figure.met]
        shown = f"{number(figure.value)} {figure.unit}".strip()
        lines.append(f"  {figure.what:58} {shown:>12}   {figure.aim:15} {verdict}".rstrip())
        if figure.basis:
            lines.append(f"      {figure.basis}")
    return "\n".join(lines)


def summary(figures: Sequence[Figure]) -> str:
    """How many aims were met, and which were not."""
    aimed = [figure for figure in figures if figure.met is not None]
    missed = [figure for figure in aimed if not figure.met]
    told = f"{len(aimed) - len(missed)} of {len(aimed)} aims met."
    return told + "".join(f"\nMissed: {figure.what}" for figure in missed)


def percentile(values: Sequence[float], percent: float) -> float:
    """The smallest value that at least so many per cent of the values do not exceed."""
    ordered = sorted(values)
    return ordered[max(0, ceil(percent / 100 * len(ordered)) - 1)]
