"""Opening a plant of one's own, by picker and by drop, and files that will not do."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import FileChooser, expect

from loadfirst_dev import places
from page.parts import native
from page.parts.files import GOOD, Files, plant
from page.parts.rig import Rig
from page.parts.waiting import eventually
from page.parts.words import say

WAYS = ("pick", "drop")

BAD = {
    "a slip of the pen": (GOOD.replace("format = 1", "format = = 1"), ["line 2"]),
    "a misspelt key": (GOOD.replace("bore_mm = 65", "boar_mm = 65"), ["discharge.boar_mm", "bore_mm"]),
    "a value out of range": (GOOD.replace("opening = 0.5", "opening = 5"), ["valve.opening", "5"]),
    "a word for a number": (GOOD.replace("length_m = 30", 'length_m = "long"'), ["discharge.length_m"]),
    "an unknown pump": (GOOD.replace('"small"', '"smal"'), ["pump.model", "small"]),
    "a level above the rim": (GOOD.replace("surface_m = 1.0", "surface_m = 9.0"), ["supply.surface_m"]),
    "a decimal comma": (GOOD.replace("opening = 0.5", "opening = 0,5"), ["opening = 0,5", "decimal point"]),
    "Latin-1": (GOOD.replace("my own", "Jürg's own").encode("latin-1"), ["UTF-8"]),
    "UTF-16": (GOOD.encode("utf-16"), ["UTF-8"]),
    "nothing": ("", ["nothing.toml", "format"]),
    "a picture": (b"\x89PNG\r\n\x1a\n\x00\x00\xff\xfe" * 40, []),
    "bytes of nought": (b"\x00" * 2000, []),
    "a file far too large": (b"# " + b"x" * 250_000, ["larger"]),
}
"""What is wrong with a file, and what its message must hold."""


@pytest.fixture
def files(rig: Rig) -> Iterator[Files]:
    """The dialog; closed again afterwards."""
    yield Files(rig)


@pytest.mark.parametrize("way", WAYS)
def test_a_good_file_becomes_the_rig(files: Files, way: str) -> None:
    """Its title and its numbers; a link holds it whole, and undo brings the old plant back."""
    getattr(files, way)("mine.toml", GOOD)
    seen = files.rig.shows(plant=plant(GOOD))
    assert seen["title"] == "A plant of my own"
    files.rig.type_number("valve.opening", "70")
    files.rig.shows({"valve.opening": 0.7}, plant=plant(GOOD))
    files.rig.address_holds({"valve.opening": 0.7})
    for _ in range(2):
        files.rig.tool(say("tool-undo")).click()
    files.rig.shows()


def test_a_plant_of_ones_own_survives_a_reload(fresh: Rig) -> None:
    """It never left the browser: the address has it."""
    fresh.open().live()
    Files(fresh).pick("mine.toml", GOOD)
    fresh.shows(plant=plant(GOOD))
    fresh.address(lambda now: now["plant"] == {**now["plant"], **plant(GOOD)}, "the plant in the address")
    fresh.page.reload()
    fresh.live()
    assert fresh.shows(plant=plant(GOOD))["title"] == "A plant of my own"


def test_on_a_phone_what_is_wrong_with_a_file_is_in_sight(visitor: Callable[..., Rig], site: str) -> None:
    """It stands below everything that can be opened, and nobody has to look for it."""
    phone = {"viewport": {"width": 360, "height": 740}, "has_touch": True, "is_mobile": True}
    rig = visitor(site, **phone).open().live()
    files = Files(rig)
    files.drop("nothing.toml", GOOD.replace("opening = 0.5", "opening = 5"))
    expect(files.problem.get_by_text(say("file-old-stays"))).to_be_in_viewport(ratio=1)


@pytest.mark.parametrize("kind", BAD)
@pytest.mark.parametrize("way", WAYS)
def test_a_bad_file_is_answered_where_it_was_given(files: Files, way: str, kind: str) -> None:
    """With its name, the place, what was found and what would do; the old plant stays and works."""
    content, words = BAD[kind]
    files.rig.type_number("valve.opening", "44")
    files.rig.shows({"valve.opening": 0.44})
    getattr(files, way)("nothing.toml", content)
    expect(files.problem).to_contain_text("nothing.toml cannot be used.")
    expect(files.problem).to_contain_text(say("file-old-stays"))
    for word in words:
        expect(files.problem).to_contain_text(word)
    files.close()
    files.rig.shows({"valve.opening": 0.44})
    files.rig.address_holds({"valve.opening": 0.44})


def test_a_pump_given_as_a_plant_is_said_to_be_one(files: Files) -> None:
    """With the way to make a plant of it, not a list of unknown keys."""
    pump = (places.REPO / "scenarios" / "pumps" / "small.toml").read_text(encoding="utf-8")
    files.pick("mine.toml", pump)
    expect(files.problem).to_contain_text(say("error-pump"))
    files.close()


def test_a_bad_file_that_is_dropped_leaves_everything_else_to_be_opened(fresh: Rig) -> None:
    """The dialog that answers it holds all plants and puzzles, also when it was never open before."""
    fresh.open().live()
    files = Files(fresh)
    files.drop("mine.toml", "format = = 1")
    expect(files.problem).to_contain_text("cannot be used")
    dialog = fresh.page.get_by_role("dialog", name=say("open-title"))
    for plant_id in native.PLANTS:
        expect(dialog.get_by_role("button", name=native.answer(plant_id)["title"])).to_be_visible()
    expect(dialog.locator("#offers-cases button")).not_to_have_count(0)


def test_a_good_file_after_a_bad_one_is_taken(files: Files) -> None:
    """The same name may be given again, as when a file was mended."""
    files.pick("mine.toml", BAD["a misspelt key"][0])
    expect(files.problem).to_contain_text("cannot be used")
    files.pick("mine.toml", GOOD)
    files.rig.shows(plant=plant(GOOD))
    files.rig.tool(say("tool-open")).click()
    expect(files.problem).to_be_empty()
    files.close()


def test_markup_in_a_file_never_becomes_markup(files: Files) -> None:
    """Title and description are a stranger's text: shown letter by letter."""
    title = "<b onclick=alert(1)>bold</b> & <img src=x onerror=alert(2)>"
    files.pick("mine.toml", GOOD.replace("A plant of my own", title))
    expect(files.page.locator("#plant-title")).to_have_text(title)
    assert files.page.locator("#plant-title *, img, b").count() == 0
    assert files.page.title().startswith(title)


