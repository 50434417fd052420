"""A displacement pump as its maker rates it: gear, lobe or screw.

A maker prints one point: displacement per turn, and at a speed, a pressure and
a liquid the volumetric and the mechanical (or overall) efficiency. Two laws
carry that point to other pressures, speeds and liquids.

Slip s, the flow that goes back through the clearances: each is a narrow gap of
height h and length l that the liquid enters, rubs through and leaves, so with
its speed v the pressure difference Δp over `gaps` of them in a row is

    Δp = gaps (12 μ v l/h² + (1/2 + 1) ρ v²/2)   =   a μ s + b ρ s².

The first term is friction in laminar flow, the second what entering and
leaving cost. The maker's point fixes their sum; how it divides follows from a
gap that is usual in the kind. On oil nearly all of it is friction, and slip
goes with pressure over viscosity; on water the second counts, and slip goes
more nearly with the root of the pressure.

Torque T, with D the displacement per radian:

    T = D Δp + f D |Δp| + C_d D μ ω + T_c,

the liquid's own, dry friction under pressure, drag of the liquid in the
clearances, and bearings and seals. The maker's mechanical efficiency fixes
their sum; how it divides is usual in the kind.

Sources
-------
Torque, and slip by friction alone: W. E. Wilson, "Positive-Displacement Pumps
and Fluid Motors" (1950): slip C_s D Δp/μ, torque as above (from memory; the
same four terms quoted in later texts on fluid power).
Friction in a gap: flow between parallel plates, any textbook; slip by the
square law beside it: W. M. J. Schlösser (1961; from memory). Losses 1/2 on
entering and 1 on leaving: as at a sharp-edged pipe.
The numbers in `KINDS`: our choice, to the size usual in the trade.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from loadfirst.errors import InputError
from loadfirst.physics.law import column
from loadfirst.physics.ranges import require

IN_AND_OUT = 1.5  # [-] velocity heads lost on entering and leaving a gap
HALVINGS = 60  # of a range, to the last digit
MOST_DRAG = 0.7  # [-] of the lost torque at the maker's point, whatever the liquid


@dataclass(frozen=True, slots=True)
class Kind:
    """What is usual in a kind of pump.

    Attributes
    ----------
    gap : float
        Height squared over length of a clearance. [m]
    gaps : int
        How many of them in a row hold the pressure.
    drag : float
        Wilson's C_d, torque of drag over D μ ω. [-]
    bearings : float
        Part of the lost torque, less drag, that does not depend on the pressure. [-]
    """

    gap: float
    gaps: int
    drag: float
    bearings: float


KINDS = {
    "gear": Kind(gap=2e-6, gaps=4, drag=1e4, bearings=0.2),  # 55 µm over 1.5 mm, tooth by tooth
    "lobe": Kind(gap=5e-6, gaps=2, drag=5e3, bearings=0.5),  # 0.15 mm over 5 mm; timing gears outside
    "screw": Kind(gap=1e-6, gaps=5, drag=2e4, bearings=0.2),  # 70 µm over 5 mm, chamber by chamber
}


@dataclass(frozen=True, slots=True, kw_only=True)
class DisplacementPump:
    """One pump and the point its maker prints.

    Attributes
    ----------
    kind : str
        "gear", "lobe" or "screw".
    displacement : float
        Volume per turn, above 0. [m³]
    speed, pressure : float
        Of the maker's point; the pressure is the difference between outlet
        and inlet. Above 0. [rad/s] [Pa]
    viscosity, density : float
        Of the liquid there; viscosity is *dynamic*. Above 0. [Pa·s] [kg/m³]
    volumetric_efficiency : float
        Flow over displacement times speed there, above 0 and below 1. [-]
    mechanical_efficiency : float
        Torque that the liquid needs over torque at the shaft, above 0, to 1. [-]
        An overall efficiency is the product of the two.
    npsh_required : float
        There, not negative. [m]
    pressure_limit : float
        The most that the maker allows, at least `pressure`; that when left out. [Pa]
    per_radian : float
        Displacement per radian, D. [m³]
    laminar, inertia : float
        a and b of the slip. [1/m³] [1/m⁴]
    friction, drag, bearings : float
        f, C_d D and T_c of the torque. [-] [m³] [N·m]

    Raises
    ------
    InputError
        When made with a value outside the ranges above.
    """

    kind: str
    displacement: float
    speed: float
    pressure: float
    viscosity: float
    density: float
    volumetric_efficiency: float
    mechanical_efficiency: float
    npsh_required: float
    pressure_limit: float = 0.0
    per_radian: float = field(init=False)
    laminar: float = field(init=False)
    inertia: float = field(init=False)
    friction: float = field(init=False)
    drag: float = field(init=False)
    bearings: float = field(init=False)

    def __post_init__(self) -> None:
        _check(self)
        kind = KINDS[self.kind]
        per_radian = self.displacement / (2 * math.pi)
        slip = (1 - self.volumetric_efficiency) * per_radian * self.speed
        rubbed = laminar_share(kind, self.pressure, self.viscosity, self.density)
        lost = 1 / self.mechanical_efficiency - 1  # torque, of D Δp
        drag = min(kind.drag, MOST_DRAG * lost * self.pressure / (self.viscosity * self.speed))
        dry = lost - drag * self.viscosity * self.speed / self.pressure
        for name, value in (
            ("pressure_limit", self.pressure_limit or self.pressure),
            ("per_radian", per_radian),
            ("laminar", rubbed * self.pressure / (self.viscosity * slip)),
            ("inertia", (1 - rubbed) * self.pressure / (self.density * slip**2)),
            ("friction", (1 - kind.bearings) * dry),
            ("drag", drag * per_radian),
            ("bearings", kind.bearings * dry * per_radian * self.pressure),
        ):
            object.__setattr__(self, name, value)

    @property
    def rated_flow(self) -> float:
        """Flow of the maker's point. [m³/s]"""
        return self.volumetric_efficiency * self.per_radian * self.speed

    @property
    def rated_power(self) -> float:
        """Shaft power of the maker's point, to choose a motor by. [W]"""
        return self.per_radian * self.pressure * self.speed / self.mechanical_efficiency


