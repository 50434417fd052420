"""An independent checker of a plant's answer: it shares no code with the package's physics.

From a plant as it stands in its file, and the flows and heads that were found,
it recomputes what every element loses and what every node receives. Plain
numbers, one plant at a time; the friction factor by fixed point, the pump's
points through scipy's cubics, the motor's speed by a root finder. The rules
themselves (continuations, slip of a motor of a size) are the documented ones.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache
from itertools import pairwise
from math import copysign, pi, sqrt
from typing import NamedTuple

from scipy.interpolate import CubicHermiteSpline, PchipInterpolator
from scipy.optimize import brentq
from tests.checker_changes import Fate, Points, become, best
from tests.checker_drive import Turned, turned
from tests.checker_laws import (
    STEEP,
    Fluid,
    G,
    Law,
    Piece,
    check_valve_law,
    pipe_law,
    relief_law,
    velocity_head,
)
from tests.checker_load import air, choking, fixed_heads, line_pieces, open_outlet
from tests.checker_npsh import NONE, Has, Pump, in_place, required_npsh

from loadfirst.plant.plant import Curve, Displacement
from loadfirst.plant.pumps import ResolvedPlant


class Off(NamedTuple):
    """How far an answer is off: in the element and at the node where it is worst. [m] [m³/s]"""

    head: float
    element: str
    flow: float
    node: str


def check(
    one: ResolvedPlant,
    fluid: Fluid,
    flow: Mapping[str, float],
    head: Mapping[str, float],
    slack: float = 0.0,
) -> Off:
    """Recompute every drop and every balance.

    Parameters
    ----------
    one : the plant with its pump's points.
    fluid : what is pumped.
    flow : through each element. [m³/s]
    head : energy head of each node. [m]
    slack : how exact a flow can be: a needle's velocity head multiplies it. [m³/s]
    """
    machines = [machine(one, number, fluid) for number in range(len(one.pumps))]
    pieces, fixed = plant_pieces(one, fluid, machines), fixed_heads(one.plant, fluid)
    whole = dict(pieces)
    beside = one.plant.pump.arrangement == "side-by-side"
    droops = any(pump.droops for pump in machines)  # of two side by side want of NPSH is then not counted
    held = set() if droops and beside else place_pumps(one, fluid, pieces, machines, flow, head)
    if "valve" in pieces:
        pieces["valve"] = choking(one.plant, fluid, pieces["valve"], *_around(pieces["valve"], head))
    for name in backward(one):
        fast, around = max(abs(flow[name]), abs(flow["suction-line"])), _around(pieces[name], head)
        pieces[name] = boiling(one, fluid, whole[name], (fast, slack), *around)
        if name in held:
            pieces[name] = at_least(pieces[name], around[0] - around[1])
    assert set(flow) == set(pieces), "the elements are those of the plant"
    worst_head, element = max(
        (abs(head[piece.inlet] - head[piece.outlet] - piece.loss(flow[name])), name)
        for name, piece in pieces.items()
    )
    for node, known in fixed.items():
        assert abs(head[node] - known) < 1e-9 * (1 + abs(known)), node
    sums = dict.fromkeys(head.keys() - fixed.keys(), 0.0)
    for name, piece in pieces.items():
        for node, sign in ((piece.inlet, -1), (piece.outlet, 1)):
            if node in sums:
                sums[node] += sign * flow[name]
    worst_flow, node = max((abs(total), node) for node, total in sums.items())
    return Off(worst_head, element, worst_flow, node)


def place_pumps(
    one: ResolvedPlant,
    fluid: Fluid,
    pieces: dict[str, Piece],
    machines: Sequence[Pump],
    flow: Mapping[str, float],
    head: Mapping[str, float],
) -> set[str]:
    """Put every pump in its place, with the NPSH that the heads leave it; names those where it boils."""
    held = set()
    plant, at = one.plant, flow["suction-line"]
    above_vapour = (air(plant) - fluid.vapour) / (fluid.density * G) - plant.pump.centre_m
    for number, pump in enumerate(machines, start=1):
        piece = pieces[f"pump-{number}"]
        available = head[piece.inlet] + above_vapour
        if number == 2 and plant.pump.arrangement == "in-line" and abs(at) < NONE:
            available = min(available, head[pieces["check-1"].inlet] + above_vapour)  # not what is locked in
        spare = available - velocity_head(at, plant.suction.bore_mm)
        has = Has(available, spare, head["supply"] + above_vapour, at)
        gap = head[piece.inlet] - head[piece.outlet]
        pieces[f"pump-{number}"] = piece._replace(loss=in_place(pump, has, gap))
        if has.boils:
            held.add(f"pump-{number}")
    return held


def at_least(piece: Piece, gap: float) -> Piece:
    """The element where it may lose more than its law says, and loses `gap`. [m]"""
    return piece._replace(loss=lambda flow: max(piece.loss(flow), gap))


def _around(piece: Piece, head: Mapping[str, float]) -> tuple[float, float]:
    """Heads before and behind. [m]"""
    return head[piece.inlet], head[piece.outlet]


def backward(one: ResolvedPlant) -> list[str]:
    """The pumps that turn the wrong way, run, and have no impeller or a propeller: they pump backward."""
    station = one.plant.pump
    turned = zip(one.pumps, (station, station.second), "12", strict=False)
    return [
        f"pump-{number}"
        for pump, has, number in turned
        if has.running and has.rotation == "wrong" and (not isinstance(pump, Curve) or propeller(pump))
    ]


def propeller(curve: Curve) -> bool:
    """A specific speed above 160, in 1/min, m³/s and m."""
    at = best(made(curve))
    return curve.speed_rpm * sqrt(at.flow) / at.head**0.75 > 160


def boiling(
    one: ResolvedPlant, fluid: Fluid, pump: Piece, fast: tuple[float, float], before: float, behind: float
) -> Piece:
    """A pump that pumps backward: all of its head, or as much as brings its inlet, behind it, to boil.

    `fast` is the flow whose speed counts there, and how exact it is.
    """
    plant, (flow_there, slack) = one.plant, fast
    at_rest = plant.pump.centre_m + (fluid.vapour - air(plant)) / (fluid.density * G)

    def loss(flow: float) -> float:
        full = pump.loss(flow)
        low, high = (
            at_rest + velocity_head(max(flow_there + side * slack, 0.0), plant.discharge.bore_mm)
            for side in (-1, 1)
        )
        boils = min(max(behind, low), high)
        return min(full, max(before - boils, 0.0)) if full > 0 else full

    return pump._replace(loss=loss)


def plant_pieces(
    one: ResolvedPlant, fluid: Fluid, machines: Sequence[Pump] | None = None
) -> dict[str, Piece]:
    """Every element of the plant by name; its pumps, from `machine`, with plenty of NPSH."""
    plant = one.plant
    machines = machines or [machine(one, number, fluid) for number in range(len(one.pumps))]
    pumps = [each.loss for each in machines]
    suction = pipe_law(
        plant.suction.length_m,
        plant.suction.bore_mm,
        plant.suction.roughness_mm,
        plant.suction.fittings_k + plant.suction.strainer_k,
        fluid,
    )
    pieces = {"suction-line": Piece("supply", "suction", suction)}
    check = check_valve_law(plant)
    match plant.pump.arrangement:
        case "single":
            pieces["pump-1"] = Piece("suction", "discharge", pumps[0])
        case "side-by-side":
            for i, pump in zip("12", pumps, strict=True):
                pieces[f"pump-{i}"] = Piece("suction", f"pump-{i}-out", pump)
                pieces[f"check-{i}"] = Piece(f"pump-{i}-out", "discharge", check)
        case "in-line":
            pieces["pump-1"] = Piece("suction", "pump-1-out", pumps[0])
            pieces["check-1"] = Piece("pump-1-out", "between", check)
            pieces["pump-2"] = Piece("between", "pump-2-out", pumps[1])
            pieces["check-2"] = Piece("pump-2-out", "discharge", check)
    if plant.relief.fitted:
        pieces["relief"] = Piece("discharge", "supply", relief_law(plant, fluid))
    return pieces | (line_pieces(plant, fluid, check) if plant.discharge.attached else open_outlet(plant))


def turn_round(law: Law) -> Law:
    """The same machine with inlet and outlet interchanged."""
    return lambda flow: -law(-flow)


def machine(one: ResolvedPlant, number: int, fluid: Fluid) -> Pump:
    """One of the pumps, counted from 0, on its motor."""
    drive, pump = one.plant.drive, one.pumps[number]
    first = one.curve.motor_kw if drive.motor_kw is None else drive.motor_kw
    own = one.plant.pump.second.motor_kw or (first if one.second is None else one.second.motor_kw)
    gear = 1.0 if isinstance(pump, Curve) else pump.gear_ratio
    motor = turned(drive, first if number == 0 else own, gear)
    has, gas = (one.plant.pump, one.plant.pump.second)[number], one.plant.suction.gas_percent / 100
    back = f"pump-{number + 1}" in backward(one)
    if back:
        gas = 0.0  # what comes from behind has none
    if not has.running:
        return Pump(standing_law(pump, fluid, has.wear_percent / 100))
    if isinstance(pump, Curve):
        fate = Fate(
            diameter=has.trim_percent / 100,
            wrong=has.rotation == "wrong",
            blocked=has.blocked_percent / 100,
            wear=has.wear_percent / 100,
            viscosity=0.0 if one.plant.liquid.name == "water" else fluid.viscosity / fluid.density,
            speed=motor.field,
            gas=gas,
        )
        runs = moved(pump, motor, fluid.density, fate, back)
        if back:
            return Pump(turn_round(pump_law(runs)), backward=True)
        droops = any(after > before for before, after in pairwise(runs.h))
        return Pump(pump_law(runs), required_npsh(runs.q, runs.n, runs.s), droops=droops)
    law = displacement_law(pump, motor, fluid, has.wear_percent / 100, gas)
    return Pump(turn_round(law) if back else law, backward=back)


def standing_law(pump: Curve | Displacement, fluid: Fluid, wear: float) -> Law:
    """A stopped pump: a windmill, backward a turbine, neither with a load; or gaps alone. [m³/s] -> [m]"""
    if isinstance(pump, Curve):
        top = best(made(pump))
        return lambda q: (0.4 if q > 0 else 2.3) * top.head * q * abs(q) / top.flow**2
    slip, weight = _clearances(pump, fluid, wear), fluid.density * G

    def loss(q: float) -> float:
        high = 1.0
        while slip(high * weight) < abs(q):
            high *= 2
        return copysign(float(brentq(lambda h: slip(h * weight) - abs(q), 0.0, high, rtol=1e-14)), q)

    return loss


def made(curve: Curve) -> Points:
    """The maker's points in SI."""
    flow = [q / 3600 for q in curve.flow_m3h]
    test, powers = curve.speed_rpm * pi / 30, shaft_powers(curve)
    return Points(test, curve.density_kgm3, flow, list(curve.head_m), powers, list(curve.npshr_m))


