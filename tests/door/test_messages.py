"""Example messages: Python must answer each ask with exactly the reply beside it.

The page's tests read the same files, so neither side can drift alone. After a
change that is meant, rewrite them with ``LOADFIRST_REWRITE=1`` and read the
difference.
"""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import pytest

from loadfirst.door.handle import handle

FOLDER = Path(__file__).parent / "messages"
EXAMPLES = sorted(FOLDER.glob("*.json"))


def differences(wanted: Any, got: Any, where: str = "reply") -> list[str]:
    """Where two replies differ; numbers may differ by rounding between machines."""
    if isinstance(wanted, dict) and isinstance(got, dict):
        keys = [] if wanted.keys() == got.keys() else [f"{where}: keys {sorted(wanted.keys() ^ got.keys())}"]
        both = wanted.keys() & got.keys()
        return keys + [line for key in both for line in differences(wanted[key], got[key], f"{where}.{key}")]
    if isinstance(wanted, list) and isinstance(got, list) and len(wanted) == len(got):
        pairs = enumerate(zip(wanted, got, strict=True))
        return [line for at, (a, b) in pairs for line in differences(a, b, f"{where}[{at}]")]
    if isinstance(wanted, float) and isinstance(got, int | float) and not isinstance(got, bool):
        return [] if got == pytest.approx(wanted, rel=1e-7, abs=1e-9) else [f"{where}: {wanted} {got}"]
    return [] if type(wanted) is type(got) and wanted == got else [f"{where}: {wanted!r} {got!r}"]


@pytest.mark.native
@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_python_gives_exactly_the_reply_of_the_example(path: Path) -> None:
    """Field by field; nothing more, nothing less."""
    example = json.loads(path.read_text(encoding="utf-8"))
    reply = json.loads(handle(json.dumps(example["ask"])))
    if os.environ.get("LOADFIRST_REWRITE"):
        text = json.dumps({"ask": example["ask"], "reply": reply}, indent=1, ensure_ascii=False)
        path.write_text(text + "\n", encoding="utf-8")
    assert differences(example["reply"], reply) == []


@pytest.mark.native
def test_every_kind_and_every_error_code_of_python_has_an_example() -> None:
    """Both sides have seen each."""
    examples = [json.loads(path.read_text(encoding="utf-8")) for path in EXAMPLES]
    asked = {example["ask"]["kind"] for example in examples}
    assert {
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
        "compose",
    } <= asked
    codes = {example["reply"]["error"]["code"] for example in examples if not example["reply"]["ok"]}
    assert codes == {"input", "file", "stale"}


def test_a_difference_is_found() -> None:
    """The comparison itself can fail."""
    assert differences({"a": [1.0, None]}, {"a": [1.0 + 1e-9, None]}) == []
    assert differences({"a": [1.0, None]}, {"a": [1.1, None]}) == ["reply.a[0]: 1.0 1.1"]
    assert differences({"a": 1}, {"a": True}) == ["reply.a: 1 True"]
    assert differences({"a": 1}, {"b": 1}) == ["reply: keys ['a', 'b']"]
