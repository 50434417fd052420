"""An independent checker of a plant's answer: it shares no code with the package's physics.

From a plant as it stands in its file, and the flows and heads that were found,
it recomputes what every element loses and what every node receives. Plain
numbers, one plant at a time; the friction factor by fixed point, the pump's
points through scipy's cubics, the motor's speed by a root finder. The rules
themselves (continuations, slip of a motor of a size) are the documented ones.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from math import copysign, exp, log, log10, pi, sqrt
from typing import NamedTuple

from scipy.interpolate import CubicHermiteSpline, PchipInterpolator
from scipy.optimize import brentq
from tests.checker_changes import Fate, Points, become

from loadfirst.plant.plant import Curve, Displacement, Plant
from loadfirst.plant.pumps import ResolvedPlant

G = 9.80665
STEEP = 1e10  # [m/(m³/s)] anything shut
Law = Callable[[float], float]


class Piece(NamedTuple):
    """An element between two nodes, with what it loses at a flow."""

    inlet: str
    outlet: str
    loss: Law


class Fluid(NamedTuple):
    """Density [kg/m³], dynamic viscosity [Pa·s], vapour pressure [Pa]; water's are checked elsewhere."""

    density: float
    viscosity: float
    vapour: float


class Off(NamedTuple):
    """How far an answer is off: in the element and at the node where it is worst. [m] [m³/s]"""

    head: float
    element: str
    flow: float
    node: str


def check(one: ResolvedPlant, fluid: Fluid, flow: Mapping[str, float], head: Mapping[str, float]) -> Off:
    """Recompute every drop and every balance.

    Parameters
    ----------
    one : the plant with its pump's points.
    fluid : what is pumped.
    flow : through each element. [m³/s]
    head : energy head of each node. [m]
    """
    pieces, fixed = plant_pieces(one, fluid), fixed_heads(one.plant, fluid)
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


def fixed_heads(plant: Plant, fluid: Fluid) -> dict[str, float]:
    """Heads of supply and delivery (or of the open outlet). [m]"""
    weight = fluid.density * G
    heads = {"supply": plant.supply.surface_m + plant.supply.gas_bar * 1e5 / weight}
    if not plant.discharge.attached:
        return heads | {"open": plant.pump.centre_m}
    far = plant.delivery.surface_m
    if plant.delivery.outlet_m is not None:
        far = max(far, plant.delivery.outlet_m)
    heads["delivery"] = far + plant.delivery.gas_bar * 1e5 / weight
    if plant.discharge.filled < 1:
        heads["delivery"] = _front(plant)
    if plant.branch.fitted:
        heads["branch-delivery"] = plant.branch.end_m + plant.branch.gas_bar * 1e5 / weight
    if plant.burst.fitted:
        heads["burst-air"] = plant.pump.centre_m
    return heads


def _front(plant: Plant) -> float:
    """Height of the liquid's front in a line that is being filled; over a summit it falls. [m]"""
    filled, start, outlet = plant.discharge.filled, plant.pump.centre_m, plant.delivery.outlet_m
    if plant.summit.fitted:
        return start + (plant.summit.height_m - start) * min(filled / plant.summit.at, 1.0)
    return start + (plant.delivery.bottom_m if outlet is None else outlet) * filled - start * filled


def plant_pieces(one: ResolvedPlant, fluid: Fluid) -> dict[str, Piece]:
    """Every element of the plant by name."""
    plant = one.plant
    pumps = [machine_law(one, number, fluid) for number in range(len(one.pumps))]
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
    return pieces | (_line(plant, fluid, check) if plant.discharge.attached else _open_outlet(plant))


def _line(plant: Plant, fluid: Fluid, check: Law) -> dict[str, Piece]:
    alone = plant.pump.arrangement == "single"
    header = "after-check" if alone else "discharge"
    pieces = {"check-1": Piece("discharge", header, check)} if alone else {}
    if plant.branch.fitted:
        pieces |= _branch(plant, fluid, header)
    if plant.burst.fitted:
        jet = check_law(1 / 0.61**2, plant.burst.hole_mm, ends_that_hold(plant, fluid)["burst-air"])
        pieces["burst"] = Piece(header, "burst-air", jet)
    if plant.return_line.fitted:
        back = plant.return_line
        pipe = pipe_law(back.length_m, back.bore_mm, back.roughness_mm, back.fittings_k, fluid)
        pieces["return-valve"] = Piece(
            "discharge", "after-return-valve", kv_law(back.kv_open_m3h * back.opening)
        )
        pieces["return-line"] = Piece("after-return-valve", "supply", pipe)
    start = "after-valve"
    if plant.filter.fitted:
        start = "after-filter"
        pieces["filter"] = Piece("after-valve", start, filter_law(plant, fluid))
    if plant.second_line.fitted:
        other = plant.second_line
        pipe = pipe_law(other.length_m, other.bore_mm, other.roughness_mm, other.fittings_k, fluid)
        pieces["second-line"] = Piece(start, "pipe-end", pipe)
    held = ends_that_hold(plant, fluid)["delivery"]
    return (
        pieces | {"valve": Piece(header, "after-valve", valve_law(plant))} | _way(plant, fluid, start, held)
    )


