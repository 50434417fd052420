"""Time runs, stands, goes on by a step; the strip holds what the instruments showed and gives it away."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable
from typing import Any

from playwright.sync_api import Locator, expect

from page.conftest import Bench
from page.parts import native
from page.parts.links import state
from page.parts.numbers import numbers
from page.parts.rig import Rig
from page.parts.waiting import eventually
from page.parts.words import say

CLOCK = re.compile(r"^(?:(\d+) d )?(\d+):(\d\d):(\d\d(?:\.\d)?)$")
DEATH = "() => { setTimeout(() => { throw new Error('killed for a test'); }, 0); }"
LEVEL = "level-supply"


def begin(rig: Rig) -> None:
    """Start the clock and pause it before anything has moved far."""
    rig.page.locator("#switch-clock").click()
    rig.page.locator("#clock-go").click()
    expect(rig.page.locator("#clock-go")).to_have_attribute("aria-label", say("clock-run"))


def rate(rig: Rig, value: int) -> None:
    """Choose how fast it runs."""
    rig.page.locator(f"#clock label:has(input[value='{value}'])").click()


def now(rig: Rig) -> float:
    """What time it is in the plant; below nought before it is told. [s]"""
    told = CLOCK.match(rig.page.locator("#clock .clock-time").text_content() or "")
    if told is None:
        return -1.0
    days, hours, minutes, seconds = told.groups(default="0")
    return 86400 * float(days) + 3600 * float(hours) + 60 * float(minutes) + float(seconds)


def kept(rig: Rig) -> float:
    """The time at which the clock was last kept, to the last digit. [s]"""
    return rig.page.evaluate("() => JSON.parse(localStorage['loadfirst:clock']).moment.time[0]")


def later(rig: Rig, than: float, seconds: float = 20) -> float:
    """Wait until more time has gone by in the plant. [s]"""
    return eventually(rig.page, lambda: now(rig), lambda time: time > than, f"later than {than} s", seconds)


def strip(rig: Rig) -> Locator:
    """The part of the strip that is read by keys and fingers."""
    return rig.page.locator("#trend [role=slider]")


def stepped(spans: list[float], edits: dict[str, Any] | None = None) -> dict[str, Any]:
    """The native engine's answer after these steps."""
    body: dict[str, Any] = {"plant": "rinse-transfer", "edits": edits or {}}
    for span in spans:
        reply = native.ask("step", {**body, "span": span})
        body["moment"] = reply["moment"]
    return reply


def shows(rig: Rig, answer: dict[str, Any]) -> None:
    """Wait until each instrument shows what it does in an answer."""
    wanted = {one["id"]: one["value"] for one in answer["shown"] if not one["id"].startswith("level-")}

    def good(seen: dict[str, str]) -> bool:
        return all(numbers(seen[name])[0].is_(value) for name, value in wanted.items())

    eventually(rig.page, lambda: rig.seen()["readings"], good, "the readings of a moment")


def test_single_steps_show_the_engines_own_moments(fresh: Rig, problems: list[str]) -> None:
    """Each goes on from where the last one ended, levels with it; back to steady, all is as before."""
    fresh.open().live()
    fresh.page.locator("#switch-clock").click()
    fresh.page.locator("#clock-step").click()
    later(fresh, 0.9)
    before = kept(fresh)
    rate(fresh, 100)
    for _ in range(3):
        fresh.page.locator("#clock-step").click()
    eventually(fresh.page, lambda: kept(fresh), lambda time: abs(time - before - 300) < 1e-9, "300 s more")
    right = stepped([before, 100, 100, 100])
    shows(fresh, right)
    level = fresh.part("supply.surface_m").get_attribute("aria-valuetext")
    assert numbers(level)[0].is_(right["plant"]["supply"]["surface_m"])
    fresh.page.locator("#switch-clock").click()
    fresh.shows()
    expect(fresh.page.locator("#clock")).to_be_hidden()
    assert problems == []


def test_time_runs_at_the_pace_that_was_chosen_and_stands_when_paused(fresh: Rig) -> None:
    """Within what a busy machine allows."""
    fresh.open().live()
    fresh.page.locator("#switch-clock").click()
    first = later(fresh, 0.5)
    assert first < 10
    rate(fresh, 10)
    second = later(fresh, first + 10)
    rate(fresh, 100)
    later(fresh, second + 100)
    fresh.page.locator("#clock-go").click()
    expect(fresh.page.locator("#clock-go")).to_have_attribute("aria-label", say("clock-run"))
    fresh.page.wait_for_timeout(700)  # a step that was on its way has come
    stands = now(fresh)
    fresh.page.wait_for_timeout(500)
    assert now(fresh) == stands


