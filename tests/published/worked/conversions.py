"""What a book prints beside what a plant file says: the comments that start with `# =`.

A file writes the book's own number, or a sum of them, behind the key

    surface_m = 80.772  # = 265 ft

or, for a list, on the line above it, also as a formula over the flows of the same table

    # = 380 - 0.06 * Q - 0.0018 * Q**2 ft, Q in US gpm
    head_m = [115.824, …]

and, where a book gives the head that is lost at a flow, the loss coefficient `k` of that on a bore

    fittings_k = 36.258  # = k(6 * ft, 400 * gpm, 0.1)
"""

from __future__ import annotations

import math
import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from loadfirst.units import HOUR, TO_SI, G

FT, INCH, POUND = 0.3048, 0.0254, 0.45359237  # [m] [m] [kg] exact
GALLON = 231 * INCH**3  # [m³] US, exact
PSI = POUND * G / INCH**2  # [Pa]

UNITS = {
    "ft": FT,
    "mile": 5280 * FT,
    "in": INCH,
    "cm": 0.01,
    "in³": INCH**3,
    "dm³": 1e-3,
    "US gpm": GALLON / 60,
    "1000 US gpm": 1000 * GALLON / 60,
    "ft³/s": FT**3,
    "m³/s": 1.0,
    "m³/min": 1 / 60,
    "m³/h": 1 / HOUR,
    "L/min": 1e-3 / 60,
    "bbl/h": 42 * GALLON / HOUR,
    "lb/ft³": POUND / FT**3,
    "psi": PSI,
    "kPa": 1e3,
    "cP": 1e-3,
    "hp": 550 * FT * POUND * G,
    "kW": 1e3,
    "%": 0.01,
    "m": 1.0,
    "°F": 5 / 9,  # less 32, see `_sum`
    "rpm": TO_SI["rpm"],
}
"""The units that books print, in SI."""

MARK = "# = "


def k(head: float, flow: float, bore: float) -> float:
    """Loss coefficient on a bore that takes a head at a flow: K v²/2g. [m], [m³/s], [m] -> [-]"""
    speed = flow / (math.pi / 4 * bore**2)
    return 2 * G * head / speed**2


NAMES = {
    "pi": math.pi, "k": k, "ft": FT, "gpm": UNITS["US gpm"], "cfs": UNITS["ft³/s"], "lpm": UNITS["L/min"],
}  # fmt: skip
"""What a sum may name."""


def conversions(path: Path) -> Iterator[tuple[str, Any, Any]]:
    """Each converted key of a file: its name, what the file says and what the book's number is. [SI]"""
    data = tomllib.loads(path.read_text(encoding="utf-8"))
    table: Mapping[str, Any] = data
    where, above = "", ""
    for line in path.read_text(encoding="utf-8").splitlines():
        if header := re.match(r"\[(.+?)\]", line):
            where, table = header[1], data
            for name in header[1].split("."):
                table = table[name]
        elif line.startswith(MARK):
            above = line.removeprefix(MARK)
        elif key := re.match(r"(\w+) *=", line):
            said = above or line.partition(MARK)[2]
            above = ""
            if said:
                yield f"{where}.{key[1]}", _file(key[1], table[key[1]]), book(said, table)


def book(said: str, table: Mapping[str, Any]) -> Any:
    """What a comment says, in SI; `table` is the one it stands in, for a formula over its flows."""
    formula, _, flow_unit = said.partition(", Q in ")
    if flow_unit:
        flows = [_file("flow_m3h", flow) / UNITS[flow_unit] for flow in table["flow_m3h"]]
        return [_sum(formula, {"Q": flow}) for flow in flows]
    return _sum(formula, {})


def unit_of(key: str) -> float:
    """The factor to SI of the unit that a key ends with; 1 where it has none, as a loss coefficient."""
    return TO_SI.get(key.rpartition("_")[2], 1.0)


def _file(key: str, value: Any) -> Any:
    if isinstance(value, list):
        return [_file(key, one) for one in value]
    return value * unit_of(key)


def _sum(formula: str, names: Mapping[str, Any]) -> Any:
    """A sum in Python's own signs, with or without a unit behind it."""
    unit = max((unit for unit in UNITS if formula.endswith(f" {unit}")), key=len, default="")
    value = eval(formula.removesuffix(unit), {"__builtins__": {}}, {**NAMES, **names})  # our own files
    if unit == "°F":
        return (value - 32) * UNITS[unit]
    factor = UNITS.get(unit, 1.0)
    return [one * factor for one in value] if isinstance(value, Sequence) else value * factor
