"""Which group of causes a change of a plant key belongs to.

One row per key, or per table where all its keys belong together. What lies
outside the flanges is the load: its discharge side holds everything from the
discharge flange on, the number of pumps running included, because to any one
pump the others are part of what it meets. A controller belongs to what it moves: see `group_in`.
"""

from __future__ import annotations

from loadfirst.causes.group import Group

GROUPS: dict[str, Group] = {
    "liquid": "liquid",
    "liquid.temperature_c": "suction-side",
    "site": "suction-side",
    "supply": "suction-side",
    "suction": "suction-side",
    "pump.centre_m": "suction-side",
    "pump.model": "machine",
    "pump.curve": "machine",
    "pump.displacement": "machine",
    "pump.second": "machine",
    "pump.wear_percent": "machine",
    "pump.trim_percent": "machine",
    "pump.blocked_percent": "machine",
    "pump.rotation": "machine",
    "pump.history_m3h": "machine",
    "pump.arrangement": "discharge-side",
    "pump.running": "discharge-side",
    "pump.second.running": "discharge-side",
    "drive": "drive",
    "check": "discharge-side",
    "relief": "discharge-side",
    "valve": "discharge-side",
    "control": "discharge-side",
    "discharge": "discharge-side",
    "delivery": "discharge-side",
    "branch": "discharge-side",
    "return_line": "discharge-side",
    "filter": "discharge-side",
    "burst": "discharge-side",
    "second_line": "discharge-side",
    "summit": "discharge-side",
    "gauges": "instrument",
    "meters": "instrument",
}


def group_of(key: str) -> Group | None:
    """The group of one plant key, None for a key that cannot change overnight.

    Parameters
    ----------
    key : str
        Dotted plant key: ``valve.opening``.
    """
    parts = key.split(".")
    for length in range(len(parts), 0, -1):
        found = GROUPS.get(".".join(parts[:length]))
        if found is not None:
            return found
    return None


def group_in(key: str, on: str) -> Group | None:
    """The same, in a plant whose controller moves the valve or the drive."""
    if key.startswith("control.") and on == "drive":
        return "drive"
    return group_of(key)
