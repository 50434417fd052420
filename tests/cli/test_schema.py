"""Schemas come from the types and say what the types say."""

from __future__ import annotations

import json
from typing import Any

import pytest

from loadfirst.__main__ import main
from loadfirst.cli.schema import schemas

LOAD = {"housing_k", "fouling", "at", "filled", "recovery"}
NO_UNIT = {
    "format",
    "gear_ratio",
    "belt_ratio",
    "poles",
    "fittings_k",
    "strainer_k",
    "k",
    "rangeability",
    "gain",
    "opening",
    "class",
    *LOAD,
    "leg_filled",
    "seed",
    "serial",
    "flow_serial",
}


def numbers(schema: Any, name: str = "") -> list[str]:
    """Names of all properties that are numbers or lists of numbers."""
    if isinstance(schema, list):
        return [found for entry in schema for found in numbers(entry, name)]
    if not isinstance(schema, dict):
        return []
    if schema.get("type") in ("number", "integer"):
        return [name]
    inner = [found for key, value in schema.get("properties", {}).items() for found in numbers(value, key)]
    for part in ("anyOf", "items", "prefixItems"):
        inner += numbers(schema.get(part, []), name)
    return inner + [found for kind in schema.get("$defs", {}).values() for found in numbers(kind)]


@pytest.mark.parametrize("kind", list(schemas()))
def test_every_number_carries_its_unit_in_its_name(kind: str) -> None:
    """Files and output alike; loss coefficients, openings and counts have none."""
    units = {"m", "mm", "cm3", "m3h", "bar", "mpas", "kgm3", "kw", "hz", "percent", "rpm", "a", "c", "s"}
    units |= {"m2", "kgm2"}
    found = set(numbers(schemas()[kind]))
    assert found
    assert {name for name in found - NO_UNIT if name.rpartition("_")[2] not in units} == set()


def test_the_schema_of_a_plant_has_ranges_and_sentences() -> None:
    """An editor that knows JSON schema can check a plant while it is written."""
    valve = schemas()["plant"]["$defs"]["ControlValve"]
    assert valve["additionalProperties"] is False
    assert valve["properties"]["opening"] == {
        "type": "number", "minimum": 0, "maximum": 1, "default": 0.6, "unit": "-",
        "description": "Stem position: 0 shut, 1 fully open.",
    }  # fmt: skip


def test_the_command_prints_one_schema_or_all(capsys: pytest.CaptureFixture[str]) -> None:
    """Valid JSON either way."""
    assert main(["schema"]) == 0
    assert set(json.loads(capsys.readouterr().out)) == {"plant", "pump", "displacement", "read", "curves"}
    assert main(["schema", "read"]) == 0
    assert json.loads(capsys.readouterr().out) == schemas()["read"]
