"""A resolved plant with some keys changed is what its data with those keys would have been."""

from __future__ import annotations

import pytest
from tests.plants import LEAST

from loadfirst.errors import InputError
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import changed, resolve_data

EDITS = (
    {"valve.opening": 0.3},
    {"supply.surface_m": 1.0, "delivery.surface_m": 15.0},
    {"gauges.discharge.fault.zero_bar": 0.2, "meters.flow_fault.span_percent": -10.0},
    {"drive.current_limit_percent": 90.0},
    {"site.barometer_bar": 0.9, "site.altitude_m": None},
    {"pump.model": "small", "meters.flow_range_m3h": 90.0},
)


@pytest.mark.parametrize("edits", EDITS, ids=lambda edits: next(iter(edits)))
def test_it_is_as_if_read_so(edits: dict[str, object]) -> None:
    """What suits the plant stays as it was, walls of vessels too."""
    assert changed(resolve_data(LEAST), edits) == resolve_data(apply_edits(LEAST, edits))


def test_what_cannot_be_is_refused() -> None:
    """As everywhere, with the key; nothing changed is the plant itself."""
    plant = resolve_data(LEAST)
    with pytest.raises(InputError, match="valve.opening is 1.4"):
        changed(plant, {"valve.opening": 1.4})
    assert changed(plant, {}) is plant
