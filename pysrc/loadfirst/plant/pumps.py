"""Which pumps a plant means: looked up beside its file, in ../pumps, then among the packaged ones."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from msgspec import UnsetType
from msgspec.structs import replace

from loadfirst.errors import InputError
from loadfirst.physics.changes.rotation import pumps_backward
from loadfirst.plant import library, toml_text
from loadfirst.plant.checks import check_curve, check_displacement
from loadfirst.plant.decode import decode, in_file
from loadfirst.plant.dials import hung
from loadfirst.plant.expect import one_of
from loadfirst.plant.found import Found
from loadfirst.plant.near import nearest
from loadfirst.plant.plant import Curve, DisplacementFile, Plant, Pump, PumpFile, PumpStation, SecondPump
from loadfirst.plant.points import pump_curve
from loadfirst.plant.pump_file import KINDS
from loadfirst.plant.scales import LEAST_CAPACITY, flow_meter_scale, relief_set, together


class Condition(NamedTuple):
    """What has become of a pump, as its plant has it."""

    wear_percent: float
    trim_percent: float
    blocked_percent: float
    rotation: str
    running: bool = True


SOUND = Condition(0.0, 100.0, 0.0, "right")


def condition(pump: PumpStation | SecondPump) -> Condition:
    """The keys of one pump that say what has become of it."""
    return Condition(pump.wear_percent, pump.trim_percent, pump.blocked_percent, pump.rotation, pump.running)


def conditions(plant: Plant) -> tuple[Condition, Condition]:
    """Those of the first pump and of the second."""
    return condition(plant.pump), condition(plant.pump.second)


class Turning(NamedTuple):
    """How a pump is turned at a moment of time, where that is another way than its plant's drive says.

    Attributes
    ----------
    frequency : that reaches its motor; None: the drive's. [Hz]
    held : speed of its shaft, whatever the motor; None: as the motor holds it. [rad/s]
    """

    frequency: float | None = None
    held: float | None = None


AS_DRIVEN = Turning()


class ResolvedPlant(NamedTuple):
    """A plant together with its pumps' numbers: all that `build` needs. Make it with `resolve`.

    Attributes
    ----------
    plant : Plant
    curve : of the first pump.
    second : of the second, where it is another; None where both are equal.
    found : what the plant has set by itself, once `automatic.settled` has looked.
    turning : how each pump is turned; empty where the plant's drive says it.
    """

    plant: Plant
    curve: Pump
    second: Pump | None = None
    found: Found | None = None
    turning: tuple[Turning, ...] = ()

    @property
    def pumps(self) -> tuple[Pump, ...]:
        """Numbers of each pump of the station."""
        if self.plant.pump.arrangement == "single":
            return (self.curve,)
        return self.curve, self.curve if self.second is None else self.second

    @property
    def alike(self) -> bool:
        """Whether both pumps are equal, motors, wear and all."""
        second = self.plant.pump.second
        return (
            self.second is None
            and second.motor_kw is None
            and conditions(self.plant)[0] == condition(second)
            and len(set(self.turning)) < 2
        )


def turns_back(pump: Pump, has: Condition) -> bool:
    """Whether a pump runs and pumps backward: turned the wrong way, a propeller or no impeller at all."""
    if has.rotation == "right" or not has.running:
        return False
    return not isinstance(pump, Curve) or pumps_backward(pump_curve(pump))


def resolve(plant: Plant, beside: Path | None = None) -> ResolvedPlant:
    """The plant with its pumps' numbers (see `resolve_pump`), and with what suits them."""
    second = plant.pump.second.model
    one = ResolvedPlant(
        plant=plant,
        curve=resolve_pump(plant, beside),
        second=None if isinstance(second, UnsetType) else find_pump(second, beside, "pump.second.model"),
    )
    return fitted(one)


def fitted(one: ResolvedPlant) -> ResolvedPlant:
    """The same pumps in their plant, once they are known to go with its keys, with what suits them.

    Raises
    ------
    InputError
        For what cannot be said of such pumps.
    """
    plant = one.plant
    for number, pump in enumerate(one.pumps):
        _refuse(pump, conditions(plant)[number], ("pump", "pump.second")[number])
    _refuse_backward(one)
    return one._replace(plant=_suited(plant, one.pumps))


def _refuse(pump: Pump, has: Condition, where: str) -> None:
    """Refuse what can become of an impeller only, where there is none."""
    if isinstance(pump, Curve):
        return
    for name in ("trim_percent", "blocked_percent"):
        if getattr(has, name) != getattr(SOUND, name):
            raise InputError(
                f"{where}.{name}", getattr(has, name), "left out for a displacement pump",
                "It has no impeller.", rule="together", other=f"{where}.model",
            )  # fmt: skip


