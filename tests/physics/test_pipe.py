"""Pipes: still liquid, thick liquid, the two parts of the loss, and what they refuse."""

from __future__ import annotations

from math import pi

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.law import column
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.units import G

WATER = 1.004e-6  # [m²/s]


def line(**change: float) -> Pipes:
    """A plain steel line, with something about it changed."""
    return Pipes(**{"length": 100, "bore": 0.1, "roughness": 5e-5, "k": 3.0, "viscosity": WATER, **change})


@pytest.mark.parametrize("flow", [0.0, 1e-12, -1e-12, 1e-7])
def test_a_trickle_meets_the_resistance_of_laminar_flow(flow: float) -> None:
    """Hagen–Poiseuille, 128 ν L/(π g D⁴) per flow: finite and above 0 in still liquid too."""
    drop, slope = line(k=0).head_drop(column(flow))
    resistance = 128 * WATER * 100 / (pi * G * 0.1**4)
    assert drop[0, 0] == pytest.approx(resistance * flow, rel=1e-13, abs=0)
    assert slope[0, 0] == pytest.approx(resistance, rel=1e-13)


@given(st.floats(-0.2, 0.2))
def test_friction_and_fittings_add_up_to_the_drop(flow: float) -> None:
    """The breakdown leaves nothing out."""
    law = line()
    friction, fittings = law.breakdown(column(flow))
    assert friction + fittings == pytest.approx(law.head_drop(column(flow))[0], rel=1e-14, abs=1e-300)


@given(st.floats(-0.2, 0.2))
def test_fittings_cost_their_share_of_the_velocity_head(flow: float) -> None:
    """K v²/2g, with the sign of the flow."""
    _, fittings = line().breakdown(column(flow))
    assert fittings[0, 0] == pytest.approx(np.sign(flow) * 3.0 * velocity_head(flow, 0.1), rel=1e-13)


def test_the_velocity_head_is_that_of_the_speed_in_the_bore() -> None:
    """v²/2g, the same both ways, over arrays of flows and bores."""
    flow, bore = np.array([[0.01], [-0.02]]), np.array([[0.1, 0.2]])
    speed = flow / (pi * bore**2 / 4)
    assert velocity_head(flow, bore) == pytest.approx(speed**2 / (2 * G), rel=1e-14)


@given(st.floats(1e-6, 0.2))
def test_two_lengths_of_pipe_cost_twice_as_much(flow: float) -> None:
    """Friction is per metre: the same at every place along the run."""
    once, twice = line(k=0).head_drop(column(flow))[0], line(k=0, length=200).head_drop(column(flow))[0]
    assert twice == pytest.approx(2 * once, rel=1e-13)


def test_each_pipe_of_a_plant_keeps_its_own_sizes() -> None:
    """Three unlike pipes and a shared liquid: as if each stood alone."""
    sizes = {"length": [10, 20, 30], "bore": [0.05, 0.1, 0.2], "roughness": [0, 1e-5, 1e-4], "k": [0, 1, 2]}
    law = Pipes(**sizes, viscosity=WATER)
    drop, _ = law.head_drop(np.array([[0.001, 0.01, 0.05]]))
    assert law.count == 3
    for i, flow in enumerate((0.001, 0.01, 0.05)):
        alone = Pipes(**{key: values[i] for key, values in sizes.items()}, viscosity=WATER)
        assert drop[0, i] == pytest.approx(alone.head_drop(column(flow))[0][0, 0], rel=1e-13)


def test_a_pipe_is_smooth_and_never_shut() -> None:
    """It has no corner, and holds at no flow."""
    assert line().corners() is None
    assert not line().shut(np.array([[-0.1], [0.0], [0.1]])).any()


def test_a_wall_as_rough_as_a_twentieth_of_the_bore_is_taken_as_written() -> None:
    """In binary 1.00025 mm is a hair more than 20.005 mm / 20."""
    assert 1.00025e-3 > 20.005e-3 / 20
    assert line(bore=20.005e-3, roughness=1.00025e-3).count == 1


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"length": -1.0}, "pipe.length is -1.0, but must be 0 m or more."),
        ({"length": float("inf")}, "pipe.length is inf, but must be 0 m or more."),
        ({"bore": 0.0}, "pipe.bore is 0.0, but must be above 0 m."),
        ({"roughness": 0.006}, "pipe.roughness is 0.006, but must be from 0 to bore/20."),
        ({"k": -0.5}, "pipe.k is -0.5, but must be 0 or more."),
        ({"viscosity": float("nan")}, "pipe.viscosity is nan, but must be above 0 m²/s."),
    ],
)
def test_an_impossible_pipe_is_refused(change: dict[str, float], says: str) -> None:
    """The error names the parameter, the value and what would do."""
    with pytest.raises(InputError) as caught:
        line(**change)
    assert caught.value.text == says


def test_the_first_impossible_pipe_of_many_is_quoted() -> None:
    """Among many plants the error shows a value that is at fault, not one that is well."""
    with pytest.raises(InputError) as caught:
        Pipes(10, [[0.1], [-0.2], [-0.3]], 0, 0, WATER)
    assert caught.value.got == -0.2
