"""The relief valve at the pumps' discharge, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from loadfirst.plant.meta import Part, choice, quantity


class Relief(Part, frozen=True):
    """A spring-loaded valve from the pumps' discharge to the supply: no displacement pump without one."""

    fitted: Annotated[bool, choice("Whether there is one.")] = False
    set_bar: (
        Annotated[
            float,
            quantity("bar", 0.05, 1000, "Pressure across it at which it lifts; suits the pumps if left out."),
        ]
        | None
    ) = None
    accumulation_percent: Annotated[
        float, quantity("%", 1, 100, "Rise of pressure from lifting to fully open.")
    ] = 10.0
    capacity_m3h: (
        Annotated[
            float, quantity("m³/h", 0.05, 3e5, "Flow that it passes fully open; the pumps' own if left out.")
        ]
        | None
    ) = None
    state: Annotated[
        Literal["sound", "blocked", "passing"],
        choice("blocked: it never opens (gagged, seized). passing: its seat leaks below the set pressure."),
    ] = "sound"
    passing_percent: Annotated[
        float,
        quantity("%", 0.1, 90, "Share of its capacity that a passing seat lets by at the set pressure."),
    ] = 10.0
