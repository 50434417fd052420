"""The state at the end of an address, packed and unpacked without the page's own code."""

from __future__ import annotations

import base64
import json
import zlib
from typing import Any

RAW = -15  # zlib: deflate without header


def state(plant: Any = "rinse-transfer", edits: dict[str, Any] | None = None, **view: Any) -> dict[str, Any]:
    """A state of the page; `view` is how it is shown: units, curves, place, case, moves."""
    return {"format": 1, "plant": plant, "edits": edits or {}, "view": view}


def pack(text: bytes) -> str:
    """Any bytes as the end of an address."""
    squeezed = zlib.compressobj(wbits=RAW)
    packed = squeezed.compress(text) + squeezed.flush()
    return "#s=" + base64.urlsafe_b64encode(packed).decode().rstrip("=")


def link(of: dict[str, Any]) -> str:
    """A state as the end of an address."""
    return pack(json.dumps(of).encode())


def unpack(address: str) -> dict[str, Any] | None:
    """The state that an address ends with; None where it ends with none."""
    _, mark, packed = address.partition("#s=")
    if not mark:
        return None
    data = base64.urlsafe_b64decode(packed + "=" * (-len(packed) % 4))
    return json.loads(zlib.decompress(data, wbits=RAW))
