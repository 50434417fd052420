"""What a composed reply holds against a verdict is what the model says of it."""

from __future__ import annotations

import pytest

from loadfirst.cases.compose.against import speaks
from loadfirst.cases.compose.guess import Guess, usually
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.sizes import Sizes
from loadfirst.cases.compose.subject import Subject
from loadfirst.causes.catalogue import cause

SEEN = ["gauge-discharge", "gauge-suction", "flow-meter", "ammeter-1", "tachometer-1", "gauge-after-valve"]


@pytest.fixture(scope="module")
def morning() -> Morning:
    """A control valve closed further: less flow, more pressure before it, less behind."""
    happened = (cause("valve-throttled"),)
    return Morning(Subject(7, "rinse-transfer", "operator", happened, (Sizes(0.5, 0.5),), None, "night"))


def test_what_would_have_gone_the_other_way_speaks_first(morning: Morning) -> None:
    """A valve opened would have lowered the discharge gauge."""
    found = speaks(morning, usually(cause("valve-opened")), "gauge-discharge", SEEN, ())
    assert found is not None and (found.supposed, found.table) != (found.real, "usual")
    assert (morning.shifts[found.id].moved, found.real) in {("up", "up"), ("down", "down")}


def test_another_instrument_speaks_where_one_has_spoken(morning: Morning) -> None:
    """If it tells as plainly."""
    worn = usually(cause("worn"))
    first = speaks(morning, worn, "flow-meter", SEEN, ())
    assert first is not None
    second = speaks(morning, worn, "flow-meter", SEEN, [first.id])
    assert second is not None and second.id != first.id


def test_an_error_to_either_side_is_not_held_to_one(morning: Morning) -> None:
    """Its zero may be off upward as well: that the ammeter fell says nothing against it; others do."""
    zero = usually(cause("ammeter-zero-off"))
    assert speaks(morning, zero, "flow-meter", ["ammeter-1"], ()) is None
    found = speaks(morning, zero, "flow-meter", SEEN, ())
    assert found is not None and found.supposed == "same" != found.real


def test_what_did_not_move_gives_no_size(morning: Morning) -> None:
    """A level that stands would fit a valve opened by a hair; held against it is what one usually does."""
    hair = Guess((cause("valve-opened"),), (0.001,))
    found = speaks(morning, hair, "level-supply", SEEN, ())
    assert found is not None and found.supposed != "same"


def test_of_what_has_no_size_it_is_not_said_how_large_it_comes(morning: Morning) -> None:
    """A lost phase is lost or not."""
    found = speaks(morning, usually(cause("phase-lost")), "gauge-discharge", SEEN, ())
    assert found is not None and found.table == "against"


def test_who_explains_what_was_told_is_not_refuted_by_its_usual_size(morning: Morning) -> None:
    """A gauge set to another range reads low as a rule; here it would have to read high, as it does."""
    before, now = (
        getattr(morning.days, day).readings["gauge-discharge"].value for day in ("yesterday", "today")
    )
    ranged = Guess((cause("gauge-re-ranged"),), (now / before,))
    assert speaks(morning, ranged, "gauge-discharge", ["gauge-discharge"], ()) is None
    assert speaks(morning, ranged, "gauge-discharge", SEEN, ()) is not None