class Moved(NamedTuple):
    """A pump's points as its motor turns it: flow, head and its slopes, required NPSH and its slopes."""

    q: list[float]
    h: list[float]
    m: list[float]
    n: list[float]
    s: list[float]


@lru_cache(maxsize=32)
def moved(curve: Curve, motor: Turned, density: float, fate: Fate, level: bool) -> Moved:
    """A pump on its motor, point by point; `level`: nowhere rising."""
    test, _, flow, head, powers, npsh = become(made(curve), fate)
    head = [min(head[: k + 1]) for k in range(len(head))] if level else head
    torque = [power / test for power in powers]
    heavier = density / curve.density_kgm3
    lost = [motor.droop * heavier * t / test for t in torque]
    slipping = [
        sqrt(motor.grip / (heavier * t)) for t in torque
    ]  # the speed at which the belt's grip is enough
    free = [speed_ratio(motor.field / test, c) for c in lost]
    slips = [x < y for x, y in zip(slipping, free, strict=True)]
    ratio = [min(x, y) for x, y in zip(slipping, free, strict=True)]
    _hold(ratio, flow, head)
    head_slope, npsh_slope = (PchipInterpolator(flow, y).derivative()(flow) for y in (head, npsh))
    torque_slope = PchipInterpolator(flow, torque).derivative()(flow)
    lost_slope = [motor.droop * heavier / test * s for s in torque_slope]
    q, h, m, n, s = [], [], [], [], []
    for k, x in enumerate(ratio):
        turn = -lost_slope[k] * x**2 / (1 + 2 * lost[k] * x)
        if slips[k]:
            turn = -x * torque_slope[k] / (2 * torque[k])
        stretch = max(x + flow[k] * turn, 0.1 * x)
        q.append(x * flow[k])
        h.append(x**2 * head[k])
        m.append((x**2 * head_slope[k] + 2 * x * turn * head[k]) / stretch)
        n.append(x**2 * npsh[k])
        s.append((x**2 * npsh_slope[k] + 2 * x * turn * npsh[k]) / stretch)
    return Moved(q, h, _monotone(q, h, m), n, _monotone(q, n, s))


