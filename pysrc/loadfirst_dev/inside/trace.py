"""Runs in the browser's Python while building: works the door, and tells what that needed.

Its last expression is the result, as JSON: ``files`` that were imported, and
``answer``, the reply to the plain question about the first plant.
"""

import json
import sys

from loadfirst.door import PROTOCOL, handle


def ask(kind, **body):  # type: ignore[no-untyped-def]
    """One question to the door, as the page would put it."""
    return json.loads(handle(json.dumps({"v": PROTOCOL, "id": 1, "kind": kind, "body": body})))


def exercise(catalogue):  # type: ignore[no-untyped-def]
    """Everything that a page can ask of the engine, and what goes wrong."""
    for plant in catalogue["plants"]:
        for edits in EDITS:
            ask("answer", plant=plant["id"], edits=edits)
    for case in catalogue["cases"]:
        ask("case", case=case["id"], moves=[])
    for text in ("format = 1\ntitle = 'x'\n[pump]\nmodle = 'small'\n", "not toml at all = [", ""):
        ask("plant-file", name="own.toml", text=text)
    for body in ({}, {"plant": 7}, {"plant": "no-such-plant"}, {"plant": {"format": 1}}):
        ask("answer", **body)
    for text in ("", "[]", "{}", '{"v": 0}', '{"v": 1, "id": 1, "kind": "nonsense", "body": {}}'):
        handle(text)


EDITS = [
    {},
    {"pump.arrangement": "side-by-side"},
    {"pump.arrangement": "in-line"},
    {"discharge.attached": False},
    {"valve.opening": 0},
    {"valve.openning": 0.5},
    {"valve.opening": "half"},
    {"valve.opening": 7},
    {"liquid.name": "syrup", "liquid.density_kgm3": 1200, "liquid.viscosity_mpas": 90, "liquid.vapour_bar": 0.02},
]

catalogue = ask("catalogue")["body"]
exercise(catalogue)
first = catalogue["plants"][0]["id"]
answer = ask("answer", plant=first, edits={})
files = sorted({module.__file__ for module in list(sys.modules.values()) if getattr(module, "__file__", None)})
json.dumps({"files": files, "plant": first, "answer": answer})
