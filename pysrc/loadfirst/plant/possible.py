"""All states that a plant may be in, as its answer tells them."""

from __future__ import annotations

from loadfirst.plant.answer import Possible
from loadfirst.plant.solved import OnePlant


def possible_states(one: OnePlant) -> tuple[Possible, ...]:
    """Every state, in the order of the flow; none where no pump's curve droops.

    What is but leakage through a shut element is no flow.
    """
    states = one.states
    if states is None:
        return ()

    def seen(flow: float) -> float:
        return flow if abs(flow) >= one.least_flow else 0.0

    side_by_side = one.layout.side_by_side > 1
    found = []
    for number, flows in enumerate(states.flows.tolist()):
        found.append(
            Possible(
                flow=seen(sum(flows) if side_by_side else flows[0]),
                head=float(states.heads[number]),
                flows=tuple(map(seen, flows)),
                lasts=bool(states.stable[number]),
                there=number == states.chosen,
            )
        )
    return tuple(found)
