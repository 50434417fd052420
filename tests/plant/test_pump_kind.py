"""What kind of machine a pump is, is said of every pump, whoever made its file."""

from __future__ import annotations

import pytest

from loadfirst.plant.edits import apply_edits
from loadfirst.plant.pump_kind import pump_kind
from loadfirst.plant.pumps import find_pump
from loadfirst.plant.read import plant_data, resolve_data
from loadfirst.plant.state import true_state

PACKAGED = {
    "small": "radial", "medium": "radial", "large": "radial", "mixed": "mixed", "axial": "axial",
    "gear": "gear", "lobe": "lobe", "screw": "screw",
}  # fmt: skip


@pytest.mark.parametrize(("model", "kind"), PACKAGED.items())
def test_the_packaged_pumps_are_what_their_files_say(model: str, kind: str) -> None:
    """The comments of the files give the specific speeds: 18 to 21, 98 and 220."""
    assert pump_kind(find_pump(model)) == kind


def test_a_pump_in_the_plants_own_file_is_known_by_its_points() -> None:
    """The points of the propeller under no name at all."""
    axial = find_pump("axial")
    points = {
        name: getattr(axial, name) for name in ("speed_rpm", "flow_m3h", "head_m", "power_kw", "npshr_m")
    }
    data = plant_data("rinse-transfer")
    data["pump"] = {**data["pump"], "curve": {**points, "motor_kw": 7.5}}
    del data["pump"]["model"]
    state = true_state(resolve_data(data))
    assert [machine.kind for machine in state.machines] == ["axial"]


def test_each_of_two_unlike_pumps_has_its_own_kind_even_where_it_stands() -> None:
    """A motor that is off does not change what hangs on it."""
    edits = {"pump.arrangement": "side-by-side", "pump.second.model": "mixed", "pump.second.running": False}
    state = true_state(resolve_data(apply_edits(plant_data("rinse-transfer"), edits)))
    assert [machine.kind for machine in state.machines] == ["radial", "mixed"]
