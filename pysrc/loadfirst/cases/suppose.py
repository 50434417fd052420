"""What would be right if something else had happened: the verdicts of a case, held against every suspect."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np

from loadfirst.cases.case import Choice
from loadfirst.cases.truth import LOAD_GROUPS, Truth, load_change, rightness
from loadfirst.days.load_then import LoadThen, asked
from loadfirst.days.two_days import head_scale
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.physics.law import Array
from loadfirst.plant.automatic import settled
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import true_state


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
    then = _load_then(yesterday) if directions else None
    truths = [_truth(one, yesterday, then) for one in hypotheses]
    return np.array(
        [[rightness(choice, one) == "right" for choice in choices] for one in truths], dtype=float
    )


class _Then(NamedTuple):
    """What the load asked yesterday, and the head to compare changes with. [m]"""

    load: LoadThen
    scale: float


def _load_then(yesterday: dict[str, Any]) -> _Then:
    plant = settled([resolve_data(yesterday)])[0]
    duty = true_state(plant).duty
    return _Then(LoadThen(plant, duty.flow, asked(plant, duty.flow)), head_scale(duty.head))


def _truth(one: Hypothesis, yesterday: dict[str, Any], then: _Then | None) -> Truth:
    groups = tuple(dict.fromkeys(cause.group for cause in one.causes))
    ids = tuple(cause.id for cause in one.causes)
    if then is None or not LOAD_GROUPS.intersection(groups):
        return Truth(ids, groups, None)
    today = yesterday
    try:
        for cause in one.causes:
            today = apply_edits(today, cause.edits(resolve_data(today)))
        return Truth(ids, groups, load_change(then.load.asked, then.load.asked_by(today), then.scale))
    except InputError:  # no such plant at that size
        return Truth(ids, groups, None)
