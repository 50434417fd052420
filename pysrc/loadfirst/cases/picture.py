"""What a case shows beside its story: the plant as its drawing has it, and what the teller saw.

The drawing tells what everybody at the plant knows. What is worn, stopped up, passing or read wrongly
stands on no drawing, on neither day.
"""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from loadfirst.cases.case import Case
from loadfirst.cases.happened import Happened
from loadfirst.cases.reveal import reading_view
from loadfirst.cases.scope import told
from loadfirst.cases.view import Pointer, ReadingView
from loadfirst.cases.words import placeholders
from loadfirst.plant.effective import effective

HIDDEN: dict[str, tuple[str, ...]] = {
    "pump": ("wear_percent", "trim_percent", "blocked_percent", "rotation"),
    "pump.second": ("wear_percent", "trim_percent", "blocked_percent", "rotation"),
    "check": ("stuck_open", "leak_kv_m3h"),
    "suction": ("strainer_k", "gas_percent"),
    "gauges.suction": ("fault",),
    "gauges.discharge": ("fault",),
    "gauges.after_valve": ("fault",),
    "filter": ("fouling",),
    "relief": ("state", "passing_percent"),
    "meters": ("seed", "flow_fault", "current_fault"),
    "": ("burst",),
}
"""Keys by their table that no drawing of a plant shows."""


def drawn_plant(happened: Happened) -> dict[str, Any]:
    """Yesterday's plant with every key, but for those that nobody can know from a drawing."""
    plant = effective(happened.days.yesterday.resolved)
    for path, keys in HIDDEN.items():
        table: Any = plant
        for name in filter(None, path.split(".")):
            table = table.get(name) or {}
        for key in keys:
            table.pop(key, None)
    return plant


def readings_told(case: Case, happened: Happened) -> list[ReadingView]:
    """The instruments that the story names, each with the days that it tells and nothing of the others."""
    days = {(place.source, place.day) for place in placeholders(case.story, "story")}
    return [_told(reading_view(happened.shift(id)), days) for id in told(case)]


def _told(reading: ReadingView, days: set[tuple[str, Any]]) -> ReadingView:
    blank = Pointer(None, None)
    yesterday, today = ((reading.id, day) in days for day in ("yesterday", "today"))
    return replace(
        reading,
        yesterday=reading.yesterday if yesterday else blank,
        today=reading.today if today else blank,
        explained=None,
        moved=None,
    )
