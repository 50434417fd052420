"""Case files for the tests: one sound text, ways to change it, and ways to play it."""

from __future__ import annotations

import json
from itertools import chain
from typing import Any

import msgspec
import pytest

from loadfirst.cases.load import proven
from loadfirst.cases.play import view
from loadfirst.cases.proof import Proven
from loadfirst.cases.read import decode_case
from loadfirst.door.answer import answer_plant
from loadfirst.errors import FileError

SOUND = """
format = 1
title = "A made-up morning"
level = "operator"
teaches = ["Pressure follows the load."]
plant = "rinse-transfer"
teller = "machine"
story = "The gauge has gone to {today.gauge-discharge}, from {yesterday.gauge-discharge}."

[yesterday.plant]
valve.opening = 0.65

[[today]]
cause = "valve-opened"
size = 0.6

[prediction]
reading = "flow-meter"
asks = "Where does the flow meter stand?"

[[checks]]
id = "flow"
says = "Read the flow meter."
minutes = 3
reads = ["flow-meter"]

[[checks]]
id = "stem"
says = "Look at the stem."
minutes = 8
money = 2
observes = "valve-stem"
shows = "It stands at {today.valve.opening}."
shows_nothing = "Under the paint it looks as ever."

[[checks]]
id = "shut-in"
says = "Shut the valve for half a minute."
minutes = 10
does = {valve.opening = 0}
reads = ["gauge-discharge", "ammeter-1"]

[[checks]]
id = "open-it"
says = "Take the pump apart."
minutes = 240
observes = "gaps-measured"
shows = "The gaps are wide."
shows_nothing = "The gaps are as in the data sheet."

[[choices]]
id = "worn"
says = "The pump is worn."
blames = ["worn"]
reply = "Then the flow would have fallen; it is {today.flow-meter}."
when_seen.flow-meter = "You read the flow meter."
when_unseen.flow-meter = "You left the flow meter alone."

[[choices]]
id = "lighter"
says = "The load is lighter."
blames = ["discharge-side"]
load = "lighter"
reply = "Yes: one step along the same curve."

[[choices]]
id = "heavier"
says = "The load is heavier."
blames = ["discharge-side"]
load = "heavier"
reply = "Then the pressure would have risen."

[[hints]]
text = "Look at a second instrument."

[proof]
gauge-discharge = "falls"
flow-meter = "rises"
"""


def changed(*changes: tuple[str, str], text: str = SOUND) -> str:
    """The sound text with some passages replaced; each must be there."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return text


TWO = changed(
    ('[[today]]\ncause = "valve-opened"\nsize = 0.6',
     '[[today]]\ncause = "worn"\nsize = 20\n\n[[today]]\ncause = "strainer-blocked"\nsize = 0.9'),
    ('id = "lighter"', 'id = "both"'),
    ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["worn", "strainer-blocked"]'),
    ("It stands at {today.valve.opening}.", "It was touched."),
    ('flow-meter = "rises"', 'flow-meter = "falls"'),
)  # fmt: skip
"""A worn pump and a blocked strainer in one night."""


def prove_text(text: str, seed: int | None = None) -> Proven:
    """Read, draw, compute and prove a case text."""
    return proven("made-up", decode_case(text, "made-up.toml"), "made-up.toml", seed)


def refused(text: str) -> FileError:
    """The error that a case text gets."""
    with pytest.raises(FileError) as error:
        prove_text(text)
    assert error.value.file == "made-up.toml"
    return error.value


def overnight(cause: str, size: object = None, text: str = SOUND) -> str:
    """The case text with another cause."""
    sized = "" if size is None else f"size = {size}\n"
    return changed(('cause = "valve-opened"\nsize = 0.6\n', f'cause = "{cause}"\n{sized}'), text=text)


def predict(suspects: str, says: str = "down") -> dict[str, Any]:
    """The move that commits a prediction."""
    return {"do": "predict", "says": says, "suspects": suspects}


def check(id: str) -> dict[str, Any]:
    """The move that takes a check."""
    return {"do": "check", "id": id}


def decide(choice: str, action: str = "leave") -> dict[str, Any]:
    """The move that commits a verdict and what is to be done."""
    return {"do": "decide", "choice": choice, "action": action}


def see(reading: str, says: str) -> dict[str, Any]:
    """The move that says what was seen."""
    return {"do": "see", "reading": reading, "says": says}


def play(case: object, *moves: dict[str, Any], seed: int | None = None) -> dict[str, Any]:
    """The view after these moves, as the page gets it."""
    seen = msgspec.to_builtins(view({"case": case, "moves": list(moves), "seed": seed}, answer_plant))
    return json.loads(json.dumps(seen, allow_nan=False))


def play_text(text: str, *moves: dict[str, Any], seed: int | None = None) -> dict[str, Any]:
    """The same for a case text."""
    return play({"name": "made-up.toml", "text": text}, *moves, seed=seed)


def sound(*moves: dict[str, Any]) -> dict[str, Any]:
    """The same for the case text of the tests."""
    return play_text(SOUND, *moves)


def said(prose: list[list[dict[str, Any]]]) -> str:
    """Prose as one text, each quantity as its source."""
    parts = chain.from_iterable(prose)
    return "".join(part["text"] if part["part"] == "words" else f"<{part['source']}>" for part in parts)
