"""What is asked of an answer to any plant whatever, and a trial of as many as one likes.

`python3 pysrc/loadfirst_dev trial` runs it; `tests/plant/test_random_plants.py`
asks the same of some thousands. What fails is cut down to the keys that matter
and printed as a file for `tests/plant/regressions`.
"""

from __future__ import annotations

import argparse
import copy
import math
import re
import sys
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from typing import Any

import msgspec
import numpy as np
from msgspec import UNSET
from msgspec.structs import replace
from tests.any_key import Data, put
from tests.checker import Fluid, Off, check
from tests.strategies import Dice, any_data, legal

from loadfirst.errors import InputError
from loadfirst.instruments.panel import readings
from loadfirst.plant.air import air_pressure
from loadfirst.plant.automatic import settled
from loadfirst.plant.build import build
from loadfirst.plant.choked import settle
from loadfirst.plant.layout import Shape, shape_of
from loadfirst.plant.npsh import equipped, in_place
from loadfirst.plant.polish import leant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.solved import Solved, solve_plants
from loadfirst.plant.state import State, state_of
from loadfirst.plant.station_curve import counted
from loadfirst.units import HOUR

TOLERANCE = 2e-9  # [-] of head and flow scales: the solver's 1e-9, and as much for the checker's arithmetic
WITH_REASON = ("below-vapour-pressure", "nothing-comes")
"""Notes that say why a pressure is below the vapour pressure."""
NEARLY = 1e-5
"""How near to a state the plant has to be that was left in it, of the flow scale. [-]"""
SLIGHT = 1e-6  # [Pa] per Pa: round-off of a pressure


def by_shape(plants: Sequence[ResolvedPlant]) -> list[tuple[list[int], Solved]]:
    """Solve plants as they have set themselves, those of one shape together; which stand in which batch."""
    plants = settled(plants)
    shapes: dict[Shape, list[int]] = defaultdict(list)
    for at, one in enumerate(plants):
        shapes[shape_of(one)].append(at)
    return [(places, solve_plants(build([plants[at] for at in places]))) for places in shapes.values()]


def checked(one: Solved, row: int) -> Off:
    """What the independent checker says of one answer."""
    solution, liquid = one.solution, one.built.liquids[row]
    return check(
        one.built.plants[row],
        Fluid(liquid.density, liquid.viscosity, liquid.vapour_pressure),
        {name: float(flow[row]) for name, flow in solution.flow.items()},
        {node: float(head[row]) for node, head in solution.head.items()},
        1e-9 * float(one.built.flow_scale[row]),
    )


def faults(solved: Solved, row: int) -> list[str]:
    """Everything that is wrong with one answer; nothing is, unless there is a mistake somewhere."""
    if not solved.solution.converged[row]:
        return [f"no balance was found: {solved.solution.reason[row]}"]
    state = state_of(solved, row)
    return [
        *_unbalanced(solved, row),
        *_endless(solved, row, state),
        *_boiling(solved, row, state),
        *several(solved, row, state),
    ]


def _unbalanced(solved: Solved, row: int) -> Iterator[str]:
    off = checked(solved, row)
    if not off.head <= TOLERANCE * solved.built.head_scale[row]:
        yield f"{off.element} is {off.head:.3g} m off its law"
    if not off.flow <= TOLERANCE * solved.built.flow_scale[row]:
        yield f"{off.node} is {off.flow:.3g} m³/s off its balance"


def _endless(solved: Solved, row: int, state: State) -> Iterator[str]:
    """Numbers that are none: in the solution, the state, or on a dial."""
    solution = solved.solution
    for name, part in (("flow", solution.flow), ("head", solution.head), ("drop", solution.drop)):
        yield from (
            f"{name} of {at} is {values[row]}" for at, values in part.items() if not np.isfinite(values[row])
        )
    shown = readings(state, solved.built.plants[row].plant)
    for name, data in (("state", state), ("shown", shown)):
        yield from (
            f"{name}{at} is {value}"
            for at, value in _numbers(msgspec.to_builtins(data))
            if not math.isfinite(value)
        )


