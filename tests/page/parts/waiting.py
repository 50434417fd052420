"""Waiting for what a person would see, instead of waiting for a time."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any, TypeVar

import pytest

Seen = TypeVar("Seen")

GLANCE = 25  # [ms] between two looks


def eventually(
    page: Any, look: Callable[[], Seen], good: Callable[[Seen], object], what: str, seconds: float = 20
) -> Seen:
    """Look until what is seen is good, and return it.

    Parameters
    ----------
    page : playwright page
        Lives on between two looks.
    look, good : callable
        What is there; whether that will do. An `AssertionError` in `good` means no.
    what : str
        What was waited for, for the message of a test that fails.
    seconds : float
        How long at most. [s]
    """
    end = time.monotonic() + seconds
    while True:
        seen = look()
        why = ""
        try:
            if good(seen):
                return seen
        except AssertionError as error:
            why = f" ({error})"
        if time.monotonic() > end:
            pytest.fail(f"waited {seconds:g} s for: {what}{why}; last seen: {seen}")
        page.wait_for_timeout(GLANCE)
