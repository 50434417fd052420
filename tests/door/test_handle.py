"""The door always answers, with a typed error where it cannot do better."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.cases.samples import SOUND, changed
from tests.plants import LEAST, with_table

from loadfirst.door import kinds
from loadfirst.door.handle import RERAISE, handle
from loadfirst.door.messages import LARGEST, PROTOCOL
from loadfirst.plant import library


def ask(kind: str, body: Any, **envelope: Any) -> Any:
    """The reply to one ask."""
    return json.loads(handle(json.dumps({"v": PROTOCOL, "id": 7, "kind": kind, "body": body} | envelope)))


def error(reply: Any) -> Any:
    """The error of a reply that must be one."""
    assert reply["ok"] is False
    return reply["error"]


def test_a_reply_carries_version_and_id_of_its_ask() -> None:
    """So that the page knows which ask was answered."""
    reply = ask("catalogue", {}, id="seventeen")
    assert (reply["v"], reply["id"], reply["ok"]) == (PROTOCOL, "seventeen", True)


@pytest.mark.parametrize("version", [None, 0, 2, "1", True, 1.5])
def test_another_version_is_stale_before_anything_else_is_looked_at(version: Any) -> None:
    """A page of another build may word its asks otherwise; a reload mends it."""
    assert error(ask("no such kind", 3, v=version))["code"] == "stale"


def test_an_unknown_kind_is_named_with_those_that_are_known() -> None:
    """The page's fault, said plainly."""
    found = error(ask("sove", {}))
    assert (found["where"], found["rule"], found["got"]) == ("kind", "choice", "sove")
    kinds = [
        "answer",
        "days",
        "step",
        "causes",
        "cause",
        "hide",
        "shown",
        "unveil",
        "file",
        "catalogue",
        "case",
        "debrief",
        "worked",
        "fair",
        "compose",
    ]
    assert found["facts"]["choices"] == kinds


@pytest.mark.parametrize(
    "text", ["", "{", "nonsense", "[1]", "3", '{"v": NaN}', "[" * 100_000, '"\ud800"', "\x00"]
)
def test_text_that_is_no_ask_is_answered_without_an_id(text: str) -> None:
    """Never an exception, never silence."""
    reply = json.loads(handle(text))
    assert (reply["id"], error(reply)["code"], error(reply)["rule"]) == (None, "input", "syntax")


def test_a_message_that_is_too_long_is_not_even_opened() -> None:
    """A limit for all, and a smaller one for each kind."""
    assert error(json.loads(handle(" " * (LARGEST + 1))))["facts"]["high"] == LARGEST
    assert error(ask("catalogue", {"x": "y" * 2000}))["where"] == "body"


@pytest.mark.parametrize(
    ("body", "where", "rule"),
    [
        ({}, "body.plant", "missing"),
        ({"plant": 3}, "body.plant", "type"),
        ({"plant": "rinse-transfer", "edit": {}}, "body.edit", "unknown"),
        ({"plant": "rinse-transfer", "curve_points": 1}, "body.curve_points", "range"),
        ({"plant": "rinse-transfre"}, "plant", "lookup"),
        ({"plant": "../plants/rinse-transfer"}, "plant", "lookup"),
        ({"plant": LEAST, "edits": {"valve.openning": 1}}, "valve.openning", "unknown"),
        ({"plant": LEAST, "edits": {"valve.opening": 1.4}}, "valve.opening", "range"),
        ({"plant": "rinse-transfer", "edits": {"supply.surface_m": 9}}, "supply.surface_m", "together"),
        ({"plant": {**LEAST, "pump": {"model": "none"}}}, "pump.model", "lookup"),
        ([], "body", "type"),
    ],
)
def test_an_ask_that_cannot_be_answered_says_where(body: Any, where: str, rule: str) -> None:
    """The ask's own fields start with ``body``; a plant's keys are those of its file."""
    found = error(ask("answer", body))
    assert (found["code"], found["where"], found["rule"]) == ("input", where, rule)


def test_a_strangers_value_comes_back_as_json_can_hold_it() -> None:
    """Tables in words, long texts cut, huge numbers in words: the reply stays small and valid."""
    for value in ({"a": {}}, "x" * 10_000, 10**60, [[[]]]):
        found = error(ask("answer", {"plant": LEAST, "edits": {"valve.opening": value}}))
        assert len(json.dumps(found)) < 1500


def test_a_bug_is_answered_with_its_traceback(monkeypatch: pytest.MonkeyPatch) -> None:
    """The page apologises and offers the details to copy."""
    monkeypatch.delenv(RERAISE, raising=False)
    monkeypatch.setitem(kinds.KINDS, "answer", kinds.Kind(lambda body: 1 / 0, 1000))
    found = error(ask("answer", {}))
    assert found["code"] == "bug"
    assert "ZeroDivisionError" in found["detail"]


def test_a_not_a_number_in_a_reply_is_a_bug_not_a_blank_gauge(monkeypatch: pytest.MonkeyPatch) -> None:
    """JSON has none, and nothing turns it into null in silence."""
    monkeypatch.delenv(RERAISE, raising=False)
    monkeypatch.setitem(kinds.KINDS, "answer", kinds.Kind(lambda body: {"value": math.nan}, 1000))
    assert error(ask("answer", {}))["code"] == "bug"


