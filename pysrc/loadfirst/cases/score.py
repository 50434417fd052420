"""What a play is worth: the verdict and what follows from it, the evidence it stands on, and its price.

Points for a right verdict count as far as what the learner had seen bears it
out: a guess that happens to be right is worth less than the same verdict after
the reading that tells. Then the whole is weighed with its price, against that
of a player who always takes what tells most for its cost.
"""

from __future__ import annotations

from msgspec import Struct

from loadfirst.cases.truth import Rightness
from loadfirst.causes.remedy import Outcome

VERDICT: dict[Rightness, float] = {"right": 70.0, "group": 35.0, "part": 35.0, "wrong": 0.0}
ACTION: dict[Outcome, float] = {"fits": 30.0, "idle": 10.0, "needless": 0.0, "careless": 0.0}
"""Points. Own choice."""

BORNE_OUT = 0.8
"""Probability of the true groups from which a verdict counts as borne out. Own choice. [-]"""
GUESSED = 0.4
"""What a right verdict without any evidence is still worth. Own choice. [-]"""
GRACE = 20.0
"""Cost that is not counted, as what a careful person spends beside the best way. Own choice. [min]"""
PATIENCE = 45.0
"""Cost beyond that which halves what a play is worth. Own choice. [min]"""


class Score(Struct, frozen=True):
    """Points of a play, and what they are made of.

    Attributes
    ----------
    verdict, action : points for each, before anything else. [-]
    support : how far what had been seen bears the verdict out, from `GUESSED` to 1. [-]
    thrift : what is left after the price, from 0 to 1. [-]
    points : of 100.
    of_verdict, of_action : what a right verdict and an action that helps are worth. [-]
    """

    verdict: float
    action: float
    support: float
    thrift: float
    points: float
    of_verdict: float = VERDICT["right"]
    of_action: float = ACTION["fits"]


def score(right: Rightness, outcome: Outcome, believed: float, cost: float, best: float) -> Score:
    """Points of a play.

    Parameters
    ----------
    right : of its verdict.
    outcome : of its action.
    believed : probability of the groups that it rightly blames, from all that the learner had seen. [-]
    cost : of the checks, time and money together. [min]
    best : the same, of a player who takes what tells most for its cost. [min]
    """
    support = GUESSED + (1 - GUESSED) * min(believed / BORNE_OUT, 1.0)
    beyond = max(cost - best - GRACE, 0.0)
    thrift = PATIENCE / (PATIENCE + beyond)
    verdict, action = VERDICT[right], ACTION[outcome]
    if right == "wrong":
        action = min(action, ACTION["idle"])  # the right remedy for the wrong reason is luck
    return Score(verdict, action, support, thrift, (verdict * support + action) * thrift)
