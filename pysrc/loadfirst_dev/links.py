"""Addresses that open the page in a given state, packed as the page packs them (see share.js)."""

from __future__ import annotations

import base64
import json
import zlib
from collections.abc import Mapping
from typing import Any

FORMAT = 1
DEFAULT_PLANT = "rinse-transfer"


def fragment(
    edits: Mapping[str, Any] | None = None,
    view: Mapping[str, Any] | None = None,
    plant: Any = DEFAULT_PLANT,
) -> str:
    """What follows the # of the address.

    Parameters
    ----------
    edits : plant keys and values in file units.
    view : how it is shown: units, curves, place, case, moves.
    plant : id of a packaged plant, or a whole one.
    """
    state = {"format": FORMAT, "plant": plant, "edits": dict(edits or {}), "view": dict(view or {})}
    packer = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS)
    packed = packer.compress(json.dumps(state).encode()) + packer.flush()
    return "s=" + base64.urlsafe_b64encode(packed).decode().rstrip("=")
