"""Whether a case is fair, by the evidence engine: the truth is found, and habits earn little."""

from __future__ import annotations

import itertools
from functools import cache

import numpy as np
import pytest
from msgspec.structs import replace
from tests.cases.samples import SOUND, TWO, changed, overnight, prove_text

from loadfirst.cases.debrief import debrief
from loadfirst.cases.fairness import Fairness, fairness, unfair
from loadfirst.cases.moves import follow, moves_from
from loadfirst.cases.players import Played as Play
from loadfirst.cases.players import earned, led, plays
from loadfirst.cases.reckoning import FEW, prepare
from loadfirst.cases.score import BORNE_OUT, GUESSED
from loadfirst.cases.weighing import Weighing
from loadfirst.cases.worked import NextStep, next_step
from loadfirst.door.debrief import worked
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import TWO as TWO_AT_ONCE

pytestmark = pytest.mark.native

BLIND = changed(
    ('cause = "valve-opened"\nsize = 0.6', 'cause = "lighter-liquid"\nsize = 0.9'),
    ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["liquid"]'),
    ('"It stands at {today.valve.opening}."', '"It stands elsewhere."'),
    ('reads = ["flow-meter"]', 'reads = ["flow-meter", "level-delivery"]'),
    ('reads = ["gauge-discharge", "ammeter-1"]', 'reads = ["level-supply"]'),
    ('flow-meter = "rises"\n', 'flow-meter = "same"\n'),
)
"""A lighter liquid, without a look at the liquid on offer, or an ammeter."""

OVERLAPPING = changed(
    ('blames = ["worn"]', 'blames = ["gauge-trembles"]'),
    ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["instrument"]'),
    ('blames = ["discharge-side"]\nload = "heavier"', 'blames = ["gauge-span-off"]'),
    ('"It stands at {today.valve.opening}."', '"It stands elsewhere."'),
    ("does = {valve.opening = 0}\n", ""),
    ('reads = ["gauge-discharge", "ammeter-1"]', 'reads = ["ammeter-1"]'),
    ('flow-meter = "rises"', 'flow-meter = "same"'),
    text=overnight("gauge-zero-off", -10),
)
"""The gauge is at fault: two verdicts name other faults of it that fit, the right one names them all."""

STRAINER = '[[today]]\ncause = "strainer-blocked"\n'
SUCTION = """[[checks]]
id = "suction"
says = "Read the suction gauge."
minutes = 4
reads = ["gauge-suction"]

"""
LATE = changed(
    ('cause = "valve-opened"\nsize = 0.6\n', f'cause = "impeller-smaller"\n\n{STRAINER}'),
    ('id = "lighter"', 'id = "both"'),
    ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["impeller-smaller", "strainer-blocked"]'),
    ('blames = ["worn"]', 'blames = ["impeller-smaller"]'),
    ('blames = ["discharge-side"]\nload = "heavier"', 'blames = ["strainer-blocked"]'),
    ("It stands at {today.valve.opening}.", "It was touched."),
    ('[[checks]]\nid = "open-it"', f'{SUCTION}[[checks]]\nid = "open-it"'),
    ('flow-meter = "rises"', 'gauge-suction = "falls"'),
)
"""A smaller impeller and a blocked strainer: without the suction gauge the impeller explains it all."""


@cache
def weighing(text: str = SOUND) -> Weighing:
    """A case text, weighed."""
    return Weighing(prove_text(text))


@cache
def found(text: str = SOUND) -> Fairness:
    """The same, played."""
    return fairness(weighing(text), draws=40, plays_each=6)


def complaints(text: str) -> list[InputError]:
    """What is unfair in it."""
    return list(unfair(found(text), weighing(text)))


def test_the_sound_case_is_fair() -> None:
    """Group and cause are found; the wrong verdicts are not borne out."""
    fair = found()
    assert fair.group > 0.95 and fair.told and fair.cause > 0.9
    assert max(fair.rivals.values()) < 0.05
    assert complaints(SOUND) == []


def test_the_led_player_takes_little_and_earns_most() -> None:
    """Two or three cheap checks, no strip-down, and more than any habit."""
    fair = found()
    assert 1 <= fair.checks <= 3 and fair.cost < 40
    assert fair.led > 90
    assert max(fair.habits.values()) < 0.75 * fair.led
    assert fair.habits["dismantles"] < 20


