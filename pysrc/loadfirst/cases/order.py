"""Whether cases that lie together can come in the order that their `after` asks for."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from loadfirst.cases.case import Case
from loadfirst.errors import FileError, InputError
from loadfirst.plant.near import meant


def order_faults(cases: Mapping[str, Case], beside: Collection[str] = ()) -> Iterator[FileError]:
    """What is wrong with their order, each with its file.

    Parameters
    ----------
    cases : by id.
    beside : ids of others that there are: packaged ones, and files that do not hold.
    """
    known = {*cases, *beside}
    for id, case in cases.items():
        for number, before in enumerate(case.after):
            if before not in known:
                yield _fault(
                    id, number, before, "the id of a case beside it, or of one that comes with the program",
                    meant(before, known, "An id is the name of a file without `.toml`."),
                )  # fmt: skip
    for ring in _rings({id: [one for one in case.after if one in cases] for id, case in cases.items()}):
        number = cases[ring[0]].after.index(ring[1])
        way = " after ".join(ring)
        yield _fault(ring[0], number, ring[1], "such that one of them comes first", f"Now it is {way}.")


def _fault(id: str, number: int, got: str, allowed: str, hint: str) -> FileError:
    return FileError(f"{id}.toml", InputError(f"after[{number}]", got, allowed, hint, rule="together"))


def _rings(after: Mapping[str, Collection[str]]) -> Iterator[list[str]]:
    """Cases that wait for each other, one ring for each set of them: the first again at its end."""
    done = set[str]()
    for start in after:
        way = [start] if start not in done else []
        left = [iter(after[start])] if way else []
        while left:
            step = next(left[-1], None)
            if step is None:
                left.pop()
                done.add(way.pop())
            elif step in way:
                yield [*way[way.index(step) :], step]
            elif step not in done:
                way.append(step)
                left.append(iter(after[step]))
