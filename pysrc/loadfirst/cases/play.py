"""Playing a case: the moves so far go in, what the learner may see now comes out.

Nothing is kept between two calls, so a reload, a link or a crashed worker
loses nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Literal, get_args

from msgspec import Meta, Struct
from msgspec.structs import replace

from loadfirst.cases.case import Case, Check
from loadfirst.cases.draw import shows
from loadfirst.cases.load import load_case
from loadfirst.cases.moves import MOST_MOVES, Play, follow, moves_from, suspects_of
from loadfirst.cases.picture import drawn_plant, readings_told
from loadfirst.cases.proof import Proven
from loadfirst.cases.reveal import Answerer, reading_view, reveal, verdict
from loadfirst.cases.safety import DISMANTLES, OPENS
from loadfirst.cases.scope import hits, worth_seeing
from loadfirst.cases.view import CaseView, CheckView, ChoiceView, PredictionView, ReadingView, Saw, Stage
from loadfirst.cases.words import Prose, filled
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.causes.remedy import Action
from loadfirst.errors import InputError
from loadfirst.plant.decode import decode
from loadfirst.plant.places import inside


class CaseText(Struct, frozen=True, forbid_unknown_fields=True):
    """A case file sent along by the page: its name and its TOML text."""

    name: str
    text: str


class CaseAsk(Struct, frozen=True, forbid_unknown_fields=True):
    """What the page asks: a packaged case by id, or a file's text; moves so far; another seed."""

    case: str | dict[str, Any]
    moves: list[dict[str, Any]] = []
    seed: Annotated[int, Meta(ge=1, le=999_999)] | None = None


def view(body: Mapping[str, Any], answer: Answerer) -> CaseView:
    """What the learner may see after these moves.

    Parameters
    ----------
    body : mapping
        ``{"case": id or {"name", "text"}, "moves": [...]}``
    answer : callable
        Gives the whole answer for a plant object; asked for both days once the
        verdict is committed.

    Raises
    ------
    InputError
        For a body or a move that cannot be; `where` says which.
    FileError
        For a case file that cannot be used.
    """
    return show(*played(body), answer)


def played(body: Mapping[str, Any]) -> tuple[Proven, Play]:
    """The case of an ask, and how far its moves have come. `body` and errors as of `view`."""
    ask = decode(CaseAsk, body)
    if len(ask.moves) > MOST_MOVES:
        raise InputError("moves", len(ask.moves), f"at most {MOST_MOVES} moves", high=MOST_MOVES)
    proven = load_case(_asked(ask.case), ask.seed)
    return proven, follow(proven.case, moves_from(ask.moves), proven.refusals)


def _asked(case: str | dict[str, Any]) -> str | tuple[str, str]:
    if isinstance(case, str):
        return case
    with inside("case"):
        text = decode(CaseText, case)
    return text.name, text.text


def show(proven: Proven, play: Play, answer: Answerer) -> CaseView:
    """The play as the page may see it. `answer` as in `view`."""
    case = proven.case
    seen = readings_seen(proven, play)
    return CaseView(
        id=proven.id,
        title=case.title,
        seed=case.seed,
        level=case.level,
        family=case.family,
        worked=case.worked,
        teaches=case.teaches,
        leaves_out=case.leaves_out,
        stage=_stage(play),
        story=_prose(proven, case.story, "story"),
        plant=drawn_plant(proven.happened),
        told=readings_told(case, proven.happened),
        prediction=_prediction(proven, play, seen),
        readings=seen,
        to_see=_to_see(case, play, seen),
        saw=[Saw(id, says, proven.happened.shift(id).moved) for id, says in play.saw.items()],
        checks=[_check(proven, play, number) for number in range(len(case.checks))],
        choices=[
            ChoiceView(choice.id, _prose(proven, choice.says, f"choices[{number}].says"), choice.blames)
            for number, choice in enumerate(case.choices)
        ],
        actions=get_args(Action),
        hints=[_prose(proven, hint.text, "hints") for hint in case.hints[: play.hints]],
        hints_left=len(case.hints) - play.hints,
        minutes=play.minutes,
        money=play.money,
        verdict=verdict(proven, play, [reading.id for reading in seen]),
        reveal=reveal(proven, play, answer),
    )


def readings_seen(proven: Proven, play: Play) -> list[ReadingView]:
    """The instruments that stand open by now, in the order in which they were read."""
    return [reading_view(proven.happened.shift(id)) for id in play.open_now(proven.case)]


def _to_see(case: Case, play: Play, seen: list[ReadingView]) -> list[str]:
    """Where there is nothing to compare there is nothing to ask."""
    comparable = [reading.id for reading in seen if reading.moved is not None and reading.id not in play.saw]
    return [] if play.verdict is not None else worth_seeing(case, comparable)


def _stage(play: Play) -> Stage:
    if play.prediction is None:
        return "predict"
    return "check" if play.verdict is None else "done"


def _prediction(proven: Proven, play: Play, seen: list[ReadingView]) -> PredictionView:
    asked = proven.case.prediction
    view = PredictionView(
        asked.reading, _prose(proven, asked.asks, "prediction.asks"), suspects_of(proven.case)
    )
    if play.prediction is None:
        return view
    open_now = play.verdict is not None or asked.reading in [reading.id for reading in seen]
    outcome = proven.happened.shift(asked.reading).moved if open_now else None
    return PredictionView(
        view.reading, view.asks, view.suspects, play.prediction.says, play.prediction.suspects, outcome
    )


def _check(proven: Proven, play: Play, number: int) -> CheckView:
    check = proven.case.checks[number]
    where = f"checks[{number}]"
    offered = CheckView(
        check.id, _prose(proven, check.says, f"{where}.says"), check.minutes, check.money, check.reads,
        bool(check.does), check.observes, _care(check), taken=check in play.checks,
        refused=proven.refusals[check.id] if check in play.refused else None,
    )  # fmt: skip
    if not offered.taken:
        return offered
    tested = [reading_view(proven.happened.shift_in(check, id)) for id in check.reads if check.does]
    if check.observes is None:
        return replace(offered, tested=tested)
    showed = outcome(proven.case, check)
    words = check.shows if showed else check.shows_nothing
    result = _prose(proven, words or "", f"{where}.shows")
    return replace(offered, tested=tested, showed=showed, result=result, found=_found(check, showed))


def outcome(case: Case, check: Check) -> bool:
    """Whether what is looked at shows something, by the chances of its observation."""
    observation = OBSERVATIONS[check.observes or ""]
    chance = observation.hit if hits(case, check) else observation.false_alarm
    return shows(case.seed, check.id, chance)


def _care(check: Check) -> Literal["dismantle", "open"] | None:
    if check.observes in DISMANTLES:
        return "dismantle"
    return "open" if check.observes in OPENS else None


def _found(check: Check, showed: bool) -> Literal["sound", "at-fault"] | None:
    """A pump that was taken apart can be misread like anything else."""
    if check.observes not in DISMANTLES:
        return None
    return "at-fault" if showed else "sound"


def _prose(proven: Proven, text: str, where: str) -> Prose:
    return filled(text, where, proven.happened.quantity)