def _numbers(data: Any, at: str = "") -> Iterator[tuple[str, float]]:
    if isinstance(data, float):
        yield at, data
    elif isinstance(data, dict | list | tuple):
        inside = data.items() if isinstance(data, dict) else enumerate(data)
        for name, value in inside:
            yield from _numbers(value, f"{at}.{name}")


def several(solved: Solved, row: int, state: State) -> Iterator[str]:
    """A plant whose pump's curve droops may be in several states: each that is told has to balance."""
    states = solved.states.get(row)
    if states is None:
        return
    if (state.possible is not UNSET) != (len(states.flows) > 1):
        yield f"{len(states.flows)} states, and what is told of them does not fit"
    for number, flows in enumerate(states.flows.tolist()):
        if number == states.chosen:
            continue
        if states.stable[number] and min(flows) >= 0:
            again = solve_plants(build([with_flows_before(solved.built.plants[row], flows)]))
            found = again.states[0]
            if np.abs(found.flows[found.chosen] - flows).max() > NEARLY * solved.built.flow_scale[row]:
                yield f"state {number} lasts, and yet the plant does not stay in it"
            yield from (f"state {number}: {fault}" for fault in _unbalanced(again, 0))
        else:
            yield from _off_its_laws(solved, row, number)


def with_flows_before(one: ResolvedPlant, flows: Sequence[float]) -> ResolvedPlant:
    """The same plant, its pumps with these flows before. [m³/s]"""
    pump = one.plant.pump
    first, second = [flow * HOUR for flow in (*flows, 0.0)][:2]
    after = replace(pump, history_m3h=first, second=replace(pump.second, history_m3h=second))
    return one._replace(plant=replace(one.plant, pump=after))


def _off_its_laws(solved: Solved, row: int, number: int) -> Iterator[str]:
    """Of a state that does not last: the network with stand-in laws that are true there answers with it."""
    alone, flows = solved.built.rows(np.array([row])), solved.states[row].flows[[number]]
    line = flows.sum(axis=1) if alone.layout.side_by_side > 1 else flows[:, 0]
    placed = equipped(alone, counted(alone, in_place(alone, line)))
    solution = settle(alone, leant(placed, flows), alone.head_scale, alone.flow_scale)
    found = np.stack([solution.flow[name] for name in alone.layout.pumps], axis=1)
    if np.abs(found - flows).max() > NEARLY * alone.flow_scale[0]:
        yield f"state {number} is off its laws: {found} instead of {flows} m³/s"


def _boiling(solved: Solved, row: int, state: State) -> Iterator[str]:
    """Absolute pressures below the vapour pressure that no note accounts for."""
    air = air_pressure(solved.built.plants[row].plant)
    told = {note.where for note in state.notes if note.kind in WITH_REASON}
    vapour = state.liquid.vapour_pressure
    for point in state.path:
        absolute = None if point.pressure is None else point.pressure + air
        if absolute is not None and absolute < vapour - SLIGHT * (air + vapour) and point.place not in told:
            yield f"{point.place} is at {absolute:.4g} Pa absolute, below vapour pressure; no note says so"
    inlet = state.nodes["suction"].pressure
    counted = not (solved.built.droops[row] and solved.built.layout.side_by_side > 1)
    placed = state.station.flow > 0 and counted
    if placed and inlet is not None and inlet + air < vapour - SLIGHT * (air + vapour):
        yield f"{inlet + air:.4g} Pa absolute in front of the pumps, and yet liquid flows into them"


def failing(data: Data) -> list[str]:
    """Faults of the answer to one plant as data; of a plant that is refused there are none."""
    try:
        one = legal(data)
    except InputError:
        return []
    try:
        return faults(solve_plants(build([one])), 0)
    except Exception as trouble:  # whatever it is, it is what was looked for
        return [f"{type(trouble).__name__}: {trouble}"]


def cut_down(data: Data, fails: Callable[[Data], bool]) -> Data:
    """The same plant with every key left to its default that the fault does not need."""
    small = copy.deepcopy(data)
    for path in list(_paths(small)):
        before = put(small, path, None)
        if not fails(small):
            put(small, path, before)
    return {name: table for name, table in small.items() if table != {}}


