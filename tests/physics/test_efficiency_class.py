"""Efficiency classes against each other."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.efficiency_class import CLASSES, class_efficiency
from loadfirst.physics.motor_efficiency import rated_efficiency

poles = st.sampled_from([2, 4])


@given(st.floats(750.0, 2e5), poles)
def test_each_class_is_more_efficient_than_the_one_before(power: float, poles: int) -> None:
    """And the best loses a good deal less than the worst, at any size."""
    found = [float(class_efficiency(power, poles, name)) for name in CLASSES]
    assert found == sorted(found) and len(set(found)) == 4
    assert 1 - found[-1] < 0.65 * (1 - found[0])


@given(poles, st.sampled_from(CLASSES))
def test_larger_motors_are_more_efficient(poles: int, name: str) -> None:
    """From size to size; to 0.01 points, by which the IE3 polynomials sag."""
    found = class_efficiency(np.geomspace(750.0, 2e5, 100), poles, name)
    assert (np.diff(found) > -1e-4).all()


@given(poles, st.sampled_from(("IE1", "IE2", "IE4")))
def test_losses_fall_smoothly_from_size_to_size(poles: int, name: str) -> None:
    """A wrong digit in a table would show as a bend against the class that has a formula.

    The losses over those of IE3, from one size to the next within 4 % of each other.
    """
    sizes = (
        np.array([0.75, 1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45, 55, 75, 90, 110]) * 1e3
    )
    ratio = (1 - class_efficiency(sizes, poles, name)) / (1 - rated_efficiency(sizes, poles, 50))
    assert np.abs(np.diff(np.log(ratio))).max() < 0.04


def test_outside_the_sizes_the_nearest_efficiency_is_kept() -> None:
    """0.75 to 200 kW."""
    assert class_efficiency([100.0, 750.0, 2e5, 9e5], 4, "IE2").tolist() == pytest.approx(
        [0.796, 0.796, 0.951, 0.951]
    )


@pytest.mark.parametrize(("poles", "name"), [(10, "IE2"), (4, "IE5"), (4, "")])
def test_a_class_without_a_table_is_refused(poles: int, name: str) -> None:
    """The error names what there is."""
    with pytest.raises(InputError, match="motor."):
        class_efficiency(7500.0, poles, name)
