"""The one catalogue of causes, in the order in which they are to be ruled out."""

from __future__ import annotations

from loadfirst.causes import discharge_side, drive, gauge, liquid, machine, meter, suction_side
from loadfirst.causes.cause import Cause
from loadfirst.errors import InputError
from loadfirst.plant.near import meant

NOTHING = Cause(
    id="nothing", group="nothing", keys=(), says="Nothing has changed: what differs is scatter.",
    edit=lambda plant, size: {}, shown_by=("second-look",),
)  # fmt: skip

CAUSES: tuple[Cause, ...] = (
    *gauge.CAUSES,
    *meter.CAUSES,
    *discharge_side.CAUSES,
    *suction_side.CAUSES,
    *liquid.CAUSES,
    *drive.CAUSES,
    *machine.CAUSES,
    NOTHING,
)
_BY_ID = {cause.id: cause for cause in CAUSES}


def cause(id: str) -> Cause:
    """One cause by its id.

    Raises
    ------
    InputError
        Where none bears it.
    """
    if id not in _BY_ID:
        hint = meant(id, _BY_ID, "`python -m loadfirst causes` prints them.")
        raise InputError("cause", id, "the id of a cause", hint, rule="choice", choices=list(_BY_ID))
    return _BY_ID[id]
