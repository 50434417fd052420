"""Each fault by itself: what it does, that it is nothing when it is not there, that it keeps the order."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.instruments.faults.absolute import counted
from loadfirst.instruments.faults.current_place import before_drive
from loadfirst.instruments.faults.damping import NOISE_TIME, lagged, quietened
from loadfirst.instruments.faults.flow_place import passing
from loadfirst.instruments.faults.misread_unit import times
from loadfirst.instruments.faults.noise import tremble
from loadfirst.instruments.faults.orifice import extracted, scaled, signal, through_plate
from loadfirst.instruments.faults.root_valve import kept
from loadfirst.instruments.faults.tapping import tapped
from loadfirst.instruments.faults.zero_and_span import sensed
from loadfirst.instruments.gauge import dial_pressure
from loadfirst.instruments.instrument import Instrument, Reading
from loadfirst.plant.answer import Node
from loadfirst.units import BAR

NUMBERS = st.floats(-1e8, 1e8)
SOUND: dict[str, Callable[[float], float]] = {
    "zero and span": lambda x: sensed(x, 0.0, 0.0),
    "a full leg to a dial at its tapping": lambda x: dial_pressure(x, 1.0, 1.0, 998.2),
    "a gauge that counts from the air": lambda x: counted(x, "gauge", 101325.0),
    "no damping": lambda x: lagged(3.0, x, 0.0, 0.0),
    "no noise": lambda x: x + tremble(0.0, 5, "gauge-suction", 3),
    "a meter at the pump": lambda x: passing(x, {"relief": 1.0, "return-line": 2.0}, "pump"),
    "a plate the right way round": lambda x: through_plate(x, "right"),
    "the density it is made for": lambda x: scaled(x, 870.0, 870.0),
    "bar": lambda x: x * times("bar"),
}
RISING: dict[str, Callable[[float], float]] = {
    "zero and span": lambda x: sensed(x, 2e4, -30.0),
    "absolute": lambda x: counted(x, "absolute", 101325.0),
    "lag": lambda x: lagged(3.0, x, 2.0, 5.0),
    "no root": lambda x: extracted(signal(x), "missing"),
    "root": lambda x: extracted(signal(x), "right"),
    "two roots": lambda x: extracted(signal(x), "doubled"),
    "plate": lambda x: through_plate(x, "reversed"),
    "psi": lambda x: x * times("psi"),
}


@pytest.mark.parametrize("fault", SOUND.values(), ids=SOUND)
@given(NUMBERS)
def test_what_is_not_wrong_passes_the_truth_on_to_the_last_bit(
    fault: Callable[[float], float], truth: float
) -> None:
    """So a plant without faults shows what it always showed."""
    assert fault(truth) == truth


@pytest.mark.parametrize("fault", RISING.values(), ids=RISING)
@given(NUMBERS, NUMBERS)
def test_no_fault_turns_more_into_less(fault: Callable[[float], float], one: float, other: float) -> None:
    """A pointer goes the way of the truth, whatever is wrong; only a shut root valve stands still."""
    low, high = sorted((one, other))
    assert fault(low) <= fault(high)


@given(st.floats(0, 1), st.floats(0, 1))
def test_the_emptier_a_leg_the_less_it_hides(one: float, other: float) -> None:
    """Of a dial above its tapping; below it, the less it adds."""
    low, high = sorted((one, other))
    assert dial_pressure(3e5, 0, 5, 998.2, low) >= dial_pressure(3e5, 0, 5, 998.2, high)
    assert dial_pressure(3e5, 5, 0, 998.2, low) <= dial_pressure(3e5, 5, 0, 998.2, high)


def test_a_gauge_looks_where_it_is_tapped() -> None:
    """At its own place, at another's, or nowhere where that is gone."""
    nodes = {"discharge": Node(30.0, 3e5, 0.5), "after-valve": Node(20.0, 2e5, 0.5)}
    assert tapped("discharge", "own", nodes) is nodes["discharge"]
    assert tapped("discharge", "after-valve", nodes) is nodes["after-valve"]
    assert tapped("discharge", "suction", nodes) is None


