"""The site on servers and networks as they are."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import expect

from page.parts import native
from page.parts.files import GOOD, Files
from page.parts.hosts import Host, hosting
from page.parts.links import state
from page.parts.rig import Rig
from page.parts.waiting import eventually
from page.parts.words import say

FAILED = say("boot-failed")


@pytest.fixture
def host(built_site: Path) -> Iterator[Host]:
    """A host with knobs."""
    with hosting(built_site) as host:
        yield host


def runtime_file(built_site: Path, key: str) -> str:
    """Name of a file of the runtime, from the manifest."""
    manifest = json.loads((built_site / "runtime" / "manifest.json").read_text())
    return str(manifest["files"][key]["file"])


def refused(rig: Rig, host: Host, times: int) -> None:
    """Wait until the host was asked in vain so often, and the page has told it."""
    eventually(rig.page, lambda: host.refused, lambda now: now == times, f"{times} refusals")
    expect(rig.page.locator("#status")).to_contain_text(FAILED)


@pytest.mark.parametrize("key", ["wasm", "loadfirst"])
def test_a_missing_file_is_told_and_trying_again_works(
    host: Host, built_site: Path, visitor: Callable[..., Rig], key: str
) -> None:
    """The page says so, keeps the rig, and comes alive once the file is there."""
    host.missing.add(runtime_file(built_site, key))
    rig = visitor(host.address).open(state(edits={"valve.opening": 0.3}))
    refused(rig, host, 1)
    assert rig.stands_at("valve.opening") == 0.3
    rig.type_number("valve.opening", "40")
    host.missing.clear()
    rig.page.get_by_role("button", name=say("boot-again")).click()
    rig.live()
    rig.shows({"valve.opening": 0.4})


def test_trying_again_in_vain_is_told_again(host: Host, visitor: Callable[..., Rig]) -> None:
    """A second failure, and a third, are no dead end."""
    host.missing.add("manifest.json")
    rig = visitor(host.address).open()
    again = rig.page.get_by_role("button", name=say("boot-again"))
    for times in (1, 2, 3):
        refused(rig, host, times)
        if times == 3:
            host.missing.clear()
        again.click()
    rig.live()
    rig.shows()


BAR_AND_WORDS = "(bar) => [bar.value, bar.max, document.querySelector('#status [role=status]').innerText]"


def test_a_slow_start_shows_how_far_it_is(host: Host, visitor: Callable[..., Rig]) -> None:
    """Half-way there the bar stands between its ends, the megabytes are told, and controls move already."""
    host.gate.clear()
    rig = visitor(host.address).open()
    bar = rig.page.get_by_role("progressbar", name=say("boot-progress"))
    part = eventually(
        rig.page,
        lambda: bar.evaluate(BAR_AND_WORDS),  # at once: both go on meanwhile
        lambda now: 0.2 < now[0] / now[1] < 0.95,
        "a bar that is under way",
    )
    done, total = part[2].split(" of ")
    assert float(done.split()[-1]) / float(total.split()[0]) == pytest.approx(part[0] / part[1], abs=0.05)
    rig.type_number("valve.opening", "30")
    expect(rig.part("valve.opening")).to_have_attribute("aria-valuetext", "30\u00a0% open")
    host.gate.set()
    rig.live()
    rig.shows({"valve.opening": 0.3})
    expect(bar).to_be_hidden()


def test_a_server_that_calls_wasm_mere_bytes_will_do(host: Host, visitor: Callable[..., Rig]) -> None:
    """As plain file servers do."""
    host.bytes_for = {".wasm", ".pack", ".ftl", ".zip", ".whl"}
    visitor(host.address).open().live().shows()


def test_the_site_works_under_any_path(built_site: Path, visitor: Callable[..., Rig]) -> None:
    """All its addresses are relative."""
    with hosting(built_site, "courses/pumps%202/week-3/") as host:
        rig = visitor(host.address).open(state(edits={"valve.opening": 0.3})).live()
        rig.shows({"valve.opening": 0.3})
        rig.type_number("valve.opening", "40")
        rig.address_holds({"valve.opening": 0.4})
        assert rig.page.url.startswith(host.address)


def test_once_loaded_the_page_needs_no_network(host: Host, visitor: Callable[..., Rig]) -> None:
    """Every plant, one's own files, good and bad, and a case: all of it after the server has gone."""
    rig = visitor(host.address).open().live()
    rig.shows()
    host.close()
    rig.option("pump.arrangement", "side-by-side").click()
    rig.shows({"pump.arrangement": "side-by-side"})
    for plant in native.PLANTS[1:]:
        rig.tool(say("tool-open")).click()
        rig.page.locator(f'#offers-plants button[data-id="{plant}"]').click()
        rig.shows(plant=plant)
    dialog = Files(rig)
    dialog.pick("mine.toml", GOOD)
    expect(rig.page.locator("#plant-title")).to_have_text("A plant of my own")
    dialog.pick("bad.toml", "format = = 1")
    expect(dialog.problem).to_contain_text("line 1")
    dialog.close()
    rig.tool(say("tool-open")).click()
    rig.page.get_by_role("button", name="The dropped gauge").click()
    expect(rig.page.get_by_role("heading", name="The dropped gauge")).to_be_visible()
