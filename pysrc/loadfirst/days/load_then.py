"""What the load asks at yesterday's flow, yesterday and with whatever has changed since."""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from loadfirst.plant.automatic import settled
from loadfirst.plant.build import build
from loadfirst.plant.curves import load_curve
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import resolve_data


class LoadThen(NamedTuple):
    """A plant at rest, and what its load asked.

    Attributes
    ----------
    plant : settled.
    flow : of the station. [m³/s]
    asked : head that the load asks at this flow; None where no flow can pass. [m]
    """

    plant: ResolvedPlant
    flow: float
    asked: float | None

    @classmethod
    def of(cls, plant: ResolvedPlant, flow: float) -> LoadThen:
        """What the load of a settled plant asks at the flow of its station [m³/s]."""
        return cls(plant, flow, _asked(plant, flow))

    def asked_by(self, data: dict[str, Any], resolved: ResolvedPlant | None = None) -> float | None:
        """Head that the load of what has become of the plant asks at the same flow. [m]

        With what a controller moves where it stood: it makes up for another load, which is
        then the same to the pump, though not to its output.

        Parameters
        ----------
        data : the plant that it has become, as plain data.
        resolved : the same, settled or not, where it is known already.

        Raises
        ------
        InputError
            For a plant that cannot be used.
        """
        now = resolve_data(data) if resolved is None else resolved
        found = self.plant.found
        if found is None or now.plant.control != self.plant.plant.control:
            return _asked(settled([now])[0], self.flow)  # its own settings are the cause
        return _asked(resolve_data(apply_edits(data, {**found.moved, "control.mode": "manual"})), self.flow)


def _asked(plant: ResolvedPlant, flow: float) -> float | None:
    """Head that the load of a settled plant asks at a flow [m³/s]; None where no flow can pass. [m]"""
    head, known = load_curve(build([plant]), np.array([[flow]]))
    return float(head[0, 0]) if known[0, 0] else None
