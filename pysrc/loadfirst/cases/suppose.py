"""What would be right if something else had happened: the verdicts of a case, held against every suspect."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from loadfirst.cases.case import Choice
from loadfirst.cases.truth import LOAD_GROUPS, Truth, load_change, rightness
from loadfirst.days.load_then import LoadThen
from loadfirst.days.two_days import OneDay, head_scale
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.physics.law import Array
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data


def right_if(choices: Sequence[Choice], hypotheses: Sequence[Hypothesis], yesterday: OneDay) -> Array:
    """Which verdicts would be right.

    Parameters
    ----------
    choices : C verdicts on offer.
    hypotheses : H things that may have happened, each of its usual size.
    yesterday : the day before it happened.

    Returns
    -------
    ndarray (H, C) of 0 and 1
    """
    directions = any(choice.load is not None for choice in choices)
    then = LoadThen.of(yesterday.settled, yesterday.state.duty.flow) if directions else None
    truths = [_truth(one, yesterday, then) for one in hypotheses]
    return np.array(
        [[rightness(choice, one) == "right" for choice in choices] for one in truths], dtype=float
    )


def _truth(one: Hypothesis, yesterday: OneDay, then: LoadThen | None) -> Truth:
    groups = tuple(dict.fromkeys(cause.group for cause in one.causes))
    ids = tuple(cause.id for cause in one.causes)
    if then is None or not LOAD_GROUPS.intersection(groups):
        return Truth(ids, groups, None)
    today = yesterday.data
    try:
        for cause in one.causes:
            today = apply_edits(today, cause.edits(resolve_data(today)))
        change = load_change(then.asked, then.asked_by(today), head_scale(yesterday.state.duty.head))
    except InputError:  # no such plant at that size
        change = None
    return Truth(ids, groups, change)
