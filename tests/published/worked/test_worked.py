"""Published pump-and-system problems, from a plant's file through the command line to the printed answer."""

from __future__ import annotations

from typing import Any

import pytest
from tests.published.worked.conversions import MARK, conversions
from tests.published.worked.problems import PROBLEMS
from tests.published.worked.table import PLANTS, Answer, Problem, lines, read

pytestmark = pytest.mark.native  # the browser's Python has no command line

ROWS = [
    pytest.param(problem, answer, id=f"{problem.name}: {answer.asks}")
    for problem in PROBLEMS
    for answer in problem.answers
]
FILES = sorted(path.stem for path in PLANTS.glob("*.toml"))


@pytest.mark.parametrize(("problem", "answer"), ROWS)
def test_the_command_line_gives_the_printed_answer(problem: Problem, answer: Answer) -> None:
    """Within the printed digits, or what the row says; where not, the whole table is shown."""
    found = answer.found(problem.output())
    assert found == pytest.approx(answer.printed, rel=0, abs=answer.within), "\n" + lines(PROBLEMS)


def test_ten_published_problems_and_more_are_solved() -> None:
    """Counted by their files, without those whose answers nobody else printed."""
    published = {problem.file for problem in PROBLEMS if problem.published}
    assert len(published) >= 10


def test_every_plant_here_is_a_problem_and_says_where_it_is_from() -> None:
    """No file without a row, no row without a file; the problem stands on the file's first lines."""
    assert FILES == sorted({problem.file for problem in PROBLEMS})
    for file in FILES:
        first = (PLANTS / f"{file}.toml").read_text(encoding="utf-8").partition("\nformat = 1")[0]
        assert all(line.startswith("# ") for line in first.splitlines())
        assert any(word in first for word in ("read", "quoted", "from memory", "Computed"))


@pytest.mark.parametrize("file", FILES)
def test_what_a_file_says_is_what_the_book_says_in_other_units(file: str) -> None:
    """Every number with the book's own beside it, to six digits."""
    path = PLANTS / f"{file}.toml"
    found = list(conversions(path))
    assert len(found) == path.read_text(encoding="utf-8").count(MARK)
    for key, here, there in found:
        assert here == pytest.approx(there, rel=1e-6, abs=1e-12), key


def test_a_wrong_conversion_is_seen(tmp_path: Any) -> None:
    """265 ft are not 80 m, in a line of its own or in a list."""
    path = tmp_path / "wrong.toml"
    path.write_text(
        "[delivery]\nsurface_m = 80  # = 265 ft\n# = [0, 1] ft\nhead_m = [0, 0.3]\n", encoding="utf-8"
    )
    apart = [key for key, here, there in conversions(path) if here != pytest.approx(there, rel=1e-6)]
    assert apart == ["delivery.surface_m", "delivery.head_m"]


def test_the_pump_of_crane_7_32_asks_for_more_than_there_is() -> None:
    """Crane TP-410, Example 7-32 (quoted): 13.9 ft available, 20 ft required; a note says so."""
    enough = read("crane-7-32")
    short = read("crane-7-32", ("pump.curve.npshr_m=[6.096, 6.096, 6.096, 6.096]",))
    said = [[note["kind"] for note in output["notes"]] for output in (enough, short)]
    assert "npsh-short" not in said[0] and "npsh-short" in said[1]


def test_a_lift_of_10_ft_costs_9_gallons_a_minute() -> None:
    """HI Engineering Data Book 1.C: from 200 to 190.6 US gpm; read. To the digits of the first."""
    before, after = (
        answer.found(problem.output())
        for problem in PROBLEMS
        if problem.file == "hi-data-book-1c"
        for answer in problem.answers
        if answer.asks == "flow"
    )
    assert before - after == pytest.approx(9.4, abs=0.5)


def test_the_table_shows_a_row_that_is_apart() -> None:
    """What a person sees when a test fails: the row, both numbers, and a mark."""
    wrong = Problem(
        "made up",
        "hi-data-book-1c",
        "none",
        "computed",
        (Answer("flow", "duty/flow_m3h", 150, "US gpm", 0.5),),
    )
    row = lines([wrong]).splitlines()[1]
    assert all(part in row for part in ("made up", "150", "199.9", "apart"))
    assert "apart" not in lines(PROBLEMS[:2])
