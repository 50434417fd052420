"""The default plant with the medium pump, for tests that say only what differs from it."""

from __future__ import annotations

from typing import Any

from tests.strategies import legal

from loadfirst.plant.pumps import ResolvedPlant


def rig(**tables: dict[str, Any]) -> ResolvedPlant:
    """A resolved plant: all defaults but the keys of the tables given."""
    data: dict[str, Any] = {"format": 1, "title": "Plain", "pump": {"model": "medium"}}
    for table, keys in tables.items():
        data[table] = data.get(table, {}) | keys
    return legal(data)
