"""What the points of a pump's curve must fulfil together."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from loadfirst.errors import InputError
from loadfirst.plant.plant import Curve
from loadfirst.units import HOUR, G

LEAST_FLOW = 0.01  # [m³/h] of the last point, as the smallest Kv
CLOSEST = 1e-4  # [-] of the last flow, between two points: nearer ones have no slope between them
Faults = Iterator[InputError]


def curve_faults(curve: Curve, at: str) -> Faults:
    """Everything that is wrong with them; `at` is the path of their table, with its dot."""
    yield from _one_of_two(curve, at)
    yield from _length_faults(curve, at)
    if curve.flow_m3h[0] != 0:
        first = curve.flow_m3h[0]
        yield InputError(
            f"{at}flow_m3h[0]", first, "0: the first point is at no flow", rule="points", index=0
        )
    yield from _order_faults(f"{at}flow_m3h", curve.flow_m3h, lambda a, b: b > a, "above", "m³/h")
    yield from _spread_faults(f"{at}flow_m3h", curve.flow_m3h)
    yield from _head_faults(f"{at}head_m", curve.head_m)
    yield from _power_faults(curve, at)


def _one_of_two(curve: Curve, at: str) -> Faults:
    if curve.efficiency_percent is None and curve.power_kw is None:
        yield InputError(
            f"{at}efficiency_percent", None, "given, or power_kw in its place", rule="missing",
            other=f"{at}power_kw",
        )  # fmt: skip
    if curve.efficiency_percent is not None and curve.power_kw is not None:
        yield InputError(
            f"{at}power_kw", curve.power_kw, "left out where efficiency_percent is given", rule="together",
            other=f"{at}efficiency_percent",
        )  # fmt: skip


def _length_faults(curve: Curve, at: str) -> Faults:
    count = len(curve.flow_m3h)
    for name in ("head_m", "efficiency_percent", "power_kw", "npshr_m"):
        values = getattr(curve, name)
        if values is not None and len(values) != count:
            yield InputError(
                f"{at}{name}", values, f"as long as {at}flow_m3h, a list of {count}", rule="points",
                count=len(values), wanted=count, other=f"{at}flow_m3h",
            )  # fmt: skip


def _order_faults(
    where: str, values: Sequence[float], right: Callable[[float, float], bool], word: str, unit: str
) -> Faults:
    for index, (before, value) in enumerate(pairwise(values), start=1):
        if not right(before, value):
            yield InputError(
                f"{where}[{index}]", value, f"{word} the one before it, {before:g} {unit}",
                f"It is number {index + 1} of the list.", rule="points", order=word, limit=before, unit=unit,
                index=index,
            )  # fmt: skip


def _head_faults(where: str, heads: Sequence[float]) -> Faults:
    """Falling all the way, but for one stretch that may rise: towards no flow, or in a saddle."""
    rises = [b > a for a, b in pairwise(heads)]
    for index, (before, value) in enumerate(pairwise(heads), start=1):
        again = index > 1 and rises[index - 1] and not rises[index - 2] and any(rises[: index - 1])
        if value == before or again or (index == len(heads) - 1 and value > before):
            word = "below"
            hint = "A curve may rise once on its way, and falls in the end." if value > before else ""
            yield InputError(
                f"{where}[{index}]", value, f"{word} the one before it, {before:g} m",
                f"It is number {index + 1} of the list. {hint}".rstrip(), rule="points", order=word,
                limit=before, unit="m", index=index,
            )  # fmt: skip


def _spread_faults(where: str, flows: Sequence[float]) -> Faults:
    last = flows[-1]
    if last < LEAST_FLOW:
        allowed = f"at least {LEAST_FLOW:g} m³/h: it is the last one"
        yield InputError(f"{where}[{len(flows) - 1}]", last, allowed, rule="points", limit=LEAST_FLOW)
    for index, (before, value) in enumerate(pairwise(flows), start=1):
        if value - before < CLOSEST * last:
            allowed = f"at least {CLOSEST * last:.3g} m³/h above the one before it, {before:g} m³/h"
            hint = f"It is number {index + 1} of the list; of two points at one flow leave out one."
            yield InputError(f"{where}[{index}]", value, allowed, hint, rule="points", index=index)


def _power_faults(curve: Curve, at: str) -> Faults:
    """No flow has no efficiency; any other point has one, and it stays below 100 %."""
    for index, efficiency in enumerate(curve.efficiency_percent or ()):
        where = f"{at}efficiency_percent[{index}]"
        if index == 0 and efficiency != 0:
            yield InputError(where, efficiency, "0: no flow, no efficiency", rule="points", index=0)
        if index > 0 and efficiency <= 0:
            yield InputError(where, efficiency, "above 0 % where liquid flows", rule="points", index=index)
    for index, power in enumerate(curve.power_kw or ()):
        least = curve.density_kgm3 * G * curve.flow_m3h[index] / HOUR * curve.head_m[index] / 1e3
        if power <= least:
            yield InputError(
                f"{at}power_kw[{index}]", power, f"above {least:.4g} kW, which the liquid alone takes away",
                f"It is number {index + 1} of the list.", rule="points", order="above", limit=least,
                unit="kW", index=index,
            )  # fmt: skip