def _way(plant: Plant, fluid: Fluid, start: str, held: bool) -> dict[str, Piece]:
    """The discharge line, whole, or up to its summit and on, or as far as it is full."""
    line, at = plant.discharge, plant.summit.at

    def pipe(share: float, k: float) -> Law:
        return pipe_law(line.length_m * share, line.bore_mm, line.roughness_mm, k, fluid)

    if line.filled < 1:
        share = min(line.filled, at) if plant.summit.fitted else line.filled
        front = check_law(1.0, line.bore_mm, held)
        return {
            "discharge-line": Piece(start, "pipe-end", pipe(share, share * line.fittings_k)),
            "end": Piece("pipe-end", "delivery", front),
        }
    if not plant.summit.fitted:
        return {
            "discharge-line": Piece(start, "pipe-end", pipe(1.0, line.fittings_k)),
            "end": Piece("pipe-end", "delivery", check_law(0.0, line.bore_mm, held)),
        }
    last = min(1.0, line.fittings_k)
    spread = line.fittings_k - last
    above = rise(plant, fluid)
    over = summit_law(pipe(1 - at, last + (1 - at) * spread), above, line.bore_mm, held)
    return {
        "discharge-line": Piece(start, "summit", pipe(at, at * spread)),
        "summit": Piece("summit", "pipe-end", over),
        "end": Piece("pipe-end", "delivery", check_law(0.0, line.bore_mm, held and above <= 0)),
    }


def rise(plant: Plant, fluid: Fluid) -> float:
    """How far the summit stands above the far end, less what a primed one may pull. [m]"""
    pull = (air(plant) - fluid.vapour) / (fluid.density * G) if plant.summit.primed else 0.0
    return plant.summit.height_m - pull - fixed_heads(plant, fluid)["delivery"]


def air(plant: Plant) -> float:
    """Absolute pressure of the air. [Pa] ISO 2533: 288.15 K at the sea, 6.5 K less per kilometre."""
    if plant.site.barometer_bar is not None:
        return plant.site.barometer_bar * 1e5
    height = plant.site.altitude_m or 0.0
    return float(101325 * (1 - 0.0065 * height / 288.15) ** (9.80665 / (287.05287 * 0.0065)))


def summit_law(full: Law, above: float, bore_mm: float, held: bool) -> Law:
    """The pipe beyond, or what it takes to get over: whichever asks for more; nothing comes back."""

    def loss(flow: float) -> float:
        if flow >= 0:
            return max(full(flow), above + velocity_head(flow, bore_mm))
        if above <= 0:
            return full(flow)
        return above + (STEEP * flow if held else full(flow))

    return loss


def velocity_head(flow: float, bore_mm: float) -> float:
    """v²/2g. [m]"""
    return (flow / (pi / 4 * (bore_mm / 1000) ** 2)) ** 2 / (2 * G)


def filter_law(plant: Plant, fluid: Fluid) -> Law:
    """The clean drop of water at 20 °C, as much more as it is fouled and the liquid thicker; and a square."""
    own = plant.filter
    per_flow = own.clean_drop_bar * 1e5 * 3600 / own.clean_flow_m3h * fluid.viscosity / 1.0016e-3
    line = per_flow * (1 + own.fouling) / (fluid.density * G)
    square = own.housing_k * velocity_head(1.0, plant.discharge.bore_mm)
    return lambda flow: line * flow + square * flow * abs(flow)


