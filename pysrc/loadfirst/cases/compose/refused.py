"""A draw that makes no case."""

from __future__ import annotations


class Refused(Exception):
    """Why a draw makes no case; never seen by a learner."""


class TooWide(Refused):
    """It holds in the middle of the sizes, and not at their ends: nearer ends may do."""
