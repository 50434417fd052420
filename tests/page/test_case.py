"""The case, played on the page to both ends."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from page.parts import native
from page.parts.links import state
from page.parts.play import PREDICTION, WITNESSED, Keys, Mouse, Play, decided, plain, sights
from page.parts.rig import Rig
from page.parts.waiting import eventually
from page.parts.words import say

HANDS = {"mouse": Mouse, "keys": Keys}
CHECKS = ("flow", "stem", "strip-down")


def ends() -> dict[str, str]:
    """The verdict that holds, and one that does not."""
    first = native.case(PREDICTION)["choices"][0]["id"]
    right = native.case(PREDICTION, decided(first))["reveal"]["right_choice"]
    choices = [choice["id"] for choice in native.case(PREDICTION)["choices"]]
    wrong = next(
        id for id in choices if native.case(PREDICTION, decided(id))["verdict"]["rightness"] == "wrong"
    )
    return {"right": right, "wrong": wrong}


@pytest.mark.parametrize("end", ["right", "wrong"])
@pytest.mark.parametrize("hand", HANDS)
def test_the_case_is_played_to_its_end(rig: Rig, hand: str, end: str) -> None:
    """Prediction, checks, what was seen, verdict; then its reply, the truth, both days' curves, the way."""
    choice = ends()[end]
    play = Play(rig, HANDS[hand](rig))
    play.open()
    play.predict()
    for check in CHECKS:
        play.check(check)
    play.decide(choice)
    checks = [{"do": "check", "id": check} for check in CHECKS]
    moves = [PREDICTION, *checks, *sights(*WITNESSED), decided(choice)]
    right = native.case(*moves)
    assert right["verdict"]["rightness"] == end
    for words in plain(right["verdict"]["reply"]):
        expect(play.reply(end == "right")).to_contain_text(words.split("\n")[0])
    if end == "wrong":
        for words in plain(right["reveal"]["why"]):
            expect(play.part(say("case-truth-title"))).to_contain_text(words.split("\n")[0])
    expect(play.part(say("case-curves-title")).locator("svg .duty")).to_be_visible()
    expect(play.part(say("case-curves-title")).locator("svg .duty-before")).to_be_visible()
    total = say("case-path-total", cost=say("case-minutes", minutes=f"{right['minutes']:g}"))
    expect(play.part(say("case-path-title"))).to_contain_text(total)
    rig.address(lambda now: now["view"]["moves"] == moves, "all moves in the address")


@pytest.mark.parametrize("choice", [choice["id"] for choice in native.case(PREDICTION)["choices"]])
def test_every_verdict_has_a_reply_of_its_own(rig: Rig, choice: str) -> None:
    """Opened by a link that holds the moves."""
    moves = [PREDICTION, decided(choice)]
    rig.open(state(place="case", case=native.CASE, moves=moves))
    view = native.case(*moves)
    reply = Play(rig, Mouse(rig)).part(say(f"case-rightness-{view['verdict']['rightness']}"))
    for words in plain(view["verdict"]["reply"]):
        expect(reply).to_contain_text(words.split("\n")[0])


def test_a_reload_in_the_middle_keeps_the_moves(fresh: Rig) -> None:
    """Prediction and checks are still there, and nothing more is shown than was taken."""
    fresh.open().live()
    play = Play(fresh, Mouse(fresh))
    play.open()
    play.predict()
    play.check("flow")
    moves = [PREDICTION, {"do": "check", "id": "flow"}]
    fresh.address(lambda now: now["view"]["moves"] == moves, "the moves in the address")
    fresh.page.reload()
    expect(play.part(say("case-readings-title"))).to_be_visible(timeout=60_000)
    expect(fresh.page.locator('[data-key="check-flow"]')).to_be_visible()
    expect(fresh.page.locator('[data-key="take-current"]')).to_be_visible()
    spent = say("case-spent", cost=say("case-minutes", minutes=f"{native.case(*moves)['minutes']:g}"))
    expect(fresh.page.locator("#case").get_by_text(spent).first).to_be_visible()
    play.decide(ends()["right"])


def test_answers_that_were_picked_survive_a_reload(fresh: Rig) -> None:
    """Those of the prediction, then those of the verdict; playing it again begins without any."""
    fresh.open().live()
    play = Play(fresh, Mouse(fresh))
    play.open()
    picked = fresh.page.locator('input[name="case-says"][value="down"]')
    picked.click()
    fresh.page.reload()
    expect(picked).to_be_checked()
    fresh.live()
    play.predict()
    choice = fresh.page.locator('input[name="case-choice"][value="worn"]')
    choice.click()
    fresh.page.reload()
    expect(choice).to_be_checked(timeout=60_000)
    play.decide(ends()["right"])
    fresh.page.get_by_role("button", name=say("case-replay")).click()
    expect(fresh.page.locator("#case input:checked")).to_have_count(0)


WORKED = "the-soft-gauge"


