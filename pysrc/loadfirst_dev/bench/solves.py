"""Tells how the solver stands against scipy's root finder, natively and in the browser."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from loadfirst_dev.bench.figures import Figure

SINGLE = 15.0
BATCH = {"natively": 15.0, "in the browser": 10.0}
SAME = 1e-5  # [-] what is left between cubics through moved points and the implicit equation


def figures(where: str, compared: Mapping[str, Any]) -> list[Figure]:
    """Figures of one `compare.Compared`.

    Parameters
    ----------
    where : "natively" or "in the browser"
    """
    one, many, count = compared["one"], compared["many"], compared["count"]
    return [
        Figure(
            f"one network solve, to one brentq, {where}",
            one["ratio"],
            most=SINGLE,
            basis=f"{one['first'] * 1e6:.0f} µs against {one['second'] * 1e6:.0f} µs",
        ),
        Figure(
            f"batch of {count}, times faster than {count} of brentq, {where}",
            many["ratio"],
            least=BATCH[where],
            basis=f"{many['second'] * 1e3:.1f} ms against {many['first'] * 1e3:.0f} ms; "
            f"to build the network took {compared['building'] * 1e3:.0f} ms",
        ),
        Figure(f"largest difference of the two in flow, {where}", compared["apart"], most=SAME),
    ]
