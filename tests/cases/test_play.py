"""Playing cases: every answer to its end, and nothing told before its time."""

from __future__ import annotations

import json
import re
from itertools import combinations
from typing import Any

import numpy as np
import pytest
from tests.cases.samples import check, decide, play, predict, said, see, sound

from loadfirst.cases.case import Case
from loadfirst.cases.draw import drawn
from loadfirst.cases.moves import suspects_of
from loadfirst.cases.play import view
from loadfirst.cases.read import catalogue, packaged
from loadfirst.cases.scope import seen_at_first
from loadfirst.door.answer import answer_plant
from loadfirst.errors import InputError

IDS = [heading.id for heading in catalogue()]
EVERY_CHOICE = [(id, choice.id) for id in IDS for choice in packaged(id).choices]


@pytest.mark.parametrize(("id", "choice"), EVERY_CHOICE)
def test_every_verdict_leads_to_its_own_explanation_and_the_truth(id: str, choice: str) -> None:
    """With no check taken and with all of them, each verdict ends in its own reply and the reveal."""
    case = packaged(id)
    suspects = suspects_of(case)[0]
    checks = [check(one.id) for one in case.checks]
    for taken in ([], checks):
        end = play(id, predict(suspects), *taken, decide(choice))
        own = next(one for one in case.choices if one.id == choice)
        assert end["stage"] == "done"
        right = end["verdict"]["rightness"] == "right"
        assert right == (choice == end["reveal"]["right_choice"])
        words = re.sub(r"\{\w+\.([^{}]+)\}", r"<\1>", " ".join(own.reply.split()))
        assert said(end["verdict"]["reply"]).startswith(words[:40])
        path = end["reveal"]["path"]
        done = [one for one in case.checks if taken and one.id not in path["refused"]]
        assert path["minutes"] == sum(one.minutes for one in done)


@pytest.mark.parametrize("id", IDS)
def test_no_two_verdicts_get_the_same_explanation(id: str) -> None:
    """Each wrong verdict is answered for itself."""
    case = packaged(id)
    first = predict(suspects_of(case)[0])
    replies = [said(play(id, first, decide(one.id))["verdict"]["reply"]) for one in case.choices]
    assert len(set(replies)) == len(replies)


@pytest.mark.parametrize("id", IDS)
def test_the_reveal_holds_both_days_as_the_rig_would_answer_them(id: str) -> None:
    """Two whole answers; their curves cross where the days' states are, and only today's plant differs."""
    case = packaged(id)
    end = play(id, predict(suspects_of(case)[0]), decide(case.choices[0].id))["reveal"]
    opened = json.loads(json.dumps(answer_plant(end["plant"], look=1)))
    assert opened["duty"] == end["today"]["duty"]
    assert values(opened) == pytest.approx(values(end["today"]))
    for day in ("yesterday", "today"):
        answer = end[day]
        assert answer["converged"]
        flow, head = answer["duty"]["flow"], answer["duty"]["head"]
        for curve in ("load", "station"):
            known = [at for at, value in enumerate(answer["curves"][curve]) if value is not None]
            flows, heads = ([answer["curves"][name][at] for at in known] for name in ("flow", curve))
            assert float(np.interp(flow, flows, heads)) == pytest.approx(head, rel=2e-3)
        assert values(answer) == {reading["id"]: reading[day]["value"] for reading in end["readings"]}


def values(answer: dict[str, Any]) -> dict[str, Any]:
    """What every instrument shows."""
    return {reading["id"]: reading["value"] for reading in answer["shown"]}


def test_the_dropped_gauge_is_a_lighter_load_on_the_same_pump_curve() -> None:
    """Pressure down, flow up, current up; at yesterday's flow the pump of today is the pump of yesterday."""
    end = play("the-dropped-gauge", predict("machine"), decide("lighter"))
    assert end["verdict"]["rightness"] == "right" and end["reveal"]["load"] == "lighter"
    moved = {reading["id"]: reading["moved"] for reading in end["reveal"]["readings"]}
    assert (moved["gauge-discharge"], moved["flow-meter"], moved["ammeter-1"]) == ("down", "up", "up")
    assert moved["gauge-after-valve"] == "up"
    before, after = (points(end["reveal"][day]["curves"]) for day in ("yesterday", "today"))
    common = before.keys() & after.keys()
    assert len(common) > 40  # each day's own duty point is a point of its curve too
    assert {flow: before[flow] for flow in common} == {flow: after[flow] for flow in common}


def points(curves: dict[str, list[float]]) -> dict[float, float]:
    """The pump's own curve: head over flow."""
    return dict(zip(curves["flow"], curves["machine"], strict=True))


