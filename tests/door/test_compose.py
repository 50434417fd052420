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


def made(**wish: Any) -> tuple[dict[str, Any], list[dict[str, Any]]]:
    """The last reply for a wish, and all before it."""
    replies: list[dict[str, Any]] = [{"tried": 0}]
    while not replies[-1].get("done"):
        replies.append(asked(**wish, tried=replies[-1]["tried"])["body"])
    return replies[-1], replies[1:-1]


@pytest.mark.native
def test_asked_again_and_again_it_gives_what_the_command_gives() -> None:
    """Piece by piece: suspects, words, plays; each refusal comes with its reason and begins another draw."""
    last, before = made(**WISH)
    of_command = compose(Wish(**WISH))
    assert (last["name"], last["text"], last["tried"]) == of_command[:3]
    assert tuple(reply["why"] for reply in before if reply["why"]) == of_command.refused
    assert [reply["tried"] for reply in before] == sorted(reply["tried"] for reply in before)
    doing = {reply["doing"] for reply in before if not reply["why"]}
    assert doing == {"suspects", "words", "chance", "plays"}
    assert all(0 <= reply["reckoned"] <= reply["of"] for reply in before)
    suspects = [reply["reckoned"] for reply in before if reply["doing"] == "suspects"]
    assert suspects == sorted(suspects)


@pytest.mark.native
def test_work_that_is_lost_is_done_again() -> None:
    """Another wish between, as with a Python that was started anew: what comes of it is the same."""
    first, _ = made(**WISH)
    for reply in (asked(**WISH), asked(**WISH), asked(**WISH | {"seed": 8}), asked(**WISH)):
        assert not reply["body"]["done"]
    asked(**WISH | {"seed": 8})  # of two works one is kept
    assert made(**WISH)[0] == first
    assert made(**WISH)[0] == first


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
