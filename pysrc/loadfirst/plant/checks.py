"""What a plant must fulfil beyond the range of each key: how its keys fit together."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import UnsetType

from loadfirst.errors import InputError
from loadfirst.plant.air import air_pressure
from loadfirst.plant.check_control import control_faults
from loadfirst.plant.check_curve import curve_faults
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
from loadfirst.units import BAR

SMOOTHER = 20  # bore over roughness, at least: the end of the range for which the friction law is stated
SLACK = 1 + 1e-9  # a roughness written as bore/20 is one, whatever the last digit of its decimals
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
    for fault in curve_faults(curve, f"{where}." if where else ""):
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
        yield from curve_faults(plant.pump.curve, "pump.curve.")
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


def _beside(where: str, got: float, word: str, other: str, limit: float, unit: str) -> InputError:
    """Two keys that do not fit each other."""
    return InputError(
        where, got, f"{word} {other}, {limit:g} {unit}", rule="together", order=word, other=other,
        limit=limit, unit=unit,
    )  # fmt: skip