def test_a_shut_gauge_keeps_what_it_is_told_or_what_it_showed() -> None:
    """What the file says first; then the last reading, by its place on the dial; else it was vented."""
    before = partial(Reading, "gauge-discharge", "pressure", accuracy=None, off_scale=None)
    assert kept(2.5, before(value=1e5, low=0.0, high=6e5), 0.0, 6e5) == 2.5 * BAR
    assert kept(None, before(value=1e5, low=0.0, high=6e5), 0.0, 6e5) == pytest.approx(1e5)
    assert kept(None, before(value=43.5e5, low=0.0, high=87e5), 0.0, 6e5) == pytest.approx(3e5)
    assert kept(None, before(value=None, low=0.0, high=6e5), 0.0, 6e5) == 0
    assert kept(None, None, 0.0, 6e5) == 0


def test_damping_is_of_first_order() -> None:
    """63.2 % of a leap after one time constant, 95.0 % after three (textbook step answer); none at once."""
    leap = partial(lagged, 0.0, 1.0, time_constant=5.0)
    assert leap(0.0) == 0
    assert leap(5.0) == pytest.approx(0.632, abs=5e-4)
    assert leap(15.0) == pytest.approx(0.950, abs=5e-4)


@given(st.floats(0, 100), st.floats(0, 100), st.floats(0.01, 100))
def test_damping_knows_no_step_size(first: float, second: float, time_constant: float) -> None:
    """Two steps are one: the clock may choose its own."""
    halfway = lagged(4.0, 1.0, first, time_constant)
    assert lagged(halfway, 1.0, second, time_constant) == pytest.approx(
        lagged(4.0, 1.0, first + second, time_constant), abs=1e-9
    )


def test_damping_quietens_noise() -> None:
    """A hundred times the noise's own time leaves about a tenth; held against noise that is filtered."""
    assert quietened(1.0, 0.0) == 1
    assert quietened(1.0, 99 * NOISE_TIME) == pytest.approx(0.1)
    step, tau, steps = 0.01, 0.4, 60_000
    fade, noise, shown, squares = math.exp(-step / NOISE_TIME), 0.0, 0.0, 0.0
    for count in range(steps):
        noise = noise * fade + math.sqrt(1 - fade**2) * tremble(1.0, 3, "any", count)
        shown = lagged(shown, noise, step, tau)
        squares += shown**2
    assert math.sqrt(squares / steps) == pytest.approx(quietened(1.0, tau), rel=0.1)


def test_a_meter_behind_a_tee_misses_what_left_there() -> None:
    """Relief valve first, then the return line; lines that are not there take nothing."""
    aside = {"relief": 1e-3, "return-line": 2e-3, "branch-line": 4e-3}
    assert passing(1e-2, aside, "before-return") == pytest.approx(9e-3)
    assert passing(1e-2, aside, "after-return") == pytest.approx(7e-3)
    assert passing(1e-2, {}, "after-return") == 1e-2


def test_before_a_drive_the_current_follows_the_power() -> None:
    """7.5 kW into the motor at 400 V: 7.5/(0.97 · √3 · 0.4 · 0.9) = 12.4 A, and in proportion."""
    assert before_drive(7500.0, 400.0) == pytest.approx(12.40, abs=0.005)
    assert before_drive(3750.0, 400.0) == before_drive(7500.0, 400.0) / 2
    assert before_drive(0.0, 400.0) == 0


def test_a_misread_dial_keeps_its_pointers_place() -> None:
    """Its numbers are others, and all of them: ends, error and uncertainty go with the value."""
    dial = Instrument("gauge", "pressure", 0.0, 6e5, span_percent=1.6)
    right, wrong = dial.show(3e5), dial.show(3e5, times=times("psi"))
    for name in ("value", "high", "accuracy", "uncertainty", "repeatability"):
        assert getattr(wrong, name) == pytest.approx(times("psi") * getattr(right, name))