def pump_law(pump: Moved) -> Law:
    """Minus the head of a pump on its motor, with plenty of NPSH. [m³/s] -> [m]"""
    q, h, m, _, _ = pump
    inside, bend = CubicHermiteSpline(q, h, m), max(h) / q[-1] ** 2
    m = [min(m[0], 0.0), *m[1:-1], min(m[-1], 0.0)]  # outside the points nothing rises

    def loss(at: float) -> float:
        if at < 0:
            return -(h[0] + m[0] * at + bend * at**2)
        if at > q[-1]:
            return -(h[-1] + m[-1] * (at - q[-1]) - bend * (at - q[-1]) ** 2)
        return -float(inside(at))

    return loss


GAPS = {"gear": (2e-6, 4, 1e4, 0.2), "lobe": (5e-6, 2, 5e3, 0.5), "screw": (1e-6, 5, 2e4, 0.2)}
"""Of each kind: height squared over length of a gap [m], how many, drag, share of the bearings [-]."""


@lru_cache(maxsize=32)
def displacement_law(pump: Displacement, motor: Turned, fluid: Fluid, wear: float, gas: float) -> Law:
    """Minus the head of a displacement pump on its motor, by root finders. [m³/s] -> [m]"""
    motor = motor._replace(most=min(motor.most, motor.grip))
    turns = _torque_line(motor)
    at_rest = float(brentq(turns, 0.0, 2 * motor.most + motor.field / motor.droop))
    slip, torque = _clearances(pump, fluid, wear), _torques(pump, fluid, at_rest)
    swept, weight = pump.displacement_cm3 * 1e-6 / (2 * pi), fluid.density * G

    def speed(head: float) -> float:
        """Where the motor holds the torque of that head."""
        far = 1e3 * turns(0.0) + 1e6 * abs(turns(torque(head * weight, 0.0)))
        return float(brentq(lambda w: w - turns(torque(head * weight, w)), -far, far, xtol=1e-13, rtol=1e-15))

    def flow(head: float) -> float:
        return (1 - gas) * swept * speed(head) - slip(head * weight)

    def loss(at: float) -> float:
        high = 1.0
        while flow(high) > at:
            high *= 2
        low = -1.0
        while flow(low) < at:
            low *= 2
        return -float(brentq(lambda h: flow(h) - at, low, high, xtol=1e-13, rtol=1e-14))

    return loss


