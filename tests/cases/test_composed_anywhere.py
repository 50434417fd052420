"""A seed gives the same file here and in the browser's Python, to the last letter."""

from __future__ import annotations

import os
from pathlib import Path

from loadfirst.cases.compose.compose import compose
from loadfirst.cases.compose.subject import Wish

KEPT = Path(__file__).parent / "composed.toml"
WISH = Wish(3, plant="oil-press", group="instrument", level="first-steps")


def test_the_file_is_the_one_that_is_kept() -> None:
    """After a change that is meant, `LOADFIRST_REWRITE=1` renews it; read the difference."""
    made = compose(WISH).text
    if os.environ.get("LOADFIRST_REWRITE"):
        KEPT.write_text(made, encoding="utf-8")
    assert made == KEPT.read_text(encoding="utf-8")