def test_where_the_environment_asks_for_it_a_bug_raises(monkeypatch: pytest.MonkeyPatch) -> None:
    """Tests then see the bug itself; foreseen errors are answered all the same."""
    monkeypatch.setenv(RERAISE, "1")
    monkeypatch.setitem(kinds.KINDS, "answer", kinds.Kind(lambda body: 1 / 0, 1000))
    with pytest.raises(ZeroDivisionError):
        ask("answer", {})
    assert error(ask("sove", {}))["code"] == "input"


@settings(max_examples=60)
@given(
    st.dictionaries(
        st.sampled_from(["valve.opening", "drive.frequency_hz", "supply.surface_m", "pump.arrangement", "x"]),
        st.none() | st.booleans() | st.floats() | st.text(max_size=5) | st.integers(),
        max_size=4,
    )
)
def test_whatever_is_edited_the_door_answers_in_valid_json(edits: dict[str, Any]) -> None:
    """And never with a bug."""
    reply = json.loads(
        handle(json.dumps({"v": 1, "id": 1, "kind": "answer", "body": {"plant": LEAST, "edits": edits}})),
        parse_constant=pytest.fail,
    )
    assert reply["ok"] or reply["error"]["code"] == "input"


def test_a_plant_file_comes_back_as_its_own_keys() -> None:
    """No defaults are written into it, so that a link stays short."""
    text = 'format = 1\ntitle = "Mine"\n[pump]\nmodel = "small"\n'
    body = ask("file", {"name": "mine.toml", "text": text})["body"]
    plant = {"format": 1, "title": "Mine", "pump": {"model": "small"}}
    assert body == {"kind": "plant", "plant": plant, "title": "Mine"}


def test_a_puzzle_that_a_person_opens_is_proven_and_can_be_played() -> None:
    """By asking for the case with the same name and text."""
    file = {"name": "mine.toml", "text": SOUND}
    assert ask("file", file)["body"] == {"kind": "case", "title": "A made-up morning"}
    view = ask("case", {"case": file, "moves": []})["body"]
    assert (view["id"], view["stage"]) == ("mine", "predict")


UNPROVEN = {
    "proof": (('flow-meter = "rises"', 'flow-meter = "falls"'), "proof.flow-meter"),
    "days": (("size = 0.6", "size = 0.0001"), "today"),
    "range": (("size = 0.6", "size = 1.6"), "today[0].size"),
    "truth": (('load = "lighter"', 'load = "heavier"'), "choices"),
    "too-early": (("The gauge has", "At {today.valve.opening} the gauge has"), "story"),
    "typed-number": (("it is {today.flow-meter}", "it is 42 m³/h"), "choices[0].reply"),
    "choice": (('reading = "flow-meter"', 'reading = "ammeter-2"'), "prediction.reading"),
    "unknown": (("story =", "storey ="), "storey"),
    "version": (("format = 1", "format = 9"), "format"),
}
"""By rule: a change that breaks it, and where it stands."""


@pytest.mark.parametrize("rule", UNPROVEN)
def test_a_puzzle_that_does_not_hold_is_refused_at_the_door(rule: str) -> None:
    """Each mistake of an author at its place, before anybody plays."""
    change, where = UNPROVEN[rule]
    found = error(ask("file", {"name": "mine.toml", "text": changed(change)}))
    assert (found["code"], found["file"], found["where"]) == ("file", "mine.toml", where)
    assert found["rule"] == rule


def test_a_pump_that_a_person_opens_is_said_to_be_one() -> None:
    """With the way to make a plant of it."""
    text = library.path("pumps", "small").read_text(encoding="utf-8")
    found = error(ask("file", {"name": "small.toml", "text": text}))
    assert (found["code"], found["rule"]) == ("file", "pump")
    assert "[pump.curve]" in found["hint"]


@pytest.mark.parametrize(
    ("text", "where", "rule"),
    [
        ("format 1", "line 1, column 8", "syntax"),
        ('format = 1\ntitle = "x"\n[pump]\nmodel = "none"\n', "pump.model", "lookup"),
        (
            'format = 1\ntitle = "x"\n[pump]\nmodel = "small"\n[valve]\nopening = nan\n',
            "valve.opening",
            "range",
        ),
        ('format = 1\ntitle = 1979-05-27\n[pump]\nmodel = "small"\n', "title", "type"),
        ("", "format", "missing"),
    ],
)
def test_a_file_that_cannot_be_used_names_itself_and_the_place(text: str, where: str, rule: str) -> None:
    """The page shows it where the file was dropped, and keeps the old plant."""
    found = error(ask("file", {"name": "mine.toml", "text": text}))
    assert (found["code"], found["file"], found["where"], found["rule"]) == ("file", "mine.toml", where, rule)
    assert found["text"].startswith("mine.toml: ")


def test_a_plant_object_is_answered_like_a_packaged_one() -> None:
    """A shared link carries the whole plant."""
    body = ask("answer", {"plant": with_table("valve", opening=0.3)})["body"]
    assert body["converged"]
    assert body["plant"]["valve"]["opening"] == 0.3
