"""What the tool says while it works, and how it says that it cannot go on."""

from __future__ import annotations

import sys
import time


class Problem(Exception):
    """Something a person can mend; its text says what and how. Shown without a traceback."""


def say(text: str) -> None:
    """One line on what is being done."""
    print(text, flush=True)


class Progress:
    """Megabytes that have come, on one line of a terminal, or every ten seconds in a log.

    Parameters
    ----------
    what : str
        What is being fetched.
    total : int
        Its size. [bytes]
    """

    def __init__(self, what: str, total: int) -> None:
        self.what, self.total = what, total
        self.alive = sys.stdout.isatty()
        self.pause = 0.2 if self.alive else 10.0
        self.next = time.monotonic() + (0 if self.alive else self.pause)

    def show(self, done: int) -> None:
        """Tell that `done` bytes are there, unless that was told a moment ago."""
        if time.monotonic() < self.next:
            return
        self.next = time.monotonic() + self.pause
        text = f"  {self.what}: {min(done, self.total) / 1e6:.1f} of {self.total / 1e6:.1f} MB"
        print(f"\r{text}" if self.alive else text, end="" if self.alive else "\n", flush=True)

    def close(self) -> None:
        """Leave the line."""
        if self.alive:
            print("\r\033[K", end="", flush=True)
