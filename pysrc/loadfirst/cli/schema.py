"""JSON schemas, generated from the types."""

from __future__ import annotations

from typing import Any

import msgspec

from loadfirst.cli.output import CurvesOutput, ReadOutput
from loadfirst.plant.plant import DisplacementFile, Plant, PumpFile

KINDS: dict[str, type] = {
    "plant": Plant,
    "pump": PumpFile,
    "displacement": DisplacementFile,
    "read": ReadOutput,
    "curves": CurvesOutput,
}


def schemas() -> dict[str, dict[str, Any]]:
    """By name: plant file, files of both kinds of pump, outputs of ``read --json`` and ``curves --json``."""
    return {name: msgspec.json.schema(kind) for name, kind in KINDS.items()}
