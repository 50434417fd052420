"""Claims hold for other seeds too, or the author is told at which sizes they do not."""

from __future__ import annotations

import pytest
from tests.cases.samples import SOUND, TWO, changed, overnight, prove_text

from loadfirst.cases.bit_by_bit import at_once
from loadfirst.cases.held import LEAST, Held, holding
from loadfirst.door.debrief import fair
from loadfirst.errors import FileError

pytestmark = pytest.mark.native

FELL = changed(
    ('blames = ["worn"]', 'blames = ["nothing"]'),
    ("It stands at {today.valve.opening}.", "It was touched."),
    ('gauge-discharge = "falls"\nflow-meter = "rises"', 'flow-meter = "same"'),
    ("The gauge has gone to {today.gauge-discharge}, from {yesterday.gauge-discharge}.",
     "The gauge {word.way} from {yesterday.gauge-discharge} to {today.gauge-discharge}."),
    text=overnight("nothing"),
)  # fmt: skip
"""Nothing happened, and the story tells which way the gauge went."""


def held(text: str, seed: int | None = None) -> Held:
    """What other draws say of a case text."""
    return at_once(holding(prove_text(text, seed)))


def test_the_sound_case_holds_for_other_seeds() -> None:
    """One size, readings that move by far more than their scatter."""
    assert held(SOUND) == (1.0, [])


def test_a_claim_that_fails_at_an_end_of_a_range_is_told_with_the_size() -> None:
    """The least opening moves the flow by less than its meter can differ; the seed draws a larger one."""
    wide = changed(("size = 0.6", "between = [0.004, 0.6]"))
    share, faults = held(wide)
    assert share < LEAST
    assert {fault.where for fault in faults} <= {"proof.gauge-discharge", "proof.flow-meter"} and faults
    for fault in faults:
        assert (fault.rule, fault.facts["of"]) == ("proof", "draws")
        assert fault.facts["sizes"] == "valve-opened 0.004"
    assert held(changed(("size = 0.6", "between = [0.4, 0.6]"))) == (1.0, [])


def test_of_two_causes_every_pair_of_ends_is_tried() -> None:
    """The gauge falls at three of the four."""
    both = changed(("size = 20", "between = [0.2, 20]"), ("size = 0.9", "between = [0.3, 0.9]"), text=TWO)
    _, faults = held(both)
    assert faults and {fault.facts["sizes"] for fault in faults} == {"worn 0.2 % and strainer-blocked 0.3"}


def test_a_range_over_which_another_verdict_becomes_right_is_refused() -> None:
    """A hand valve half shut, and the control valve opened by more than that, or by less."""
    net = changed(
        ("size = 0.6", 'between = [0.01, 0.9]\n\n[[today]]\ncause = "hand-valve-half-shut"'),
        ('[proof]\ngauge-discharge = "falls"\nflow-meter = "rises"', '[proof]\nlevel-supply = "same"'),
    )
    (fault,) = held(net).faults
    assert (fault.where, fault.got, fault.rule) == ("choices", "heavier", "truth")
    assert "valve-opened 0.01" in fault.hint


def test_a_story_that_tells_a_way_which_chance_draws_is_refused() -> None:
    """Half of the seeds make the gauge rise, whatever the author saw."""
    for way, other in (("fell", "rose"), ("rose", "fell")):
        text = FELL.replace("{word.way}", way)
        seed = next(seed for seed in range(1, 40) if _holds(text, seed))
        share, faults = held(text, seed)
        assert 0.2 < share < LEAST, other
        assert [(fault.where, fault.facts["of"], fault.facts["sizes"]) for fault in faults] == [
            ("story", "draws", "")
        ]
        assert f"without '{way}'" in faults[0].hint
    assert held(FELL.replace("{word.way} from", "stood at").replace("} to {", "}, and now at {")).faults == []


def _holds(text: str, seed: int) -> bool:
    try:
        prove_text(text, seed)
    except FileError:
        return False
    return True


def test_the_author_is_told_in_the_page_too() -> None:
    """Asked whether it is fair, again and again until all is reckoned."""
    text = changed(("size = 0.6", "between = [0.004, 0.6]"))
    ask = {"case": {"name": "made-up.toml", "text": text}, "moves": []}
    while (reply := fair(ask))["fairness"] is None:
        assert reply["done"] < reply["of"]
    found = [fault["facts"].get("sizes") for fault in reply["fairness"]["faults"]]
    assert "valve-opened 0.004" in found
