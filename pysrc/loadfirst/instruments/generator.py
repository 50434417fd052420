"""Chance that is the same everywhere: numbers made from a seed by whole-number arithmetic alone.

A number is found by counting, not by what was drawn before it, so one
instrument's chance never depends on another's. Nothing here asks a library
for a logarithm or a sine, whose last bit may differ between machines: the
same seed gives the same bits natively and in the browser.

Sources
-------
G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number
generators", OOPSLA 2014 (SplitMix64; its constants read in public source text).
FNV-1a, 64 bits: G. Fowler, L. C. Noll, K.-P. Vo (from memory).
"""

from __future__ import annotations

WORD = 2**64 - 1  # 64 bits
GAMMA = 0x9E3779B97F4A7C15
SUMMANDS = 12  # their variances, 1/12 each, add up to 1


def mixed(word: int) -> int:
    """SplitMix64's scrambling of 64 bits: one to one, and every bit hangs on every other."""
    word = ((word ^ (word >> 30)) * 0xBF58476D1CE4E5B9) & WORD
    word = ((word ^ (word >> 27)) * 0x94D049BB133111EB) & WORD
    return word ^ (word >> 31)


def bits(state: int, count: int) -> int:
    """The number after `count` others of the stream that begins at `state`, 64 bits."""
    return mixed((state + (count + 1) * GAMMA) & WORD)


def stream(seed: int, *about: str | int) -> int:
    """Where the stream begins that belongs to a seed and to what the numbers are about.

    Parameters
    ----------
    seed : int
        From 0.
    about : str or int
        ``"gauge-discharge", "bias", 0``: another word or number, another stream.
    """
    state = mixed(seed & WORD)
    for part in about:
        state = mixed(state ^ (_hash(part) if isinstance(part, str) else mixed(part & WORD)))
    return state


def _hash(text: str) -> int:
    """FNV-1a of a text."""
    found = 0xCBF29CE484222325
    for byte in text.encode():
        found = ((found ^ byte) * 0x100000001B3) & WORD
    return found


def uniform(state: int, count: int = 0) -> float:
    """From 0 to below 1, each of 2**53 values as likely."""
    return (bits(state, count) >> 11) * 2.0**-53


def normal(state: int) -> float:
    """About normal, mean 0, standard deviation 1, never beyond 6: twelve uniform numbers added up, less 6."""
    total = 0.0
    for count in range(SUMMANDS):
        total += uniform(state, count)
    return total - SUMMANDS / 2
