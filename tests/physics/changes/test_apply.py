"""Several changes at once: each alone is itself, all together a pump."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from tests.changed import check_same, check_sound
from tests.pumps import RADIAL, pumps

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes import blocked, gas, rotation, trim, viscosity, wear
from loadfirst.physics.changes.apply import Changes, apply
from loadfirst.units import G


def left_over(size: float) -> rotation.Shares:
    """From the least to the most that a pump keeps which turns the wrong way, 0 to 1."""
    return rotation.Shares(0.4 + 0.2 * size, 0.5 + 0.3 * size, 0.35 + 0.25 * size)


any_changes = st.builds(
    Changes,
    diameter=st.floats(trim.LEAST, trim.MOST),
    blocked=st.floats(0, blocked.MOST) | st.just(1.0),
    wear=st.floats(0, wear.MOST),
    wrong_rotation=st.none()
    | st.floats(0, 1).map(lambda x: rotation.Shares(0.4 + 0.2 * x, 0.5 + 0.3 * x, 0.35 + 0.25 * x)),
    viscosity=st.floats(-7, -1).map(lambda x: 10.0**x),
    gas=st.floats(0, gas.MOST),
)


def test_no_change_is_the_same_pump() -> None:
    """The very same curve, nothing to note."""
    assert apply(RADIAL, Changes()) == (RADIAL, ())


@given(pumps(), any_changes)
def test_all_at_once_leave_a_pump(pump: PumpCurve, changes: Changes) -> None:
    """Whatever has become of it."""
    check_sound(apply(pump, changes)[0], pump)


def test_each_alone_is_what_its_module_says() -> None:
    """Nothing is added on the way."""
    alone = {
        "diameter": (0.9, trim.trim(RADIAL, 0.9)),
        "blocked": (0.3, blocked.block(RADIAL, 0.3)),
        "wear": (0.1, wear.wear(RADIAL, wear.leakage(RADIAL, 0.1))),
        "wrong_rotation": (rotation.USUAL, rotation.turn_wrong(RADIAL)),
        "viscosity": (1e-4, viscosity.thicken(RADIAL, viscosity.factors(RADIAL, 1e-4))),
        "gas": (0.04, gas.entrain(RADIAL, 0.04)),
    }
    for name, (size, expected) in alone.items():
        check_same(apply(RADIAL, Changes(**{name: size}))[0], expected)  # type: ignore[arg-type]
    check_same(apply(RADIAL, Changes(blocked=1.0))[0], blocked.plug(RADIAL))


def test_a_blocked_impeller_does_not_tighten_the_rings() -> None:
    """The leakage at a head is that of the unblocked pump."""
    changed, _ = apply(RADIAL, Changes(blocked=0.4, wear=0.1))
    k = wear.leakage(RADIAL, 0.1)
    check_same(changed, wear.wear(blocked.block(RADIAL, 0.4), k))


def test_notes_of_all_changes_are_collected() -> None:
    """Too much trim, too thick a liquid, too much gas."""
    _, notes = apply(RADIAL, Changes(diameter=0.72, viscosity=1e-2, gas=0.2))
    assert {note.rule for note in notes} == {"trim", "viscosity", "gas"}


def test_wrong_rotation_does_not_tighten_the_rings_either() -> None:
    """The leakage at a head is that of the pump turning the right way."""
    changed, _ = apply(RADIAL, Changes(wrong_rotation=rotation.USUAL, wear=0.1))
    check_same(changed, wear.wear(rotation.turn_wrong(RADIAL), wear.leakage(RADIAL, 0.1)))


DROOPING = replace(RADIAL, head=np.array([36.0, 37.6, 38.2, 37.0, 33.4, 27.4, 19.0]))
"""The head first rises: no pump file may say so yet, but a curve may."""


@given(any_changes)
def test_a_curve_that_droops_keeps_its_droop(changes: Changes) -> None:
    """Flows rise, heads are positive, and the highest head is not that at no flow."""
    mild = replace(changes, wear=min(changes.wear, 0.1), blocked=min(changes.blocked, 0.5))
    pump, _ = apply(DROOPING, mild)
    assert (np.diff(pump.flow) > 0).all() and (pump.head > 0).all()
    assert (pump.power >= pump.density * G * pump.flow * pump.head).all()
    if changes.viscosity < 1e-5:
        assert pump.head.argmax() > 0
