"""Which tests the browser's Python is given."""

from __future__ import annotations

from tests.in_browser import TESTS, browser_files, imported


def test_helpers_may_import_each_other() -> None:
    """A trial and its clock do; what either needs is found, and the search ends."""
    trial, clock = (imported(TESTS / f"{name}.py") for name in ("trial", "time_trial"))
    assert trial == clock >= {"numpy", "loadfirst", "concurrent"}


def test_files_that_need_what_a_browser_has_not_stay_native() -> None:
    """By themselves or through a helper."""
    given = {path.relative_to(TESTS).as_posix() for path in browser_files()}
    assert "plant/test_state.py" in given
    assert not given & {"physics/test_network.py", "plant/test_random_plants.py", "door/test_answer.py"}