def test_markup_in_a_message_never_becomes_markup(files: Files) -> None:
    """Nor does the name of a file, or of a key, that is refused."""
    key = '"<img src=x onerror=alert(1)>" = 1\n'
    files.drop("<i>x</i>.toml", key + GOOD)
    expect(files.problem).to_contain_text("<i>x</i>.toml cannot be used")
    expect(files.problem).to_contain_text("<img src=x")
    assert files.page.locator("#file-problem img, #file-problem i").count() == 0
    files.close()


def test_a_file_can_be_chosen_with_keys_alone(files: Files) -> None:
    """The button is in the order of tabs and opens the picker."""
    chosen: list[FileChooser] = []
    # asked for early: a picker that opens before is nobody's
    files.page.on("filechooser", lambda picker: chosen.append(picker))
    files.rig.tool(say("tool-open")).focus()
    files.page.keyboard.press("Enter")
    button = files.page.get_by_role("button", name=say("file-pick"))
    for _ in range(30):
        if button.evaluate("(button) => button === document.activeElement"):
            break
        files.page.keyboard.press("Tab")
    expect(button).to_be_focused()
    files.page.keyboard.press("Enter")
    eventually(files.page, lambda: chosen, bool, "the picker")
    chosen[0].set_files({"name": "mine.toml", "mimeType": "", "buffer": GOOD.encode()})
    files.rig.shows(plant=plant(GOOD))
