"""The declarations of all keys: complete, and in agreement with themselves."""

from __future__ import annotations

import pytest
from tests.plants import LEAST

from loadfirst.plant.keys import Key, keys_of
from loadfirst.plant.plant import DisplacementFile, Plant, PumpFile
from loadfirst.plant.read import decode_plant

WRITTEN = {
    "m": "m", "mm": "mm", "m3h": "m³/h", "bar": "bar", "mpas": "mPa·s", "kw": "kW", "kgm3": "kg/m³",
    "cm3": "cm³", "hz": "Hz", "percent": "%", "rpm": "1/min", "a": "A", "c": "°C", "k": "-", "s": "s",
    "m2": "m²", "kgm2": "kg·m²",
}  # fmt: skip
"""By the end of a key: its unit as people write it."""

KEYS = [*keys_of(Plant).values(), *keys_of(PumpFile).values(), *keys_of(DisplacementFile).values()]


@pytest.mark.parametrize("key", KEYS, ids=lambda key: key.path)
def test_every_key_has_a_sentence(key: Key) -> None:
    """The author's guide has something to say about each."""
    assert key.says.endswith(".")


@pytest.mark.parametrize(
    "key", [key for key in KEYS if key.expected.kind == "number"], ids=lambda key: key.path
)
def test_every_number_has_a_unit_a_range_and_a_default_within(key: Key) -> None:
    """The page makes its controls from these."""
    facts = key.expected.facts
    assert key.unit
    assert facts["low"] < facts["high"]
    assert key.default is None or facts["low"] <= key.default <= facts["high"]


@pytest.mark.parametrize("key", KEYS, ids=lambda key: key.path)
def test_the_unit_stands_in_the_key(key: Key) -> None:
    """``bore_mm`` is in millimetres; a key of another ending has no unit, `class` excepted."""
    name = key.path.rpartition(".")[2]
    ending = name.rpartition("_")[2]
    if key.unit in ("", "-"):
        assert ending not in WRITTEN or WRITTEN[ending] == "-"
    elif name != "class":
        assert key.unit == WRITTEN[ending]


def test_the_defaults_alone_make_a_sound_plant() -> None:
    """A pump is all that a plant must have."""
    assert decode_plant(LEAST).valve.opening == keys_of(Plant)["valve.opening"].default


def test_tables_within_tables_are_listed_with_their_own_defaults() -> None:
    """The suction gauge has another range than a gauge in general."""
    assert keys_of(Plant)["gauges.suction.range_bar"].default == (-1.0, 1.5)
    assert keys_of(Plant)["gauges.discharge.range_bar"].default == (0.0, 6.0)


def test_a_gauge_of_which_a_file_says_little_keeps_the_rest_of_its_defaults() -> None:
    """Naming the class of the suction gauge does not take its vacuum away."""
    plant = decode_plant(LEAST | {"gauges": {"suction": {"class": 1.0}, "discharge": {"class": 1.0}}})
    assert plant.gauges.suction.range_bar == (-1.0, 1.5)
    assert plant.gauges.discharge.range_bar == (0.0, 6.0)
