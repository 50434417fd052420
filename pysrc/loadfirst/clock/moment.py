"""A plant at one moment: all that the clock must know of the past. It travels in the message."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from msgspec import Meta

from loadfirst.plant.meta import Part

Finite = Annotated[float, Meta(ge=-1e15, le=1e15)]
Share = Annotated[float, Meta(ge=0, le=1)]
Pair = tuple[Finite, Finite]
Regime = Literal["standing", "turning", "running"]


class Stock(Part, frozen=True):
    """A vessel's liquid.

    Attributes
    ----------
    volume : an account, see `clock.account`. [m³]
    surface_m, bottom_m, area_m2 : of the plant as it was then. Where a key has been changed
        since, a hand has moved the surface or the walls.
    """

    volume: Pair
    surface_m: Finite
    bottom_m: Finite
    area_m2: Annotated[float, Meta(gt=0, le=1e9)]


class Shaft(Part, frozen=True):
    """A pump's shaft.

    Attributes
    ----------
    regime : "standing": its motor is off, and the liquid may turn it; "turning": it runs up or
        down, by its inertia; "running": it follows its motor.
    speed : [rad/s]
    frequency : that reaches its motor, or did when it was last on. [Hz]
    heat : of its overload relay, over that at which it trips. [-]
    tripped : it stays off until it is reset.
    """

    regime: Regime
    speed: Finite
    frequency: Annotated[float, Meta(ge=0, le=1000)]
    heat: Annotated[float, Meta(ge=0, le=1e6)] = 0.0
    tripped: bool = False


class Controller(Part, frozen=True):
    """A controller that is or was in automatic.

    Attributes
    ----------
    what : what it measures and moves; with another it begins anew.
    output : where valve or drive stand, of the whole. [-]
    integral : of its deviation; None by hand. [-]
    key : what the key says that a hand would set: once it changes, a hand has.
    """

    what: Annotated[str, Meta(max_length=60)]
    output: Finite
    integral: Finite | None
    key: Finite


class Moment(Part, frozen=True, kw_only=True):
    """A plant at one moment.

    Attributes
    ----------
    time : since the clock was started, an account. [s]
    supply, delivery : the vessels.
    came : into the supply from elsewhere. [m³] This and the next five are accounts.
    drawn : from the delivery.
    overflowed : over a rim.
    elsewhere : what left the plant on another way than into the delivery, less what came in there.
    line : what has gone into a line that is being filled.
    by_hand : what a hand took from the vessels by moving a surface or a wall.
    stem : position of the control valve. [-]
    shafts : of the pumps, in their order.
    flows : in the lines whose liquid has inertia. [m³/s]
    marks : what was open or lifted, by name.
    pointers : where instruments that may follow late stand, by id; see `clock.pointers`.
    through : flows through the pumps, where the curve of one droops: of several states it is the one that
        goes on from there. [m³/s]
    controller : where there is one that acts, or did until a hand took over.
    primed : whether the pumps have liquid; they lost it where the supply has run empty.
    drained : the delivery has run empty and nothing flows back from it.
    """

    time: Pair
    supply: Stock
    delivery: Stock
    came: Pair = (0.0, 0.0)
    drawn: Pair = (0.0, 0.0)
    overflowed: Pair = (0.0, 0.0)
    elsewhere: Pair = (0.0, 0.0)
    line: Pair = (0.0, 0.0)
    by_hand: Pair = (0.0, 0.0)
    stem: Share
    shafts: Annotated[tuple[Shaft, ...], Meta(min_length=1, max_length=2)]
    flows: Annotated[dict[str, Finite], Meta(max_length=12)]
    marks: Annotated[dict[str, bool], Meta(max_length=16)]
    pointers: Annotated[dict[str, Finite], Meta(max_length=8)] = {}
    through: Annotated[tuple[Finite, ...], Meta(max_length=2)] = ()
    controller: Controller | None = None
    primed: bool = True
    drained: bool = False

    @property
    def seconds(self) -> float:
        """Time since the clock was started. [s]"""
        return self.time[0]
