"""A gauge that counts from vacuum, read as if it counted from the air around."""

from __future__ import annotations

from typing import Literal


def counted(pressure: float, reads: Literal["gauge", "absolute"], air: float) -> float:
    """What an instrument counts. All in Pa.

    Parameters
    ----------
    pressure : above the air's, at the dial.
    reads : "absolute" where it counts from vacuum.
    air : absolute pressure of the air.

    Notes
    -----
    The scale cuts what the instrument counts, so this comes before it; the
    mistake is the reader's, who does not take the air's pressure off again.

    Sources
    -------
    ISO 80000-4:2019, 4-14.2: gauge pressure is the absolute one less the ambient one (from memory).
    """
    return pressure + air if reads == "absolute" else pressure
