"""What kind of machine a pump is, by its numbers alone: a pump of the file's own is known like any other."""

from __future__ import annotations

from typing import Literal

from loadfirst.physics.impeller import impeller_shape
from loadfirst.plant.points import pump_curve
from loadfirst.plant.pump_file import Curve, Pump

PumpKind = Literal["radial", "mixed", "axial", "gear", "lobe", "screw"]


def pump_kind(pump: Pump) -> PumpKind:
    """The way of its impeller, as measured (trim and wear do not change it), or what displaces the liquid."""
    if isinstance(pump, Curve):
        return impeller_shape(pump_curve(pump).specific_speed)
    return pump.kind