def _clearances(pump: Displacement, fluid: Fluid, wear: float) -> Law:
    """Flow back through the gaps over the pressure: dp = a mu s + b rho s². [Pa] -> [m³/s]

    Worn gaps are c times as high, so that a goes with 1/c³ and b with 1/c².
    """
    gap, gaps, _, _ = GAPS[pump.kind]
    rated, thick, dense = pump.pressure_bar * 1e5, pump.viscosity_mpas / 1e3, pump.density_kgm3
    moved = pump.displacement_cm3 * 1e-6 * pump.speed_rpm / 60
    back = (1 - pump.volumetric_percent / 100) * moved
    v = float(brentq(lambda v: 12 * thick * v / gap + 0.75 * dense * v**2 - rated / gaps, 0, 1e6, xtol=1e-15))
    rubbed = 12 * thick * v / gap * gaps / rated
    more = 1 + wear * pump.volumetric_percent / 100 * moved / back
    c = brentq(lambda c: c**3 - (1 - rubbed) * more**2 * c - rubbed * more, 0.5, more + 1, xtol=1e-15)
    weight = fluid.density * G
    a = min(rubbed * rated / (thick * back * c**3) * fluid.viscosity / weight, STEEP) * weight
    b = (1 - rubbed) * rated / (dense * back**2 * c**2) * fluid.density

    def slip(pressure: float) -> float:
        size = abs(pressure)
        return copysign(2 * size / (a + sqrt(a**2 + 4 * b * size)), pressure)

    return slip


