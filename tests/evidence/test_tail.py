"""The tails of the normal distribution, held against the standard library's."""

from __future__ import annotations

import math

import numpy as np
import pytest

from loadfirst.evidence.tail import log_above, log_density


def test_tails_agree_with_the_libraries_error_function() -> None:
    """On both sides, as far as that one reaches; beyond it the logarithm goes on falling as -z²/2."""
    for z in np.linspace(-8, 35, 87):
        assert log_above(np.array(z)) == pytest.approx(
            math.log(math.erfc(z / 2**0.5) / 2), rel=1e-6, abs=2e-7
        )
    far = log_above(np.array([1e3, 2e3]))
    assert far == pytest.approx([-5e5, -2e6], rel=1e-4)


def test_the_density_is_that_of_the_bell() -> None:
    """At the top and at one standard deviation."""
    assert np.exp(log_density(np.array([0.0, 1.0]))) == pytest.approx([0.398942, 0.241971], abs=1e-6)