def _paths(data: Data, above: str = "") -> Iterator[str]:
    for name, value in data.items():
        if isinstance(value, dict):
            yield from _paths(value, f"{above}{name}.")
        if above or not isinstance(value, dict):
            yield f"{above}{name}"


def as_file(data: Data, why: Sequence[str]) -> str:
    """A plant as a file, with what went wrong before it."""
    lines = [f"# {line}" for line in why]
    lines += [f"{name} = {_written(value)}" for name, value in data.items() if not isinstance(value, dict)]
    for name, table in data.items():
        if isinstance(table, dict):
            lines += _table(name, table)
    return "\n".join(lines) + "\n"


def _table(name: str, table: Data) -> list[str]:
    lines = ["", f"[{name}]"]
    lines += [f"{key} = {_written(value)}" for key, value in table.items() if not isinstance(value, dict)]
    return lines + [
        line
        for key, inner in table.items()
        if isinstance(inner, dict)
        for line in _table(f"{name}.{key}", inner)
    ]


def _written(value: Any) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        return f'"{value}"'
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(_written, value))}]"
    return repr(value)


def trial(seed: int, count: int) -> list[str]:
    """Files of all plants of a seed that fail."""
    choose = Dice(seed)
    try:
        batch = [any_data(choose) for _ in range(count)]
    except InputError as fault:  # as words: such an error cannot be sent from one process to another
        raise RuntimeError(f"seed {seed}: the sensible plant is refused: {fault}") from None
    bad: list[str] = []
    suspects: list[int] = []
    together = True
    try:
        for places, solved in by_shape([legal(data) for data in batch]):
            suspects += [at for row, at in enumerate(places) if faults(solved, row)]
    except Exception:  # one of them breaks it: each for itself
        suspects, together = list(range(count)), False
    for at in suspects:
        if why := failing(batch[at]):
            small = cut_down(batch[at], partial(_alike, _kind(why)))
            bad.append(as_file(small, [f"seed {seed}, plant {at}", *failing(small)]))
        elif together:
            bad.append(as_file(batch[at], [f"seed {seed}, plant {at}", "it fails only in its batch"]))
    return bad


def _kind(why: Sequence[str]) -> str:
    """What a fault is, without its numbers."""
    return re.sub(r"[-+]?\d[\d.e+-]*", "…", why[0])


def _alike(kind: str, data: Data) -> bool:
    return any(_kind([each]) == kind for each in failing(data))


PART = 2000  # plants of one seed: enough that many share a shape


def through_time(seed: int, count: int, processes: int | None) -> int:
    """Let an hour go by in each plant of a trial."""
    from tests.time_trial import troubles

    failed, first = 0, seed * 1_000_000
    with ProcessPoolExecutor(processes) as pool:
        for done, texts in enumerate(pool.map(troubles, range(first, first + count)), start=1):
            failed += len(texts)
            for text in texts:
                print(f"\n{text}", flush=True)
            if done % 100 == 0:
                print(f"{done} plants, {failed} failed", file=sys.stderr, flush=True)
    print(f"{count} plants tried, {failed} failed.")
    return 1 if failed else 0


def main(arguments: Sequence[str]) -> int:
    """Run a trial and print what fails. Returns 1 where anything did."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev trial")
    parser.add_argument("--plants", type=int, default=10_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--processes", type=int, default=None)
    parser.add_argument("--clock", action="store_true")
    options = parser.parse_args(arguments)
    if options.clock:
        return through_time(options.seed, options.plants, options.processes)
    parts = -(-options.plants // PART)
    seeds = [options.seed * 1_000_000 + part for part in range(parts)]
    counts = [min(PART, options.plants - PART * part) for part in range(parts)]
    failed = done = 0
    with ProcessPoolExecutor(options.processes) as pool:
        for count, files in zip(counts, pool.map(trial, seeds, counts), strict=True):
            done += count
            failed += len(files)
            for text in files:
                print(f"\n{text}", flush=True)
            if done % 10_000 < PART:
                print(f"{done} plants, {failed} failed", file=sys.stderr, flush=True)
    print(f"{done} plants tried, {failed} failed.")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
