"""Where the elements of the load stand, for the checker, and which heads are known."""

from __future__ import annotations

from math import sqrt

from tests.checker_laws import (
    STEEP,
    Fluid,
    G,
    Law,
    Piece,
    check_law,
    filter_law,
    kv_law,
    pipe_law,
    summit_law,
    valve_law,
    velocity_head,
)

from loadfirst.plant.plant import Plant

ROUND = 1e-9
"""Of a head, and a metre: what two that balance may differ by. [-]"""


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


def line_pieces(plant: Plant, fluid: Fluid, check: Law) -> dict[str, Piece]:
    """What stands behind the pumps while the line is on; `check` is a single pump's."""
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


def open_outlet(plant: Plant) -> dict[str, Piece]:
    """The jet at the open flange."""
    return {"end": Piece("discharge", "open", check_law(1.0, plant.discharge.bore_mm, True))}


def choking(plant: Plant, fluid: Fluid, valve: Piece, before: float, behind: float) -> Piece:
    """The valve as it is between those two heads. [m]

    IEC 60534-2-1: a drop beyond F_L² (p₁ - F_F p_v) brings no more flow; so a flow needs at least that p₁.
    Without so much of it even at rest, vapour lets nothing through; and only then: what stands still before
    a throat that has pressure enough stands still for another reason.
    """
    recovery = plant.valve.recovery
    if recovery is None or valve.loss(1e-9) >= STEEP * 1e-9:
        return valve
    critical = 220.64 if plant.liquid.name == "water" else plant.liquid.critical_bar
    reduced = 0.0 if critical is None else min(fluid.vapour / (critical * 1e5), 1.0)
    ratio = 0.96 - 0.28 * sqrt(reduced)

    at_rest = plant.pump.centre_m + (ratio * fluid.vapour - air(plant)) / (fluid.density * G) - behind

    def loss(flow: float) -> float:
        free = valve.loss(flow)
        if flow <= 0:
            balanced = before <= behind + ROUND * (1 + abs(behind))
            return free if balanced or at_rest <= 0 else at_rest + STEEP * flow
        return max(free, at_rest + velocity_head(flow, plant.discharge.bore_mm) + free / recovery**2)

    return valve._replace(loss=loss)
