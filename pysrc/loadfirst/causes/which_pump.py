"""The two pumps of a station, for what can happen to either."""

from __future__ import annotations

from typing import NamedTuple

from loadfirst.causes import edit as e
from loadfirst.plant.plant import Curve
from loadfirst.plant.pumps import ResolvedPlant


class WhichPump(NamedTuple):
    """One of them: the beginning of its causes' ids, its table, its name, its number from 0 and in words."""

    prefix: str
    table: str
    name: str
    number: int
    ordinal: str

    def there(self, plant: ResolvedPlant) -> str | None:
        """Why nothing can happen to it."""
        if self.number < len(plant.pumps):
            return self._turns(plant)
        return "there is one pump only"

    def impeller(self, plant: ResolvedPlant) -> str | None:
        """What can happen to impellers only."""
        missing = self.there(plant)
        if missing is not None or isinstance(plant.pumps[self.number], Curve):
            return missing
        return "the pump has no impeller"

    def _turns(self, plant: ResolvedPlant) -> str | None:
        return None if e.value(plant, f"{self.table}.running") else "it stands still"


FIRST = WhichPump("", "pump", "the pump", 0, "first")
SECOND = WhichPump("second-pump-", "pump.second", "the second pump", 1, "second")