def _torques(pump: Displacement, fluid: Fluid, most: float) -> Callable[[float, float], float]:
    """Torque at a pressure and a speed: the liquid's with dry friction, drag, bearings.

    The bearings take no more than `most`, what the motor has at standstill. [Pa], [rad/s] -> [N·m]
    """
    _, _, drag, bearings = GAPS[pump.kind]
    each, rated = pump.displacement_cm3 * 1e-6 / (2 * pi), pump.pressure_bar * 1e5
    lost = 100 / pump.mechanical_percent - 1
    stir = pump.viscosity_mpas / 1e3 * pump.speed_rpm * pi / 30 / rated
    drag = min(drag, 0.7 * lost / stir)
    dry = lost - drag * stir
    push = 1 + (1 - bearings) * dry

    def torque(pressure: float, speed: float) -> float:
        own = each * pressure * (push if pressure > 0 else 1 / push)
        return own + drag * each * fluid.viscosity * speed + min(bearings * dry * each * rated, most)

    return torque


def _torque_line(motor: Turned) -> Law:
    """Speed over torque: straight to what motor and belt hold, then a fiftieth more to standstill."""
    steep = motor.droop + motor.usual / (0.02 * motor.most)

    def speed(torque: float) -> float:
        size = min(abs(torque), motor.most)
        return motor.field - copysign(motor.droop * size + steep * (abs(torque) - size), torque)

    return speed


def shaft_powers(curve: Curve) -> list[float]:
    """Powers at the points, at the test's speed and density; at no flow along the next two. [W]"""
    if curve.power_kw is not None:
        return [kw * 1000 for kw in curve.power_kw]
    assert curve.efficiency_percent is not None
    points = list(zip(curve.flow_m3h, curve.head_m, curve.efficiency_percent, strict=True))[1:]
    powers = [curve.density_kgm3 * G * q / 3600 * h / (e / 100) for q, h, e in points]
    (q1, _, _), (q2, _, _) = points[:2]
    at_rest = powers[0] - (powers[1] - powers[0]) / (q2 - q1) * q1
    return [min(max(at_rest, powers[0] / 4), powers[0] * 4), *powers]


def speed_ratio(no_load: float, lost: float) -> float:
    """Speed over the test's, where the motor's line x = no_load - lost x² is met."""
    return float(brentq(lambda x: x - no_load + lost * x**2, 0.0, no_load, xtol=1e-16, rtol=1e-15))


def _hold(ratio: list[float], flow: list[float], head: list[float]) -> None:
    """Where slip alone would make flow fall back or head rise, it stops at the edge; a droop it leaves."""
    pairs = range(1, len(ratio))
    if all(
        ratio[k] * flow[k] - ratio[k - 1] * flow[k - 1] >= 0.1 * ratio[k - 1] * (flow[k] - flow[k - 1])
        and (head[k] > head[k - 1] or ratio[k] ** 2 * head[k] <= ratio[k - 1] ** 2 * head[k - 1])
        for k in pairs
    ):
        return
    for k in pairs:
        before = ratio[k - 1]
        least = before * (flow[k - 1] + 0.1 * (flow[k] - flow[k - 1])) / flow[k]
        most = before * sqrt(head[k - 1] / head[k]) * (1 - 1e-9)
        ratio[k] = max(ratio[k], least) if head[k] > head[k - 1] else min(max(ratio[k], least), most)


def _monotone(q: list[float], h: list[float], m: list[float]) -> list[float]:
    """Slopes at most three times the flatter secant beside them, of its sign; none at a turn."""
    secant = [(h[k + 1] - h[k]) / (q[k + 1] - q[k]) for k in range(len(q) - 1)]
    pairs = zip([secant[0], *secant], [*secant, secant[-1]], m, strict=True)
    held = []
    for left, right, slope in pairs:
        sign = copysign(1.0, left) if left * right > 0 else 0.0
        held.append(sign * min(max(sign * slope, 0.0), 3 * min(abs(left), abs(right))))
    return held
