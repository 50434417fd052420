"""The true state of a plant, as data: plain numbers in SI, ready to be written as JSON.

True values only: what a dial makes of them is the business of `instruments`.
Flows are positive in the pumping direction; one below 1e-5 of the plant's
usual flow is leakage through a shut element's steep line and stands as 0.
"""

from __future__ import annotations

from typing import Literal

from msgspec import UNSET, Struct, UnsetType

from loadfirst.plant.drive_answer import Belt, Relay, Start
from loadfirst.plant.found import Status
from loadfirst.plant.pump_kind import PumpKind

Why = Literal["stalled", "not-a-number"]
BlockName = Literal[
    "lift",
    "vessel-pressure",
    "suction-line",
    "check-valve",
    "pipe",
    "fittings",
    "acceleration",
    "valve",
    "filter",
    "summit",
    "jet",
    "not-reached",
]


class Station(Struct, frozen=True):
    """The pumps as one machine. Heads are energy heads. [m³/s] [m]

    Attributes
    ----------
    flow : through all of them
    head : what the pumps add; check valves belong to the load, also those between and behind two pumps
    suction_head, discharge_head : at the two gauges; None where they are undefined
    """

    flow: float
    head: float
    suction_head: float | None
    discharge_head: float | None


class Machine(Struct, frozen=True):
    """One running pump with its motor.

    Attributes
    ----------
    kind : the shape of its impeller, or what displaces the liquid
    flow, best_efficiency_flow : [m³/s], the latter at the speed it runs (rated, if it displaces)
    head, npsh_required : [m]
    npsh_available : [m]; None where the pressure at its inlet is undefined
    speed : of the pump's shaft [rad/s]
    torque : [N·m]
    shaft_power, motor_input : [W]
    efficiency : of the pump [-]
    current : [A]
    load : the motor's shaft power over its rated one [-]
    rated_power, rated_current : of the motor [W] [A]
    motor_speed : of the motor's own shaft; belt and gearbox make the pump's another [rad/s]
    relay, start : of the motor; these and its speed are not said of one that is off
    belt : between motor and pump, where there is one
    standing : its motor is off; only then is it said. The liquid may turn it: `speed`, negative backward
    backward : it turns the wrong way and takes in at its discharge flange; only then is it said. Its flow,
        head and pressure are then negative, and NPSH is that at its discharge flange
    pressure : outlet less inlet [Pa]; this and all below of a displacement pump only
    pressure_limit : most that its casing may bear [Pa]
    volumetric_efficiency : flow over what is displaced [-]
    mechanical_efficiency : torque that the liquid needs over that at the shaft [-]
    stalled : the load asks more than the motor's breakdown torque
    """

    name: str
    kind: PumpKind
    flow: float
    head: float
    speed: float
    torque: float
    shaft_power: float
    efficiency: float
    npsh_required: float
    npsh_available: float | None
    motor_input: float
    current: float
    load: float
    best_efficiency_flow: float
    rated_power: float
    rated_current: float
    motor_speed: float | UnsetType = UNSET
    relay: Relay | UnsetType = UNSET
    start: Start | UnsetType = UNSET
    belt: Belt | UnsetType = UNSET
    standing: bool | UnsetType = UNSET
    backward: bool | UnsetType = UNSET
    pressure: float | UnsetType = UNSET
    pressure_limit: float | UnsetType = UNSET
    volumetric_efficiency: float | UnsetType = UNSET
    mechanical_efficiency: float | UnsetType = UNSET
    stalled: bool | UnsetType = UNSET


class Node(Struct, frozen=True):
    """A place where a gauge may be tapped.

    Attributes
    ----------
    head : energy head [m]; None where it is undefined
    pressure : static gauge pressure at `height` [Pa]; None likewise
    height : above the floor [m]
    """

    head: float | None
    pressure: float | None
    height: float


class PathPoint(Struct, frozen=True):
    """A place along the way of the liquid; `distance` is the length of pipe behind it. [m]

    Head, pressure and height as in `Node`.
    """

    place: str
    distance: float
    height: float
    head: float | None
    pressure: float | None


class Balance(Struct, frozen=True):
    """The station's head as two gauges would give it: the first four add up to `answer`. [m]

    Attributes
    ----------
    pressure_head : from gauge to gauge; None where a pressure is undefined, or no liquid reaches the pumps
    height, velocity_head : of the discharge's tapping above that of the suction
    check_valve : lost in check valves between the two gauges, as two pumps have them; negative
        where they hold; None like `pressure_head`
    answer : the pumps' own head

    Sources
    -------
    ISO 9906, total head: H = Δp/(ρg) + Δz + Δ(v²)/2g.
    """

    pressure_head: float | None
    height: float
    velocity_head: float
    check_valve: float | None
    answer: float


