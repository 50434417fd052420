"""Opening a puzzle of one's own: played like any other, kept, linked, and refused where it does not hold."""

from __future__ import annotations

import random
import re
import string
from collections.abc import Callable

import pytest
from playwright.sync_api import expect
from tests.cases.samples import SOUND, changed

from page.parts import native
from page.parts.files import Files
from page.parts.links import link, state
from page.parts.play import PREDICTION, Mouse, Play, decided, sights
from page.parts.rig import Rig
from page.parts.words import say, table

FILE = {"name": "mine.toml", "text": SOUND}
TITLE = "A made-up morning"


def opened(rig: Rig, way: str = "pick", name: str = "mine.toml", text: str = SOUND) -> Play:
    """The puzzle, just opened from its file."""
    getattr(Files(rig), way)(name, text)
    play = Play(rig, Mouse(rig))
    expect(play.part(say("case-predict-title"))).to_be_visible()
    return play


def padding(length: int) -> str:
    """A comment that no packing makes short."""
    letters = random.Random(1).choices(string.ascii_letters + string.digits, k=length)
    return f"# {''.join(letters)}\n"


@pytest.mark.parametrize("way", ["pick", "drop"])
def test_a_puzzle_of_ones_own_is_played_to_its_end(rig: Rig, way: str) -> None:
    """From its file, with every computed number; the address holds file and moves; then its plant opens."""
    play = opened(rig, way)
    expect(rig.page.get_by_role("heading", name=TITLE)).to_be_visible()
    told = native.ask("case", {"case": FILE, "moves": []})["story"][0]
    yesterday = next(part["value"] for part in told if part.get("day") == "yesterday")
    expect(play.part(say("case-story-title"))).to_contain_text(f"{yesterday / 1e5:.2f}")
    assert rig.page.title().startswith("mine")
    play.predict()
    play.check("flow")
    play.decide("lighter")
    expect(play.reply(right=True)).to_contain_text("one step along the same curve")
    see = sights("gauge-discharge", "flow-meter")
    moves = [PREDICTION, {"do": "check", "id": "flow"}, *see, decided("lighter")]
    whole = {"case": FILE, "moves": moves}
    rig.address(lambda now: now["view"] == {**now["view"], **whole}, "file and moves in the address")
    rig.page.get_by_role("button", name=say("case-try")).click()
    rig.shows(plant=native.ask("case", whole)["reveal"]["plant"])


def test_its_author_is_told_whether_it_is_fair(rig: Rig) -> None:
    """When asked: how surely the truth is found, and what fixed habits earn; nobody else is offered that."""
    opened(rig)
    part = rig.page.locator(".case-fair")
    expect(part).not_to_contain_text(say("case-fair-yes"))
    part.get_by_role("button", name=say("case-fair-ask")).click()
    expect(part.locator(".case-points")).to_have_text(say("case-fair-yes"), timeout=90_000)
    found = native.reckoned("fair", {"case": FILE, "moves": []})["fairness"]
    expect(part).to_contain_text(say("case-fair-found", group=round(100 * found["group"])))
    habits = {name: str(round(points)) for name, points in found["habits"].items()}
    rows = part.locator("tbody tr").all()
    read = {row.locator("th").inner_text(): row.locator("td").inner_text() for row in rows}
    assert read == {say(f"case-habit-{name}"): points for name, points in habits.items()}
    rig.open(state(place="case", case=native.CASE, moves=[]))
    expect(Play(rig, Mouse(rig)).part(say("case-predict-title"))).to_be_visible()
    expect(part).to_have_count(0)


def test_the_play_survives_a_reload_and_goes_on_elsewhere(fresh: Rig, visitor: Callable[..., Rig]) -> None:
    """By the address alone, in another browser too."""
    fresh.open().live()
    play = opened(fresh)
    play.predict()
    play.check("flow")
    moves = [PREDICTION, {"do": "check", "id": "flow"}]
    fresh.address(lambda now: now["view"]["moves"] == moves, "the moves in the address")
    address = fresh.page.url
    fresh.page.reload()
    expect(fresh.page.locator('[data-key="check-flow"]')).to_be_visible(timeout=60_000)
    other = visitor(address).open().live()
    expect(other.page.locator('[data-key="check-flow"]')).to_be_visible()
    Play(other, Mouse(other)).decide("lighter")


def test_while_python_is_on_its_way_nobody_is_sent_to_a_story_that_is_not_there(fresh: Rig) -> None:
    """No file made with the site holds it; it opens as soon as Python is ready."""
    held = []
    fresh.page.route("**/js/engine/worker.js", lambda route: held.append(route))
    fresh.open(state(place="case", case=FILE, moves=[]))
    expect(fresh.page.locator("#case .case-note")).to_have_text(say("case-wait-open"))
    held[0].continue_()
    expect(fresh.page.get_by_role("heading", name=TITLE)).to_be_visible(timeout=60_000)
    expect(fresh.page.locator("#case .case-note")).to_have_count(0)