def _branch(plant: Plant, fluid: Fluid, header: str) -> dict[str, Piece]:
    line = plant.branch
    pipe = pipe_law(line.length_m, line.bore_mm, line.roughness_mm, line.fittings_k, fluid)
    held = ends_that_hold(plant, fluid)["branch-delivery"]
    return {
        "branch-valve": Piece(header, "after-branch-valve", kv_law(line.kv_open_m3h * line.opening)),
        "branch-line": Piece("after-branch-valve", "branch-pipe-end", pipe),
        "branch-end": Piece("branch-pipe-end", "branch-delivery", check_law(0.0, line.bore_mm, held)),
    }


def ends_that_hold(plant: Plant, fluid: Fluid) -> dict[str, bool]:
    """Ends above the surface let nothing back.

    But behind a tight check valve the line cannot run empty: the lowest of the
    ends that are open, and every end behind a shut valve, hands the column on.
    """
    heads = fixed_heads(plant, fluid)
    outlet = plant.delivery.outlet_m
    above = {"delivery": outlet is not None and outlet > plant.delivery.surface_m}
    if plant.discharge.filled < 1:
        above["delivery"] = True
    elif plant.summit.fitted and rise(plant, fluid) > 0:
        above["delivery"] = True
        heads["delivery"] += rise(plant, fluid)
    open_ = {"delivery": plant.valve.opening > 0}
    if plant.branch.fitted:
        above["branch-delivery"], open_["branch-delivery"] = plant.branch.pours, plant.branch.opening > 0
    if plant.burst.fitted:
        above["burst-air"] = open_["burst-air"] = True
    lowest = min((heads[end] for end in above if open_[end]), default=heads["delivery"])
    if not holds_full(plant, lowest - heads["supply"], fluid.density * G):
        return above
    return {end: above[end] and open_[end] and heads[end] > lowest for end in above}


def _open_outlet(plant: Plant) -> dict[str, Piece]:
    return {"end": Piece("discharge", "open", check_law(1.0, plant.discharge.bore_mm, True))}


def holds_full(plant: Plant, column: float, weight: float) -> bool:
    """Whether nothing lets a line that stands `column` [m] above the supply run empty."""
    check, back, relief = plant.check, plant.return_line, plant.relief
    if not check.fitted or check.stuck_open or check.leak_kv_m3h > 0:
        return False
    if plant.pump.arrangement == "single" or relief.state == "blocked" or not relief.fitted:
        return plant.pump.arrangement == "single" or not (back.fitted and back.opening > 0)
    assert relief.set_bar is not None
    returns = back.fitted and back.opening > 0
    return not returns and relief.state == "sound" and column * weight <= relief.set_bar * 1e5


def pipe_law(length: float, bore_mm: float, roughness_mm: float, k: float, fluid: Fluid) -> Law:
    """Darcy–Weisbach and fittings: (f L/D + K) v²/2g. [m³/s] -> [m]"""
    bore, kinematic = bore_mm / 1000, fluid.viscosity / fluid.density

    def loss(flow: float) -> float:
        if flow == 0:
            return 0.0
        speed = abs(flow) / (pi / 4 * bore**2)
        factor = friction_factor(speed * bore / kinematic, roughness_mm / bore_mm)
        return copysign((factor * length / bore + k) * speed**2 / (2 * G), flow)

    return loss


def friction_factor(reynolds: float, roughness: float) -> float:
    """64/Re below 2000, Colebrook above 4000, a cubic of logarithm over logarithm between."""
    if reynolds <= 2000:
        return 64 / reynolds
    if reynolds >= 4000:
        return _colebrook(reynolds, roughness)
    end = _colebrook(4000, roughness)
    bridge = CubicHermiteSpline(
        [log(2000), log(4000)], [log(64 / 2000), log(end)], [-1.0, _colebrook_exponent(end, roughness)]
    )
    return exp(float(bridge(log(reynolds))))


def _colebrook(reynolds: float, roughness: float) -> float:
    x = 8.0  # 1/√f
    for _ in range(60):
        x = -2 * log10(roughness / 3.7 + 2.51 * x / reynolds)
    return x**-2


def _colebrook_exponent(factor: float, roughness: float) -> float:
    """d ln f / d ln Re at Re 4000, by implicit differentiation of Colebrook's equation."""
    x = 1 / sqrt(factor)
    rough, smooth = roughness / 3.7, 2.51 * x / 4000
    gain = 2 / log(10) * smooth / (rough + smooth)
    return -2 * gain / (x + gain)