def test_the_led_player_decides_by_what_was_seen() -> None:
    """In each of several looks the true verdict."""
    one = weighing()
    looked = one.looks(range(1, 6))
    for number in range(5):
        assert led(one, looked.only([number])).choice.id == "lighter"


def test_habits_do_what_they_are_called() -> None:
    """Each of them, without looking."""
    one = weighing()
    look = one.looks([1])
    assert plays("blames-load", one, look, 1).choice.id == "lighter"
    stripped = plays("dismantles", one, look, 1)
    assert (stripped.choice.id, stripped.cost, stripped.action) == ("worn", 240, "overhaul")
    assert plays("contradicts", one, look, 1).choice.id == "lighter"
    assert plays("checks-all", one, look, 1).cost == 3 + 10 + 10 + 240


def test_a_truth_that_nothing_on_offer_parts_is_called_unfair_with_a_remedy() -> None:
    """A lighter liquid moves gauges as other things do; no sample is on offer."""
    faults = complaints(BLIND)
    assert faults and faults[0].rule == "fair"
    assert "Offer a reading or an observation" in faults[0].hint


def test_a_wrong_verdict_takes_nothing_from_the_right_one_where_both_may_hold() -> None:
    """Whoever blames the gauge is right whichever fault it has: neither fault alone is as likely as all."""
    fair = found(OVERLAPPING)
    assert sum(fair.rivals.values()) > 0.6
    assert fair.right > 0.95
    assert [fault.facts["of"] for fault in complaints(OVERLAPPING) if fault.facts["of"] == "rival"] == []


def test_a_verdict_that_is_as_likely_as_the_right_one_is_a_rival() -> None:
    """Though most of the doubt lies with what no verdict names."""
    doubtful = replace(found(), right=0.2, rivals={"worn": 0.15, "heavier": 0.05})
    faults = list(unfair(doubtful, weighing()))
    assert [(fault.where, fault.facts["of"]) for fault in faults] == [("choices[0]", "rival")]


def test_a_case_that_misleads_who_looks_is_called_unfair() -> None:
    """More often wrong than right, though the truth can be found."""
    often = replace(found(), decided=0.34)
    assert [(fault.where, fault.facts["of"]) for fault in unfair(often, weighing())] == [("checks", "led")]
    assert list(unfair(replace(found(), decided=0.5), weighing())) == []


def test_a_case_that_is_solved_before_anybody_looks_is_called_unfair() -> None:
    """The led player needs no check; one is enough."""
    for checks, expected in ((0, [("shown.at_first", "open")]), (0.5, [("shown.at_first", "open")]), (1, [])):
        told = replace(found(), checks=checks)
        assert [(fault.where, fault.facts["of"]) for fault in unfair(told, weighing())] == expected


def test_whoever_looks_is_not_content_with_one_of_two_causes() -> None:
    """All readings but one fit the smaller impeller alone; two at once are on offer, so that one is read."""
    one = weighing(LATE)
    ways = [led(one, one.looks([seed])) for seed in range(1, 7)]
    assert {way.choice.id for way in ways} == {"both"}


def test_a_second_cause_on_offer_is_less_likely_than_none() -> None:
    """Beforehand, by what a second cause is at a plant; and where one alone happened that one is found."""
    one = weighing(changed((STRAINER, ""), ('gauge-suction = "falls"', 'flow-meter = "falls"'), text=LATE))
    names = [each.id for each in one.predictions.hypotheses]
    before = dict(zip(names, one.nothing_read.probability[0], strict=True))
    assert before["impeller-smaller + strainer-blocked"] == pytest.approx(
        TWO_AT_ONCE * (before["impeller-smaller"] + before["strainer-blocked"])
    )
    assert led(one, one.looks([1])).choice.id == "worn"


def test_more_checks_make_the_truth_surer() -> None:
    """In the mean over many looks, never less sure than before."""
    one = weighing()
    looked = one.looks(range(1, 41))
    steps = [one.weigh(looked, taken) for taken in ([], ["flow"], ["flow", "stem"])]
    sure = [float(np.mean(one.of_truth(step)[0])) for step in steps]
    assert sure[0] < sure[1] <= sure[2]


def test_a_test_by_hand_is_evidence_too() -> None:
    """A shut-in reading speaks of the pump alone: it clears it of wear."""
    one = weighing()
    looked = one.looks([1])
    names = [each.id for each in one.predictions.hypotheses]
    before, after = (one.weigh(looked, taken).probability[0] for taken in ([], ["shut-in"]))
    smaller = names.index("impeller-smaller")
    assert after[smaller] < max(1e-9, before[smaller] / 10)


