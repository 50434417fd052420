"""What crosses the door: JSON text, SI numbers, words for choices.

    ask    {"v": 1, "id": 7, "kind": "answer", "body": {…}}
    reply  {"v": 1, "id": 7, "ok": true, "body": {…}}
           {"v": 1, "id": 7, "ok": false, "error": {"code", "where", …, "text"}}

A number that does not exist is null; not-a-number and infinity never cross.
Every ask holds all that is needed to answer it: what is kept between two only saves work.
"""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

import json
from typing import Annotated, Any, Literal, TypeVar

import msgspec
from msgspec import Meta, Raw, Struct

from loadfirst.causes.group import Group
from loadfirst.clock.moment import Moment
from loadfirst.errors import InputError, StalePage
from loadfirst.plant.curves import POINTS
from loadfirst.plant.decode import decode
from loadfirst.plant.meta import Part

T = TypeVar("T")

PROTOCOL = 1
"""Guards the page against a Python of another build, never a file or a link."""

LARGEST = 1024 * 1024  # [characters] of an ask of any kind
TEXT_LARGEST = 256 * 1024  # [characters] of a file opened in the page


class Envelope(Struct):
    """The outside of an ask; opened before anything else is believed."""

    v: Any = None
    id: Any = None
    kind: Any = None
    body: Raw = Raw(b"{}")


Finite = Annotated[float, Meta(ge=-1e12, le=1e12)]


class Shown(Part, frozen=True, kw_only=True):
    """What a gauge showed on a remembered day, and the ends of its scale. [Pa]"""

    value: Finite | None
    low: Finite
    high: Finite


class AnswerAsk(Part, frozen=True, kw_only=True):
    """Solve one plant: ``answer``.

    Where a day is remembered this is the second `look` at the same instruments, and a
    gauge that is shut off keeps what it showed `before`, by its id.
    """

    plant: str | dict[str, Any]
    edits: dict[str, Any] = {}
    curve_points: Annotated[int, Meta(ge=2, le=400)] = POINTS
    look: Annotated[int, Meta(ge=0, le=1)] = 0
    before: dict[str, Shown] = {}


class Rig(Part, frozen=True, kw_only=True):
    """A plant as a person has it: its id or its data, and what was changed in it."""

    plant: str | dict[str, Any]
    edits: dict[str, Any] = {}


class DaysAsk(Part, frozen=True, kw_only=True):
    """Compare a remembered day with today: ``days``; today at a moment of the clock where time runs."""

    yesterday: Rig
    today: Rig
    moment: Moment | None = None


class StepAsk(Part, frozen=True, kw_only=True):
    """Let time run in one plant: ``step``. Strictly one after another, each with the moment of the last.

    `moment` is left out at the first. `span` is in seconds.
    """

    plant: str | dict[str, Any]
    edits: dict[str, Any] = {}
    moment: Moment | None = None
    span: Annotated[float, Meta(ge=1e-4, le=3600)]
    curve_points: Annotated[int, Meta(ge=0, le=400)] = 0


class CausesAsk(Rig, frozen=True, kw_only=True):
    """List what can happen to a plant as it is: ``causes``."""


class CauseAsk(Rig, frozen=True, kw_only=True):
    """What one cause changes in a plant as it is: ``cause``; its usual size where none is given."""

    cause: Annotated[str, Meta(max_length=60)]
    size: Finite | None = None


Seed = Annotated[int, Meta(ge=0, lt=2**32)]
Veil = Annotated[str, Meta(max_length=200)]


class HideAsk(Rig, frozen=True, kw_only=True):
    """Put one cause under a veil: ``hide``; one drawn by chance where none is named."""

    seed: Seed
    cause: Annotated[str, Meta(max_length=60)] | None = None
    size: Finite | None = None


class ShownAsk(Rig, frozen=True, kw_only=True):
    """What the instruments show of a plant with something hidden at work: ``shown``. Never the true state."""

    hidden: Veil
    yesterday: Rig | None = None


class UnveilAsk(Rig, frozen=True, kw_only=True):
    """What was hidden, and what it changes in the plant as it is: ``unveil``."""

    hidden: Veil


class ComposeAsk(Part, frozen=True, kw_only=True):
    """Do one piece of a draw of a puzzle for practice: ``compose``; what is left out is drawn."""

    seed: Annotated[int, Meta(ge=1, le=999_999)]
    plant: Annotated[str, Meta(max_length=60)] | None = None
    group: Group | None = None
    level: Literal["first-steps", "operator", "engineer"] | None = None
    tried: Annotated[int, Meta(ge=0, le=1000)] = 0


class FileAsk(Part, frozen=True, kw_only=True):
    """Read a plant or a puzzle that a person opened: ``file``."""

    name: Annotated[str, Meta(max_length=400)]
    text: Annotated[str, Meta(max_length=TEXT_LARGEST)]


class CatalogueAsk(Part, frozen=True):
    """List what comes with the program: ``catalogue``."""


def open_envelope(text: str) -> Envelope:
    """Take the outside of an ask apart; the body stays closed.

    Raises
    ------
    InputError
        Where the text is too long or no JSON object.
    """
    if len(text) > LARGEST:
        raise InputError("the message", len(text), f"at most {LARGEST} characters long", high=LARGEST)
    try:
        return msgspec.json.decode(text, type=Envelope)
    except (msgspec.DecodeError, RecursionError, UnicodeError) as refusal:
        raise _not_json("the message", refusal) from None


def check_version(envelope: Envelope) -> None:
    """Raise `StalePage` unless page and Python speak the same protocol."""
    if envelope.v != PROTOCOL or isinstance(envelope.v, bool):
        raise StalePage("The page and its Python are of different age: reload the page.")


def open_body(envelope: Envelope, longest: int) -> dict[str, Any]:
    """The body as plain data.

    Raises
    ------
    InputError
        Where it is longer than `longest` bytes or no table.
    """
    if len(envelope.body) > longest:
        raise InputError("body", len(envelope.body), f"at most {longest} bytes long", high=longest)
    try:
        body = msgspec.json.decode(envelope.body)
    except (ValueError, RecursionError) as refusal:
        raise _not_json("body", refusal) from None
    if not isinstance(body, dict):
        raise InputError("body", body, "a table", rule="type", kind="table")
    return body


def decode_body(kind: type[T], body: dict[str, Any]) -> T:
    """Decode a body strictly; the path of an error starts with ``body``."""
    try:
        return decode(kind, body)
    except InputError as fault:
        fault.where = f"body.{fault.where}"
        raise


def to_text(reply: dict[str, Any]) -> str:
    """A reply as JSON. A not-a-number in it is a bug and raises ValueError."""
    return json.dumps(reply, allow_nan=False, ensure_ascii=False, separators=(",", ":"))


def _not_json(where: str, refusal: Exception) -> InputError:
    problem = "nested too deeply" if isinstance(refusal, RecursionError) else str(refusal)
    return InputError(where, problem, "JSON", rule="syntax", problem=problem)