def valve_law(plant: Plant) -> Law:
    """IEC 60534: Kv m³/h pass at 1 bar, in water of 999.1 kg/m³; at opening 0 nothing."""
    valve = plant.valve
    share = {
        "equal-percentage": valve.rangeability ** (valve.opening - 1),
        "linear": 1 / valve.rangeability + (1 - 1 / valve.rangeability) * valve.opening,
        "quick-opening": sqrt(valve.opening),
    }[valve.characteristic]
    return kv_law(valve.kv_open_m3h * share if valve.opening > 0 else 0.0)


def kv_law(kv: float) -> Law:
    """Head lost at a flow coefficient. [m³/h]"""
    scale = 1e5 * 3600**2 / (999.1 * G)
    if kv <= 10 * sqrt(scale) / STEEP:  # passes at 100 m no more than a shut one
        return lambda flow: STEEP * flow
    return lambda flow: scale / kv**2 * abs(flow) * flow


def check_valve_law(plant: Plant) -> Law:
    """Fitted, stuck open, or with a seat that lets so much by."""
    check, bore = plant.check, plant.discharge.bore_mm
    k = check.k if check.fitted else 0.0
    if not check.fitted or check.stuck_open:
        return lambda flow: k * copysign(velocity_head(flow, bore), flow)
    seat = kv_law(check.leak_kv_m3h)
    return lambda flow: k * velocity_head(flow, bore) if flow >= 0 else seat(flow)


def check_law(k: float, bore_mm: float, holds: bool) -> Law:
    """K v²/2g forward; backward one steep line where it holds, else the same."""
    area = pi / 4 * (bore_mm / 1000) ** 2

    def loss(flow: float) -> float:
        if holds and flow < 0:
            return STEEP * flow
        return k * flow * abs(flow) / (2 * G * area**2)

    return loss


def relief_law(plant: Plant, fluid: Fluid) -> Law:
    """On its seat steep (or a leaky orifice) to the set head, then in proportion, then an orifice."""
    relief, weight = plant.relief, fluid.density * G
    assert relief.set_bar is not None and relief.capacity_m3h is not None
    lifts, full = relief.set_bar * 1e5 / weight, relief.capacity_m3h / 3600
    most = lifts * (1 + relief.accumulation_percent / 100)
    leak = relief.passing_percent / 100 * full if relief.state == "passing" else 0.0
    tight = leak <= 10 * lifts / STEEP
    seat = lifts / STEEP if tight else leak

    def loss(flow: float) -> float:
        if relief.state == "blocked" or (tight and flow <= seat):
            return STEEP * flow
        if flow <= seat:
            return lifts * flow * abs(flow) / seat**2
        if flow <= full:
            return lifts + (most - lifts) * (flow - seat) / (full - seat)
        return most * (flow / full) ** 2

    return loss


class Motor(NamedTuple):
    """Field speed [rad/s], speed lost per torque [rad/s per N·m], breakdown torque [N·m]."""

    field: float
    droop: float
    most: float


def machine_law(one: ResolvedPlant, number: int, fluid: Fluid) -> Law:
    """Minus the head of one of the pumps, counted from 0, on its motor. [m³/s] -> [m]"""
    drive, pump = one.plant.drive, one.pumps[number]
    supply = float(drive.supply_hz)
    frequency = supply if drive.frequency_hz is None else drive.frequency_hz
    first = one.curve.motor_kw if drive.motor_kw is None else drive.motor_kw
    own = one.plant.pump.second.motor_kw or (first if one.second is None else one.second.motor_kw)
    motor = first if number == 0 else own, drive.poles, supply, frequency
    has, gas = (one.plant.pump, one.plant.pump.second)[number], one.plant.suction.gas_percent / 100
    if isinstance(pump, Curve):
        fate = Fate(
            diameter=has.trim_percent / 100,
            wrong=has.rotation == "wrong",
            blocked=has.blocked_percent / 100,
            wear=has.wear_percent / 100,
            viscosity=0.0 if one.plant.liquid.name == "water" else fluid.viscosity / fluid.density,
            speed=4 * pi * frequency / drive.poles,
            gas=gas,
        )
        return pump_law(pump, *motor, fluid.density, fate)
    return displacement_law(
        pump, *motor, fluid, has.wear_percent / 100, gas
    )  # the gearbox is among the pump's own numbers


