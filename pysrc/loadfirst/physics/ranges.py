"""Refusing parameters that no element could have."""

from __future__ import annotations

import numpy as np

from loadfirst.errors import InputError
from loadfirst.physics.law import Array, Flags


def require(where: str, values: Array, fine: Flags, allowed: str) -> None:
    """Refuse values that are not finite or not `fine`, quoting the first of them.

    Parameters
    ----------
    where : str
        Name of the parameter, as the error is to say it: ``pipe.bore``.
    values : ndarray
        The parameter.
    fine : ndarray of bool, broadcast against `values`
        Where it may be used. A comparison with NaN is False, so NaN is refused.
    allowed : str
        What would do, in words.

    Raises
    ------
    InputError
    """
    good = fine & np.isfinite(values)
    if not good.all():
        raise InputError(where, float(np.broadcast_to(values, good.shape)[~good][0]), allowed)
