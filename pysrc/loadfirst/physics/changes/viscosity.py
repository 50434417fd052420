"""A centrifugal pump with a liquid more viscous than the water it was tested with.

Friction in the channels takes head and flow, friction of the impeller's discs
takes power. One parameter says how much, a Reynolds number in disguise:

    B = 16.5 √ν H^0.0625 / (Q^0.375 n^0.25)        ν [cSt], H [m], Q [m³/h], n [1/min]

with head (per stage) and flow at best efficiency on water. Then, from the water
curve Q, H, η,

    CQ = 2.71^(-0.165 (log10 B)^3.15)              the exponent is on log10 B alone
    CH = 1 - (1 - CQ) (Q / Q_best)^0.75            CQ at best efficiency, 1 at no flow
    Cη = B^(-0.0547 B^0.69)
    CNPSH = 1 + A (1 / CQ - 1) 274 000 NPSH_best / (Q_best^0.667 n^1.33)

    q = CQ Q,   H(q) = CH H,   η(q) = Cη η,   so P(q) = CQ CH / Cη P(Q);

none below B = 1. A is 0.1 for an axial inlet and 0.5 where the passages bend the
flow into the impeller from the side.

Speed and viscosity. With the affinity laws B goes with 1 / √n: a slower pump
suffers more. So the corrected curve holds at the speed for which it was
corrected only. Give the speed at which the pump will run: the answer is then the
curve at the test's speed that the affinity laws move to the right one there.

Water itself. Very small or slow pumps have B above 1 with water already, though
their water curves are measured. Each factor is therefore taken relative to that
of the test's water (1 cSt): water changes nothing, and wherever B is below 1
with water, as with nearly all pumps in the range of the method, nothing differs
from the method.

Outside. Above B = 40 and above 4000 cSt the factors of the limit are held, not
continued, and the notes say so. The other limits change nothing but are noted.
The head's factor is held from 1.5 times the best-efficiency flow on (the method
is stated to 1.2). The method also asks for what no number here can tell: a
Newtonian liquid, a radial impeller, the head of one stage, ample NPSH.

Sources
-------
ANSI/HI 9.6.7 (2004, 2010, the same method) and ISO/TR 17766:2005; equations read
in public reproductions, from memory otherwise. Validity limits read in secondary
sources. The factor relative to water is ours.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes.outside import Limit, Outside, between, passed
from loadfirst.physics.law import Array
from loadfirst.units import HOUR, RPM

CENTISTOKE = 1e-6  # [m²/s]
WATER = 1.0  # [cSt] of the test
FURTHEST = 1.5  # [-] of the best-efficiency flow: from here on the head's factor is held
END_SUCTION, SIDE_INLET = 0.1, 0.5  # [-] A of the NPSH correction

LIMITS = {
    "viscosity": Limit(0.0, 4000.0, "cSt", held=True),  # below 1 cSt nothing is corrected
    "parameter": Limit(0.0, 40.0, "-", held=True),
    "specific-speed": Limit(0.0, 60.0, "-"),
    "flow": Limit(3.0, 260.0, "m³/h"),  # at best efficiency, of the tests behind the method
    "head": Limit(6.0, 130.0, "m"),  # per stage, at best efficiency, likewise
}


@dataclass(frozen=True, slots=True)
class Factors:
    """What viscosity does to one pump at one speed.

    Attributes
    ----------
    parameter : float
        B as it is, not held. [-]
    flow, efficiency, npsh : float
        CQ, Cη and CNPSH. [-]
    head_best, head_best_water : float
        CH at best efficiency with the liquid and with the test's water. [-]
    notes : tuple of Outside
        The limits passed.
    """

    parameter: float
    flow: float
    efficiency: float
    npsh: float
    head_best: float
    head_best_water: float
    notes: tuple[Outside, ...]

    def head(self, part: Array) -> Array:
        """CH at parts of the best-efficiency flow on water, 0 or more; 1 at none, never rising. [-]"""
        return head_factor(self.head_best, part) / head_factor(self.head_best_water, part)


def parameter(viscosity: float, flow: float, head: float, speed: float) -> float:
    """The parameter B of a pump and its liquid.

    Parameters
    ----------
    viscosity : float
        Kinematic, 0 or more. [m²/s]
    flow, head : float
        At best efficiency on water, above 0; the head of one stage. [m³/s] [m]
    speed : float
        Above 0. [rad/s]
    """
    nu, n = viscosity / CENTISTOKE, speed / RPM
    return float(16.5 * math.sqrt(nu) * head**0.0625 / ((flow * HOUR) ** 0.375 * n**0.25))


def flow_factor(b: float) -> float:
    """CQ, and CH at best efficiency: 1 up to B = 1, held from B = 40 on. [-]"""
    b = LIMITS["parameter"].hold(b)
    return float(2.71 ** (-0.165 * math.log10(b) ** 3.15)) if b > 1 else 1.0


def efficiency_factor(b: float) -> float:
    """Cη: 1 up to B = 1, held from B = 40 on. [-]"""
    b = LIMITS["parameter"].hold(b)
    return float(b ** (-0.0547 * b**0.69)) if b > 1 else 1.0


def head_factor(best: float, part: Array) -> Array:
    """CH at parts of the best-efficiency flow on water.

    Parameters
    ----------
    best : float
        CH at best efficiency, equal to CQ. [-]
    part : ndarray
        Flow over best-efficiency flow, 0 or more. [-]
    """
    return np.asarray(1 - (1 - best) * np.minimum(part, FURTHEST) ** 0.75)


def npsh_factor(best: float, npsh: float, flow: float, speed: float, inlet: float = END_SUCTION) -> float:
    """CNPSH: by how much the required NPSH grows.

    Parameters
    ----------
    best : float
        CH at best efficiency. [-]
    npsh, flow, speed : float
        Required NPSH and flow at best efficiency on water, speed. [m] [m³/s] [rad/s]
    inlet : float
        `END_SUCTION` or `SIDE_INLET`. [-]
    """
    shape = npsh / ((flow * HOUR) ** 0.667 * (speed / RPM) ** 1.33)
    return float(1 + inlet * (1 / best - 1) * 274_000 * shape)


def factors(
    curve: PumpCurve, viscosity: float, speed: float | None = None, inlet: float = END_SUCTION
) -> Factors:
    """What a liquid's viscosity does to a pump, and how far that may be trusted.

    Parameters
    ----------
    curve : PumpCurve
        On water, one stage.
    viscosity : float
        Kinematic, of the liquid, 0 to 1. [m²/s]
    speed : float
        At which the pump will run; that of the test when left out. [rad/s]
    inlet : float
        `END_SUCTION` or `SIDE_INLET`. [-]

    Raises
    ------
    InputError
        Where viscosity or speed is outside its range.
    """
    between("liquid.viscosity", viscosity, 0.0, 1.0)
    between("drive.speed", speed := curve.speed if speed is None else speed, 1e-6 * curve.speed, math.inf)
    x = speed / curve.speed
    flow, head = x * curve.best_efficiency_flow, x**2 * curve.best_efficiency_head
    npsh = x**2 * float(curve.at([curve.best_efficiency_flow])[2][0])
    nu = viscosity / CENTISTOKE
    used = max(LIMITS["viscosity"].hold(nu), WATER) * CENTISTOKE
    b, water = (parameter(v, flow, head, speed) for v in (used, WATER * CENTISTOKE))
    best, best_water = flow_factor(b), flow_factor(water)
    true = parameter(viscosity, flow, head, speed)
    got = {
        "viscosity": nu, "parameter": true, "specific-speed": curve.specific_speed,
        "flow": flow * HOUR, "head": head,
    }  # fmt: skip
    return Factors(
        parameter=true,
        flow=best / best_water,
        efficiency=efficiency_factor(b) / efficiency_factor(water),
        npsh=npsh_factor(best, npsh, flow, speed, inlet) / npsh_factor(best_water, npsh, flow, speed, inlet),
        head_best=best,
        head_best_water=best_water,
        notes=passed("viscosity", LIMITS, got) if nu > WATER and (true > 1 or nu > used / CENTISTOKE) else (),
    )


def thicken(curve: PumpCurve, by: Factors) -> PumpCurve:
    """The pump with the viscous liquid, at the density of the test.

    Parameters
    ----------
    curve : PumpCurve
        On water.
    by : Factors
        From `factors` of the same pump.
    """
    head = by.head(curve.flow / curve.best_efficiency_flow)
    return replace(
        curve,
        flow=by.flow * curve.flow,
        head=head * curve.head,
        power=by.flow * head / by.efficiency * curve.power,
        npsh_required=by.npsh * curve.npsh_required,
    )
