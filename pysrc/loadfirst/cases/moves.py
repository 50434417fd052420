"""The moves of a play, and where they lead.

A play is the list of its moves and nothing else: prediction with first
suspicion, then checks and hints in any order, what was seen, the verdict.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any

from msgspec import Struct, field

from loadfirst.cases.case import Case, Check, Choice, Direction
from loadfirst.cases.scope import seen_at_first, worth_seeing
from loadfirst.cases.truth import groups_of
from loadfirst.causes.group import Group
from loadfirst.causes.remedy import Action
from loadfirst.errors import InputError
from loadfirst.plant.decode import decode
from loadfirst.plant.places import inside

MOST_MOVES = 40
"""More than any case can use: one prediction, 14 checks, 6 hints, 10 readings seen, one verdict."""


class Predict(Struct, frozen=True, forbid_unknown_fields=True):
    """The prediction and the first suspicion, before anything is shown."""

    says: Direction
    suspects: Group


class Take(Struct, frozen=True, forbid_unknown_fields=True):
    """Take one of the checks on offer."""

    id: str


class AskHint(Struct, frozen=True, forbid_unknown_fields=True):
    """Ask for the next hint."""


class See(Struct, frozen=True, forbid_unknown_fields=True):
    """Say how a reading that stands open has moved, before saying why. Never graded."""

    reading: str
    says: Direction


class Decide(Struct, frozen=True, forbid_unknown_fields=True):
    """Commit to a verdict, and to what is to be done."""

    choice: str
    action: Action


Move = Predict | Take | AskHint | See | Decide

KINDS: dict[str, type[Move]] = {
    "predict": Predict,
    "check": Take,
    "hint": AskHint,
    "see": See,
    "decide": Decide,
}


def moves_from(data: Sequence[Mapping[str, Any]]) -> list[Move]:
    """Decode the moves as the page sends them. Raises InputError."""
    return [_move(move, f"moves[{number}]") for number, move in enumerate(data)]


def _move(data: Mapping[str, Any], where: str) -> Move:
    kind = data.get("do")
    if not isinstance(kind, str) or kind not in KINDS:
        raise _unknown(f"{where}.do", kind, list(KINDS))
    with inside(where):
        return decode(KINDS[kind], {key: value for key, value in data.items() if key != "do"})


class Play(Struct):
    """How far a play has come."""

    prediction: Predict | None = None
    checks: list[Check] = field(default_factory=list)
    hints: int = 0
    saw: dict[str, Direction] = field(default_factory=dict)
    refused: list[Check] = field(default_factory=list)
    verdict: Choice | None = None
    action: Action | None = None

    @property
    def minutes(self) -> float:
        """Time that the checks have taken so far. [min]"""
        return sum(check.minutes for check in self.checks)

    @property
    def money(self) -> float:
        """Money that they have cost. [-]"""
        return sum(check.money for check in self.checks)

    def open_now(self, case: Case) -> list[str]:
        """Readings that stand open by now, in the order in which they were read."""
        if self.prediction is None:
            return []
        read = [id for check in self.checks if not check.does for id in check.reads]
        return list(dict.fromkeys([*seen_at_first(case), *read]))


def follow(case: Case, moves: Sequence[Move], refused: Collection[str] = ()) -> Play:
    """Play the moves.

    Parameters
    ----------
    case : drawn.
    moves : in their order.
    refused : ids of checks that nobody should do; they cost nothing and tell nothing.

    Raises
    ------
    InputError
        For a move that the case does not offer or that comes at the wrong time;
        `where` counts moves from 0: ``moves[2]``.
    """
    play = Play()
    for number, move in enumerate(moves):
        where = f"moves[{number}]"
        _in_order(play, move, where)
        match move:
            case Predict():
                play.prediction = _known_suspicion(case, move, where)
            case Take(id=id):
                check = _check(case, play, id, where)
                (play.refused if id in refused else play.checks).append(check)
            case AskHint():
                play.hints = _next_hint(case, play, where)
            case See(reading=id, says=says):
                play.saw[_to_see(case, play, id, where)] = says
            case Decide(choice=id, action=action):
                play.verdict, play.action = _choice(case, id, where), action
    return play


def _in_order(play: Play, move: Move, where: str) -> None:
    if play.verdict is not None:
        raise InputError(where, _name(move), "absent: the verdict ends the play", rule="order")
    if (play.prediction is None) != isinstance(move, Predict):
        later = "a check, a hint, a reading seen or the verdict"
        wanted = "the prediction" if play.prediction is None else later
        raise InputError(where, _name(move), wanted, rule="order")


def _name(move: Move) -> str:
    return next(name for name, kind in KINDS.items() if isinstance(move, kind))


def suspects_of(case: Case) -> list[Group]:
    """The groups that the verdicts on offer blame, each once, in their order."""
    return list(dict.fromkeys(group for choice in case.choices for group in sorted(groups_of(choice))))


def _known_suspicion(case: Case, move: Predict, where: str) -> Predict:
    known = suspects_of(case)
    if move.suspects not in known:
        raise _unknown(f"{where}.suspects", move.suspects, known)
    return move


def _check(case: Case, play: Play, id: str, where: str) -> Check:
    left = {check.id: check for check in case.checks if check not in [*play.checks, *play.refused]}
    if id not in left:
        raise _unknown(f"{where}.id", id, list(left))
    return left[id]


def _next_hint(case: Case, play: Play, where: str) -> int:
    if play.hints >= len(case.hints):
        raise InputError(where, "hint", "another move: no hint is left", rule="order")
    return play.hints + 1


def _to_see(case: Case, play: Play, id: str, where: str) -> str:
    left = [one for one in worth_seeing(case, play.open_now(case)) if one not in play.saw]
    if id not in left:
        raise _unknown(f"{where}.reading", id, left)
    return id


def _choice(case: Case, id: str, where: str) -> Choice:
    known = {choice.id: choice for choice in case.choices}
    if id not in known:
        raise _unknown(f"{where}.choice", id, list(known))
    return known[id]


def _unknown(where: str, got: object, known: Sequence[str]) -> InputError:
    return InputError(where, got, f"one of {', '.join(known) or 'none'}", rule="choice", choices=list(known))
