"""Two causes at once in a puzzle: which pairs are weighed, and how likely they are to who reads its verdicts.

At a plant a second cause is one of all that there are, so that any one pair is next to
impossible before something speaks for it. A puzzle's verdicts say which pairs
there may be: whatever chance a second cause has falls on those. Without that, whoever goes by
what is likeliest would be sure of one cause before a reading is taken that tells of the other.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from loadfirst.cases.case import Choice
from loadfirst.cases.truth import GROUPS, Truth
from loadfirst.evidence.hypothesis import TWO, Hypothesis, priors
from loadfirst.physics.law import Array

Pair = tuple[str, str]
"""Ids of two causes, in the order in which they happened."""


def pairs_of(truth: Truth, choices: Sequence[Choice]) -> tuple[Pair, ...]:
    """Pairs that are weighed, each once: what happened, and what a verdict names together."""
    found = dict[frozenset[str], Pair]()
    for ids in (truth.causes, *(choice.blames for choice in choices)):
        if len(ids) == 2 and not GROUPS.intersection(ids):
            found.setdefault(frozenset(ids), (ids[0], ids[1]))
    return tuple(found.values())


def lift(hypotheses: Sequence[Hypothesis]) -> Array:
    """How many times likelier each hypothesis is to a reader of the verdicts than at a plant, (H,).

    Beside either cause of a pair a second one is as likely as at a plant (`TWO`), but shared
    among the pairs on offer that hold it, in place of all causes.
    """
    chance = priors(hypotheses)
    single = {one.id: each for one, each in zip(hypotheses, chance, strict=True) if len(one.causes) == 1}
    usual = float(np.mean(list(single.values())))
    ids = [cause.id for one in hypotheses if len(one.causes) > 1 for cause in one.causes]
    share = {id: TWO * single.get(id, usual) / ids.count(id) for id in ids}
    return np.array([
        sum(share[cause.id] for cause in one.causes) / each if len(one.causes) > 1 else 1.0
        for one, each in zip(hypotheses, chance, strict=True)
    ])  # fmt: skip