def test_a_valve_goes_where_it_was_sent_while_its_control_stands_there_already(fresh: Rig) -> None:
    """The full stroke takes ten seconds: from 75 % to 35 % it takes four."""
    fresh.open().live()
    begin(fresh)
    start = now(fresh)
    fresh.type_number("valve.opening", "35")
    fresh.address_holds({"valve.opening": 0.35})
    fresh.page.locator("#clock-step").click()
    later(fresh, start + 0.9)
    stem = fresh.page.locator("#apparatus .valve-text")
    expect(stem).to_have_text(re.compile(r"^65\s%$"))
    assert fresh.stands_at("valve.opening") == 0.35
    rate(fresh, 10)
    fresh.page.locator("#clock-step").click()
    expect(stem).to_have_text(re.compile(r"^35\s%$"))


AT_ONCE = """
async () => {
  document.querySelector("#switch-clock").click();
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  document.querySelector("#clock-go").click();
}
"""


def test_a_valve_takes_its_time_though_the_clock_was_stopped_before_it_had_moved(fresh: Rig) -> None:
    """What is set after it was started is on its way, however soon that was."""
    fresh.open().live()
    fresh.page.evaluate(AT_ONCE)
    expect(fresh.page.locator("#trend .trend-value").first).to_be_visible(timeout=20_000)
    fresh.type_number("valve.opening", "35")
    fresh.address_holds({"valve.opening": 0.35})
    fresh.page.locator("#clock-step").click()
    stem = fresh.page.locator("#apparatus .valve-text")
    expect(stem).to_have_text(re.compile(r"^65\s%$"), timeout=20_000)


def test_a_level_can_be_put_back_to_where_it_began(fresh: Rig) -> None:
    """Though the plant's own key has not changed."""
    fresh.open().live()
    begin(fresh)
    rate(fresh, 100)
    fresh.page.locator("#clock-step").click()
    later(fresh, 99)
    assert fresh.stands_at("supply.surface_m") < 1.9
    fresh.type_number("supply.surface_m", "2")
    level = fresh.part("supply.surface_m")
    expect(level).to_have_attribute("aria-valuetext", re.compile(r"^2\.00"))


def test_what_happens_is_told(fresh: Rig) -> None:
    """The supply holds 8 m³, and 35 m³/h leave it: after some 14 min the pump draws air."""
    fresh.open().live()
    begin(fresh)
    rate(fresh, 100)
    for _ in range(10):
        fresh.page.locator("#clock-step").click()
    told = fresh.page.locator("#trend .trend-events li", has_text=say("event-supply-empty"))
    expect(told).to_have_count(1, timeout=60_000)
    expect(told).to_have_text(re.compile(r"^0:1[34]:"))
    expect(fresh.page.locator("#trend .trend-event").first).to_be_visible()
    eventually(
        fresh.page,
        lambda: fresh.seen()["readings"]["flow-meter"],
        lambda text: text == "0.0\u00a0m³/h",
        "no flow",
    )


def test_a_reload_finds_the_clock_paused_where_it_was(fresh: Rig, problems: list[str]) -> None:
    """Moment, pace, strip and edits."""
    fresh.open().live()
    fresh.type_number("valve.opening", "60")
    fresh.shows({"valve.opening": 0.6})
    begin(fresh)
    rate(fresh, 100)
    fresh.page.locator("#clock-step").click()
    stands = later(fresh, 99)
    readings = fresh.seen()["readings"]
    fresh.page.reload()
    fresh.live()
    assert abs(now(fresh) - stands) < 1
    expect(fresh.page.locator("#clock-go")).to_have_attribute("aria-label", say("clock-run"))
    expect(fresh.page.locator("#clock input:checked")).to_have_value("100")
    eventually(
        fresh.page, lambda: fresh.seen()["readings"], lambda seen: seen == readings, "the same readings"
    )
    expect(fresh.page.locator("#trend .trend-line").first).to_be_visible()
    fresh.page.locator("#clock-step").click()
    later(fresh, stands + 99)
    assert problems == []


def test_the_clock_goes_on_when_the_worker_has_died(fresh: Rig, problems: list[str]) -> None:
    """From the last answered moment."""
    fresh.open().live()
    fresh.page.locator("#switch-clock").click()
    stands = later(fresh, 0.5)
    (worker,) = fresh.page.workers
    worker.evaluate(DEATH)
    expect(fresh.page.locator("#status")).to_contain_text(say("boot-restart"))
    assert now(fresh) >= stands
    later(fresh, now(fresh) + 0.5, seconds=60)
    problems[:] = [line for line in problems if "killed for a test" not in line]


