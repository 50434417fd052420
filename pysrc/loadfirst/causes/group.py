"""The groups that a cause can belong to."""

from __future__ import annotations

from typing import Literal

Group = Literal["discharge-side", "suction-side", "liquid", "drive", "machine", "instrument", "nothing"]
"""Where a change sits: on a side of the load, in its liquid, drive, machine, an instrument; or nowhere."""