def test_a_puzzle_too_large_for_a_link_is_kept_and_said_to_be(fresh: Rig) -> None:
    """The browser keeps the play; the rig that was left for it can still be linked."""
    fresh.open().live()
    play = opened(fresh, text=SOUND + padding(30_000))
    play.predict()
    fresh.tool(say("tool-share")).click()
    dialog = fresh.page.get_by_role("dialog", name=say("share-title"))
    expect(dialog.get_by_role("status")).to_have_text(say("share-too-long-puzzle"))
    fresh.page.keyboard.press("Escape")
    assert "#" not in fresh.page.url
    fresh.page.reload()
    expect(play.part(say("case-readings-title"))).to_be_visible(timeout=60_000)
    fresh.page.get_by_role("button", name=say("case-back")).click()
    fresh.tool(say("tool-share")).click()
    expect(dialog.get_by_label(say("share-link"))).to_have_value(re.compile("#s=."))


BAD = {
    "proof": (('flow-meter = "rises"', 'flow-meter = "falls"'), "proof.flow-meter", "error-proof-line"),
    "days": (("size = 0.6", "size = 0.001"), "today", "error-days"),
    "truth": (('load = "lighter"', 'load = "heavier"'), "choices", "error-truth-nearly"),
    "too early": (("The gauge has", "At {today.valve.opening} it has"), "story", "error-too-early-tell"),
    "a slip": (("reads = [", "reeds = ["), "checks[0].reeds", "error-unknown-nearest"),
}
"""What is wrong with a puzzle, where, and the sentence that says so."""


@pytest.mark.parametrize("way", ["pick", "drop"])
@pytest.mark.parametrize("kind", BAD)
def test_a_puzzle_that_does_not_hold_is_answered_where_it_was_given(rig: Rig, way: str, kind: str) -> None:
    """With its name, the place and what is wrong; the rig stays as it was."""
    change, where, _ = BAD[kind]
    rig.type_number("valve.opening", "44")
    rig.shows({"valve.opening": 0.44})
    files = Files(rig)
    getattr(files, way)("mine.toml", changed(change))
    expect(files.problem).to_contain_text("mine.toml cannot be used.")
    expect(files.problem).to_contain_text(wording(kind))
    expect(files.problem.get_by_role("definition").first).to_have_text(where)
    expect(files.problem).to_contain_text(say("file-old-stays"))
    files.close()
    rig.shows({"valve.opening": 0.44})
    rig.address_holds({"valve.opening": 0.44})


def wording(kind: str) -> str:
    """The page's sentence after its last variable, or what of it is longest."""
    parts = re.split(r"\{[^}]*\}", table()[BAD[kind][2]])
    return parts[-1].strip(" .?”") or max(parts, key=len).strip() or BAD[kind][1]


def test_a_bad_puzzle_leaves_the_play_that_is_under_way(rig: Rig) -> None:
    """The one that was open goes on."""
    play = opened(rig)
    play.predict()
    files = Files(rig)
    files.drop("other.toml", changed(BAD["proof"][0]))
    expect(files.problem).to_contain_text("other.toml cannot be used.")
    files.close()
    play.decide("lighter")


def test_a_link_to_a_puzzle_that_does_not_hold_says_where(rig: Rig) -> None:
    """In the place of the story, with a way back."""
    bad = {"name": "mine.toml", "text": changed(BAD["proof"][0])}
    rig.open(state(place="case", case=bad, moves=[]))
    alert = rig.page.locator("#case").get_by_role("alert")
    expect(alert).to_contain_text(say("case-failed-file"))
    expect(alert).to_contain_text("proof.flow-meter")
    rig.page.get_by_role("button", name=say("case-back")).click()
    rig.shows()


def test_from_a_puzzle_of_ones_own_the_packaged_ones_can_be_reached(rig: Rig) -> None:
    """And both ways of leaving it come back to it as it was left."""
    play = opened(rig)
    play.predict()
    rig.page.get_by_role("button", name=say("place-rig"), exact=True).click()
    rig.shows()
    rig.page.get_by_role("button", name=say("place-case"), exact=True).click()
    expect(play.part(say("case-readings-title"))).to_be_visible()
    rig.page.get_by_role("button", name=say("case-others"), exact=True).click()
    rig.page.locator(f'#course button[data-id="{native.CASE}"]').click()
    expect(rig.page.get_by_role("heading", name=native.case()["title"])).to_be_visible()


def test_markup_in_a_puzzle_never_becomes_markup(rig: Rig) -> None:
    """Neither in its words, nor in the name of its file, nor by way of a link."""
    img = "<img src=x onerror=alert(1)>"
    text = changed(
        ("A made-up morning", f"<b>{img}</b>"),
        ("The gauge has gone", f"{img} gone"),
        ("Look at the stem.", f"{img} stem"),
        ("The load is lighter.", f"{img} lighter"),
        ("Yes: one step", f"{img} one step"),
    )
    play = opened(rig, name="<i>x</i>.toml", text=text)
    play.predict()
    play.check("stem")
    play.decide("lighter")
    expect(rig.page.get_by_role("heading", name=f"<b>{img}</b>")).to_be_visible()
    assert rig.page.title().startswith("<i>x</i>")
    assert rig.page.locator("img, #case b, #case i").count() == 0
    moves = [PREDICTION]
    rig.page.evaluate(
        "(end) => { location.hash = end; }",
        link(state(place="case", case={"name": "<i>x</i>", "text": text}, moves=moves)),
    )
    expect(play.part(say("case-readings-title"))).to_be_visible()
    assert rig.page.locator("img, #case b, #case i").count() == 0
