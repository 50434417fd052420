"""The pumps, their motors and their check valves, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from msgspec import UNSET, UnsetType

from loadfirst.plant.meta import Part, choice, quantity, words
from loadfirst.plant.pump_file import Curve, Displacement

Model = Annotated[str, words("Id of a pump: that of its file, without .toml.", 60)] | UnsetType

Wear = Annotated[
    float,
    quantity("%", 0, 50, "Leakage back through worn gaps, over the flow at best efficiency (or the rated)."),
]
Trim = Annotated[
    float, quantity("%", 70, 120, "Diameter of the impeller, over that which the curve stands for.")
]
Blocked = Annotated[
    float, quantity("%", 0, 100, "Share of the impeller's passages that is stopped up; above 90 all are.")
]
Rotation = Annotated[
    Literal["right", "wrong"], choice("wrong: two phases are exchanged, the pump turns backward.")
]


Running = Annotated[bool, choice("false: its motor is off, and liquid may be driven through it either way.")]


History = (
    Annotated[
        float,
        quantity(
            "m³/h", 0, 1e5,
            "Flow through it before, which tells where the curve allows several states; much if left out.",
        ),
    ]
    | None
)  # fmt: skip


class SecondPump(Part, frozen=True):
    """The second of two pumps: its model where it is another, and its own condition."""

    model: Model = UNSET
    motor_kw: (
        Annotated[
            float,
            quantity("kW", 0.01, 20000, "Rated power of its motor; the pump's own if left out."),
        ]
        | None
    ) = None
    wear_percent: Wear = 0.0
    trim_percent: Trim = 100.0
    blocked_percent: Blocked = 0.0
    rotation: Rotation = "right"
    running: Running = True
    history_m3h: History = None


class PumpStation(Part, frozen=True):
    """The machines between suction and discharge: one of `model`, `curve` and `displacement` says which."""

    model: Model = UNSET
    curve: Curve | UnsetType = UNSET
    displacement: Displacement | UnsetType = UNSET
    centre_m: Annotated[float, quantity("m", -30, 200, "Height of the shaft above the floor.")] = 0.5
    arrangement: Annotated[
        Literal["single", "side-by-side", "in-line"],
        choice("One pump, or two side by side or in line, equal unless `pump.second` says otherwise."),
    ] = "single"
    wear_percent: Wear = 0.0
    trim_percent: Trim = 100.0
    blocked_percent: Blocked = 0.0
    rotation: Rotation = "right"
    running: Running = True
    history_m3h: History = None
    second: SecondPump = SecondPump()


class Drive(Part, frozen=True):
    """Induction motors, one per pump, each started, driven and coupled alike."""

    supply_hz: Annotated[
        Literal[50, 60], choice("Frequency of the public supply, which the motors are made for.", "Hz")
    ] = 50
    frequency_hz: (
        Annotated[
            float, quantity("Hz", 5, 75, "Frequency that reaches the motors; the supply's if left out.")
        ]
        | None
    ) = None
    poles: Annotated[Literal[2, 4, 6, 8], choice("Number of poles of the motors.")] = 2
    motor_kw: (
        Annotated[float, quantity("kW", 0.01, 20000, "Rated power of the motor; the pump's own if left out.")]
        | None
    ) = None
    efficiency_class: Annotated[
        Literal["IE1", "IE2", "IE3", "IE4"], choice("Efficiency class of the motors (IEC 60034-30-1).")
    ] = "IE3"
    mains_percent: Annotated[
        float, quantity("%", 80, 120, "Frequency that the supply truly has, over `supply_hz`.")
    ] = 100.0
    voltage_percent: Annotated[
        float, quantity("%", 60, 115, "Voltage of the supply at the motors, over the rated one.")
    ] = 100.0
    phases: Annotated[
        Literal[2, 3], choice("Phases that reach the motors; 2: one is lost, they run on and do not start.")
    ] = 3
    start: Annotated[
        Literal["direct", "ramp"],
        choice("direct: switched straight to the supply. ramp: a variable-speed drive runs the motors up."),
    ] = "direct"
    ramp_s: Annotated[
        float,
        quantity(
            "s",
            0.1,
            300,
            "Time in which a variable-speed drive runs the motors up to the supply's frequency.",
        ),
    ] = 10.0
    belt: Annotated[
        Literal["none", "v-belt", "toothed"], choice("What is between motor and pump; none: a coupling.")
    ] = "none"
    belt_ratio: Annotated[
        float, quantity("-", 0.25, 2.5, "Speed of the pump over that of the motor, before the belt creeps.")
    ] = 1.0
    belt_tension_percent: Annotated[
        float, quantity("%", 10, 150, "Tension of the belt, over the usual one; a slack belt slips.")
    ] = 100.0
    trip_class: Annotated[
        Literal["10A", "10", "20", "30"], choice("Trip class of the overload relays (IEC 60947-4-1).")
    ] = "10"
    relay_percent: Annotated[
        float, quantity("%", 40, 150, "Current that the overload relays are set to, over the motor's rated.")
    ] = 100.0
    current_limit_percent: (
        Annotated[
            float,
            quantity(
                "%", 50, 300, "Of the rated current: above it a variable-speed drive cuts its frequency."
            ),
        ]
        | None
    ) = None
    inertia_kgm2: (
        Annotated[
            float,
            quantity("kg·m²", 1e-6, 1e6, "Moment of inertia at the pump's shaft; by its power if left out."),
        ]
        | None
    ) = None


class Check(Part, frozen=True):
    """The check valve at each pump's discharge: it passes forward and holds backward."""

    fitted: Annotated[bool, choice("Whether there is one.")] = True
    k: Annotated[float, quantity("-", 0, 1000, "Loss coefficient when open, on the discharge bore.")] = 2.0
    stuck_open: Annotated[bool, choice("It no longer closes, and passes backward as it does forward.")] = (
        False
    )
    leak_kv_m3h: Annotated[
        float, quantity("m³/h", 0, 1e5, "Flow coefficient Kv that its seat leaves backward; 0: tight.")
    ] = 0.0
