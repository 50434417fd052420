"""Motors against standards, regulations and a reference library."""

from __future__ import annotations

import math
from functools import partial

import numpy as np
import pytest
from tests.published.printed import Printed, each

from loadfirst.physics.drive import rated_slip, synchronous_speed
from loadfirst.physics.motor import Motor
from loadfirst.physics.motor_efficiency import rated_efficiency

RPM = math.pi / 30  # [rad/s]


@pytest.mark.parametrize("poles", [2, 4, 6, 8])
@pytest.mark.parametrize("frequency", [50, 60])
def test_synchronous_speed_is_120_f_over_p(frequency: int, poles: int) -> None:
    """n = 120 f / p in 1/min (definition): 3000 for two poles at 50 Hz."""
    assert synchronous_speed(frequency, poles) / RPM == pytest.approx(120 * frequency / poles, rel=1e-12)


@pytest.mark.native
def test_synchronous_speed_agrees_with_a_reference_library() -> None:
    """fluids 1.3.1, speed_synchronous, which takes poles and gives 1/min."""
    from fluids.pump import speed_synchronous

    for frequency in (50, 60):
        for poles in (2, 4, 6, 8):
            wanted = speed_synchronous(frequency, poles=poles)
            assert synchronous_speed(frequency, poles) / RPM == pytest.approx(wanted, rel=1e-12)


def test_ie3_efficiencies_of_four_pole_motors_at_60_hz() -> None:
    """10 CFR 431.25, table 1, enclosed, four poles (read; NEMA Premium = IE3).

    Tolerance: half a unit of the last digit, 0.05 points.
    """
    printed = {
        0.75: 85.5, 1.1: 86.5, 1.5: 86.5, 2.2: 89.5, 3.7: 89.5, 5.5: 91.7, 7.5: 91.7, 11: 92.4, 15: 93.0,
        18.5: 93.6, 22: 93.6, 30: 94.1, 37: 94.5, 45: 95.0, 55: 95.4, 110: 95.8, 150: 96.2,
    }  # fmt: skip
    found = rated_efficiency(np.array(list(printed)) * 1e3, 4, 60) * 100
    assert found == pytest.approx(list(printed.values()), abs=0.05)


ie3 = partial(
    Printed,
    within=0.05 / 96,  # half a unit of the last digit
    source="IEC 60034-30-1:2014, IE3 at 50 Hz, tables of nominal efficiencies",
    provenance="from memory; the coefficients behind them read in UK SI 2021/745, schedule 16",
)
KILOWATTS = (0.12, 0.37, 0.75, 2.2, 7.5, 15, 90, 200)


def at_50_hz(poles: int, *percent: float) -> Printed:
    """One column of the standard's table, at the powers of `KILOWATTS`."""
    answer = {f"{power} kW": value for power, value in zip(KILOWATTS, percent, strict=True)}
    return ie3(f"{poles} poles", given={"poles": poles}, answer=answer)


@each(
    at_50_hz(2, 60.8, 73.8, 80.7, 85.9, 90.1, 91.9, 95.0, 95.8),
    at_50_hz(4, 64.8, 77.3, 82.5, 86.7, 90.4, 92.1, 95.2, 96.0),
    at_50_hz(6, 57.7, 73.5, 78.9, 84.3, 89.1, 91.2, 94.9, 95.8),
    at_50_hz(8, 50.7, 69.3, 75.0, 81.9, 87.3, 89.6, 93.4, 94.6),
)
def test_ie3_efficiencies_at_50_hz(row: Printed) -> None:
    """The interpolation polynomials give the printed tables, to half a unit of their last digit."""
    found = rated_efficiency(np.array(KILOWATTS) * 1e3, row.given["poles"], 50) * 100
    assert found.tolist() == pytest.approx(list(row.answer.values()), abs=0.05)


def test_rated_slip_of_usual_sizes() -> None:
    """The Engineering ToolBox, "Electrical Induction Motors - Slip": 5, 3, 2.5, 1.7, 0.8 % (read).

    For 1/2, 5, 15, 50 and 250 hp (from memory). Tolerance: the hp are rounded to kW.
    """
    horsepower = np.array([0.5, 5, 15, 50, 250]) * 745.7
    assert rated_slip(horsepower) == pytest.approx([0.05, 0.03, 0.025, 0.017, 0.008], abs=5e-5)


def test_rated_slip_of_design_b_motors_is_below_five_per_cent() -> None:
    """NEMA MG 1, design B (from memory): slip at rated load less than 5 %, from 1 hp upward."""
    assert (rated_slip(np.geomspace(745.7, 150e3, 50)) < 0.05).all()


def test_efficiency_at_half_load_is_close_to_that_at_full_load() -> None:
    """U.S. DOE fact sheet "Determining Electric Motor Load and Efficiency" (read): broad from 50 to 100 %.

    "Tends to decrease dramatically below about 50 %": a few points at half
    load, many at a tenth (our own bounds).
    """
    motor = Motor.rated(7500.0)
    found = []
    for load in (1.0, 0.5, 0.1):
        torque = load * motor.rated_torque
        speed = motor.speed(torque)
        found.append(float((torque * speed / motor.input_power(torque, speed))[0, 0]))
    assert abs(found[1] - found[0]) < 0.02
    assert found[0] - found[2] > 0.1
