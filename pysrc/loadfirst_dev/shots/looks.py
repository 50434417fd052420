"""The screens on which each scene is pictured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Look:
    """A screen and a theme."""

    name: str
    options: dict[str, Any]
    whole: bool = False  # the whole page as well, not only what is in sight


SCREENS: dict[str, dict[str, Any]] = {
    "phone": {
        "viewport": {"width": 360, "height": 740},
        "is_mobile": True,
        "has_touch": True,
        "device_scale_factor": 2,
    },
    "laptop": {"viewport": {"width": 1280, "height": 800}},
    "projector": {"viewport": {"width": 1920, "height": 1080}},
}
THEMES = ("light", "dark")

LOOKS = tuple(
    Look(
        f"{screen}-{theme}",
        {**options, "color_scheme": theme, "locale": "en-GB"},
        whole=screen != "projector",
    )
    for screen, options in SCREENS.items()
    for theme in THEMES
)
