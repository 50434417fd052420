"""Fittings by their loss coefficients, against handbooks and exact relations."""

from __future__ import annotations

from math import pi

import numpy as np
import pytest

from loadfirst.physics.law import column
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.units import HOUR

FOOT, GALLON = 0.3048, 231 * 0.0254**3  # [m], [m³] US


def fitting(k: float, bore: float) -> Pipes:
    """A fitting alone: no length, so no friction."""
    return Pipes(0, bore, 0, k, 1e-6)


def head(law: Pipes, flow: float) -> float:
    """Head it costs at one flow. [m]"""
    return float(law.head_drop(column(flow))[0][0, 0])


def test_a_pipe_exit_loses_the_whole_velocity_head() -> None:
    """Hydraulic Institute Engineering Data Book, worked system curve: K 1 at an exit (read).

    At 4 m/s that is 16/(2 × 9.80665) = 0.8158 m; exact.
    """
    bore = 0.1
    flow = 4.0 * pi * bore**2 / 4
    assert head(fitting(1.0, bore), flow) == pytest.approx(16 / (2 * 9.80665), rel=1e-12)
    assert float(velocity_head(flow, bore)) == pytest.approx(16 / (2 * 9.80665), rel=1e-12)


def test_a_sharp_entrance_loses_half_the_velocity_head() -> None:
    """White; Crane TP-410, A-30: K 0.5 for a sharp flush entrance (from memory); so says fluids 1.3.1."""
    assert head(fitting(0.5, 0.08), 0.01) == pytest.approx(0.5 * velocity_head(0.01, 0.08), rel=1e-12)


def test_a_sudden_widening_loses_what_borda_and_carnot_say() -> None:
    """Borda–Carnot, (v1 - v2)²/2g: K 0.5625 on the small pipe for a widening to twice the bore; exact."""
    before, after = velocity_head(0.01, 0.1), velocity_head(0.01, 0.2)
    lost = (np.sqrt(before) - np.sqrt(after)) ** 2
    assert head(fitting(0.5625, 0.1), 0.01) == pytest.approx(float(lost), rel=1e-6)


@pytest.mark.parametrize(
    ("length", "bore", "flow", "printed", "within"),
    [
        (382.52, 0.10226, 100 / HOUR, 4.59e-3 * 100**2, 0.008),
        (1255 * FOOT, 0.3355 * FOOT, 100 * GALLON / 60, 0.000775 * 100**2 * FOOT, 0.006),
    ],
    ids=["metric", "US units"],
)
def test_a_system_curve_rises_as_the_trades_worked_example(
    length: float, bore: float, flow: float, printed: float, within: float
) -> None:
    """Hydraulic Institute Engineering Data Book, 1.A: 4.59e-3 m/(m³/h)², 7.75e-4 ft/gpm² (read).

    The example fixes f = 0.02 and fittings K 3.79; the whole line is then one
    loss coefficient. Tolerance: three printed digits, and g = 32.2 ft/s².
    """
    assert head(fitting(0.02 * length / bore + 3.79, bore), flow) == pytest.approx(printed, rel=within)


@pytest.mark.native
def test_loss_coefficients_mean_what_the_reference_library_means_by_them() -> None:
    """fluids 1.3.1: entrance, exit and widening, and the head of a coefficient at a speed."""
    from fluids.core import head_from_K
    from fluids.fittings import diffuser_sharp, entrance_sharp, exit_normal

    flow, bore = 0.02, 0.1
    speed = flow / (pi * bore**2 / 4)
    for k in (entrance_sharp(method="Crane"), exit_normal(), diffuser_sharp(0.1, 0.2)):
        assert head(fitting(k, bore), flow) == pytest.approx(head_from_K(k, speed), rel=1e-12)
