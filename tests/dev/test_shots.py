"""The pictures: links open what they say, names differ, the page of thumbnails lists what is there."""

from __future__ import annotations

import base64
import json
import zlib
from pathlib import Path

import pytest

from loadfirst.cases.play import view
from loadfirst.door.answer import answer_plant
from loadfirst.plant import library
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data
from loadfirst_dev.links import DEFAULT_PLANT, fragment
from loadfirst_dev.shots.contents import contents
from loadfirst_dev.shots.deeds import BAD_FILE, DEEDS
from loadfirst_dev.shots.looks import LOOKS
from loadfirst_dev.shots.scenes import CASE, SCENES, Scene


def test_a_link_is_packed_as_the_page_unpacks_it() -> None:
    """Raw deflate, base64 for addresses, no padding."""
    link = fragment({"valve.opening": 0.3}, {"units": "ls-kpa-m"})
    data = link.removeprefix("s=")
    plain = zlib.decompress(base64.urlsafe_b64decode(data + "=" * (-len(data) % 4)), -zlib.MAX_WBITS)
    assert json.loads(plain) == {
        "format": 1,
        "plant": DEFAULT_PLANT,
        "edits": {"valve.opening": 0.3},
        "view": {"units": "ls-kpa-m"},
    }


def test_no_two_scenes_share_a_picture() -> None:
    """Names of scenes and of looks are names of files."""
    assert len({scene.name for scene in SCENES}) == len(SCENES)
    assert len({look.name for look in LOOKS}) == len(LOOKS) == 6


@pytest.mark.parametrize("scene", [scene for scene in SCENES if scene.edits], ids=lambda scene: scene.name)
def test_the_edits_of_every_scene_are_allowed(scene: Scene) -> None:
    """Else the picture would show an error sentence."""
    resolve_data(apply_edits(library.data("plants", scene.plant), scene.edits))


@pytest.mark.parametrize(
    "scene", [scene for scene in SCENES if scene.view.get("place") == "case"], ids=lambda scene: scene.name
)
def test_the_moves_of_every_case_scene_can_be_played(scene: Scene) -> None:
    """A case that was rewritten needs other moves here."""
    assert view({"case": CASE, "moves": scene.view["moves"]}, answer_plant)


DECIDED = [scene for scene in SCENES if "decide" in str(scene.view)]


@pytest.mark.parametrize("scene", DECIDED, ids=lambda scene: scene.name)
def test_who_decides_has_said_what_was_seen_of_every_reading(scene: Scene) -> None:
    """As the page asks for it: the pictures of the end compare it with what the instruments did."""
    *before, verdict = scene.view["moves"]
    assert verdict["do"] == "decide"
    assert view({"case": CASE, "moves": before}, answer_plant).to_see == []
    assert view({"case": CASE, "moves": scene.view["moves"]}, answer_plant).saw


def test_every_deed_is_known_and_the_bad_file_is_bad() -> None:
    """The file's fault is the one misspelt key."""
    assert {scene.deed for scene in SCENES} - {""} == set(DEEDS)
    assert b"openning" in BAD_FILE


def test_the_thumbnails_are_those_of_the_pictures_there(tmp_path: Path) -> None:
    """With the whole page beside what is in sight; titles are text, not markup."""
    scene, look = SCENES[0], LOOKS[0]
    (tmp_path / f"{scene.name}-{look.name}.png").write_bytes(b"")
    (tmp_path / f"{scene.name}-{look.name}-whole.png").write_bytes(b"")
    page = contents(SCENES, LOOKS, tmp_path)
    assert page.count("<img") == 2
    assert all(f"<th>{each.title}</th>" in page for each in SCENES if "&" not in each.title)
