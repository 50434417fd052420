"""Signatures against an independent model and against what the trade says, row by row."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import pytest
from tests.causes.rows import COMPUTED, OURS, PRACTICE, ROWS, Row

from loadfirst.causes.catalogue import cause
from loadfirst.causes.cause import Cause
from loadfirst.causes.signature import CHIEF, Move, Signature, signatures
from loadfirst.plant import toml_text
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import true_state

PLANTS = Path(__file__).parent / "plants"

POINTS = 0.6
"""How near a per cent must come, besides the row's share: one decimal is printed."""
CURRENT_SHARE = 0.25
"""Of a current's: the rows take it in proportion to power, a motor draws a magnetising current besides."""

pytestmark = pytest.mark.native  # reads files


@lru_cache(maxsize=64)
def happened(id: str) -> tuple[Signature, ResolvedPlant, ResolvedPlant]:
    """The signature of a row, the plant before and after."""
    row = next(row for row in ROWS if row.id == id)
    path = PLANTS / f"{row.plant}.toml"
    data = apply_edits(toml_text.read(path), row.before)
    before = after = resolve_data(data)
    last: Cause | None = None
    for name, size in row.happens:
        last = cause(name)
        data = apply_edits(data, last.edits(after, size))
        after = resolve_data(data)
    assert last is not None
    return signatures(before, [(last, after)])[0], before, after


def agrees(move: Move, expected: str) -> bool:
    """Whether a move is one of those expected."""
    percent = move.percent
    holds = {
        "+": move.sign == "+", "-": move.sign == "-", "0": move.sign == "0",
        "~": percent is not None and abs(percent) < 2,
        "++": percent is not None and percent > 30, "--": percent is not None and percent < -30,
        "gone": percent is not None and percent < -90,
    }  # fmt: skip
    return any(holds[sign] for sign in expected.split())


def printed(row: Row) -> str:
    """A line of the table of agreement."""
    found = happened(row.id)[0]
    cells = []
    for name in CHIEF:
        move, wanted = found[name], getattr(row, name)
        ours = move.sign if move.percent is None else f"{move.percent:+.1f}"
        asked = f"{row.percent[name]:+.1f}" if row.percent else wanted or "."
        mark = "" if not wanted else "=" if agrees(move, wanted) else "!"
        cells.append(f"{asked:>7} {ours:>7}{mark:<2}")
    because = f"  explained: {row.because}" if row.because else ""
    return f"{row.id:<13}{''.join(cells)} {row.fault}{because}"


@pytest.mark.parametrize("row", ROWS, ids=[row.id for row in ROWS])
def test_readings_move_as_expected(row: Row) -> None:
    """Each direction, but for those of which the row says why; they must still contradict."""
    found = happened(row.id)[0]
    print(printed(row))
    assert found.converged
    assert found.hunts == row.hunts
    for name in CHIEF:
        expected, move = getattr(row, name), found[name]
        if expected:
            assert agrees(move, expected) == (name not in row.contradicts), (name, move)
    assert bool(row.contradicts) == bool(row.because)


@pytest.mark.parametrize("row", COMPUTED, ids=[row.id for row in COMPUTED])
def test_readings_move_as_far_as_the_independent_model_says(row: Row) -> None:
    """Source: per cent printed by that model, one decimal."""
    found = happened(row.id)[0]
    for name, wanted in row.percent.items():
        got = found[name].percent
        share = CURRENT_SHARE if name == "current" else row.share
        assert abs(got - wanted) <= POINTS + share * abs(wanted), (name, got, wanted)


def test_the_table_of_agreement_can_be_read() -> None:
    """``pytest -s`` prints it: expected and found, row by row; = agrees, ! is explained at the row's end."""
    lines = [printed(row) for row in ROWS]
    print("", *lines, sep="\n")
    assert len(lines) == len(COMPUTED) + len(PRACTICE) + len(OURS)
    assert [row.id for line, row in zip(lines, ROWS, strict=True) if "!" in line] == ["PR-12"]


def test_the_reference_is_the_one_of_the_rows() -> None:
    """105.7 m³/h, as the rows state; 37.7 m and 1.88 m at the suction follow from their own formulas."""
    state = true_state(happened("SIM-01")[1])
    assert state.flow * 3600 == pytest.approx(105.7, rel=0.002)
    assert state.station.head == pytest.approx(60 - 0.002 * 105.65**2, rel=0.005)
    assert state.notes == ()


def test_a_gauge_reads_49_kpa_less_for_5_m() -> None:
    """Source: hydrostatics, ρ g h = 0.49 bar; half a leg is half of it."""
    down, up, half = (happened(id)[0]["discharge"] for id in ("PR-17", "PR-18", "PR-20"))
    assert down.after is not None and down.before is not None
    assert down.before - down.after == pytest.approx(0.49e5, rel=0.01)
    assert up.after is not None and up.before is not None
    assert up.after - up.before == pytest.approx(0.49e5, rel=0.01)
    assert half.after is not None and half.before is not None
    assert half.after - half.before == pytest.approx(0.245e5, rel=0.01)


def test_a_reversed_plate_reads_a_tenth_to_a_fifth_low() -> None:
    """Source: common practice, its size from memory."""
    assert -20 <= (happened("PR-21")[0]["flow"].percent or 0) <= -10


def test_another_density_counts_by_its_root() -> None:
    """Source: q = k √(Δp/ρ): scaled for 1.2 times the density it takes the flow for √1.2 times less."""
    assert happened("PR-23")[0]["flow"].percent == pytest.approx(100 * (1.2**-0.5 - 1), abs=0.01)


def test_the_running_pump_passes_more_while_the_standby_leaks() -> None:
    """Source: common practice (net flow less, more at the running pump, the idle one turns backward)."""
    _, before, after = happened("PR-12")
    (first, _), (then, idle) = true_state(before).machines, true_state(after).machines
    assert then.flow > first.flow
    assert idle.flow < 0 and idle.speed < 0


def test_a_pump_that_turns_the_wrong_way_keeps_half_of_its_head() -> None:
    """Source: common practice, 40 to 60 % of the head it had."""
    head = happened("PR-06")[0]["head"]
    assert head.after is not None and head.before is not None
    assert 0.4 <= head.after / head.before <= 0.6


def test_a_gauge_that_is_shut_off_does_not_follow_the_valve() -> None:
    """Source: common practice, the best test of it."""
    path = PLANTS / "reference.toml"
    plant = resolve_data(toml_text.read(path))
    shut, worked = cause("gauge-shut-off"), cause("valve-throttled")
    edits = {**shut.edits(plant), **worked.edits(plant, 0.3)}
    found = signatures(plant, [(shut, resolve_data(apply_edits(toml_text.read(path), edits)))])[0]
    assert tuple(found[name].sign for name in ("discharge", "flow", "suction")) == ("0", "-", "+")
