"""The states of the page that are looked at as a whole: for size, for accessibility."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import expect

from page.parts import native
from page.parts.links import state
from page.parts.play import PREDICTION, WITNESSED, sights
from page.parts.play import decided as verdict
from page.parts.rig import Rig
from page.parts.words import say

CHECK = {"do": "check", "id": "flow"}
STRIP = {"do": "check", "id": "strip-down"}


def whole(plant: str = "rinse-transfer", edits: dict[str, Any] | None = None, **view: Any) -> dict[str, Any]:
    """A link that leaves nothing as it was: what a link does not say stays in a page that is open already."""
    return state(plant, edits, **{"units": "m3h-bar-m", "curves": True, "place": "rig", **view})


def case(*moves: dict[str, str]) -> dict[str, Any]:
    """A link into the case."""
    return whole(place="case", case=native.CASE, moves=list(moves))


def decided(right: bool) -> dict[str, Any]:
    """A link to the end of the case."""
    for choice in native.case(PREDICTION)["choices"]:
        moves = [PREDICTION, CHECK, STRIP, *sights(*WITNESSED), verdict(choice["id"])]
        if native.case(*moves)["verdict"]["rightness"] == ("right" if right else "wrong"):
            return case(*moves)
    raise AssertionError("no such verdict")


KEPT = {"plant": "rinse-transfer", "edits": {"valve.opening": 0.3}}

SCENES: dict[str, dict[str, Any]] = {
    "rig": whole(),
    "valve shut": whole(edits={"valve.opening": 0}),
    "pipe off": whole(edits={"discharge.attached": False}),
    "two side by side": whole(edits={"pump.arrangement": "side-by-side"}),
    "two in line": whole(edits={"pump.arrangement": "in-line", "drive.supply_hz": 60}, units="gpm-psi-ft"),
    "curves hidden": whole(curves=False),
    "compared": whole(edits={"pump.model": "large"}, beside=KEPT),
    "another plant": whole("pit-lift", units="ls-kpa-m"),
    "time": whole(),
    "case, before": case(),
    "case, between": case(PREDICTION, CHECK),
    "case, right": decided(True),
    "case, wrong": decided(False),
}
"""Links, by what they show."""

LAST = {
    "case, before": say("case-predict-title"),
    "case, between": say("case-verdict-title"),
    "case, right": say("case-all-title"),
    "case, wrong": say("case-all-title"),
}
"""In a case, the part that tells that the scene is complete."""


def show(rig: Rig, scene: str) -> None:
    """Open a scene and wait until it is complete."""
    of = SCENES[scene]
    rig.open(of).live()  # a case is drawn anew when Python is there
    if scene in LAST:
        part = rig.page.get_by_role("region", name=LAST[scene], exact=True)
        expect(part).to_be_visible()
        expect(rig.page.locator("#case [aria-busy=true]")).to_have_count(0)
        return
    unit = {"m3h-bar-m": "bar", "ls-kpa-m": "kPa", "gpm-psi-ft": "psi"}[of["view"]["units"]]
    rig.shows(of["edits"], of["plant"], unit=unit)
    expect(rig.page.locator("#chart svg")).to_be_visible(visible=of["view"]["curves"])
    if scene == "time":
        step_once(rig)


def step_once(rig: Rig) -> None:
    """Let time go on by one step, so that clock and strip are in sight."""
    rig.page.locator("#switch-clock").click()
    rig.page.locator("#clock-step").click()
    expect(rig.page.locator("#clock-go")).to_have_attribute("aria-label", say("clock-run"))
    expect(rig.page.locator("#trend .trend-line").first).to_be_visible()
