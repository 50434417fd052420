"""The error that a sound instrument has within its class: most of it stays, a little changes.

The lasting part is shared by all readings of one instrument, so a difference
between two days knows nothing of it; the rest, its repeatability, changes from
look to look. Another
instrument in its place has another lasting error. Together they never leave
the limits of the class.
"""

from __future__ import annotations

from functools import lru_cache

from loadfirst.instruments.generator import stream, uniform

REPEATABLE = 0.2
"""Share of the class limit that changes from look to look: a fifth (common practice, from memory). [-]"""


@lru_cache(maxsize=256)
def own_error(seed: int, id: str, serial: int, look: int) -> float:
    """Error of one look at a sound instrument, as a share of its limit, from -1 to 1. [-]

    Parameters
    ----------
    seed : draws the errors of all instruments; 0: none has any.
    id, serial : which instrument it is.
    look : number of the look: two days, or the steps of a clock.
    """
    if seed == 0:
        return 0.0
    lasting = 2 * uniform(stream(seed, id, "lasting", serial)) - 1
    passing = 2 * uniform(stream(seed, id, "passing", serial, look)) - 1
    return (1 - REPEATABLE) * lasting + REPEATABLE * passing