def worn_clearance(pump: DisplacementPump, wear: float) -> float:
    """Height of the gaps of a worn pump over that when new.

    Parameters
    ----------
    pump : DisplacementPump
        As new.
    wear : float
        Slip that is added at the maker's point, over the flow there, 0 or more. [-]

    Returns
    -------
    clearance : float
        1 or more. [-] A gap c times as high passes c³ times as much by
        friction and c² times by speed, so c is the root of
        Δp c³ = b ρ s² c + a μ s with the greater slip s.
    """
    back = pump.per_radian * pump.speed - pump.rated_flow
    s = back + wear * pump.rated_flow
    rubbed, fast = pump.laminar * pump.viscosity * s, pump.inertia * pump.density * s**2
    low, high = 1.0, s / back
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if pump.pressure * middle**3 < fast * middle + rubbed else (low, middle)
    return low if wear > 0 else 1.0


def laminar_share(kind: Kind, pressure: float, viscosity: float, density: float) -> float:
    """Part of the pressure over the clearances that friction takes, from 0 to 1. [Pa], [Pa·s], [kg/m³] -> [-]

    The speed in one gap is the positive root of 12 μ v/gap + 1.5 ρ v²/2 = Δp/gaps.
    """
    over = pressure / kind.gaps
    half = 6 * viscosity / kind.gap
    return 2 * half / (half + math.sqrt(half**2 + IN_AND_OUT / 2 * density * over))


def _check(pump: DisplacementPump) -> None:
    """Refuse what no maker could print."""
    if pump.kind not in KINDS:
        allowed = "one of " + ", ".join(KINDS)
        raise InputError("pump.kind", pump.kind, allowed, rule="choice", choices=list(KINDS))
    for name in ("displacement", "speed", "pressure", "viscosity", "density"):
        value = column(getattr(pump, name))
        require(f"pump.{name}", value, value > 0, "above 0")
    part, least = column(pump.volumetric_efficiency), column(pump.mechanical_efficiency)
    require("pump.volumetric_efficiency", part, (part > 0) & (part < 1), "above 0 and below 1")
    require("pump.mechanical_efficiency", least, (least > 0) & (least <= 1), "above 0, to 1")
    npsh, limit = column(pump.npsh_required), column(pump.pressure_limit)
    require("pump.npsh_required", npsh, npsh >= 0, "0 m or more")
    fine = (limit >= pump.pressure) | (limit == 0)
    require("pump.pressure_limit", limit, fine, "the rated pressure or more")