def test_a_worked_case_shows_the_next_step_and_leaves_the_verdict(rig: Rig) -> None:
    """Check after check of whoever takes what tells most for its cost, each with what it is to part."""
    page, moves = rig.page, [PREDICTION]
    rig.open(state(place="case", case=WORKED, moves=moves))
    part = Play(rig, Mouse(rig)).part(say("case-worked-title"))
    while check := native.reckoned("worked", {"case": WORKED, "moves": moves})["step"]["check"]:
        part.get_by_role("button", name=say("case-worked-show")).click()
        part.get_by_role("button", name=say("case-worked-take")).click(timeout=60_000)
        expect(page.locator(f'[data-key="check-{check}"]')).to_be_focused()
        moves = [*moves, {"do": "check", "id": check}]
    assert len(moves) > 1
    part.get_by_role("button", name=say("case-worked-show")).click()
    expect(part).to_contain_text(say("case-worked-sure", share="90"))
    expect(page.locator('input[name="case-choice"]:checked')).to_have_count(0)


def test_a_hint_is_given_when_it_is_asked_for(rig: Rig) -> None:
    """One after the other, until none is left."""
    play = Play(rig, Mouse(rig))
    play.open()
    play.predict()
    count = native.case(PREDICTION)["hints_left"]
    for given in range(1, count + 1):
        rig.page.get_by_role("button", name=say("case-hint-ask", left=count + 1 - given)).click()
        expect(rig.page.get_by_role("complementary", name=say("case-hint-title"))).to_have_count(given)
    expect(rig.page.locator('[data-key="hint"]')).to_have_count(0)


def test_looking_without_a_prediction_is_answered(rig: Rig) -> None:
    """With what is missing; and so is a verdict without a choice."""
    play = Play(rig, Mouse(rig))
    play.open()
    rig.page.get_by_role("button", name=say("case-commit")).click()
    alert = rig.page.get_by_role("alert")
    expect(alert.filter(has_text=say("case-commit-missing"))).to_be_visible()
    play.predict()
    decide = rig.page.get_by_role("button", name=say("case-decide"))
    decide.click()
    expect(alert.filter(has_text=say("case-see-missing"))).to_be_visible()
    play.see()
    decide.click()
    expect(alert.filter(has_text=say("case-decide-missing"))).to_be_visible()
    rig.page.locator('input[name="case-choice"][value="worn"]').click()
    decide.click()
    expect(alert.filter(has_text=say("case-action-missing"))).to_be_visible()
    expect(play.part(say("case-truth-title"))).to_have_count(0)


def test_what_was_seen_is_asked_before_it_is_told(rig: Rig) -> None:
    """No reading of story or prediction is called higher or lower until it was said what it shows."""
    play = Play(rig, Mouse(rig))
    play.open()
    play.predict()
    play.check("flow")
    play.check("current")
    called = play.part(say("case-readings-title")).locator("[data-reading]:has(.case-moved)")
    expect(called).to_have_count(2)
    told = [node.get_attribute("data-reading") for node in called.all()]
    assert told == ["gauge-suction", "ammeter-1"]
    rig.page.locator('input[name="case-saw-gauge-discharge"][value="down"]').click()
    rig.page.locator('input[name="case-saw-flow-meter"][value="same"]').click()
    rig.page.locator('input[name="case-choice"][value="worn"]').click()
    rig.page.locator('input[name="case-action"][value="overhaul"]').click()
    rig.page.get_by_role("button", name=say("case-decide")).click()
    compared = play.part(say("case-compared-title"))
    expect(compared).to_be_visible()
    cells = [row.locator("td").all_inner_texts() for row in compared.locator("tbody tr").all()]
    up, same, down = (say(f"case-way-{way}") for way in ("up", "same", "down"))
    assert cells == [["–", down, down], [up, same, up]]
    expect(compared).to_contain_text(say("case-compared-otherwise"))


def test_trying_it_yourself_opens_the_rig_in_todays_plant(rig: Rig) -> None:
    """Live, with every control."""
    play = Play(rig, Mouse(rig))
    play.open()
    play.predict()
    play.decide(ends()["right"])
    rig.page.get_by_role("button", name=say("case-try")).click()
    today = native.case(PREDICTION, decided(ends()["right"]))["reveal"]["plant"]
    rig.shows(plant=today)
    rig.type_number("valve.opening", "30")
    rig.shows({"valve.opening": 0.3}, plant=today)


def test_a_case_can_be_left_and_played_again(rig: Rig) -> None:
    """Back to the rig; and from the end to the beginning."""
    play = Play(rig, Mouse(rig))
    play.open()
    rig.page.get_by_role("button", name=say("case-back")).click()
    rig.shows()
    play.open()
    play.predict()
    play.decide(ends()["wrong"])
    rig.page.get_by_role("button", name=say("case-replay")).click()
    expect(play.part(say("case-predict-title"))).to_be_visible()
    expect(play.part(say("case-truth-title"))).to_have_count(0)