def _motor(kw: float, poles: int, supply: float, frequency: float) -> Motor:
    """Slip at rated load from a table over the logarithm of power; weaker above the supply's frequency."""
    table = [(0.373, 0.05), (3.73, 0.03), (11.2, 0.025), (37.3, 0.017), (186.0, 0.008)]
    slip = table[0][1] if kw <= table[0][0] else table[-1][1]
    for (a, slip_a), (b, slip_b) in zip(table, table[1:], strict=False):
        if a < kw <= b:
            slip = slip_a + (slip_b - slip_a) * log(kw / a) / log(b / a)
    field = 4 * pi * supply / poles
    rated_torque = kw * 1000 / (field * (1 - slip))
    weak = max(frequency / supply, 1.0) ** 2
    return Motor(4 * pi * frequency / poles, field * slip / rated_torque * weak, 2.5 * rated_torque / weak)


@lru_cache(maxsize=32)
def pump_law(
    curve: Curve, kw: float, poles: int, supply: float, frequency: float, density: float, fate: Fate
) -> Law:
    """Minus the head of a pump on its motor. [m³/s] -> [m]"""
    motor = _motor(kw, poles, supply, frequency)
    test = curve.speed_rpm * pi / 30
    flow = [q / 3600 for q in curve.flow_m3h]
    made = Points(test, curve.density_kgm3, flow, list(curve.head_m), shaft_powers(curve))
    _, _, flow, head, powers = become(made, fate)
    torque = [power / test for power in powers]
    lost = [motor.droop * density / curve.density_kgm3 * t / test for t in torque]
    ratio = [speed_ratio(motor.field / test, c) for c in lost]
    _hold(ratio, flow, head)
    head_slope = PchipInterpolator(flow, head).derivative()(flow)
    lost_slope = [motor.droop * density / curve.density_kgm3 / test * s
                  for s in PchipInterpolator(flow, torque).derivative()(flow)]  # fmt: skip
    q, h, m = [], [], []
    for k, x in enumerate(ratio):
        turn = -lost_slope[k] * x**2 / (1 + 2 * lost[k] * x)
        q.append(x * flow[k])
        h.append(x**2 * head[k])
        m.append((x**2 * head_slope[k] + 2 * x * turn * head[k]) / max(x + flow[k] * turn, 0.1 * x))
    m = _monotone(q, h, m)
    inside, bend = CubicHermiteSpline(q, h, m), h[0] / q[-1] ** 2

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
def displacement_law(
    pump: Displacement,
    kw: float,
    poles: int,
    supply: float,
    frequency: float,
    fluid: Fluid,
    wear: float,
    gas: float,
) -> Law:
    """Minus the head of a displacement pump on its motor, by root finders. [m³/s] -> [m]"""
    motor = _geared(_motor(kw, poles, supply, frequency), pump.gear_ratio)
    turns = _torque_line(motor, 4 * pi * supply / poles / pump.gear_ratio)
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


def _geared(motor: Motor, ratio: float) -> Motor:
    """As the pump's shaft sees it: slower, stronger, stiffer."""
    return Motor(motor.field / ratio, motor.droop / ratio**2, motor.most * ratio)


def _torque_line(motor: Motor, usual: float) -> Law:
    """Speed over torque: straight to the breakdown torque, then a fiftieth more to standstill.

    `usual` is the field's speed at the supply's frequency. [rad/s]
    """
    steep = motor.droop + usual / (0.02 * motor.most)

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
    """Where slip alone would make flow fall back or head rise, it stops at the edge."""
    pairs = range(1, len(ratio))
    if all(
        ratio[k] * flow[k] - ratio[k - 1] * flow[k - 1] >= 0.1 * ratio[k - 1] * (flow[k] - flow[k - 1])
        and ratio[k] ** 2 * head[k] <= ratio[k - 1] ** 2 * head[k - 1]
        for k in pairs
    ):
        return
    for k in pairs:
        before = ratio[k - 1]
        least = before * (flow[k - 1] + 0.1 * (flow[k] - flow[k - 1])) / flow[k]
        most = before * sqrt(head[k - 1] / head[k]) * (1 - 1e-9)
        ratio[k] = min(max(ratio[k], least), most)


def _monotone(q: list[float], h: list[float], m: list[float]) -> list[float]:
    """Slopes at most three times the flatter secant beside them."""
    secant = [(h[k + 1] - h[k]) / (q[k + 1] - q[k]) for k in range(len(q) - 1)]
    left, right = [secant[0], *secant], [*secant, secant[-1]]
    return [
        min(max(m[k], 3 * max(left[k], right[k])), 0.0) if left[k] < 0 and right[k] < 0 else 0.0
        for k in range(len(q))
    ]