def prefixes(case: Case) -> list[list[dict[str, Any]]]:
    """Plays of a case that have not come to a verdict: every pair of checks among them."""
    first = predict(suspects_of(case)[0])
    ids = [one.id for one in case.checks]
    pairs = [[], *combinations(ids, 1), *combinations(ids, 2), tuple(ids)]
    hints = [{"do": "hint"}] * len(case.hints)
    return [[], *([first, *(check(id) for id in pair)] for pair in pairs), [first, *hints]]


@pytest.mark.parametrize("id", IDS)
def test_nothing_of_the_truth_is_told_before_the_verdict(id: str) -> None:
    """No reply, no plant, no reveal, no reading that was not taken stands in the JSON of an open play."""
    case = drawn(packaged(id), packaged(id).seed)
    numbers = numbers_by_source(id)
    for moves in prefixes(case):
        text = json.dumps(view_before_the_verdict := play(id, *moves))
        assert view_before_the_verdict["reveal"] is None and view_before_the_verdict["verdict"] is None
        for choice in case.choices:
            assert " ".join(choice.reply.split())[:30] not in text
        allowed = sources_open_to(case, moves)
        for source, value in numbers.items():
            if source not in allowed and value not in [numbers.get(one) for one in allowed]:
                assert value not in text, (source, moves)


def numbers_by_source(id: str) -> dict[str, str]:
    """Both days' readings, and what differs in today's plant, as they would stand in the JSON."""
    case = packaged(id)
    end = play(id, predict(suspects_of(case)[0]), decide(case.choices[0].id))["reveal"]
    found = {
        f"{day}.{reading['id']}": json.dumps(reading[day]["value"])
        for reading in end["readings"]
        for day in ("yesterday", "today")
    }
    found |= {f"today.{one['key']}": json.dumps(one["today"]) for one in end["differences"]}
    return {
        source: value for source, value in found.items() if len(value) > 3 and value not in ("true", "false")
    }


def sources_open_to(case: Case, moves: list[dict[str, Any]]) -> set[str]:
    """What this play may have been told."""
    taken = [one for one in case.checks if check(one.id) in moves]
    readings = {id for one in taken for id in one.reads}
    if moves:
        readings |= set(seen_at_first(case))
    found = {f"{day}.{id}" for id in readings for day in ("yesterday", "today")}
    for text in (case.story, *(f"{one.shows} {one.shows_nothing}" for one in taken)):
        found |= {part.split("}")[0] for part in text.split("{")[1:]}
    return found


def test_nothing_is_shown_before_the_prediction() -> None:
    """The opening has story, question and offers, but no reading and no result."""
    opening = sound()
    assert opening["stage"] == "predict"
    assert opening["readings"] == [] and opening["minutes"] == 0
    assert all(not one["taken"] and one["result"] is one["showed"] is None for one in opening["checks"])
    assert opening["prediction"]["suspects"] == ["machine", "discharge-side"]
    assert opening["prediction"]["outcome"] is None


def test_the_outcome_of_the_prediction_comes_with_its_reading() -> None:
    """Only once the foreseen instrument was read, or the verdict given, the outcome stands beside it."""
    assert sound(predict("machine"), check("stem"))["prediction"]["outcome"] is None
    seen = sound(predict("machine"), check("flow"))["prediction"]
    assert (seen["says"], seen["outcome"]) == ("down", "up")
    assert sound(predict("machine"), decide("worn"))["prediction"]["outcome"] == "up"


def test_a_check_costs_its_minutes_and_gives_its_own_result() -> None:
    """Readings come on both days, an observation as prose with quantities; the bill adds up."""
    seen = sound(predict("machine"), check("stem"), check("flow"))
    assert (seen["minutes"], seen["money"]) == (11, 2)
    assert [reading["id"] for reading in seen["readings"]] == ["gauge-discharge", "flow-meter"]
    stem = seen["checks"][1]
    assert said(stem["result"]) == "It stands at <valve.opening>."
    assert stem["result"][0][1] == {
        "part": "quantity", "quantity": "opening", "value": 0.86, "source": "valve.opening", "day": "today",
    }  # fmt: skip


def test_a_strip_down_finds_a_sound_pump_where_the_load_has_changed() -> None:
    """The path says that it was needless."""
    seen = sound(predict("machine"), check("open-it"))
    assert (seen["checks"][3]["found"], seen["checks"][3]["care"]) == ("sound", "dismantle")
    path = sound(predict("machine"), check("open-it"), decide("lighter"))["reveal"]["path"]
    assert (path["strip_down"], path["lost"], path["suspicion_right"]) == ("needless", 240, False)


