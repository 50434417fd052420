"""Runs in the browser's Python while building: works the door, and tells what that needed.

Its last expression is the result, as JSON: ``files`` that were imported, and
``first`` and ``cases``, what the page shows before its own Python can answer.
"""

import json
import sys
from itertools import cycle
from typing import Any

from loadfirst.door.handle import handle
from loadfirst.door.messages import PROTOCOL

DEFAULT = "rinse-transfer"  # the plant of a page that was opened without a link

EDITS: list[dict[str, Any]] = [
    {},
    {"pump.arrangement": "side-by-side"},
    {"pump.arrangement": "in-line"},
    {"discharge.attached": False},
    {"valve.opening": 0},
    {"valve.openning": 0.5},
    {"valve.opening": "half"},
    {"valve.opening": 7},
    {"liquid.name": "syrup", "liquid.density_kgm3": 1200, "liquid.viscosity_mpas": 90},
]
PLANT_FILES = ("", "not toml at all = [", "format = 1\ntitle = 'x'\n[pump]\nmodle = 'small'\n")
NO_ASKS = ("", "[]", "{}", '{"v": 0}', '{"v": 1, "id": 1, "kind": "nonsense", "body": {}}')


def ask(kind: str, **body: Any) -> Any:
    """One question to the door, as the page would put it; the whole reply."""
    return json.loads(handle(json.dumps({"v": PROTOCOL, "id": 1, "kind": kind, "body": body})))


def exercise(catalogue: Any) -> None:
    """Everything that a page can ask of the engine, and what goes wrong."""
    for plant in catalogue["plants"]:
        for edits in EDITS:
            ask("answer", plant=plant["id"], edits=edits)
    for case in catalogue["cases"]:
        play(case["id"])
    reckon(catalogue["cases"][0]["id"])
    ask("hide", plant=DEFAULT, edits={}, seed=1)
    for text in PLANT_FILES:
        ask("file", name="own.toml", text=text)
    for plant in (7, "no-such-plant", {"format": 1}):
        ask("answer", plant=plant)
    for text in NO_ASKS:
        handle(text)


def play(case: str) -> None:
    """A case from a prediction to its verdict, with each of its choices."""
    begun: list[dict[str, str]] = [{"do": "predict", "says": "up", "suspects": "machine"}]
    view = ask("case", case=case, moves=begun)["body"]
    for move in [{"do": "hint"}, {"do": "nonsense"}, *choices(view)]:
        ask("case", case=case, moves=[*begun, move])


def reckon(case: str) -> None:
    """A lot of each of what is reckoned in lots: the first imports all that the others need."""
    begun = {"do": "predict", "says": "up", "suspects": "machine"}
    verdict = choices(ask("case", case=case, moves=[begun])["body"])[0]
    ask("debrief", case=case, moves=[begun, verdict])
    ask("worked", case=case, moves=[begun])
    ask("fair", case=case, moves=[])


def choices(view: Any) -> list[dict[str, str]]:
    """The verdicts that a case offers, as moves, each with one of the actions."""
    pairs = zip(view["choices"], cycle(view["actions"]), strict=False)
    return [{"do": "decide", "choice": choice["id"], "action": action} for choice, action in pairs]


def first() -> dict[str, Any]:
    """The default plant's answer and the catalogue; a build without them is none."""
    replies = {"catalogue": ask("catalogue"), "answer": ask("answer", plant=DEFAULT, edits={})}
    for reply in replies.values():
        if not reply["ok"]:
            raise SystemExit(f"The engine does not answer: {reply['error']}")
    bodies = {kind: reply["body"] for kind, reply in replies.items()}
    return {"protocol": PROTOCOL, "default": DEFAULT, **bodies}


shown = first()
exercise(shown["catalogue"])
cases = {case["id"]: ask("case", case=case["id"], moves=[]) for case in shown["catalogue"]["cases"]}
openings = {name: {"protocol": PROTOCOL, "view": reply["body"]} for name, reply in cases.items()}
paths = {getattr(module, "__file__", None) for module in list(sys.modules.values())}
json.dumps({"files": sorted(path for path in paths if path), "first": shown, "cases": openings})
