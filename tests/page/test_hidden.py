"""Something hidden: only instruments tell, nothing on the page gives it away, and it can be told."""

from __future__ import annotations

import json
from typing import Any

from playwright.sync_api import expect

from loadfirst.causes.catalogue import cause
from loadfirst.causes.hidden import Hidden, unveil, veil
from page.conftest import Bench
from page.parts import native
from page.parts.links import state
from page.parts.rig import Rig
from page.parts.words import say

PLAIN = {"plant": "rinse-transfer", "edits": {}}
WORN = {"pump.wear_percent": 30.0}
HERE = {"units": "m3h-bar-m", "curves": True, "place": "rig"}
FLOW = '#apparatus [data-reading="flow-meter"]'

ASKED = """
() => {
  window.asked = [];
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (message?.ask) window.asked.push(message.ask);
    return post.call(this, message, ...rest);
  };
}
"""


def hidden(cause_id: str, size: float, **more: Any) -> dict[str, Any]:
    """A link with a cause under its veil, the plain rig being yesterday's."""
    text = veil(Hidden(cause(cause_id), size), 5)
    return state("rinse-transfer", view_edits(more), hidden=text, yesterday=PLAIN, **HERE)


def view_edits(more: dict[str, Any]) -> dict[str, Any]:
    """Keys with `__` for a dot."""
    return {name.replace("__", "."): value for name, value in more.items()}


def flow(edits: dict[str, Any]) -> str:
    """The native engine's flow as the meter says it, beside that of the plain rig."""
    said = [
        next(one for one in native.answer("rinse-transfer", of)["shown"] if one["id"] == "flow-meter")[
            "value"
        ]
        for of in (edits, {})
    ]
    return "; yesterday ".join(f"{value * 3600:.1f}\u00a0m³/h" for value in said)


def conceal(rig: Rig, id: str) -> None:
    """Through the dialog, out of sight."""
    rig.page.get_by_role("button", name=say("causes-open")).click()
    dialog = rig.page.get_by_role("dialog")
    dialog.get_by_label(say("causes-choose"), exact=True).select_option(id)
    dialog.get_by_label(say("causes-hidden")).check()
    dialog.get_by_role("button", name=say("causes-apply")).click()
    expect(dialog).to_be_hidden()
    expect(rig.page.locator("#hidden")).to_be_visible()


def test_a_hidden_cause_moves_the_dials_and_nothing_else_on_the_page(rig: Rig) -> None:
    """Curves, stack, notes, sentence, path and clock are put away; controls stand where they stood."""
    before = rig.seen()["sliders"]
    conceal(rig, "worn")
    worn = {"pump.wear_percent": 10}
    expect(rig.page.locator(FLOW)).to_have_attribute("aria-valuetext", flow(worn))
    for query in ("#stack", "#chart", "#why", "#notes", "#path", "#clock-open", "#beside", "#remember-day"):
        expect(rig.page.locator(query)).to_be_hidden()
    assert rig.seen()["sliders"] == before
    text = rig.page.locator("body").inner_text()
    assert say("cause-worn") not in text
    rig.address(lambda of: "hidden" in of["view"], "the veil")
    of = rig.address_state()
    assert of["edits"] == {} and "worn" not in json.dumps(of)
    days = rig.page.locator("#days")
    expect(days.locator('[data-reading="flow-meter"]')).to_contain_text("▼")
    expect(days).to_contain_text(say("hidden-days"))
    expect(days.locator("td.days-why").first).to_be_empty()
    kept = rig.page.evaluate("() => JSON.stringify(localStorage)")
    assert "worn" not in kept and "wear" not in kept


def test_what_is_hidden_is_told_with_what_followed_and_undo_hides_it_again(rig: Rig) -> None:
    """Then the curves come back, and both days say which moved."""
    rig.open(hidden("worn", 30.0)).live()
    expect(rig.page.locator(FLOW)).to_have_attribute("aria-valuetext", flow(WORN))
    rig.page.get_by_role("button", name=say("hidden-reveal")).click()
    box = rig.page.locator("#hidden")
    expect(box).to_contain_text(say("cause-worn"))
    expect(box).to_contain_text("30\u00a0%")
    expect(rig.page.locator("#chart svg")).to_be_visible()
    rig.address(lambda of: of["edits"] == WORN and "hidden" not in of["view"], "the wear in the open")
    row = rig.page.locator('#days [data-reading="flow-meter"]')
    expect(row.locator("td.days-why")).not_to_be_empty()
    rig.tool(say("tool-undo")).click()
    expect(rig.page.locator("#chart svg")).to_be_hidden()
    expect(box).to_contain_text(say("hidden-says"))
    assert say("cause-worn") not in rig.page.locator("body").inner_text()


def test_a_reload_keeps_it_and_the_rig_can_be_worked(rig: Rig) -> None:
    """From the address; a valve moved by hand moves the dials as with the cause in the open."""
    rig.open(hidden("worn", 30.0)).live()
    rig.page.reload()
    rig.live()
    rig.type_number("valve.opening", "30")
    expect(rig.page.locator(FLOW)).to_have_attribute("aria-valuetext", flow({**WORN, "valve.opening": 0.3}))
    expect(rig.page.locator("#chart svg")).to_be_hidden()
    rig.tool(say("tool-undo")).click()
    expect(rig.page.locator(FLOW)).to_have_attribute("aria-valuetext", flow(WORN))


def test_no_reply_to_the_page_holds_the_true_state_while_it_is_hidden(rig: Rig) -> None:
    """The page asks for readings; what it asks in full is the plant of yesterday."""
    rig.page.evaluate(ASKED)
    rig.open(hidden("worn", 30.0)).live()
    rig.type_number("valve.opening", "40")
    expect(rig.page.locator(FLOW)).to_have_attribute("aria-valuetext", flow({**WORN, "valve.opening": 0.4}))
    asks = [json.loads(text) for text in rig.page.evaluate("() => window.asked")]
    kinds = {ask["kind"] for ask in asks}
    assert "shown" in kinds and kinds <= {"shown", "answer", "catalogue"}
    full = [ask["body"] for ask in asks if ask["kind"] == "answer"]
    assert all(body["edits"] == {} for body in full)


def test_chance_hides_something_that_an_instrument_tells(rig: Rig) -> None:
    """Another one each time; the address holds only its veil."""
    rig.page.get_by_role("button", name=say("causes-open")).click()
    rig.page.get_by_role("dialog").get_by_role("button", name=say("causes-chance")).click()
    expect(rig.page.locator("#hidden")).to_contain_text(say("hidden-says"))
    rig.address(lambda of: "hidden" in of["view"], "the veil")
    found = unveil(rig.address_state()["view"]["hidden"])
    expect(rig.page.locator("#days tr.moved").first).to_be_visible()
    rig.page.get_by_role("button", name=say("hidden-reveal")).click()
    expect(rig.page.locator("#hidden")).to_contain_text(say(f"cause-{found.cause.id}"))


def test_it_fits_a_phone(phone: Bench, touched: Rig) -> None:
    """Nothing hangs over the side, and the button is large enough for a thumb."""
    touched.open(hidden("strainer-blocked", 0.9)).live()
    button = touched.page.get_by_role("button", name=say("hidden-reveal"))
    button.scroll_into_view_if_needed()
    assert button.bounding_box()["height"] >= 40
    assert touched.page.evaluate("() => document.scrollingElement.scrollWidth") <= 360
