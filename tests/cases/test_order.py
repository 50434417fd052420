"""Cases that lie together come in an order that is possible."""

from __future__ import annotations

import pytest
from msgspec.structs import replace
from tests.cases.samples import SOUND

from loadfirst.cases.order import order_faults
from loadfirst.cases.read import catalogue, decode_case, packaged

CASE = decode_case(SOUND, "made-up.toml")


@pytest.mark.parametrize(
    ("after", "wanted"),
    [
        ({"a": [], "b": ["a"], "c": ["a", "b"], "d": ["c", "a"]}, []),
        ({"a": ["b"], "b": []}, []),
        ({"a": ["elsewhere"]}, []),
        ({"a": ["x"], "b": ["a", "y"]}, [("a.toml", "after[0]", "x"), ("b.toml", "after[1]", "y")]),
        ({"a": ["c"], "b": ["a"], "c": ["b"], "d": ["a"]}, [("a.toml", "after[0]", "c")]),
        ({"d": ["a"], "a": ["e", "b"], "b": ["a"], "e": []}, [("a.toml", "after[1]", "b")]),
        ({"a": ["a"]}, [("a.toml", "after[0]", "a")]),
        (
            {"a": ["b"], "b": ["a"], "c": ["d"], "d": ["c"]},
            [("a.toml", "after[0]", "b"), ("c.toml", "after[0]", "d")],
        ),
    ],
)  # fmt: skip
def test_what_cannot_come_in_order_is_told_once(
    after: dict[str, list[str]], wanted: list[tuple[str, str, str]]
) -> None:
    """With file, place and what was found."""
    cases = {id: replace(CASE, after=tuple(before)) for id, before in after.items()}
    assert [(fault.file, fault.where, fault.got) for fault in order_faults(cases, ["elsewhere"])] == wanted


def test_the_packaged_cases_have_an_order() -> None:
    """Each comes after packaged ones alone, and none after itself."""
    assert [str(fault) for fault in order_faults({one.id: packaged(one.id) for one in catalogue()})] == []
