"""Noise: what makes a pointer tremble. Each look at it catches it somewhere else."""

from __future__ import annotations

from loadfirst.instruments.generator import normal, stream


def tremble(deviation: float, seed: int, id: str, look: int) -> float:
    """How far a pointer stands off by noise at one look.

    Parameters
    ----------
    deviation : standard deviation, from 0; any unit. 0: it stands still.
    seed : of the plant's instruments.
    id : of the instrument.
    look : number of the look: two days, or the steps of a clock.

    Returns
    -------
    float
        In the unit of `deviation`; never beyond six times it.
    """
    return deviation * normal(stream(seed, id, "noise", look)) if deviation > 0 else 0.0
