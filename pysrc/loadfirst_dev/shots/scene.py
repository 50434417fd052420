"""What one picture shows: a link, and what is done to the page before the picture is taken."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from loadfirst_dev.links import DEFAULT_PLANT, fragment

Deed = Literal[
    "",
    "bad number",
    "bad file",
    "menu",
    "tools",
    "panel",
    "vessel panel",
    "faults",
    "drive panel",
    "controller panel",
    "time",
    "trend",
]
Start = Literal["ready", "starting", "failed"]


@dataclass(frozen=True)
class Scene:
    """One state of the page.

    Attributes
    ----------
    name : of the picture's file.
    title : what it shows.
    edits, view : of the link, see `links.fragment`.
    deed : what is done once the page is there, see `deeds`.
    start : how far the page's Python comes; held back or refused where it is not "ready".
    plant : id of a packaged plant.
    """

    name: str
    title: str
    edits: Mapping[str, Any] = field(default_factory=dict)
    view: Mapping[str, Any] = field(default_factory=dict)
    deed: Deed = ""
    start: Start = "ready"
    plant: str = DEFAULT_PLANT

    @property
    def link(self) -> str:
        """What follows the # of the address."""
        return fragment(self.edits, self.view, self.plant)
