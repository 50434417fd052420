"""``compose``: one draw an ask, until a puzzle is there."""

from __future__ import annotations

import json
from typing import Any

import pytest

from loadfirst.cases.compose.compose import MOST, compose
from loadfirst.cases.compose.subject import Wish
from loadfirst.door.handle import handle

WISH: dict[str, Any] = {
    "seed": 6,
    "plant": "rinse-transfer",
    "group": "discharge-side",
    "level": "first-steps",
}


def asked(**body: Any) -> dict[str, Any]:
    """The reply to an ask."""
    return json.loads(handle(json.dumps({"v": 1, "id": 1, "kind": "compose", "body": body})))  # type: ignore[no-any-return]


@pytest.mark.native
def test_asked_again_and_again_it_gives_what_the_command_gives() -> None:
    """First suspects are reckoned, then draws are made, each refusal with its reason."""
    tried, seen, refused = 0, -1, []
    while True:
        body = asked(**WISH, tried=tried)["body"]
        if body["done"]:
            break
        assert (body["tried"], body["reckoned"]) > (tried, seen) or body["why"]
        refused += [body["why"]] if body["why"] else []
        tried, seen = body["tried"], body["reckoned"]
    made = compose(Wish(**WISH))
    assert (body["name"], body["text"], body["tried"]) == (made.name, made.text, made.tried)
    assert tuple(refused) == made.refused


@pytest.mark.parametrize(
    ("wrong", "where"),
    [
        ({"plant": "no-such-plant"}, "plant"),
        ({"group": "weather"}, "body.group"),
        ({"level": "child"}, "body.level"),
        ({"seed": 0}, "body.seed"),
        ({"tried": MOST}, "seed"),
    ],
)
def test_what_cannot_be_is_said(wrong: dict[str, Any], where: str) -> None:
    """Where it stands; and after the last draw nothing is left to try."""
    reply = asked(**WISH | wrong)
    assert not reply["ok"]
    assert reply["error"]["where"] == where
