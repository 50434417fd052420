"""Whatever an answer may hold has words: on the terminal and on the page."""

from __future__ import annotations

import re
from pathlib import Path
from typing import get_args, get_type_hints

import pytest

from loadfirst.cli.drive_notes import REASONED, REASONS
from loadfirst.cli.notes import SENTENCES
from loadfirst.cli.report import BLOCKS, WHY
from loadfirst.plant.answer import BlockName, Note, Why
from loadfirst.plant.drive_answer import Reason

WORDS = Path(__file__).parents[2] / "site" / "words"
KINDS = get_args(get_type_hints(Note)["kind"])


def test_every_block_note_and_reason_has_words_on_the_terminal() -> None:
    """None is missing, and none is left over from an earlier answer."""
    assert set(BLOCKS) == set(get_args(BlockName))
    assert {*SENTENCES, *REASONED} == set(KINDS) - {"outside-rule"}  # each rule has its own sentence
    assert set(REASONS) == set(get_args(Reason))
    assert set(WHY) == set(get_args(Why))


@pytest.mark.native
def test_every_block_and_note_has_words_on_the_page() -> None:
    """In its sentences, its notes and its drawings."""
    texts = "\n".join(path.read_text(encoding="utf-8") for path in WORDS.glob("*.ftl"))
    known = set(re.findall(r"^([a-z-]+[a-z0-9_-]*) =", texts, re.MULTILINE))
    blocks = {f"{where}-{name}" for name in get_args(BlockName) for where in ("block", "draw-block")}
    trips = texts[texts.index("\nnote-trips =") : texts.index("\nnote-belt-slips =")]
    assert all(f"[{reason}]" in trips for reason in get_args(Reason))
    assert (blocks | {f"note-{kind}" for kind in KINDS}) - known == set()
