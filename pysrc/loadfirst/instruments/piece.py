"""Whether an instrument is the same piece in two plants, so that its lasting error is the same."""

from __future__ import annotations

from typing import Any

from loadfirst.plant.plant import Plant


def same_piece(id: str, yesterday: Plant, today: Plant) -> bool:
    """Whether it was not replaced, and its range and class are as they were; by the instrument's id."""
    return _piece(id, yesterday) == _piece(id, today)


def _piece(id: str, plant: Plant) -> tuple[Any, ...]:
    meters = plant.meters
    kind, _, place = id.partition("-")
    if kind == "gauge":
        gauge = getattr(plant.gauges, place.replace("-", "_"))
        return gauge.range_bar, gauge.accuracy_class, gauge.serial
    if kind == "flow":
        return meters.flow_range_m3h, meters.flow_percent, meters.flow_kind, meters.flow_serial
    if kind == "ammeter":
        return meters.current_range_a, meters.current_percent
    if kind == "tachometer":
        return meters.speed_range_rpm, meters.speed_percent
    return (meters.level_percent,)
