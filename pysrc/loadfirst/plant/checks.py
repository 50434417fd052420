"""What a plant must fulfil beyond the range of each key: how its keys fit together."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from msgspec import UnsetType

from loadfirst.errors import InputError
from loadfirst.plant.air import air_pressure
from loadfirst.plant.check_control import control_faults
from loadfirst.plant.decode import in_file
from loadfirst.plant.plant import (
    Branch,
    Curve,
    Delivery,
    Discharge,
    Displacement,
    Gauge,
    Liquid,
    Plant,
    ReturnLine,
    SecondLine,
    Site,
    Suction,
    Supply,
)
from loadfirst.units import BAR, HOUR, G

SMOOTHER = 20  # bore over roughness, at least: the end of the range for which the friction law is stated
SLACK = 1 + 1e-9  # a roughness written as bore/20 is one, whatever the last digit of its decimals
LEAST_FLOW = 0.01  # [m³/h] of the last point, as the smallest Kv
CLOSEST = 1e-4  # [-] of the last flow, between two points: nearer ones have no slope between them
PROPERTIES = ("density_kgm3", "viscosity_mpas", "vapour_bar", "critical_bar")
NAMING = ("model", "curve", "displacement")  # any of them says which pump it is
Faults = Iterator[InputError]
Line = Suction | Discharge | Branch | ReturnLine | SecondLine


def check_plant(plant: Plant, file: str = "") -> None:
    """Refuse a plant whose keys contradict each other.

    Raises
    ------
    InputError, or FileError where `file` is given
        For the first contradiction found.
    """
    for fault in _plant_faults(plant):
        raise in_file(fault, file)


def check_curve(curve: Curve, where: str, file: str = "") -> None:
    """Refuse points that no pump of this program can follow.

    Parameters
    ----------
    curve : Curve
        The points; each number is already in its own range.
    where : str
        Path of the table: ``pump.curve``, or empty for a pump file.

    Raises
    ------
    InputError, or FileError where `file` is given
        Unless flows start at 0 and rise, heads fall, all lists are equally
        long, and either efficiencies or powers are given, physically possible.
    """
    for fault in _curve_faults(curve, f"{where}." if where else ""):
        raise in_file(fault, file)


def check_displacement(pump: Displacement, where: str, file: str = "") -> None:
    """Refuse a displacement pump that no maker could rate so; as `check_curve`."""
    for fault in _displacement_faults(pump, f"{where}." if where else ""):
        raise in_file(fault, file)


def _plant_faults(plant: Plant) -> Faults:
    yield from _pump_faults(plant)
    yield from _liquid_faults(plant.liquid)
    yield from _site_faults(plant.site)
    yield from _vessel_faults("supply", plant.supply, air_pressure(plant) / BAR)
    yield from _vessel_faults("delivery", plant.delivery, air_pressure(plant) / BAR)
    yield from _outlet_faults(plant.delivery)
    yield from _mouth_faults(plant.suction, plant.supply)
    yield from _line_faults("suction", plant.suction)
    yield from _line_faults("discharge", plant.discharge)
    yield from _line_faults("branch", plant.branch)
    yield from _line_faults("return_line", plant.return_line)
    yield from _line_faults("second_line", plant.second_line)
    yield from _filling_faults(plant)
    yield from control_faults(plant)
    for name in ("suction", "discharge", "after_valve"):
        yield from _gauge_faults(f"gauges.{name}", getattr(plant.gauges, name))


def _pump_faults(plant: Plant) -> Faults:
    given = [name for name in NAMING if not isinstance(getattr(plant.pump, name), UnsetType)]
    if not given:
        yield InputError(
            "pump.model", None, "the id of a pump", "Or give the pump's points in a table [pump.curve].",
            rule="missing",
        )  # fmt: skip
    if len(given) > 1:
        first, other = f"pump.{given[0]}", f"pump.{given[1]}"
        got = getattr(plant.pump, given[0])
        yield InputError(
            first, got if isinstance(got, str) else "a table", f"left out where [{other}] is given",
            rule="together", other=other,
        )  # fmt: skip
    if not isinstance(plant.pump.curve, UnsetType):
        yield from _curve_faults(plant.pump.curve, "pump.curve.")
    if not isinstance(plant.pump.displacement, UnsetType):
        yield from _displacement_faults(plant.pump.displacement, "pump.displacement.")


def _displacement_faults(pump: Displacement, at: str) -> Faults:
    if pump.limit_bar is not None and pump.limit_bar < pump.pressure_bar:
        yield _beside(
            f"{at}limit_bar", pump.limit_bar, "at or above", f"{at}pressure_bar", pump.pressure_bar, "bar"
        )


def _liquid_faults(liquid: Liquid) -> Faults:
    water = liquid.name == "water"
    for key in PROPERTIES:
        value = getattr(liquid, key)
        if water and value is not None:
            yield InputError(
                f"liquid.{key}", value, "left out for water, whose temperature says all",
                "Give the liquid another name.", rule="together", other="liquid.name",
            )  # fmt: skip
        if not water and value is None and key != "critical_bar":
            yield InputError(
                f"liquid.{key}", None, "given for any liquid but water", f"This one is {liquid.name[:40]!r}.",
                rule="missing", other="liquid.name",
            )  # fmt: skip


def _site_faults(site: Site) -> Faults:
    if site.barometer_bar is not None and site.altitude_m is not None:
        yield InputError(
            "site.barometer_bar", site.barometer_bar, "left out where site.altitude_m is given",
            rule="together", other="site.altitude_m",
        )  # fmt: skip


def _vessel_faults(where: str, vessel: Supply | Delivery, barometer: float) -> Faults:
    if not vessel.bottom_m < vessel.top_m:
        yield _beside(f"{where}.top_m", vessel.top_m, "above", f"{where}.bottom_m", vessel.bottom_m, "m")
    if vessel.surface_m < vessel.bottom_m:
        yield _beside(
            f"{where}.surface_m", vessel.surface_m, "at or above", f"{where}.bottom_m", vessel.bottom_m, "m"
        )
    if vessel.surface_m > vessel.top_m:
        yield _beside(
            f"{where}.surface_m", vessel.surface_m, "at or below", f"{where}.top_m", vessel.top_m, "m"
        )
    if vessel.gas_bar + barometer < 0:
        yield _beside(
            f"{where}.gas_bar", vessel.gas_bar, "at or above", "full vacuum in the air of this site",
            -barometer, "bar",
        )  # fmt: skip


def _outlet_faults(delivery: Delivery) -> Faults:
    if delivery.outlet_m is not None and delivery.outlet_m < delivery.bottom_m:
        yield _beside(
            "delivery.outlet_m", delivery.outlet_m, "at or above", "delivery.bottom_m", delivery.bottom_m, "m"
        )


def _mouth_faults(suction: Suction, supply: Supply) -> Faults:
    if suction.mouth_m is not None and suction.mouth_m < supply.bottom_m:
        yield _beside(
            "suction.mouth_m", suction.mouth_m, "at or above", "supply.bottom_m", supply.bottom_m, "m"
        )


def _line_faults(where: str, line: Line) -> Faults:
    limit = line.bore_mm / SMOOTHER
    if line.roughness_mm > limit * SLACK:
        yield _beside(
            f"{where}.roughness_mm", line.roughness_mm, "at or below", f"1/20 of {where}.bore_mm", limit, "mm"
        )


def _filling_faults(plant: Plant) -> Faults:
    if plant.discharge.filled < 1 and plant.second_line.fitted:
        yield InputError(
            "discharge.filled", plant.discharge.filled, "1 where a second line is fitted",
            "Both lines serve one end: both are full or none.", rule="together", other="second_line.fitted",
        )  # fmt: skip


def _gauge_faults(where: str, gauge: Gauge) -> Faults:
    low, high = gauge.range_bar
    if not low < high:
        yield _beside(f"{where}.range_bar[1]", high, "above", "its lower end", low, "bar")


def _curve_faults(curve: Curve, at: str) -> Faults:
    yield from _one_of_two(curve, at)
    yield from _length_faults(curve, at)
    if curve.flow_m3h[0] != 0:
        first = curve.flow_m3h[0]
        yield InputError(
            f"{at}flow_m3h[0]", first, "0: the first point is at no flow", rule="points", index=0
        )
    yield from _order_faults(f"{at}flow_m3h", curve.flow_m3h, lambda a, b: b > a, "above", "m³/h")
    yield from _spread_faults(f"{at}flow_m3h", curve.flow_m3h)
    yield from _head_faults(f"{at}head_m", curve.head_m)
    yield from _power_faults(curve, at)


def _one_of_two(curve: Curve, at: str) -> Faults:
    if curve.efficiency_percent is None and curve.power_kw is None:
        yield InputError(
            f"{at}efficiency_percent", None, "given, or power_kw in its place", rule="missing",
            other=f"{at}power_kw",
        )  # fmt: skip
    if curve.efficiency_percent is not None and curve.power_kw is not None:
        yield InputError(
            f"{at}power_kw", curve.power_kw, "left out where efficiency_percent is given", rule="together",
            other=f"{at}efficiency_percent",
        )  # fmt: skip


def _length_faults(curve: Curve, at: str) -> Faults:
    count = len(curve.flow_m3h)
    for name in ("head_m", "efficiency_percent", "power_kw", "npshr_m"):
        values = getattr(curve, name)
        if values is not None and len(values) != count:
            yield InputError(
                f"{at}{name}", values, f"as long as {at}flow_m3h, a list of {count}", rule="points",
                count=len(values), wanted=count, other=f"{at}flow_m3h",
            )  # fmt: skip


def _order_faults(
    where: str, values: Sequence[float], right: Callable[[float, float], bool], word: str, unit: str
) -> Faults:
    for index, (before, value) in enumerate(pairwise(values), start=1):
        if not right(before, value):
            yield InputError(
                f"{where}[{index}]", value, f"{word} the one before it, {before:g} {unit}",
                f"It is number {index + 1} of the list.", rule="points", order=word, limit=before, unit=unit,
                index=index,
            )  # fmt: skip


def _head_faults(where: str, heads: Sequence[float]) -> Faults:
    """Falling all the way, but for one stretch that may rise: towards no flow, or in a saddle."""
    rises = [b > a for a, b in pairwise(heads)]
    for index, (before, value) in enumerate(pairwise(heads), start=1):
        again = index > 1 and rises[index - 1] and not rises[index - 2] and any(rises[: index - 1])
        if value == before or again or (index == len(heads) - 1 and value > before):
            word = "below"
            hint = "A curve may rise once on its way, and falls in the end." if value > before else ""
            yield InputError(
                f"{where}[{index}]", value, f"{word} the one before it, {before:g} m",
                f"It is number {index + 1} of the list. {hint}".rstrip(), rule="points", order=word,
                limit=before, unit="m", index=index,
            )  # fmt: skip


def _spread_faults(where: str, flows: Sequence[float]) -> Faults:
    last = flows[-1]
    if last < LEAST_FLOW:
        allowed = f"at least {LEAST_FLOW:g} m³/h: it is the last one"
        yield InputError(f"{where}[{len(flows) - 1}]", last, allowed, rule="points", limit=LEAST_FLOW)
    for index, (before, value) in enumerate(pairwise(flows), start=1):
        if value - before < CLOSEST * last:
            allowed = f"at least {CLOSEST * last:.3g} m³/h above the one before it, {before:g} m³/h"
            hint = f"It is number {index + 1} of the list; of two points at one flow leave out one."
            yield InputError(f"{where}[{index}]", value, allowed, hint, rule="points", index=index)


def _power_faults(curve: Curve, at: str) -> Faults:
    """No flow has no efficiency; any other point has one, and it stays below 100 %."""
    for index, efficiency in enumerate(curve.efficiency_percent or ()):
        where = f"{at}efficiency_percent[{index}]"
        if index == 0 and efficiency != 0:
            yield InputError(where, efficiency, "0: no flow, no efficiency", rule="points", index=0)
        if index > 0 and efficiency <= 0:
            yield InputError(where, efficiency, "above 0 % where liquid flows", rule="points", index=index)
    for index, power in enumerate(curve.power_kw or ()):
        least = curve.density_kgm3 * G * curve.flow_m3h[index] / HOUR * curve.head_m[index] / 1e3
        if power <= least:
            yield InputError(
                f"{at}power_kw[{index}]", power, f"above {least:.4g} kW, which the liquid alone takes away",
                f"It is number {index + 1} of the list.", rule="points", order="above", limit=least,
                unit="kW", index=index,
            )  # fmt: skip


def _beside(where: str, got: float, word: str, other: str, limit: float, unit: str) -> InputError:
    """Two keys that do not fit each other."""
    return InputError(
        where, got, f"{word} {other}, {limit:g} {unit}", rule="together", order=word, other=other,
        limit=limit, unit=unit,
    )  # fmt: skip
