"""Native Python and the browser's give the same answers, to the design's tolerance."""

from __future__ import annotations

import json
from typing import Any

import pytest
from tests.same import differences, is_number, leaves

from loadfirst.door.handle import handle
from loadfirst.plant import library

TOLERANCE = 1e-9  # of the reference scales, as the solver's own (design: native against browser likewise)

EDITS: dict[str, dict[str, Any]] = {
    "as it is": {},
    "nearly shut": {"valve.opening": 0.05},
    "shut": {"valve.opening": 0},
    "side by side": {"pump.arrangement": "side-by-side"},
    "in line": {"pump.arrangement": "in-line"},
    "line off": {"discharge.attached": False},
    "slow": {"drive.frequency_hz": 20},
    "by chance": {"meters.seed": 7, "gauges.discharge.fault.noise_bar": 0.2, "meters.flow_kind": "orifice"},
}


@pytest.mark.parametrize("plant", library.ids("plants"))
@pytest.mark.parametrize("edits", EDITS.values(), ids=EDITS)
def test_a_packaged_plant_answers_the_same_in_the_browser(
    run: Any, plant: str, edits: dict[str, Any]
) -> None:
    """State, curves, stack and readings, number by number."""
    body = {"plant": plant, "edits": edits, "curve_points": 40}
    ask = json.dumps({"v": 1, "id": 1, "kind": "answer", "body": body})
    native = json.loads(handle(ask))
    browser = json.loads(run(f"from loadfirst.door.handle import handle; handle({ask!r})"))
    assert native["ok"], native
    assert sum(is_number(value) for _, value in leaves(native)) > 100
    assert differences(native, browser, TOLERANCE) == []
