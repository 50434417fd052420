"""What the measuring tool does with its measurements: aims, percentiles, weights, and judging a drag."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from loadfirst_dev.bench import sizes, weights
from loadfirst_dev.bench.drag_check import judge, rounds_to
from loadfirst_dev.bench.figures import Figure, number, percentile, summary, table
from loadfirst_dev.bench.recording import Asked


def answer(opening: float) -> tuple[float, float, float]:
    """Readings of a plant whose answer is easy to tell."""
    return opening, 10 * opening, 100 * opening


def frame(at: float, opening: float, digits: str | None = None) -> dict[str, Any]:
    """A painted frame that shows an opening's readings."""
    values = answer(opening)
    texts = [f"{value:.2f}" for value in values]
    return {"at": at, "shown": list(zip(values, [*texts[:2], digits or texts[2]], strict=True))}


def entry(at: float, opening: float) -> dict[str, float]:
    """An input, two milliseconds after the pointer moved."""
    return {"at": at, "moved": at - 2, "opening": opening}


def test_an_aim_is_met_on_its_own_side() -> None:
    """At most for times, at least for gains; a figure without an aim is neither met nor missed."""
    assert Figure("a", 2.0, most=2.0).met and not Figure("a", 2.1, most=2.0).met
    assert Figure("a", 2.0, least=2.0).met and not Figure("a", 1.9, least=2.0).met
    assert Figure("a", 1.0).met is None


def test_what_was_missed_is_told_by_name() -> None:
    """The last lines alone tell how it stands."""
    told = summary([Figure("quick", 1, most=2), Figure("slow", 3, most=2), Figure("told only", 9)])
    assert told == "1 of 2 aims met.\nMissed: slow"
    assert "MISSED" in table([Figure("slow", 3, "ms", most=2)])


@pytest.mark.parametrize(
    ("value", "shown"),
    [(0.0, "0"), (0.4567, "0.457"), (33.333, "33.3"), (1234.5, "1234"), (8.1e-7, "8.1e-07")],
)
def test_numbers_are_told_with_three_figures(value: float, shown: str) -> None:
    """More would only be noise."""
    assert number(value) == shown


def test_a_percentile_is_one_of_the_values() -> None:
    """The smallest that so many do not exceed."""
    values = [float(k) for k in range(1, 101)]
    assert percentile(values, 95) == 95.0
    assert percentile(values, 50) == 50.0
    assert percentile([7.0], 95) == 7.0


def test_a_weight_is_kept_by_what_was_weighed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second time nothing is compressed; other bytes are weighed anew."""
    first = weights.brotli_size(b"a" * 1000, tmp_path)
    assert 0 < first < 1000
    monkeypatch.setattr(weights.brotli, "compress", lambda data, quality: b"?" * 77)
    assert weights.brotli_size(b"a" * 1000, tmp_path) == first
    assert weights.brotli_size(b"b" * 1000, tmp_path) == 77


def test_the_sizes_end_with_their_sum(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Heaviest in brotli first."""
    monkeypatch.setenv("LOADFIRST_CACHE", str(tmp_path / "cache"))
    site = tmp_path / "site"
    site.mkdir()
    (site / "light.txt").write_bytes(b"a" * 5000)
    (site / "heavy.bin").write_bytes(bytes(k * k * 7 % 251 for k in range(3000)))
    lines = sizes.table(site).splitlines()
    assert lines[1].split()[0] == "heavy.bin"
    assert lines[-1].split()[:3] == ["2", "files", "8,000"]


def test_only_files_that_were_asked_for_are_counted(tmp_path: Path) -> None:
    """A folder stands for its page; what is not there weighs nothing."""
    (tmp_path / "site").mkdir()
    for name in ("site/index.html", "site/a.js", "site/b.js"):
        (tmp_path / name).write_text("x")
    asked = Asked()
    for target in ("/site/", "/site/a.js?x=1", "/favicon.ico"):
        asked.add(target)
    assert asked.below(tmp_path) == {"site/index.html", "site/a.js"}
    asked.clear()
    assert asked.below(tmp_path) == set()


def test_a_delay_ends_with_the_first_frame_that_shows_the_input_or_a_newer_one() -> None:
    """An input that was overtaken counts until the one that overtook it is seen."""
    marks = {
        "inputs": [entry(100, 0.5), entry(110, 0.4), entry(120, 0.3)],
        "paints": [frame(90, 0.6), frame(105, 0.6), frame(125, 0.5), frame(140, 0.3)],
    }
    found = judge(marks, 0.6, answer)
    assert found.delays == [25, 30, 20]
    assert found.openings == [0.5, 0.3, 0.3]
    assert found.pointer_delays == [27, 32, 22]
    assert (found.frames, found.strange, found.misread) == (3, 0, 0)


def test_a_frame_is_as_old_as_the_input_that_overtook_it() -> None:
    """What is newest is never old, however long it stands."""
    marks = {
        "inputs": [entry(100, 0.5), entry(110, 0.4)],
        "paints": [frame(104, 0.6), frame(116, 0.5), frame(500, 0.4)],
    }
    assert judge(marks, 0.6, answer).ages == [4, 6, 0]


def test_a_frame_that_shows_no_inputs_answer_is_strange() -> None:
    """Nor may it show an input of the future."""
    marks = {
        "inputs": [entry(100, 0.5), entry(200, 0.4)],
        "paints": [frame(105, 0.55), frame(150, 0.4), frame(210, 0.4)],
    }
    assert judge(marks, 0.6, answer).strange == 2


def test_digits_that_are_not_the_value_are_found() -> None:
    """A person reads digits, not attributes."""
    marks = {"inputs": [entry(100, 0.5)], "paints": [frame(110, 0.5, digits="50.01"), frame(120, 0.5)]}
    assert judge(marks, 0.6, answer).misread == 1


@pytest.mark.parametrize(
    ("value", "digits", "right"),
    [
        (0.119482, "0.12", True),
        (0.1251, "0.12", False),
        (-0.031, "−0.03", True),
        (1234.4, "1,234", True),
        (6.2, "> 6.20", True),
        (1.0, "–", False),
    ],
)
def test_written_digits_are_the_value_rounded(value: float, digits: str, right: bool) -> None:
    """With the minus sign, the thousands and the mark off the scale that the page writes."""
    assert rounds_to(value, digits) is right
