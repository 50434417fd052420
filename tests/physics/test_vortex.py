"""Submergence against vortices."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.vortex import required_submergence, vortex_flow

bores = st.floats(0.01, 2.0)


@given(bores, st.floats(0.0, 1.0), st.floats(0.0, 0.5))
def test_more_flow_never_needs_less_liquid(bore: float, flow: float, more: float) -> None:
    """At least one bore of it."""
    assert bore <= required_submergence(flow, bore) <= required_submergence(flow + more, bore)


@given(bores, st.floats(1e-6, 1.0))
def test_flow_and_submergence_are_each_others_inverse(bore: float, flow: float) -> None:
    """The flow at which a level begins to draw air."""
    assert float(vortex_flow(required_submergence(flow, bore), bore)) == pytest.approx(flow, rel=1e-6)


def test_an_outlet_that_lies_bare_takes_no_flow_without_air() -> None:
    """Neither with less than one bore of liquid above it; running back it draws none."""
    assert vortex_flow([-0.5, 0.0, 0.09], 0.1).tolist() == [0.0, 0.0, 0.0]
    assert float(required_submergence(-1.0, 0.1)) == 0.1


def test_no_bore_is_refused() -> None:
    """Nor a negative one."""
    for rule in (required_submergence, vortex_flow):
        with pytest.raises(InputError, match="outlet.bore"):
            rule(1.0, 0.0)