def test_a_verdict_that_blames_a_sound_machine_costs_the_strip_down_too() -> None:
    """Blaming the pump sends the fitter: the minutes are lost though no check was taken."""
    path = sound(predict("discharge-side"), decide("worn"))["reveal"]["path"]
    assert (path["strip_down"], path["lost"], path["minutes"]) == ("needless", 240, 0)
    assert path["suspicion_right"]
    right = sound(predict("discharge-side"), decide("lighter"))["reveal"]["path"]
    assert (right["strip_down"], right["lost"]) == ("avoided", 0)


def test_an_explanation_is_tied_to_the_readings_that_were_taken() -> None:
    """The same verdict is answered otherwise to one who read the flow meter and one who did not."""
    blind = said(sound(predict("machine"), decide("worn"))["verdict"]["reply"])
    seeing = said(sound(predict("machine"), check("flow"), decide("worn"))["verdict"]["reply"])
    assert blind.endswith("You left the flow meter alone.")
    assert seeing.endswith("You read the flow meter.")


def test_the_last_hint_is_the_last() -> None:
    """Hints come one by one and run out."""
    seen = sound(predict("machine"), {"do": "hint"})
    assert len(seen["hints"]) == 1 and seen["hints_left"] == 0
    with pytest.raises(InputError) as refused:
        sound(predict("machine"), {"do": "hint"}, {"do": "hint"})
    assert (refused.value.where, refused.value.rule) == ("moves[2]", "order")


@pytest.mark.parametrize(
    ("moves", "where", "rule"),
    [
        ([check("flow")], "moves[0]", "order"),
        ([decide("worn")], "moves[0]", "order"),
        ([predict("machine"), predict("machine")], "moves[1]", "order"),
        ([predict("drive")], "moves[0].suspects", "choice"),
        ([predict("machine", "sideways")], "moves[0].says", "choice"),
        ([predict("machine"), check("nose")], "moves[1].id", "choice"),
        ([predict("machine"), check("flow"), check("flow")], "moves[2].id", "choice"),
        ([predict("machine"), decide("luck")], "moves[1].choice", "choice"),
        ([predict("machine"), decide("worn", "pray")], "moves[1].action", "choice"),
        ([predict("machine"), {"do": "decide", "choice": "worn"}], "moves[1].action", "missing"),
        ([predict("machine"), decide("worn"), check("flow")], "moves[2]", "order"),
        ([predict("machine"), see("flow-meter", "up")], "moves[1].reading", "choice"),
        ([predict("machine"), *[see("gauge-discharge", "up")] * 2], "moves[2].reading", "choice"),
        ([predict("machine"), see("gauge-discharge", "sideways")], "moves[1].says", "choice"),
        ([see("gauge-discharge", "up")], "moves[0]", "order"),
        ([predict("machine"), decide("worn"), see("gauge-discharge", "up")], "moves[2]", "order"),
        ([{"do": "peek"}], "moves[0].do", "choice"),
        ([{"do": ["check"]}], "moves[0].do", "choice"),
        ([{}], "moves[0].do", "choice"),
        ([predict("machine") | {"more": 1}], "moves[0].more", "unknown"),
        ([predict("machine"), {"do": "check"}], "moves[1].id", "missing"),
        ([predict("machine")] * 41, "moves", "range"),
    ],
)
def test_a_move_that_cannot_be_is_refused_where_it_stands(
    moves: list[dict[str, Any]], where: str, rule: str
) -> None:
    """Stale, doubled, untimely and made-up moves each name their place."""
    with pytest.raises(InputError) as refused:
        sound(*moves)
    assert (refused.value.where, refused.value.rule) == (where, rule)


@pytest.mark.parametrize(
    ("body", "where"),
    [
        ({"case": "no-such-case"}, "case"),
        ({"case": "../plants/rinse-transfer"}, "case"),
        ({"case": {"name": "x.toml"}}, "case.text"),
        ({"case": 5}, "case"),
        ({"moves": []}, "case"),
        ({"case": "the-dropped-gauge", "moves": 3}, "moves"),
        ({"case": "the-dropped-gauge", "peek": True}, "peek"),
        ({"case": "the-dropped-gauge", "seed": 0}, "seed"),
        ({"case": "the-dropped-gauge", "seed": 1.5}, "seed"),
    ],
)
def test_an_ask_that_cannot_be_is_refused(body: dict[str, Any], where: str) -> None:
    """Unknown cases and malformed bodies are answered, never crashed on."""
    with pytest.raises(InputError) as refused:
        view(body, answer_plant)
    assert refused.value.where == where


def test_the_same_moves_give_the_same_view() -> None:
    """A play has no memory but its moves."""
    moves = [predict("machine"), check("flow")]
    first = sound(*moves)
    sound(predict("discharge-side"), decide("heavier"))
    assert sound(*moves) == first
