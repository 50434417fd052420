"""Random plants run for an hour of plant time, and causes happen to them on the way.

`LOADFIRST_PLANTS=20000` runs as many as a hundredth of that; `loadfirst_dev trial --clock` any number.
"""

from __future__ import annotations

import os

import pytest
from tests.time_trial import troubles

COUNT = max(int(os.environ.get("LOADFIRST_PLANTS", "3000")) // 100, 10)
PARTS = 6


@pytest.mark.native
@pytest.mark.parametrize("part", range(PARTS))
def test_any_plant_runs_for_an_hour_whatever_happens(part: int) -> None:
    """Finite, balanced to round-off, and no vessel holds less than nothing or more than its room."""
    found = [text for seed in range(part, COUNT, PARTS) for text in troubles(seed)]
    assert not found, "\n\n".join(found)
