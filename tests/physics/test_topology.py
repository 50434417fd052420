"""The shape of a network: what is merged, what stays, and that it is prepared once."""

from __future__ import annotations

import numpy as np
import pytest
from tests.rig import rig

from loadfirst.physics.topology import Element, topology
from loadfirst.plant.layout import layout, shape_of

SINGLE = shape_of(rig())
COUNTS = (("pipes", 2), ("pumps", 2), ("checks", 3), ("valves", 1))


@pytest.mark.parametrize(
    ("arrangement", "branches", "junctions"),
    [("single", 1, ()), ("in-line", 1, ()), ("side-by-side", 4, ("discharge", "suction"))],
)
def test_only_real_junctions_stay_in_the_equations(
    arrangement: str, branches: int, junctions: tuple[str, ...]
) -> None:
    """A plant in one line has one unknown flow and no unknown head."""
    plant = rig(pump={"arrangement": arrangement})
    shape = topology(layout(shape_of(plant)).elements, (), ("supply", "delivery"), COUNTS)
    assert shape.chain.shape[1] == branches
    assert shape.junctions == junctions


def test_a_shape_is_prepared_once() -> None:
    """The same elements give the same object: a live solve pays nothing for it."""
    once = topology(layout(SINGLE).elements, (), ("supply", "delivery"), COUNTS)
    assert topology(layout(SINGLE).elements, (), ("supply", "delivery"), COUNTS) is once


def test_a_node_with_a_demand_stays_a_junction() -> None:
    """Two elements meet there, but not with the same flow."""
    line = layout(SINGLE).elements
    shape = topology(line, ("discharge",), ("supply", "delivery"), COUNTS)
    assert shape.junctions == ("discharge",)
    assert shape.chain.shape[1] == 2
    assert not shape.tree


def test_heads_inside_a_branch_follow_from_its_inlet_whatever_the_sense_of_its_elements() -> None:
    """Drops add up along the way, with the sign of the element's own sense."""
    line = (
        Element("a", "supply", "one", "pipes", 0),
        Element("b", "two", "one", "pipes", 1),
        Element("c", "two", "delivery", "pumps", 0),
    )
    shape = topology(line, (), ("supply", "delivery"), COUNTS)
    drops = np.zeros(len(shape.chain))
    drops[[shape.position["a"], shape.position["b"]]] = 3.0, -2.0
    heads = np.array([10.0, 0.0]) @ shape.start_fixed - drops @ shape.along
    assert dict(zip(shape.interior, heads.tolist(), strict=True)) == {"one": 7.0, "two": 5.0}


def test_a_node_that_joins_no_fixed_head_is_named() -> None:
    """Its head could be anything."""
    line = (Element("a", "here", "there", "pipes", 0),)
    with pytest.raises(ValueError, match="here, there"):
        topology(line, (), ("supply",), COUNTS)