class Block(Struct, frozen=True):
    """One part of what the load asks for; may be negative.

    Attributes
    ----------
    head : [m]; None where several shut elements share what is left, nobody knows how
    """

    block: BlockName
    head: float | None


class Note(Struct, frozen=True):
    """Something a person should know about this state.

    Attributes
    ----------
    kind : which of the notes
    where : a pump, a node or a place along the path
    facts : the numbers behind it, SI
    rule : which limit of which rule, where it is about one: "viscosity.parameter"; or why: "little-load"
    """

    kind: Literal[
        "beyond-curve",
        "below-vapour-pressure",
        "reverse-flow",
        "dead-headed",
        "overload",
        "npsh-short",
        "bubbles",
        "npsh-not-counted",
        "suction-boils",
        "suction-dry",
        "vortex",
        "pressure-undefined",
        "more-than-one-state",
        "held-level",
        "line-off",
        "not-supplied",
        "backflow",
        "burst",
        "line-filling",
        "not-primed",
        "siphon-broken",
        "choked",
        "not-reached",
        "stalled",
        "pressure-limit",
        "relief-lifted",
        "no-relief",
        "outside-rule",
        "standing",
        "turning-backward",
        "held-shut",
        "other-speed",
        "pumps-backward",
        "relief-behind",
        "nothing-comes",
        "runs-dry",
        "trips",
        "belt-slips",
        "start-hangs",
        "low-voltage",
        "phase-lost",
        "control-lost",
        "control-hunts",
        "current-limited",
        "current-over-limit",
    ]
    where: str
    facts: dict[str, float]
    rule: str | UnsetType = UNSET


class Control(Struct, frozen=True):
    """A controller, whether it moves anything now or not.

    Attributes
    ----------
    of, on : what it measures and what it moves, as `tables.control` has them
    automatic : it has set the output; else the output is what valve or drive stand at
    output : over its full output [-]
    reading, set_point : of what it measures [m³/s], [Pa] as the gauge shows it, or height [m]; no
        reading where there is nothing to measure
    status : how it fares in automatic; None by hand
    """

    of: str
    on: str
    automatic: bool
    output: float
    reading: float | None
    set_point: float
    status: Status | None


class LiquidState(Struct, frozen=True):
    """Density [kg/m³], dynamic viscosity [Pa·s], absolute vapour pressure [Pa]."""

    density: float
    viscosity: float
    vapour_pressure: float


class Duty(Struct, frozen=True):
    """Where the load's curve and the station's meet. [m³/s] [m]"""

    flow: float
    head: float


class Possible(Struct, frozen=True):
    """One of several states that a plant may be in; see `plant.drooping`.

    Attributes
    ----------
    flow, head : through the station, and its own head. [m³/s] [m]
    flows : through each pump. [m³/s]
    lasts : whether it is stable; where not, any disturbance leads to another.
    there : whether it is the one that the rest of the answer is about.
    """

    flow: float
    head: float
    flows: tuple[float, ...]
    lasts: bool
    there: bool


class State(Struct, frozen=True):
    """Everything that is true of one plant at rest.

    Attributes
    ----------
    converged, why : whether the network is balanced, or what went wrong; the
        numbers are finite all the same, and then mean nothing.
    flow : what reaches the delivery vessel. [m³/s]
    hunting : the readings swing about what they show: a pump loses head by cavitation, or draws air.
    aside : what goes through lines that stand aside: "branch-line" and the like. [m³/s]
    machines : in the order of the plant's layout.
    nodes : "suction", "discharge" and, with the line on, "after-valve".
    path : along the liquid's way.
    stack : what the load asks for; adds up to the station's head where every block is known.
    synchronous_speed : of the motors. [rad/s]
    flow_scale : the usual flow, below 1e-5 of which nothing is shown. [m³/s]
    control : the controller, where one is fitted.
    moved : keys that the plant has set by itself, and to what, in file units; only where there are any.
    possible : all states, in the order of their flow, where there is more than one.
    """

    converged: bool
    why: Why | None
    flow: float
    station: Station
    machines: tuple[Machine, ...]
    nodes: dict[str, Node]
    path: tuple[PathPoint, ...]
    balance: Balance
    liquid: LiquidState
    synchronous_speed: float
    flow_scale: float
    stack: tuple[Block, ...]
    duty: Duty
    notes: tuple[Note, ...]
    hunting: bool
    aside: dict[str, float]
    control: Control | UnsetType = UNSET
    moved: dict[str, float] | UnsetType = UNSET
    possible: tuple[Possible, ...] | UnsetType = UNSET
