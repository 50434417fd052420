"""Which verdicts would be right if something else had happened."""

from __future__ import annotations

from typing import Any

import pytest

from loadfirst.cases.case import Choice
from loadfirst.cases.load import load_case
from loadfirst.cases.suppose import right_if
from loadfirst.cases.truth import load_change
from loadfirst.causes.catalogue import CAUSES
from loadfirst.days.two_days import two_days
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data

VERDICTS = (
    Choice(id="less", says="Less is asked.", blames=("discharge-side",), load="lighter", reply="One."),
    Choice(id="more", says="More is asked.", blames=("discharge-side",), load="heavier", reply="Two."),
)


def _way(yesterday: dict[str, Any], one: Hypothesis) -> str | None:
    """Both days solved whole, as a case is that tells of it."""
    try:
        days = two_days(yesterday, apply_edits(yesterday, one.causes[0].edits(resolve_data(yesterday))))
    except InputError:
        return None
    return load_change(*days.load_at_yesterdays_flow, days.head_scale)


@pytest.mark.parametrize("id", ["the-dropped-gauge", "the-same-figure"])
def test_the_way_of_the_load_is_that_of_both_days_solved_whole(id: str) -> None:
    """With a controller in automatic too, whose output is left where it stood."""
    yesterday = load_case(id).days.yesterday
    plant = resolve_data(yesterday.data)
    every = [Hypothesis((one,)) for one in CAUSES if one.group == "discharge-side" and not one.applies(plant)]
    ways = [_way(yesterday.data, one) for one in every]
    wanted = [[float(way == choice.load) for choice in VERDICTS] for way in ways]
    assert right_if(VERDICTS, every, yesterday).tolist() == wanted
    assert {"lighter", "heavier"} <= set(ways)
