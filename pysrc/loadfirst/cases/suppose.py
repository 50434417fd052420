"""What would be right if something else had happened: the verdicts of a case, held against every suspect."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from loadfirst.cases.case import Choice
from loadfirst.cases.truth import LOAD_GROUPS, Truth, load_change, rightness
from loadfirst.days.two_days import two_days
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.physics.law import Array
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data


def right_if(choices: Sequence[Choice], hypotheses: Sequence[Hypothesis], yesterday: dict[str, Any]) -> Array:
    """Which verdicts would be right.

    Parameters
    ----------
    choices : C verdicts on offer.
    hypotheses : H things that may have happened, each of its usual size.
    yesterday : the plant as plain data.

    Returns
    -------
    ndarray (H, C) of 0 and 1
    """
    directions = any(choice.load is not None for choice in choices)
    truths = [_truth(one, yesterday, directions) for one in hypotheses]
    return np.array(
        [[rightness(choice, one) == "right" for choice in choices] for one in truths], dtype=float
    )


def _truth(one: Hypothesis, yesterday: dict[str, Any], directions: bool) -> Truth:
    groups = tuple(dict.fromkeys(cause.group for cause in one.causes))
    ids = tuple(cause.id for cause in one.causes)
    if not directions or not LOAD_GROUPS.intersection(groups):
        return Truth(ids, groups, None)
    today = yesterday
    try:
        for cause in one.causes:
            today = apply_edits(today, cause.edits(resolve_data(today)))
        return Truth(ids, groups, load_change(groups, two_days(yesterday, today)))
    except InputError:  # no state that lasts at that size
        return Truth(ids, groups, None)
