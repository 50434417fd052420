"""Every law there is, found by walking the package: none falls as the flow rises, the motor's slip included.

The solver relies on it. A law that may fall has to be declared here, with what
handles it instead; a law that is neither tried nor declared fails the test.
"""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests import displacement
from tests.physics import test_passive_laws, test_relief
from tests.pumps import RADIAL, machine, motors, pumps

from loadfirst import physics
from loadfirst.physics.backward import Backward
from loadfirst.physics.check import CheckValves
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.law import Array, Law, column
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.physics.standing import StandingPumps
from loadfirst.physics.starved import DryDisplacement, SoleMachines, StarvedMachines
from loadfirst.physics.suction import Suction
from loadfirst.plant.laws import LAWS

MAY_FALL: dict[str, str] = {}
"""Laws whose drop may fall as the flow rises, by class, and what finds all their states."""

MEMBERS = ("count", "head_drop", "corners", "shut", "rows")
"""What makes a class a law; see `law.Law`."""


def sized(make: Callable[[Array], Law]) -> st.SearchStrategy[Law]:
    """A law of one element of any size."""
    return st.floats(0, 1).map(lambda size: make(column(size)))


@st.composite
def machines(draw: st.DrawFn) -> Machines:
    """Any maker's points on any motor."""
    return machine(draw(pumps()), draw(motors()), draw(st.sampled_from([300.0, 998.2, 3000.0])))


@st.composite
def displacing(draw: st.DrawFn) -> DisplacementMachines:
    """Any displacement pump in any service."""
    return draw(displacement.services()).of(draw(displacement.pumps()))


@st.composite
def starved(draw: st.DrawFn) -> StarvedMachines:
    """Any pump in any place."""
    return StarvedMachines.of(draw(machines()), column(draw(st.floats(-20, 60))))


@st.composite
def sole(draw: st.DrawFn) -> SoleMachines:
    """Any pump alone at its suction line, which takes any share of the NPSH at the last point."""
    own = draw(machines())
    line = CheckValves(draw(st.floats(1e-3, 50)) / own.last_flow**2, False)
    return SoleMachines.sole(own, Suction(column(draw(st.floats(-5, 30))), line, column(0.1)))


@st.composite
def dry(draw: st.DrawFn) -> DryDisplacement:
    """Any displacement pump, with liquid in front of it or none."""
    return DryDisplacement.of(draw(displacing()), np.array([[draw(st.booleans())]]))


@st.composite
def backward(draw: st.DrawFn) -> Backward:
    """Any pump that pumps backward, filled or not."""
    return Backward(draw(machines() | displacing()), column(draw(st.sampled_from([0.0, 0.3, 1.0]))))


@st.composite
def standing(draw: st.DrawFn) -> StandingPumps:
    """Any pump whose motor is off."""
    straight, forward, back = (
        draw(st.sampled_from([0.0, 1.0])) * 10 ** draw(st.floats(0, 10)) for _ in "123"
    )
    numbers = straight, forward, back, 2e4, 7e4, 50.0, 0.02, 0.01
    return StandingPumps(Motor.rated(7500.0), *map(column, numbers))


@st.composite
def leaky(draw: st.DrawFn) -> CheckValves:
    """Any check valve, also one whose seat passes."""
    leak = draw(st.sampled_from([0.0, 1e-6, 1.0, 1e5]))
    return CheckValves(draw(st.floats(0, 1e8)), draw(st.booleans()), leak)


ANY: dict[str, st.SearchStrategy[Law]] = {
    "Machines": machines(),
    "DisplacementMachines": displacing(),
    "StarvedMachines": starved(),
    "SoleMachines": sole(),
    "DryDisplacement": dry(),
    "Backward": backward(),
    "StandingPumps": standing(),
    "CheckValves": leaky(),
    "ReliefValves": test_relief.valves(),
    "Pipes": sized(test_passive_laws.pipes),
    "Valves": sized(test_passive_laws.valves),
    "Filters": sized(test_passive_laws.filters),
    "Siphons": sized(test_passive_laws.siphons),
    "Summits": sized(test_passive_laws.summits),
    "RigidColumns": sized(test_passive_laws.columns),
    "Vessels": sized(test_passive_laws.vessels),
}
"""By its class: any law of one element."""


def laws() -> dict[str, type]:
    """Every class of the package that is a law, by its name."""
    modules = [
        importlib.import_module(found.name)
        for found in pkgutil.walk_packages(physics.__path__, f"{physics.__name__}.")
    ]
    classes = {
        name: kind
        for module in modules
        for name, kind in inspect.getmembers(module, inspect.isclass)
        if kind.__module__ == module.__name__ and kind is not Law
    }
    return {name: kind for name, kind in classes.items() if all(hasattr(kind, each) for each in MEMBERS)}


@pytest.mark.native  # the browser imports from memory: there is no folder to walk
def test_every_law_is_tried_or_declared() -> None:
    """None is missing, none is left over, and none is both."""
    assert laws().keys() == ANY.keys() | MAY_FALL.keys()
    assert ANY.keys() & MAY_FALL.keys() == set()


def test_every_law_that_a_plant_may_obey_is_among_them() -> None:
    """What stands in the registry of the plant's elements makes one of these classes."""
    for name, kind in LAWS.items():
        some = kind.make(*(column(_some(parameter)) for parameter in kind.parameters))
        assert type(some).__name__ in ANY, name


def _some(parameter: str) -> float:
    return {"density": 1000.0, "set_pressure": 1e5, "viscosity": 1e-6, "roughness": 1e-5}.get(parameter, 0.1)


def flows(law: Law) -> Array:
    """From far below no flow to far above, every order of size, and both sides of every corner. (F, 1)"""
    usual = float(getattr(law, "last_flow", column(0.1)).max())
    sizes = np.geomspace(1e-9, 1e4, 400) * usual
    fine = np.linspace(-3, 4, 701) * usual
    corners = law.corners()
    edges = np.array([]) if corners is None else corners[np.isfinite(corners)]
    beside = np.concatenate([edges, edges * (1 - 1e-9), edges * (1 + 1e-9)])
    return np.unique(np.concatenate([-sizes, [0.0], sizes, fine, beside]))[:, None]


@pytest.mark.parametrize("name", ANY)
@given(st.data())
def test_no_law_falls_as_the_flow_rises(name: str, data: st.DataObject) -> None:
    """Drop and slope finite, the slope never negative, the drop never less: over the whole range of flows.

    But for round-off of the heads that it is a difference of.
    """
    law = data.draw(ANY[name])
    flow = flows(law)
    drop, slope = (values[:, 0] for values in law.head_drop(flow))
    assert np.isfinite(drop).all() and np.isfinite(slope).all()
    assert (slope >= 0).all()
    size = np.maximum(np.abs(drop[1:]), np.abs(drop[:-1]))
    assert (np.diff(drop) >= -1e-11 * size).all()


def test_the_slip_of_a_motor_is_inside() -> None:
    """A pump on a motor that slips has less head than on one that holds its speed, and a falling one."""
    weak, strong = Motor.rated(2000.0), Motor.rated(2000.0, slip=0.0)
    flow = np.linspace(0, RADIAL.last_flow, 50)[:, None]
    slipping, steady = (-machine(RADIAL, motor).head_drop(flow)[0][:, 0] for motor in (weak, strong))
    assert (slipping[1:] < steady[1:]).all() and (np.diff(slipping) < 0).all()
