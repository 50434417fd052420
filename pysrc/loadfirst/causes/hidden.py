"""A cause that is kept from whoever reads the instruments: veiled in a link, drawn by chance, applied unseen.

The veil only keeps an eye from reading it by accident: who wants to know can take it off, as this file shows.
All veils are equally long, so that their length tells nothing.
"""

from __future__ import annotations

import base64
import binascii
import json
from typing import NamedTuple

from loadfirst.causes.catalogue import CAUSES, NOTHING, cause
from loadfirst.causes.cause import Cause, Edits
from loadfirst.causes.signature import signatures
from loadfirst.errors import InputError
from loadfirst.instruments.generator import bits, stream, uniform
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import resolve_data

LONGEST = 90  # bytes under a veil: id and size
SEED = 4  # bytes in front of them
TRIES = 40  # draws before nothing is left but to say so


class Hidden(NamedTuple):
    """What happened, at which size."""

    cause: Cause
    size: float

    def edits(self, plant: ResolvedPlant) -> Edits:
        """What it changes in a plant as it is; nothing where that plant leaves it no room.

        It starts from the plant as a hand has set it since: half the opening stays half of it.
        """
        if self.cause.applies(plant) is not None:
            return {}
        low, high = self.cause.sizes(plant)
        return self.cause.edits(plant, min(max(self.size, low), high) if self.cause.size else self.size)


def veil(hidden: Hidden, seed: int) -> str:
    """Letters, digits, hyphens and underscores; another seed, from 0, gives others."""
    plain = json.dumps([hidden.cause.id, hidden.size]).encode().ljust(LONGEST)
    head = (seed % 256**SEED).to_bytes(SEED, "big")
    return base64.urlsafe_b64encode(head + _mixed(plain, head)).decode().rstrip("=")


def unveil(text: str) -> Hidden:
    """What a veil hides.

    Raises
    ------
    InputError
        Where it is none of ours.
    """
    try:
        packed = base64.b64decode(text + "=" * (-len(text) % 4), altchars=b"-_", validate=True)
        id, size = json.loads(_mixed(packed[SEED:], packed[:SEED]))
        return Hidden(cause(id), float(size))
    except (binascii.Error, ValueError, TypeError, InputError):
        raise InputError("hidden", text[:20], "what this program has hidden itself") from None


def _mixed(text: bytes, head: bytes) -> bytes:
    """Each byte with one of a stream: twice is as before."""
    start = stream(int.from_bytes(head, "big"), "veil")
    return bytes(byte ^ (bits(start, at) & 0xFF) for at, byte in enumerate(text))


def drawn(plant: ResolvedPlant, data: dict[str, object], seed: int) -> Hidden:
    """A cause that can happen to a plant and that an instrument tells, drawn by chance: the same for a seed.

    Groups are as likely as each other, so that many gauges do not make gauges likely; the size lies
    between half and one and a half times the usual one's distance from nothing, where there is room.

    Parameters
    ----------
    plant, data : the plant, resolved and as data with its edits.
    seed : from 0.

    Raises
    ------
    InputError
        Where nothing was found that would show.
    """
    can = [one for one in CAUSES if one is not NOTHING and one.applies(plant) is None]
    groups = sorted({one.group for one in can})
    for turn in range(TRIES):
        start = stream(seed, "hunt", turn)
        group = groups[int(uniform(start, 0) * len(groups))]
        of_group = [one for one in can if one.group == group]
        one = of_group[int(uniform(start, 1) * len(of_group))]
        hidden = Hidden(one, _size(one, plant, 0.5 + uniform(start, 2)))
        if _tells(hidden, plant, data):
            return hidden
    raise InputError(
        "plant", plant.plant.title, "one to which something can happen that its instruments tell"
    )


def _size(one: Cause, plant: ResolvedPlant, times: float) -> float:
    """So many times as far from nothing as the usual size, within the plant's room."""
    if one.size is None:
        return 1.0
    low, high = one.sizes(plant)
    size = one.size.none + times * (one.usual(plant) - one.size.none)
    return float(f"{min(max(size, low), high):.3g}") if low < size < high else one.usual(plant)


def _tells(hidden: Hidden, plant: ResolvedPlant, data: dict[str, object]) -> bool:
    """Whether it comes to a steady state, and some instrument moves by more than it can by itself."""
    try:
        after = resolve_data(apply_edits(data, hidden.edits(plant)))
    except InputError:
        return False
    found = signatures(plant, [(hidden.cause, after)])[0]
    return found.converged and any(move.told for name, move in found.moves.items() if name != "head")
