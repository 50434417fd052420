"""What a section of the plant says of itself: where it stands, how it resists, what it adds to an answer.

The plant is a way from the supply to the far end. Each section takes up the
way at a node, puts its elements there, and says at which node the way goes on;
one that stands aside (a branch, a return line) hands on the node it was given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from loadfirst.physics.liquids import Liquid
    from loadfirst.plant.answer import BlockName, Note, PathPoint
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


class Shape(NamedTuple):
    """What stands where; plants of one shape are solved together. Make it with `layout.shape_of`.

    Attributes
    ----------
    arrangement : of the pumps: "single", "side-by-side" or "in-line".
    machines : law of each pump, see `services.law_of`.
    fitted : names of the sections that not every plant has.
    """

    arrangement: str
    machines: tuple[str, ...]
    fitted: tuple[str, ...]


class Given(NamedTuple):
    """One plant, as its elements see it."""

    plant: Plant
    liquid: Liquid


class Spec(NamedTuple):
    """One element of the network.

    Attributes
    ----------
    name : in the whole program.
    inlet, outlet : nodes; flow counts positive from inlet to outlet.
    law : of those in `laws.LAWS`, or a machine's.
    values : numbers of that law in SI, in the order of its parameters.
    """

    name: str
    inlet: str
    outlet: str
    law: str
    values: Callable[[Given], tuple[float, ...]]


class Fixed(NamedTuple):
    """A node whose energy head is known. [m]"""

    node: str
    head: Callable[[Given], float]


class Stand(NamedTuple):
    """Where a section stands.

    Attributes
    ----------
    specs : its elements.
    on : node where the way goes on.
    fixed : heads that it knows.
    """

    specs: tuple[Spec, ...]
    on: str
    fixed: tuple[Fixed, ...] = ()


class Loss(NamedTuple):
    """A block of the load's stack, found on the way.

    Attributes
    ----------
    head : [m]
    shut : nothing passes there, or it holds against backward flow.
    """

    block: BlockName
    head: float
    shut: bool = False


def _nothing(one: OnePlant) -> Iterable[Loss]:
    return ()


def _nowhere(one: OnePlant, behind: float) -> Iterable[PathPoint]:
    return ()


def _silent(one: OnePlant) -> Iterable[Note]:
    return ()


class Section(NamedTuple):
    """A section of the plant; `elements.WAY` has them all.

    Attributes
    ----------
    name : its own; also that of its main element, where it has one.
    stand : (shape, node where it takes up the way) -> where it stands.
    fitted : whether a plant has it; None when every plant does.
    losses : blocks that it adds to the stack.
    places : (one, metres of pipe behind it) -> places that it adds to the path.
    notes : what a person should know of it.
    """

    name: str
    stand: Callable[[Shape, str], Stand]
    fitted: Callable[[Plant], bool] | None = None
    losses: Callable[[OnePlant], Iterable[Loss]] = _nothing
    places: Callable[[OnePlant, float], Iterable[PathPoint]] = _nowhere
    notes: Callable[[OnePlant], Iterable[Note]] = _silent