def _refuse_backward(one: ResolvedPlant) -> None:
    """Of two pumps in line none may pump backward; of two unlike ones side by side not both."""
    back = [turns_back(*each) for each in zip(one.pumps, conditions(one.plant), strict=False)]
    if len(back) < 2 or not any(back):
        return
    where = f"{('pump', 'pump.second')[back.index(True)]}.rotation"
    if one.plant.pump.arrangement == "in-line":
        raise InputError(
            where, "wrong", "right for a propeller or a displacement pump in line with another",
            "It would pump backward against the other: that is not computed.", rule="together",
            other="pump.arrangement",
        )  # fmt: skip
    if all(back) and not one.alike:
        raise InputError(
            where, "wrong", "right for one of two unlike pumps that would both pump backward",
            "Who of them gets how much, when too little comes, is not computed.", rule="together",
            other="pump.second.rotation",
        )  # fmt: skip


def _suited(plant: Plant, pumps: tuple[Pump, ...]) -> Plant:
    """With instruments and a relief valve that suit the pumps, where the file leaves that open.

    Who cuts or moves a frequency is a variable-speed drive, whatever the file says of the start.
    """
    control, drive = plant.control, plant.drive
    if drive.current_limit_percent is not None or (control.fitted and control.on == "drive"):
        plant = replace(plant, drive=replace(drive, start="ramp"))
    meters, relief = plant.meters, plant.relief
    if meters.flow_range_m3h is None:
        plant = replace(plant, meters=replace(meters, flow_range_m3h=flow_meter_scale(plant, pumps)))
    if relief.fitted and (relief.set_bar is None or relief.capacity_m3h is None):
        relief = replace(
            relief,
            set_bar=relief.set_bar or relief_set(plant, pumps),
            capacity_m3h=relief.capacity_m3h or max(together(plant, pumps), LEAST_CAPACITY),
        )
        plant = replace(plant, relief=relief)
    return replace(plant, gauges=hung(plant.gauges, plant.pump.centre_m))


def resolve_pump(plant: Plant, beside: Path | None = None) -> Pump:
    """The numbers of the plant's first pump.

    Parameters
    ----------
    plant : Plant
        Checked: it has one of `pump.model`, `pump.curve` and `pump.displacement`.
    beside : Path, optional
        Folder of the plant's file. Without it only packaged pumps are known.

    Raises
    ------
    InputError
        Where no pump has that id.
    FileError
        Where the pump's own file cannot be used.
    """
    for own in (plant.pump.curve, plant.pump.displacement):
        if not isinstance(own, UnsetType):
            return own
    assert not isinstance(plant.pump.model, UnsetType)  # plant.checks has seen to it
    return find_pump(plant.pump.model, beside)


def find_pump(model: str, beside: Path | None = None, where: str = "pump.model") -> Pump:
    """The numbers of the pump with the id `model`, which stands at the key `where`; see `resolve_pump`."""
    if library.is_id(model):
        for path in _places(model, beside):
            if path.is_file():
                return read_pump(path)
        if library.has("pumps", model):
            return _packaged(model)
    raise _nobody(model, beside, where)


def read_pump(path: Path) -> Pump:
    """Read and check one pump file, of whatever kind.

    Raises
    ------
    FileError
        For the first thing in it that cannot be used.
    """
    data = toml_text.read(path)
    kind = data.get("kind", KINDS[0])
    if kind == KINDS[0]:
        pump = decode(PumpFile, data, path.name)
        check_curve(pump, "", path.name)
        return pump
    if kind not in KINDS:
        near = nearest(kind, list(KINDS)) if isinstance(kind, str) else ""
        hint = f"Did you mean {near}?" if near else ""
        cause = InputError("kind", kind, one_of(list(KINDS)), hint, rule="choice", choices=list(KINDS))
        raise in_file(cause, path.name)
    made = decode(DisplacementFile, data, path.name)
    check_displacement(made, "", path.name)
    return made


@lru_cache(maxsize=128)
def _packaged(model: str) -> Pump:
    return read_pump(library.path("pumps", model))


def _places(model: str, beside: Path | None) -> Iterator[Path]:
    if beside is not None:
        yield beside / f"{model}.toml"
        yield beside / ".." / "pumps" / f"{model}.toml"


def _nobody(model: str, beside: Path | None, where: str) -> InputError:
    known = sorted({*library.ids("pumps"), *_neighbours(beside)})
    near = nearest(model, known)
    hint = f"Did you mean {near}?" if near else "Or give the pump's points in a table [pump.curve]."
    return InputError(
        where, model, f"the id of a pump: {one_of(known)}", hint, rule="lookup", choices=known,
        **({"nearest": near} if near else {}),
    )  # fmt: skip


def _neighbours(beside: Path | None) -> list[str]:
    if beside is None:
        return []
    return [path.stem for path in (beside / ".." / "pumps").glob("*.toml") if library.is_id(path.stem)]
