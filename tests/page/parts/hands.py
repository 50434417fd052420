"""A hand on the mouse, and a finger on the glass."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

STEPS = 6  # moves on the way from one place to the next

Place = tuple[float, float]


class Mouse:
    """Presses, moves in small steps, lets go."""

    def __init__(self, page: Any) -> None:
        self.mouse = page.mouse
        self.at: Place = (0, 0)

    def press(self, at: Place) -> None:
        """Go there and press the button."""
        self.mouse.move(*at)
        self.mouse.down()
        self.at = at

    def move(self, to: Place) -> None:
        """Move on, in steps."""
        self.mouse.move(*to, steps=STEPS)
        self.at = to

    def release(self) -> None:
        """Let go."""
        self.mouse.up()


class Finger:
    """Touches as the device reports them, so that scrolling and touch-action have their say."""

    def __init__(self, page: Any) -> None:
        self.tell = page.context.new_cdp_session(page)
        self.at: Place = (0, 0)

    def send(self, kind: str, *points: Place) -> None:
        """One report of the device."""
        spots = [{"x": x, "y": y} for x, y in points]
        self.tell.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": spots})

    def press(self, at: Place) -> None:
        """Put the finger down."""
        self.send("touchStart", at)
        self.at = at

    def move(self, to: Place) -> None:
        """Move on, in steps."""
        (x, y), (there, below) = self.at, to
        for step in range(1, STEPS + 1):
            self.send("touchMove", (x + (there - x) * step / STEPS, y + (below - y) * step / STEPS))
        self.at = to

    def release(self) -> None:
        """Lift the finger."""
        self.send("touchEnd")


Hand = Mouse | Finger


@contextmanager
def holding(hand: Hand, at: Place) -> Iterator[Hand]:
    """Hold something at a place; it is let go afterwards."""
    hand.press(at)
    try:
        yield hand
    finally:
        hand.release()


def drag(hand: Hand, start: Place, by: Place) -> None:
    """From a place, by so many CSS pixels, and let go."""
    with holding(hand, start):
        hand.move((start[0] + by[0], start[1] + by[1]))
