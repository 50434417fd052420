"""Plants for tests, said by what differs from a plain one."""

from __future__ import annotations

from typing import Any

from tests.strategies import legal

from loadfirst.plant.pumps import ResolvedPlant


def plant(**tables: dict[str, Any]) -> ResolvedPlant:
    """The default plant with the medium pump, and some keys changed."""
    data: dict[str, Any] = {"format": 1, "title": "Plain", "pump": {"model": "medium"}}
    for table, keys in tables.items():
        data[table] = data.get(table, {}) | keys
    return legal(data)
