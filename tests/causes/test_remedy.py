"""What is to be done: something helps against every cause, and doing the wrong thing has its price."""

from __future__ import annotations

from typing import get_args

import pytest

from loadfirst.causes.catalogue import CAUSES, cause
from loadfirst.causes.group import Group
from loadfirst.causes.remedy import GROUPS, HARM, LARGE, MINUTES, OTHERS, Action, fitting, judge

ACTIONS: tuple[Action, ...] = get_args(Action)


@pytest.mark.parametrize("id", [one.id for one in CAUSES])
def test_something_helps_against_every_cause_and_something_does_not(id: str) -> None:
    """The best first, each once; no action is always right."""
    helps = fitting(id)
    assert 0 < len(helps) == len(set(helps)) < len(ACTIONS)
    for action in ACTIONS:
        fits = judge(action, (id,), harmful=False).outcome == "fits"
        assert fits == (action in helps)


def test_every_group_action_and_exception_is_known() -> None:
    """No misspelt cause among the exceptions, no action without a price."""
    assert set(GROUPS) == set(get_args(Group))
    assert set(MINUTES) == set(ACTIONS) >= LARGE
    for id in OTHERS:
        assert OTHERS[id] != GROUPS[cause(id).group], id


@pytest.mark.parametrize("id", ["strainer-blocked", "valve-throttled", "thinner-air", "nothing"])
def test_leaving_alone_what_does_harm_is_careless(id: str) -> None:
    """Even where leaving it would do as long as nothing suffers."""
    assert judge("leave", (id,), harmful=True) == ("careless", HARM)


def test_what_helps_helps_while_harm_is_done_too() -> None:
    """A strainer that starves the pump is cleaned; the price is that of the cleaning."""
    assert judge("clean", ("strainer-blocked",), harmful=True) == ("fits", MINUTES["clean"])


def test_a_pump_at_fault_that_is_left_or_treated_for_something_else_is_careless() -> None:
    """It goes on wearing, whatever else is cleaned."""
    for action in ("leave", "clean", "see-to-instrument"):
        assert judge(action, ("worn",), harmful=False) == ("careless", MINUTES[action] + HARM)


def test_the_overhaul_of_a_sound_pump_is_needless() -> None:
    """Eight hours for nothing, as is a stop; a needless look at an instrument costs little."""
    assert judge("overhaul", ("valve-opened",), harmful=False) == ("needless", MINUTES["overhaul"])
    assert judge("stop", ("nothing",), harmful=False) == ("needless", MINUTES["stop"])
    assert judge("see-to-instrument", ("valve-opened",), harmful=False) == ("idle", 30)


def test_of_two_causes_a_remedy_for_either_fits() -> None:
    """One thing is done first."""
    for action in ("overhaul", "clean"):
        assert judge(action, ("worn", "strainer-blocked"), harmful=False).outcome == "fits"
    assert judge("see-to-drive", ("worn", "strainer-blocked"), harmful=False).outcome == "careless"
