"""The error that a sound instrument has within its class: most of it stays, a little changes.

The lasting part is shared by all readings of one instrument, so a difference
between two days knows nothing of it; the rest, its repeatability, changes from
look to look. Another
instrument in its place has another lasting error. Together they never leave
the limits of the class.

A shaft's speed is otherwise. Whatever counts turns hardly errs, but the supply's
frequency wanders by as much as its class allows: nothing of that lasts.
"""

from __future__ import annotations

from functools import lru_cache

from loadfirst.instruments.generator import stream, uniform

REPEATABLE = 0.2
"""Share of the class limit that changes from look to look: a fifth (common practice, from memory). [-]"""

WANDERING = {"speed": 1.0}
"""The same where it is another: a large grid keeps within ±50 mHz, ±0.1 % of 50 Hz (Commission Regulation
(EU) 2017/1485, annex III, standard frequency range, from memory). [-]"""


def repeatable(quantity: str) -> float:
    """Share of the class limit that changes from look to look, of an instrument for a quantity. [-]"""
    return WANDERING.get(quantity, REPEATABLE)


@lru_cache(maxsize=256)
def own_error(seed: int, id: str, serial: int, look: int, changes: float = REPEATABLE) -> float:
    """Error of one look at a sound instrument, as a share of its limit, from -1 to 1. [-]

    Parameters
    ----------
    seed : draws the errors of all instruments; 0: none has any.
    id, serial : which instrument it is.
    look : number of the look: two days, or the steps of a clock.
    changes : `repeatable` of what it measures. [-]
    """
    if seed == 0:
        return 0.0
    lasting = 2 * uniform(stream(seed, id, "lasting", serial)) - 1
    passing = 2 * uniform(stream(seed, id, "passing", serial, look)) - 1
    return (1 - changes) * lasting + changes * passing
