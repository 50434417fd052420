"""The address: reload, links, the back button, and what strangers put into a link."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from page.parts import native
from page.parts.links import link, pack, state
from page.parts.play import PREDICTION, Mouse, Play
from page.parts.rig import Rig
from page.parts.words import say

EDITS = {"valve.opening": 0.37, "pump.model": "large", "drive.frequency_hz": 44.5}

HOSTILE = {
    "cut short": (link(state(edits=EDITS))[:-9], "damaged"),
    "not base64": ("#s=%%%%", "damaged"),
    "not deflated": ("#s=bm9wZQ", "damaged"),
    "not JSON": (pack(b"valve wide open"), "damaged"),
    "not UTF-8": (pack(b"\xff\xfe{}"), "damaged"),
    "longer than any link": ("#s=" + "A" * 20_000, "longer"),
    "a bomb": (pack(b" " * 5_000_000), "longer"),
    "a list": (pack(b"[]"), "not a rig"),
    "of a newer format": (pack(json.dumps({**state(), "format": 2}).encode()), "newer"),
    "without a format": (pack(b'{"plant": "rinse-transfer"}'), "not a rig"),
    "a key of the prototype": (pack(b'{"format":1,"plant":{"__proto__":{"x":1}}}'), "not a rig"),
    "an edit of a strange key": (link(state(edits={"constructor.prototype.x": {"a": 1}})), "not a rig"),
    "a plant id that climbs": (link(state("../../secrets")), "not a rig"),
    "strange units": (link(state(units="furlongs")), "not a rig"),
    "a deep plant": (pack(b'{"format":1,"plant":' + b'{"a":' * 40 + b"1" + b"}" * 41), "not a rig"),
}
"""The end of an address, and a word of the sentence that answers it."""


def test_a_reload_gives_the_same_rig(fresh: Rig) -> None:
    """Valve, pump, speed, units and hidden curves."""
    fresh.open(state(edits=EDITS, units="ls-kpa-m", curves=False)).live()
    before = fresh.shows(EDITS)
    fresh.page.reload()
    fresh.live()
    after = fresh.shows(EDITS)
    assert after["readings"] == before["readings"]
    expect(fresh.page.locator("#chart svg")).to_be_hidden()


def test_a_rig_that_was_changed_by_hand_survives_a_reload(fresh: Rig) -> None:
    """What the address got from a drag is what a reload reads."""
    fresh.open().live()
    fresh.type_number("valve.opening", "37")
    fresh.option("pump.arrangement", "side-by-side").click()
    edits = {"valve.opening": 0.37, "pump.arrangement": "side-by-side"}
    fresh.address_holds(edits)
    fresh.page.reload()
    fresh.live()
    fresh.shows(edits)


def test_the_copied_link_gives_somebody_else_the_same_rig(fresh: Rig, visitor: Callable[..., Rig]) -> None:
    """From the dialog, through the clipboard, into another browser."""
    fresh.page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    fresh.open(state(edits=EDITS, units="gpm-psi-ft")).live()
    fresh.tool(say("tool-share")).click()
    dialog = fresh.page.get_by_role("dialog", name=say("share-title"))
    dialog.get_by_role("button", name=say("share-copy")).click()
    expect(dialog.get_by_role("status")).to_have_text(say("share-copied"))
    copied = fresh.page.evaluate("() => navigator.clipboard.readText()")
    assert copied == dialog.get_by_label(say("share-link")).input_value()
    other = visitor(copied).open().live()
    other.shows(EDITS, unit="psi")


def test_a_kept_rig_waits_for_the_next_visit(fresh: Rig) -> None:
    """Without a link the last rig is still there; a link comes before it."""
    fresh.open().live()
    fresh.type_number("valve.opening", "37")
    fresh.address_holds({"valve.opening": 0.37})
    fresh.page.goto("about:blank")
    fresh.open().live()
    fresh.shows({"valve.opening": 0.37})
    fresh.page.goto("about:blank")
    fresh.open(state(edits=EDITS)).live()
    fresh.shows(EDITS)


def test_back_leaves_the_rig_in_one_step(fresh: Rig) -> None:
    """A hundred drags do not stand between a reader and where they came from."""
    fresh.page.goto("about:blank")
    fresh.open().live()
    for opening in (30, 40, 50):
        fresh.type_number("valve.opening", str(opening))
    fresh.address_holds({"valve.opening": 0.5})
    fresh.page.go_back()
    assert fresh.page.url == "about:blank"
    fresh.page.go_forward()
    fresh.live()
    fresh.shows({"valve.opening": 0.5})


def test_back_between_two_links_brings_each_rig(rig: Rig) -> None:
    """Two links opened one after the other in one tab."""
    rig.open(state(edits={"valve.opening": 0.3})).shows({"valve.opening": 0.3})
    rig.open(state(edits={"valve.opening": 0.8})).shows({"valve.opening": 0.8})
    rig.page.go_back()
    rig.shows({"valve.opening": 0.3})
    rig.page.go_forward()
    rig.shows({"valve.opening": 0.8})


def test_back_goes_from_the_puzzle_to_the_rig_and_forward_to_the_play(fresh: Rig) -> None:
    """Neither loses what was done meanwhile, and one step further back is where the reader came from."""
    fresh.page.goto("about:blank")
    fresh.open().live()
    fresh.type_number("valve.opening", "30")
    fresh.page.get_by_role("button", name=say("place-case")).click()
    fresh.page.locator(f'#course button[data-id="{native.CASE}"]').click()
    play = Play(fresh, Mouse(fresh))
    play.predict()
    fresh.address(lambda now: now["view"]["moves"] == [PREDICTION], "the move in the address")
    fresh.page.go_back()
    expect(fresh.page.locator("#course")).to_be_visible()
    fresh.page.go_back()
    expect(fresh.page.locator("#rig")).to_be_visible()
    fresh.type_number("valve.opening", "40")
    fresh.address_holds({"valve.opening": 0.4})
    fresh.page.go_forward()
    expect(fresh.page.locator("#course")).to_be_visible()
    fresh.page.go_forward()
    expect(play.part(say("case-readings-title"))).to_be_visible()
    fresh.address(lambda now: now["edits"] == {"valve.opening": 0.4}, "the rig as it was left")
    fresh.page.go_back()
    fresh.page.go_back()
    fresh.shows({"valve.opening": 0.4})
    fresh.page.go_back()
    assert fresh.page.url == "about:blank"


@pytest.mark.parametrize("kind", HOSTILE)
def test_a_link_that_will_not_do_is_answered_with_a_sentence(rig: Rig, kind: str) -> None:
    """In a page that is at work already: the rig stays, and goes on working."""
    end, word = HOSTILE[kind]
    rig.type_number("valve.opening", "44")
    rig.shows({"valve.opening": 0.44})
    rig.page.evaluate("(end) => { location.hash = end; }", end)
    expect(rig.page.locator("#status")).to_contain_text(word)
    expect(rig.page.locator("#status")).not_to_contain_text("as it comes")
    if word in ("damaged", "longer"):
        expect(rig.page.locator("#status")).to_contain_text("stays as it was")
    rig.shows({"valve.opening": 0.44})
    rig.type_number("valve.opening", "45")
    rig.shows({"valve.opening": 0.45})
    expect(rig.page.locator("#status")).not_to_contain_text(word)


@pytest.mark.parametrize("kind", ["cut short", "a bomb", "of a newer format", "a plant id that climbs"])
def test_a_page_opened_by_such_a_link_works(fresh: Rig, kind: str) -> None:
    """The default rig comes up, the sentence stays, nothing is lost."""
    end, word = HOSTILE[kind]
    fresh.page.goto(fresh.home + end)
    expect(fresh.page.locator("#status")).to_contain_text(word, timeout=30_000)
    fresh.shows()
    expect(fresh.page.locator("#status")).to_contain_text(word)


def test_a_link_with_values_that_the_physics_refuses_says_so(rig: Rig) -> None:
    """Well formed, but no plant: the sentence names the key's control, and the page can be used."""
    rig.page.evaluate("(end) => { location.hash = end; }", link(state(edits={"valve.opening": 3})))
    expect(rig.complaint("valve.opening")).to_contain_text("from 0")
    rig.type_number("valve.opening", "50")
    rig.shows({"valve.opening": 0.5})
    expect(rig.complaint("valve.opening")).to_be_hidden()


