"""What is pictured."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from loadfirst_dev.shots.rigs import RIGS
from loadfirst_dev.shots.scene import Scene

__all__ = ["CASE", "SCENES", "Scene"]

CASE = "the-dropped-gauge"
PREDICT = {"do": "predict", "says": "down", "suspects": "machine"}
CHECKS = [{"do": "check", "id": "flow"}, {"do": "check", "id": "current"}]
SEEN = [{"do": "see", "reading": "gauge-discharge", "says": "down"}]
BOTH_SEEN = [*SEEN, {"do": "see", "reading": "flow-meter", "says": "up"}]


def case(name: str, title: str, moves: Sequence[Mapping[str, Any]], **view: Any) -> Scene:
    """A case after some moves."""
    return Scene(name, title, view={"place": "case", "case": CASE, "moves": list(moves), **view})


def decide(choice: str, action: str = "restore") -> dict[str, str]:
    """The move that gives a verdict and says what is done."""
    return {"do": "decide", "choice": choice, "action": action}


BESIDE = {"plant": "rinse-transfer", "edits": {"valve.opening": 0.3}}
YESTERDAY = {"plant": "rinse-transfer", "edits": {}}

SCENES = (
    Scene("rig", "The rig as it opens"),
    Scene("valve-shut", "Valve shut", {"valve.opening": 0}),
    Scene("valve-open", "Valve fully open", {"valve.opening": 1}),
    Scene("pipe-off", "Discharge pipe taken off", {"discharge.attached": False}),
    Scene("side-by-side", "Two pumps side by side", {"pump.arrangement": "side-by-side"}),
    Scene("in-line", "Two pumps in line", {"pump.arrangement": "in-line"}),
    Scene("low-frequency", "Drive at 30 Hz", {"drive.frequency_hz": 30}),
    Scene("off-scale", "A gauge off its scale", {"pump.arrangement": "in-line", "valve.opening": 0.2}),
    Scene("litres", "In L/s and kPa", view={"units": "ls-kpa-m"}),
    Scene("gallons", "In gpm, psi and ft", view={"units": "gpm-psi-ft"}),
    Scene("no-curves", "Without the curves", view={"curves": False}),
    Scene("npsh", "NPSH over the flow", view={"chart": "npsh"}),
    Scene("power", "Power over the flow", view={"chart": "power"}),
    Scene("compared", "Two rigs side by side", {"pump.model": "large"}, view={"beside": BESIDE}),
    Scene(
        "two-days",
        "Yesterday remembered, another load today",
        {"valve.opening": 0.25, "supply.surface_m": 1.2},
        view={"yesterday": YESTERDAY},
    ),
    Scene("built", "Before Python is there: the answer made while building", start="starting"),
    Scene("blank", "Blank dials: a link, before Python is there", {"valve.opening": 0.3}, start="starting"),
    Scene("failed", "Python cannot be started", start="failed"),
    Scene("bad-number", "A number that cannot be used", deed="bad number"),
    Scene("bad-file", "A plant file that cannot be used", deed="bad file"),
    Scene("menu", "Plants, cases and own files", deed="menu"),
    Scene("panel", "The panel of the pump, tapped in the drawing", {"branch.fitted": True}, deed="panel"),
    Scene("tools", "The tools, unfolded on a phone", deed="tools"),
    Scene("time", "Time has run for some minutes", deed="time"),
    Scene("trend", "The trend strip, read in its middle", deed="trend"),
    *RIGS,
    Scene("course", "The map of the course", view={"place": "course"}),
    case("case-story", "Case: story and prediction", []),
    case("case-predicted", "Case: after the prediction", [PREDICT]),
    case("case-hinted", "Case: after both hints", [PREDICT, {"do": "hint"}, {"do": "hint"}]),
    case("case-checked", "Case: two checks taken", [PREDICT, *CHECKS]),
    case("case-wrong", "Case: a wrong verdict", [PREDICT, *SEEN, decide("worn", "overhaul")]),
    case("case-right", "Case: the right verdict", [PREDICT, *CHECKS, *BOTH_SEEN, decide("lighter")]),
    case("case-wall", "Case on the wall: the story", [], wall=True),
    case("case-direction", "Case: right side, wrong way", [PREDICT, *SEEN, decide("heavier")]),
)
"""The reveal stands below each verdict, on the whole-page pictures."""