def test_the_strip_is_read_by_keys_and_by_mouse(fresh: Rig) -> None:
    """Time and readings are said together; what is drawn says the same."""
    fresh.open().live()
    begin(fresh)
    rate(fresh, 100)
    for _ in range(3):
        before = now(fresh)
        fresh.page.locator("#clock-step").click()
        later(fresh, before + 99)
    strip(fresh).focus()
    fresh.page.keyboard.press("Home")
    expect(strip(fresh)).to_have_attribute(
        "aria-valuetext", re.compile(r"^0:00:00(\.0)?: .*2\.00\sm; .*14\.00\sm")
    )
    fresh.page.keyboard.press("End")
    expect(strip(fresh)).to_have_attribute("aria-valuetext", re.compile(r"^0:05:0"))
    strip(fresh).scroll_into_view_if_needed()
    box = strip(fresh).bounding_box()
    assert box is not None
    fresh.page.mouse.move(box["x"] + 2, box["y"] + 20)
    expect(fresh.page.locator("#trend .trend-flag")).to_have_text(re.compile(r"^0:00:0"))
    expect(fresh.page.locator("#trend .trend-value").last).to_have_text(re.compile(r"^14\.0\d\sm$"))


def test_the_strip_is_read_by_a_finger(visitor: Callable[..., Rig], site: str, phone: Bench) -> None:
    """On a phone, whose bar is one row."""
    rig = phone.lend()
    begin(rig)
    rig.page.locator("#clock-step").tap()
    later(rig, 0.9)
    tops = rig.page.locator("#clock > :visible").evaluate_all(
        "(all) => all.map((one) => one.getBoundingClientRect())"
    )
    middles = [one["top"] + one["height"] / 2 for one in tops if one["height"]]
    assert max(middles) - min(middles) < 8
    strip(rig).tap(position={"x": 120, "y": 30})
    expect(rig.page.locator("#trend .trend-flag")).to_be_visible()
    rig.page.locator("#switch-clock").tap()
    assert phone.said == []


OVER_EACH_OTHER = """
() => {
  const box = (node) => node.getBoundingClientRect();
  const queries = ["#clock", ".fig-apparatus .before-key", ".clock-news"];
  const told = queries.map((query) => box(document.querySelector(query)));
  const ways = document.querySelectorAll(".fig-apparatus figcaption button, #clock-go, #clock-trend");
  const rows = [...ways].map(box);
  return {
    ends: told.map(({top, bottom}) => [Math.round(top), Math.round(bottom)]),
    rows: new Set(rows.map(({top, height}) => Math.round((top + height / 2) / 12))).size,
    over: Math.max(...rows.map(({right}) => right)) - box(document.querySelector(".fig-apparatus")).right,
  };
}
"""


def test_on_a_small_phone_the_clock_leaves_room_for_what_is_told(
    visitor: Callable[..., Rig], site: str
) -> None:
    """A remembered day, the clock and what has just happened, none over another."""
    options = {"viewport": {"width": 320, "height": 640}, "has_touch": True, "is_mobile": True}
    rig = visitor(site, **options)
    day = {"plant": "rinse-transfer", "edits": {}}
    rig.open(state(edits={"supply.surface_m": 0.15}, place="rig", curves=True, yesterday=day)).live()
    begin(rig)
    rate(rig, 100)
    rig.page.locator("#clock-step").tap()
    expect(rig.page.locator(".clock-news")).to_contain_text(say("event-supply-empty"), timeout=30_000)
    expect(rig.page.locator("#day")).to_contain_text(say("days-at-moment"))
    seen = rig.page.evaluate(OVER_EACH_OTHER)
    (_, bar), (key, below), (news, _) = seen["ends"]
    assert bar <= key and below <= news, seen
    assert seen["rows"] == 2, seen
    assert seen["over"] <= 0, seen


def test_instruments_are_chosen_and_the_choice_is_kept(fresh: Rig) -> None:
    """Over a reload."""
    fresh.open().live()
    begin(fresh)
    fresh.page.locator("#clock-step").click()
    later(fresh, 0.9)
    fresh.page.locator("#trend summary").click()
    speed = fresh.page.get_by_label(say("draw-tachometer-1"), exact=True).and_(fresh.page.locator("input"))
    speed.check()
    lanes = fresh.page.locator("#trend .trend-name")
    expect(lanes.filter(has_text=say("draw-tachometer-1"))).to_have_count(1)
    count = lanes.count()
    fresh.page.reload()
    fresh.live()
    expect(lanes).to_have_count(count)
    expect(lanes.filter(has_text=say("draw-tachometer-1"))).to_have_count(1)


