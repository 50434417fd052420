"""Which controls the default rig has, and what is tried on them."""

from __future__ import annotations

from page.parts.words import say

SLIDERS = ("valve.opening", "drive.frequency_hz", "supply.surface_m", "delivery.surface_m")
"""What has a slider, a number box and a part of the drawing that can be dragged."""

UPWARD = {
    "valve.opening": (0, -1),
    "drive.frequency_hz": (1, 0),
    "supply.surface_m": (0, -1),
    "delivery.surface_m": (0, -1),
}
"""Direction on the screen in which a part of the drawing is pulled for more."""

TYPED = {
    "valve.opening": ("35", 0.35),
    "drive.frequency_hz": ("42.5", 42.5),
    "supply.surface_m": ("3.1", 3.1),
    "delivery.surface_m": ("12.75", 12.75),
}
"""What is typed into a number box, and what it is in the plant file's units."""

CHOICES = [
    ("pump.model", "small"),
    ("pump.model", "large"),
    ("pump.arrangement", "side-by-side"),
    ("pump.arrangement", "in-line"),
    ("drive.supply_hz", 60),
    ("drive.poles", 4),
    ("drive.poles", 6),
    ("drive.poles", 8),
    ("discharge.attached", False),
]
"""Every word of every choice that the default rig does not stand at."""

CHIPS = {
    "valve.opening": say("chip-valve"),
    "drive.frequency_hz": say("chip-speed"),
    "supply.surface_m": say("chip-supply"),
    "delivery.surface_m": say("chip-delivery"),
    "pump.model": say("chip-pump"),
    "pump.arrangement": say("chip-arrangement"),
    "drive.supply_hz": say("chip-motor"),
    "drive.poles": say("chip-motor"),
    "discharge.attached": say("chip-pipe"),
}
"""What brings each control into a phone's tray."""
