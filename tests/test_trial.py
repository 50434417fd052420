"""The trial of random plants finds what is wrong, and hands it over as a file that can be kept."""

from __future__ import annotations

import pytest
from tests import trial
from tests.strategies import Dice, any_data, legal

from loadfirst.plant.toml_text import parse

pytestmark = pytest.mark.native


def test_a_plant_as_a_file_is_the_same_plant() -> None:
    """Words, flags, lists, tables in tables."""
    choose = Dice(4)
    for _ in range(20):
        data = any_data(choose)
        assert legal(parse(trial.as_file(data, ["Why it is kept."]))) == legal(data)


def test_cut_down_only_what_the_fault_needs_is_left() -> None:
    """All other keys go back to their defaults."""
    data = any_data(Dice(4))
    data["valve"]["opening"] = 0.0
    small = trial.cut_down(data, lambda plant: plant.get("valve", {}).get("opening") == 0.0)
    assert small == {"valve": {"opening": 0.0}}
    assert data["valve"].keys() > {"opening"}


def test_what_is_wrong_is_found_and_can_be_read_again(monkeypatch: pytest.MonkeyPatch) -> None:
    """Here no answer is exact enough."""
    assert trial.trial(5, 20) == []
    monkeypatch.setattr(trial, "TOLERANCE", 1e-18)
    found = trial.trial(5, 3)
    assert found and all(text.startswith("# seed 5, plant") and "off its" in text for text in found)
    assert all(trial.failing(parse(text)) for text in found)


def test_an_answer_without_a_balance_is_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    """And so is a crash, which is found plant by plant."""

    def crash(*_: object) -> None:
        raise ZeroDivisionError("nought")

    monkeypatch.setattr(trial, "state_of", crash)
    assert trial.failing(any_data(Dice(4))) == ["ZeroDivisionError: nought"]
    assert len(trial.trial(5, 2)) == 2
