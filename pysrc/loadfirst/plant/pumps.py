"""Which pump a plant means: looked up beside its file, in ../pumps, then among the packaged ones."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from msgspec import UnsetType
from msgspec.structs import replace

from loadfirst.errors import InputError
from loadfirst.plant import library, toml_text
from loadfirst.plant.checks import check_curve
from loadfirst.plant.decode import decode, nearest
from loadfirst.plant.dials import hung
from loadfirst.plant.expect import one_of
from loadfirst.plant.plant import Curve, Plant, PumpFile
from loadfirst.plant.scales import flow_meter_scale


class ResolvedPlant(NamedTuple):
    """A plant together with the points of its pump: all that `build` needs. Make it with `resolve`."""

    plant: Plant
    curve: Curve


def resolve(plant: Plant, beside: Path | None = None) -> ResolvedPlant:
    """The plant with its pump's points (see `resolve_pump`), and with instruments that suit it."""
    curve = resolve_pump(plant, beside)
    if plant.meters.flow_range_m3h is None:
        meters = replace(plant.meters, flow_range_m3h=flow_meter_scale(plant, curve))
        plant = replace(plant, meters=meters)
    return ResolvedPlant(replace(plant, gauges=hung(plant.gauges, plant.pump.centre_m)), curve)


def resolve_pump(plant: Plant, beside: Path | None = None) -> Curve:
    """The points of the plant's pump.

    Parameters
    ----------
    plant : Plant
        Checked: it has either `pump.model` or `pump.curve`.
    beside : Path, optional
        Folder of the plant's file. Without it only packaged pumps are known.

    Raises
    ------
    InputError
        Where no pump has that id.
    FileError
        Where the pump's own file cannot be used.
    """
    if not isinstance(plant.pump.curve, UnsetType):
        return plant.pump.curve
    assert not isinstance(plant.pump.model, UnsetType)  # plant.checks has seen to it
    return find_pump(plant.pump.model, beside)


def find_pump(model: str, beside: Path | None = None) -> Curve:
    """The points of the pump with the id `model`; see `resolve_pump`."""
    if library.is_id(model):
        for path in _places(model, beside):
            if path.is_file():
                return read_pump(path)
        if library.has("pumps", model):
            return _packaged(model)
    raise _nobody(model, beside)


def read_pump(path: Path) -> PumpFile:
    """Read and check one pump file.

    Raises
    ------
    FileError
        For the first thing in it that cannot be used.
    """
    pump = decode(PumpFile, toml_text.read(path), path.name)
    check_curve(pump, "", path.name)
    return pump


@lru_cache(maxsize=128)
def _packaged(model: str) -> PumpFile:
    return read_pump(library.path("pumps", model))


def _places(model: str, beside: Path | None) -> Iterator[Path]:
    if beside is not None:
        yield beside / f"{model}.toml"
        yield beside / ".." / "pumps" / f"{model}.toml"


def _nobody(model: str, beside: Path | None) -> InputError:
    known = sorted({*library.ids("pumps"), *_neighbours(beside)})
    near = nearest(model, known)
    hint = f"Did you mean {near}?" if near else "Or give the pump's points in a table [pump.curve]."
    return InputError(
        "pump.model", model, f"the id of a pump: {one_of(known)}", hint, rule="lookup", choices=known,
        **({"nearest": near} if near else {}),
    )  # fmt: skip


def _neighbours(beside: Path | None) -> list[str]:
    if beside is None:
        return []
    return [path.stem for path in (beside / ".." / "pumps").glob("*.toml") if library.is_id(path.stem)]
