"""JSON schemas, generated from the types."""

from __future__ import annotations

from typing import Any

import msgspec

from loadfirst.cli.output import CurvesOutput, ReadOutput
from loadfirst.plant.plant import Plant, PumpFile

KINDS: dict[str, type] = {"plant": Plant, "pump": PumpFile, "read": ReadOutput, "curves": CurvesOutput}


def schemas() -> dict[str, dict[str, Any]]:
    """By name: plant file, pump file, output of ``read --json``, output of ``curves --json``."""
    return {name: msgspec.json.schema(kind) for name, kind in KINDS.items()}
