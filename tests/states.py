"""What tests look for in a state."""

from __future__ import annotations

from loadfirst.plant.state import State


def stack_of(state: State) -> dict[str, float]:
    """Heads of the load's blocks by name, where every one of them is known. [m]"""
    blocks = {block.block: block.head for block in state.stack}
    known = {name: head for name, head in blocks.items() if head is not None}
    assert known.keys() == blocks.keys()
    return dict(known)


def kinds(state: State) -> list[tuple[str, str]]:
    """Every note and where it is."""
    return [(note.kind, note.where) for note in state.notes]
