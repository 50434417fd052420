"""What may be wrong with an instrument can be tapped, set, seen in the reading, and taken back."""

from __future__ import annotations

from playwright.sync_api import expect

from page.parts.panel import box, panel, picker, show_part
from page.parts.rig import Rig
from page.parts.words import say

FAULT = "gauges.discharge.fault"


def unfold(rig: Rig) -> None:
    """Open what is folded away in the panel that is shown."""
    heading = panel(rig).locator(".part-faults summary")
    heading.click()
    expect(panel(rig).locator(".part-faults")).to_have_attribute("open", "")


def test_a_dial_that_is_tapped_has_its_faults_folded_and_counts_those_that_are_set(rig: Rig) -> None:
    """A wrong zero moves this dial and nothing else."""
    rig.page.locator('#apparatus [data-part="gauge-discharge"]').click()
    expect(picker(rig)).to_have_value("gauge-discharge")
    expect(box(rig, f"{FAULT}.zero_bar")).to_be_hidden()
    unfold(rig)
    box(rig, f"{FAULT}.zero_bar").fill("-0.5")
    box(rig, f"{FAULT}.zero_bar").press("Enter")
    rig.shows({f"{FAULT}.zero_bar": -0.5})
    expect(panel(rig).locator(".part-faults summary")).to_have_text(say("part-faults-set", set=1))


def test_a_root_valve_that_is_shut_keeps_what_the_dial_shows_while_the_plant_goes_on(rig: Rig) -> None:
    """The valve is worked, the other instruments move, this one stands; opened again it tells the truth."""
    show_part(rig, "gauge-discharge")
    unfold(rig)
    shut = panel(rig).get_by_role("radio", name=say("choice-gauges-fault-root_valve-shut"), exact=True)
    shut.check()
    rig.address(lambda now: f"{FAULT}.frozen_bar" in now["edits"], "what it keeps, in the address")
    state = rig.address_state()
    assert state is not None
    kept = state["edits"][f"{FAULT}.frozen_bar"]
    frozen = {f"{FAULT}.root_valve": "shut", f"{FAULT}.frozen_bar": kept}
    before = rig.shows(frozen)["readings"]
    show_part(rig, "valve")
    box(rig, "valve.opening").fill("30")
    box(rig, "valve.opening").press("Enter")
    after = rig.shows({**frozen, "valve.opening": 0.3})["readings"]
    assert after["gauge-discharge"] == before["gauge-discharge"]
    assert after["gauge-after-valve"] != before["gauge-after-valve"]


def test_an_orifice_has_more_that_may_be_wrong(rig: Rig) -> None:
    """Its square root can only be missing where there is one."""
    show_part(rig, "flow-meter")
    unfold(rig)
    missing = panel(rig).get_by_role("radio", name=say("choice-meters-flow_fault-root-missing"), exact=True)
    expect(missing).to_have_count(0)
    panel(rig).get_by_role("radio", name=say("choice-meters-flow_kind-orifice"), exact=True).check()
    missing.check()
    rig.shows({"meters.flow_kind": "orifice", "meters.flow_fault.root": "missing"})