def test_suspects_are_reckoned_little_by_little_and_then_kept() -> None:
    """A few sizes a time where there is no time, many where there is; then the verdicts."""
    proven = prove_text(changed(("valve.opening = 0.65", "valve.opening = 0.64")))
    hurried = [prepare(proven, 1e-9) for _ in range(20)]
    of = hurried[0][1]
    assert all(0 <= after - before <= FEW for (before, _), (after, _) in itertools.pairwise(hurried))
    assert hurried[-1][0] < of / 2
    patient = [prepare(proven, 100)[0] for _ in range(20)]
    assert patient == sorted(patient) and patient[-1] == of
    assert prepare(proven, 1e-9) == (of, of)


MOVES = [{"do": "predict", "says": "down", "suspects": "machine"}, {"do": "check", "id": "flow"}]


def test_the_debrief_says_what_each_check_told() -> None:
    """Bits add up to what is known in the end; a wrong verdict has readings against it."""
    one = weighing()
    moves = moves_from([*MOVES, {"do": "decide", "choice": "worn", "action": "overhaul"}])
    told = debrief(one, follow(one.proven.case, moves))
    assert [step.check for step in told.steps] == [None, "flow"]
    assert told.steps[1].truth > 0.95
    assert told.chosen < 0.01
    assert [misfit.reading for misfit in told.misfits][0] == "flow-meter"
    assert told.score.points == 0.0
    doubt = np.log2(len(one.predictions.hypotheses))
    assert 0 < sum(step.bits for step in told.steps) <= doubt


def test_a_verdict_that_is_borne_out_scores() -> None:
    """The same way, the right verdict and what helps."""
    one = weighing()
    moves = moves_from([*MOVES, {"do": "decide", "choice": "lighter", "action": "restore"}])
    told = debrief(one, follow(one.proven.case, moves))
    assert told.chosen > 0.9 and told.misfits == []
    assert told.score.points > 95


def test_a_verdict_that_is_right_in_part_stands_on_what_was_seen_of_that_part() -> None:
    """That the pump is worn can be sure while nothing has shown yet that the strainer is blocked as well."""
    one = weighing(TWO)
    looked = one.looks([1])
    worn = next(choice for choice in one.proven.case.choices if choice.blames == ("worn",))
    seen = one.weigh(looked, ["flow"])
    part, whole = one.of_groups(seen, ["machine"])[0], one.of_truth(seen)[0][0]
    assert part > whole + 0.3
    checks = tuple(check for check in one.proven.case.checks if check.id == "flow")
    scored = earned(one, looked, Play(checks, worn, "overhaul"), 3.0)
    assert scored.support == pytest.approx(GUESSED + (1 - GUESSED) * min(part / BORNE_OUT, 1))
    assert scored.verdict == 35.0


def steps(one: Weighing) -> tuple[list[str], NextStep]:
    """Checks of a learner who does what a worked case says next, and what it says in the end."""
    moves, taken = MOVES[:1], list[str]()
    while True:
        step = next_step(one, follow(one.proven.case, moves_from(moves)))
        if step.check is None:
            return taken, step
        taken.append(step.check)
        moves = [*moves, {"do": "check", "id": step.check}]


def test_a_worked_case_goes_the_way_of_the_led_player() -> None:
    """Step after step; in the end one verdict is likely enough."""
    one = weighing()
    taken, end = steps(one)
    way = led(one, one.looks([one.proven.case.seed]))
    assert taken == [check.id for check in way.checks] != []
    assert end.sure and end.bits == 0.0
    assert max(each.probability for each in end.standing) > 0.5


def test_only_a_worked_case_says_its_next_step() -> None:
    """And none before the prediction."""
    plain = {"name": "mine.toml", "text": SOUND}
    with pytest.raises(InputError, match="a worked case"):
        worked({"case": plain, "moves": MOVES[:1]})
    whole = plain | {"text": changed(('level = "operator"', 'level = "operator"\nworked = true'))}
    of = max(prepare(weighing().proven, 10)[1] for _ in range(2))
    assert worked({"case": whole, "moves": []}) == {"done": of, "of": of, "step": None}
    assert worked({"case": whole, "moves": MOVES[:1]})["step"]["check"] == steps(weighing())[0][0]
