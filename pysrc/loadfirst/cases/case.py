"""A case as data: every key of a case file, with its limits.

A case says only the difference: a plant, what happened overnight as causes of
the one catalogue, and the words. The right verdict has no key: it is derived
from those causes (`cases.truth`).

The format is stable: a key keeps its type, a new one has a default, and older files are lifted in
`cases.read`.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal, get_args

from msgspec import Meta, field

from loadfirst.causes.group import Group
from loadfirst.plant.meta import FILLED, TURNING, Part, choice, quantity

Direction = Literal["up", "same", "down"]
LoadChange = Literal["lighter", "heavier"]
Level = Literal["first-steps", "operator", "engineer"]
LEVELS: tuple[Level, ...] = get_args(Level)
"""The easiest first."""
ReadingId = Literal[
    "gauge-suction", "gauge-discharge", "gauge-after-valve", "flow-meter",
    "ammeter-1", "ammeter-2", "tachometer-1", "tachometer-2", "level-supply", "level-delivery",
    "controller-output",
]  # fmt: skip


def prose(says: str, longest: int) -> Meta:
    """Words for the learner, which may hold placeholders; never empty."""
    return Meta(min_length=1, max_length=longest, pattern=FILLED, description=says)


def several(says: str, least: int, most: int) -> Meta:
    """A list with limits on its length."""
    return Meta(min_length=least, max_length=most, description=says)


BARE = rf"^(?=[\s\S]*\S)[^{{}}{TURNING}]*$"
"""More than blanks, and nothing that would be filled in."""
WITHOUT = "without braces, not empty"


def bare(says: str, longest: int) -> Meta:
    """Words that stand on lists too, where there is nothing to fill in; never empty."""
    extra = {"form": WITHOUT}
    return Meta(min_length=1, max_length=longest, pattern=BARE, description=says, extra_json_schema=extra)


NAME = "small letters, digits and single hyphens"
Id = Annotated[
    str,
    Meta(pattern="^[a-z0-9]+(-[a-z0-9]+)*$", min_length=1, max_length=40, extra_json_schema={"form": NAME}),
]
Word = Annotated[str, Meta(pattern=BARE, min_length=1, max_length=200, extra_json_schema={"form": WITHOUT})]
Label = Annotated[str, bare("A short text.", 200)]
Sentence = Annotated[str, prose("Sentences shown under a condition.", 600)]
Number = Annotated[float, Meta(ge=-1e6, le=1e6)]


class Yesterday(Part, frozen=True):
    """What is edited in the plant for both days."""

    plant: Annotated[
        dict[str, Any], Meta(description="Keys of a plant file with other values: `valve.opening = 0.9`.")
    ] = field(default_factory=dict)


class Change(Part, frozen=True, kw_only=True):
    """One thing that happened overnight."""

    cause: Annotated[Id, choice("Id of a cause: `python -m loadfirst causes` prints them.")]
    size: Annotated[
        Number | None, Meta(description="How large, in the cause's unit; left out: as usual.")
    ] = None
    between: Annotated[
        tuple[Number, Number] | None, Meta(description="Two sizes: drawn between them, in place of `size`.")
    ] = None


class Prediction(Part, frozen=True):
    """What the learner commits to before anything is shown. Never graded."""

    reading: Annotated[ReadingId, choice("The instrument whose change is to be foreseen.")]
    asks: Annotated[str, prose("The question; its answers are up, same, down.", 300)]


class Shown(Part, frozen=True):
    """Which instruments may be read without asking."""

    at_first: Annotated[
        tuple[ReadingId, ...], several("Instruments that are read as soon as the prediction stands.", 0, 10)
    ] = ()


class Check(Part, frozen=True, kw_only=True):
    """Something the learner may do for more knowledge, at a price.

    It reads instruments, or looks at one thing of the catalogue of observations.
    """

    id: Annotated[Id, choice("Name of the check, once in a file.")]
    says: Annotated[str, prose("What the learner does.", 160)]
    minutes: Annotated[float, quantity("min", 0, 10000, "What it costs in time.")]
    money: Annotated[
        float, quantity("-", 0, 100000, "What it costs in money; each unit counts as one minute more.")
    ] = 0.0
    reads: Annotated[tuple[ReadingId, ...], several("Instruments read by it, on both days.", 0, 10)] = ()
    does: Annotated[
        dict[str, Any],
        Meta(max_length=3, description="A test: plant keys that a hand moves for it, and moves back."),
    ] = field(default_factory=dict)
    observes: Annotated[
        Id | None, choice("Id of an observation: `python -m loadfirst causes` prints them beside the causes.")
    ] = None
    isolated: Annotated[
        bool, choice("false: somebody would open it under pressure; nobody does that, and it is said why.")
    ] = True
    shows: Annotated[str, prose("What is found where the observation shows something.", 800)] | None = None
    shows_nothing: Annotated[str, prose("What is found where it does not.", 800)] | None = None


class Choice(Part, frozen=True, kw_only=True):
    """A verdict on offer, with the explanation that it deserves."""

    id: Annotated[Id, choice("Name of the verdict, once in a file.")]
    says: Annotated[str, prose("The verdict, as the learner would say it.", 240)]
    blames: Annotated[
        tuple[Id, ...], several("A cause or a group of causes; two or three where it names several.", 1, 3)
    ]
    load: Annotated[
        LoadChange | None, choice("What it says of the load, where it blames a side or the liquid.")
    ] = None
    reply: Annotated[str, prose("Why it is right or wrong, from readings and curve.", 1200)]
    when_seen: Annotated[
        dict[str, Sentence], Meta(max_length=12, description="Reading or check: what to add if it was taken.")
    ] = field(default_factory=dict)
    when_unseen: Annotated[
        dict[str, Sentence], Meta(max_length=12, description="Reading or check: what to add if it was not.")
    ] = field(default_factory=dict)


class Hint(Part, frozen=True):
    """A nudge for the learner who asks for one."""

    text: Annotated[str, prose("The nudge; it must not give the truth away.", 400)]


class Case(Part, frozen=True, kw_only=True):
    """A whole case file."""

    format: Annotated[Literal[1], choice("Number of this file format.")]
    title: Annotated[str, bare("What people call the case.", 80)]
    level: Annotated[Level, choice("For whom it is meant.")]
    family: Annotated[Id, choice("The family of the course that it belongs to.")] = "own"
    worked: Annotated[bool, choice("true: played step by step, the first of its family.")] = False
    after: Annotated[tuple[Id, ...], several("Cases that should come before it.", 0, 5)] = ()
    teaches: Annotated[tuple[Label, ...], several("What is learnt, one goal each.", 1, 5)]
    leaves_out: Annotated[tuple[Label, ...], several("What it deliberately does not treat.", 0, 5)] = ()
    plant: Annotated[
        str | dict[str, Any], Meta(description="Id of a packaged plant, or the whole plant as a table.")
    ]
    seed: Annotated[
        int,
        quantity("-", 1, 999_999, "Draws noise, chance and ranges, unless the learner brings another."),
    ] = 1
    words: Annotated[
        dict[Id, Annotated[tuple[Word, ...], several("Words to draw from.", 2, 12)]],
        Meta(max_length=12, description="Words that are drawn: `{word.who}` stands for one of `who`."),
    ] = field(default_factory=dict)
    story: Annotated[str, prose("What happened, told by somebody; blank lines part paragraphs.", 2500)]
    teller: Annotated[Group, choice("What the teller of the story blames.")]
    yesterday: Yesterday = Yesterday()
    today: Annotated[
        tuple[Change, ...],
        several("What happened, one thing or two; `nothing` is a cause too.", 1, 2),
    ]
    prediction: Prediction
    shown: Shown = Shown()
    checks: Annotated[tuple[Check, ...], several("What the learner may do.", 3, 14)]
    choices: Annotated[tuple[Choice, ...], several("The verdicts on offer.", 3, 9)]
    hints: Annotated[tuple[Hint, ...], several("Nudges, in the order given.", 0, 6)] = ()
    proof: Annotated[
        dict[str, Literal["rises", "falls", "same"]],
        Meta(
            min_length=1, max_length=10, description="How each reading moves; the physics must bear it out."
        ),
    ]
