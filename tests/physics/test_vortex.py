"""Submergence against vortices."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.vortex import required_submergence

bores = st.floats(0.01, 2.0)


@given(bores, st.floats(0.0, 1.0), st.floats(0.0, 0.5))
def test_more_flow_never_needs_less_liquid(bore: float, flow: float, more: float) -> None:
    """At least one bore of it."""
    assert bore <= required_submergence(flow, bore) <= required_submergence(flow + more, bore)


def test_an_outlet_that_runs_back_draws_no_air() -> None:
    """It needs one bore of liquid above it, as one without flow."""
    assert float(required_submergence(-1.0, 0.1)) == 0.1


def test_no_bore_is_refused() -> None:
    """Nor a negative one."""
    for bore in (0.0, -0.1):
        with pytest.raises(InputError, match="outlet.bore"):
            required_submergence(1.0, bore)