def test_the_record_is_saved_as_a_table(fresh: Rig) -> None:
    """Every instrument, units in the headings, the last row what is shown now."""
    fresh.open().live()
    begin(fresh)
    rate(fresh, 100)
    fresh.page.locator("#clock-step").click()
    later(fresh, 99)
    with fresh.page.expect_download() as saved:
        fresh.page.locator("#trend-save").click()
    assert saved.value.suggested_filename.startswith("rinse-water-transfer-P0DT00H01M4")
    with open(saved.value.path(), encoding="utf-8-sig", newline="") as file:
        heads, *rows = list(csv.reader(file))
    answer = stepped([float(row[0]) - float(before[0]) for before, row in zip(rows, rows[1:], strict=False)])
    assert len(heads) == 2 + len(answer["shown"])
    assert "Flow [m³/h]" in heads
    flow = next(one["value"] for one in answer["shown"] if one["id"] == "flow-meter")
    assert abs(float(rows[-1][heads.index("Flow [m³/h]")]) / 3600 / flow - 1) < 1e-5
    assert rows[-1][1].startswith("P0DT00H01M4")


def test_less_motion_leaves_the_values(visitor: Callable[..., Rig], site: str) -> None:
    """Time goes on in longer steps; nothing turns."""
    rig = visitor(site, reduced_motion="reduce").open().live()
    rig.page.locator("#switch-clock").click()
    later(rig, 1)
    assert rig.page.evaluate("() => document.getAnimations().length") == 0


def test_a_remembered_day_is_compared_with_what_stands_now(fresh: Rig) -> None:
    """The levels of the moment, moved by time; at rest they would be those of yesterday."""
    day = {"plant": "rinse-transfer", "edits": {}}
    fresh.open(state(place="rig", curves=True, yesterday=day)).live()
    row = fresh.page.locator(f'#days [data-reading="{LEVEL}"]')
    expect(row).not_to_have_class("moved")
    begin(fresh)
    rate(fresh, 100)
    fresh.page.locator("#clock-step").click()
    expect(row).to_have_class("moved", timeout=30_000)
    expect(row.locator(".days-why")).to_have_text(say("days-why-time-down"))
    fresh.page.locator("#switch-clock").click()
    expect(row).not_to_have_class("moved")


def test_time_stands_while_a_dialog_is_open_and_goes_on_behind_it(fresh: Rig) -> None:
    """What one reads in it is of the plant as it stands."""
    fresh.open().live()
    fresh.page.locator("#switch-clock").click()
    later(fresh, 0.5)
    fresh.page.locator("#open-causes").click()
    expect(fresh.page.locator("#cause-apply")).to_be_enabled()
    fresh.page.wait_for_timeout(700)
    stands = now(fresh)
    fresh.page.wait_for_timeout(700)
    assert now(fresh) == stands
    fresh.page.locator("#causes .head button").click()
    later(fresh, stands + 0.3)


def test_a_day_remembered_while_time_runs_is_the_one_in_sight(fresh: Rig) -> None:
    """With the level to which it has fallen by then, not that which the file sets."""
    fresh.open().live()
    begin(fresh)
    rate(fresh, 100)
    fresh.page.locator("#clock-step").click()
    later(fresh, 99)
    fresh.page.locator("#remember-day").click()
    read = "() => JSON.parse(localStorage['loadfirst:state']).view.yesterday.edits"
    edits = fresh.page.evaluate(read)
    plant = stepped([kept(fresh)])["plant"]
    assert abs(edits["supply.surface_m"] - plant["supply"]["surface_m"]) < 1e-3


def test_the_strip_has_a_way_back_and_stops_time(fresh: Rig) -> None:
    """On a phone it lies far below the clock's bar."""
    fresh.open().live()
    fresh.page.locator("#switch-clock").click()
    fresh.page.locator("#clock-trend").click()
    fresh.page.locator("#trend-go").click()
    expect(fresh.page.locator("#clock-go")).to_have_attribute("aria-label", say("clock-run"))
    fresh.page.locator("#trend-back").click()
    expect(fresh.page.locator("#clock-trend")).to_be_focused()
    expect(fresh.page.locator("#clock-go")).to_be_in_viewport()