@pytest.mark.parametrize("button", ["replay", "draw", "next-case"])
def test_what_begins_anew_begins_at_its_title(rig: Rig, button: str) -> None:
    """The button that was pressed is gone: whoever goes on by keys is at the top of what comes."""
    rig.open(state(place="case", case=native.CASE, moves=[PREDICTION, decided(ends()["right"])]))
    Keys(rig).press(rig.page.locator(f'#case [data-key="{button}"]'))
    expect(Play(rig, Mouse(rig)).part(say("case-predict-title"))).to_be_visible()
    expect(rig.page.locator('#case [data-key="title"]')).to_be_focused()
    assert rig.page.evaluate("scrollY") == 0


def test_the_story_can_be_read_before_python_is_ready(fresh: Rig) -> None:
    """And the prediction that is made meanwhile is not lost."""
    held = []
    fresh.page.route("**/js/engine/worker.js", lambda route: held.append(route))
    fresh.open(state(place="case", case=native.CASE, moves=[]))
    play = Play(fresh, Mouse(fresh))
    expect(play.part(say("case-story-title"))).to_be_visible()
    fresh.page.locator('input[name="case-says"][value="up"]').click()
    fresh.page.locator('input[name="case-suspects"][value="discharge-side"]').click()
    fresh.page.get_by_role("button", name=say("case-commit")).click()
    held[0].continue_()
    expect(play.part(say("case-readings-title"))).to_be_visible(timeout=60_000)
    fresh.address(lambda now: now["view"]["moves"] == [PREDICTION], "the prediction in the address")


def test_what_was_unfolded_stays_so_when_python_comes(fresh: Rig) -> None:
    """And the focus stays on it: the case is drawn anew under the reader's eyes."""
    held = []
    fresh.page.route("**/js/engine/worker.js", lambda route: held.append(route))
    fresh.open(state(place="case", case=native.CASE, moves=[]))
    goals = fresh.page.locator("#case details summary")
    goals.focus()
    fresh.page.keyboard.press("Enter")
    expect(fresh.page.locator("#case details")).to_have_attribute("open", "")
    held[0].continue_()
    fresh.live()
    expect(fresh.page.locator("#case .case-note")).to_have_count(0)
    expect(fresh.page.locator("#case details")).to_have_attribute("open", "")
    expect(goals).to_be_focused()


# Tells the page's tests how often Python has said how the case stands.
COUNT_ANSWERS = """
  window.caseAnswers = 0;
  const count = ({data}) => {
    if (/"stage"/.test(data?.reply ?? "")) setTimeout(() => { window.caseAnswers += 1; });
  };
  window.Worker = class extends Worker {
    constructor(...all) { super(...all); this.addEventListener("message", count); }
  };
"""

# Every element of the case but the note; then how many of them there are, and whether they bear a mark.
PARTS = "[...document.querySelectorAll('#case .case-body *')].filter((node) => !node.closest('.case-notice'))"
MARK = f"() => {PARTS}.map((node) => (node.marked = true)).length"
MARKED = f"() => {PARTS}.filter((node) => node.marked).length"


def test_what_is_shown_already_is_not_drawn_again(fresh: Rig) -> None:
    """Python says what the story said before it came: the same elements stand there, only the note goes."""
    held = []
    fresh.page.add_init_script(COUNT_ANSWERS)
    fresh.page.route("**/js/engine/worker.js", lambda route: held.append(route))
    fresh.open(state(place="case", case=native.CASE, moves=[]))
    radio = fresh.page.locator('input[name="case-says"][value="up"]')
    radio.click()
    expect(fresh.page.locator("#case .case-note")).to_have_text(say("case-wait-engine"))
    count = fresh.page.evaluate(MARK)
    assert count > 30
    held[0].continue_()
    eventually(
        fresh.page, lambda: fresh.page.evaluate("window.caseAnswers"), bool, "Python's word on the case", 60
    )
    fresh.live()
    expect(fresh.page.locator("#case .case-note")).to_have_count(0)
    assert fresh.page.evaluate(MARKED) == count
    expect(radio).to_be_checked()
    expect(radio).to_be_focused()


def test_units_change_in_a_case_too(rig: Rig) -> None:
    """The computed numbers of the prose and the readings follow; the play stays where it was."""
    play = Play(rig, Mouse(rig))
    play.open()
    play.predict()
    expect(play.part(say("case-story-title"))).to_contain_text("bar")
    rig.page.get_by_label(say("units-label"), exact=True).select_option("gpm-psi-ft")
    expect(play.part(say("case-story-title"))).to_contain_text("psi")
    expect(play.part(say("case-readings-title"))).to_contain_text("psi")


def test_moves_that_cannot_be_are_answered_with_a_way_out(rig: Rig) -> None:
    """As from a link to an older edition of the case."""
    rig.open(state(place="case", case=native.CASE, moves=[PREDICTION, {"do": "check", "id": "x-ray"}]))
    rig.page.get_by_role("button", name=say("case-restart")).click()
    expect(Play(rig, Mouse(rig)).part(say("case-predict-title"))).to_be_visible()
