"""Plants that once went wrong, each a file that says why: they keep to what is asked of any answer.

`python3 pysrc/loadfirst_dev trial` prints such files.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.trial import faults

from loadfirst.plant.build import build
from loadfirst.plant.read import read_resolved
from loadfirst.plant.solved import solve_plants

FILES = sorted((Path(__file__).parent / "regressions").glob("*.toml"))

pytestmark = pytest.mark.native


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_what_went_wrong_once_holds(path: Path) -> None:
    """The first line of a file says what it was."""
    assert path.read_text(encoding="utf-8").startswith("# ")
    assert faults(solve_plants(build([read_resolved(path)])), 0) == []


def test_there_are_some() -> None:
    """An empty folder would prove nothing."""
    assert FILES