def test_values_that_will_not_do_are_never_drawn(fresh: Rig) -> None:
    """Neither before the answer nor after it, and an error does not stand beside a word of waiting."""
    fresh.open(state(edits={"valve.opening": 99, "drive.frequency_hz": "<b>", "delivery.surface_m": 900}))
    assert "9,900" not in fresh.page.locator("body").inner_text()
    expect(fresh.page.locator("#controls .bad:not([hidden])").first).to_be_visible(timeout=60_000)
    assert "9,900" not in fresh.page.locator("#apparatus").inner_text()
    expect(fresh.page.locator("#origin")).to_have_text(say("origin-refused"))
    expect(fresh.page.locator("#why")).to_contain_text(say("why-refused"))


def test_a_link_to_a_plant_that_does_not_exist_says_so(rig: Rig) -> None:
    """With what there is, and a page that still opens plants."""
    rig.page.evaluate("(end) => { location.hash = end; }", link(state("no-such-plant")))
    expect(rig.page.locator("#status")).to_contain_text("no-such-plant")
    rig.tool(say("tool-open")).click()
    rig.page.get_by_role("dialog").get_by_role("button", name="Rinse-water transfer").click()
    rig.shows()


def test_an_unknown_edit_in_a_link_says_so(rig: Rig) -> None:
    """With the nearest key; the page still works after reset."""
    rig.page.evaluate("(end) => { location.hash = end; }", link(state(edits={"valve.openning": 0.3})))
    expect(rig.page.locator("#status")).to_contain_text("openning")
    rig.tool(say("tool-reset")).click()
    rig.shows()


def test_markup_in_a_link_is_text(rig: Rig) -> None:
    """A title full of tags is shown letter by letter."""
    plant = {"format": 1, "title": "<img src=x onerror=alert(1)><b>bold</b>", "pump": {"model": "medium"}}
    rig.open(state(plant))
    expect(rig.page.locator("#plant-title")).to_have_text(plant["title"])
    assert rig.page.locator("#plant-title *").count() == 0
    assert rig.page.locator("img").count() == 0


def test_a_link_to_a_puzzle_that_nobody_knows_says_so_and_offers_others(fresh: Rig) -> None:
    """Without a word on the console: no file of it is asked for."""
    fresh.open(state(place="case", case="no-such-puzzle", moves=[]))
    note = fresh.page.locator("#case .case-trouble")
    expect(note).to_contain_text(say("case-unknown"), timeout=60_000)
    expect(note.get_by_role("button")).to_have_count(0)
    fresh.page.get_by_role("button", name=say("case-others")).click()
    expect(fresh.page.get_by_role("heading", name=say("course-title"))).to_be_visible()
