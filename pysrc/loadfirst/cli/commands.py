"""The commands and their exit codes: 0 good, 1 a problem in the file, 2 wrong usage."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import msgspec

from loadfirst.cases.case import LEVELS, Case
from loadfirst.cases.collection import COLLECTION, Played
from loadfirst.cases.compose.subject import GROUPS, SEEDS, Wish
from loadfirst.cli.causes import catalogue_text, table, table_csv, table_text
from loadfirst.cli.check import check_file, collection_faults, collection_text, files, order, passed_over
from loadfirst.cli.compose import Order, composed, share
from loadfirst.cli.convert import curves_output, read_output
from loadfirst.cli.evidence import evidence_text
from loadfirst.cli.guide import KINDS, SPECIMEN, guide
from loadfirst.cli.guide_case import LISTS
from loadfirst.cli.plant_file import WANTED, plant_of
from loadfirst.cli.report import curves_text, read_text
from loadfirst.cli.schema import schemas
from loadfirst.cli.settings import parse_settings
from loadfirst.errors import FileError, InputError
from loadfirst.instruments.panel import readings
from loadfirst.plant import library
from loadfirst.plant.automatic import settled
from loadfirst.plant.build import build
from loadfirst.plant.curves import POINTS, curves
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import true_state

GOOD, BAD_FILE, BAD_USAGE = 0, 1, 2


def run(arguments: list[str]) -> int:
    """Run one command and return its exit code."""
    chosen = _parser().parse_args(arguments)
    try:
        code: int = chosen.command(chosen)
        return code
    except FileError as fault:
        return _complain(fault, BAD_FILE)
    except InputError as fault:  # the file is sound, so it came from --set
        return _complain(fault, BAD_USAGE)


def read(chosen: argparse.Namespace) -> int:
    """``read``: what every instrument shows, duty point, head breakdown, power."""
    resolved = settled([_resolve(chosen)])[0]
    state = true_state(resolved)
    output = read_output(chosen.plant.name, resolved.plant, state, readings(state, resolved.plant))
    print(_json(output) if chosen.json else read_text(output))
    return GOOD if state.converged else BAD_FILE


def show_curves(chosen: argparse.Namespace) -> int:
    """``curves``: load and machine over flow."""
    built = build(settled([_resolve(chosen)]))
    state = true_state(built)
    flows = [machine.flow for machine in state.machines]
    found = curves(built, state.duty, chosen.points, flows)
    output = curves_output(chosen.plant.name, built.plants[0].plant, state, found)
    print(_json(output) if chosen.json else curves_text(output))
    return GOOD if state.converged else BAD_FILE


def check(chosen: argparse.Namespace) -> int:
    """``check``: every file, each answered, a sound one on the standard output; 1 where any does not hold."""
    code, every, cases = GOOD, list[Played](), dict[str, Case]()
    asked = files(chosen.files)
    for path in asked:
        try:
            if note := passed_over(path, chosen.files):
                print(note, flush=True)
                continue
            found = check_file(path, play=not chosen.claims)
        except FileError as fault:
            code = _complain(fault, BAD_FILE)
            continue
        print(found.text, flush=True)
        for amiss in found.faults:
            code = _complain(amiss, BAD_FILE)
        every += [found.played] if found.played else []
        cases |= {path.stem: found.case} if found.case else {}
    for amiss in order(cases, asked):
        code = _complain(amiss, BAD_FILE)
    if len(every) > 1:
        print(collection_text(every))
    if len(every) >= COLLECTION:
        for complaint in collection_faults(every):
            print(complaint, file=sys.stderr)
            code = BAD_FILE
    return code


def show_schema(chosen: argparse.Namespace) -> int:
    """``schema``: JSON schemas of the files and of the JSON output."""
    every = schemas()
    print(_json(every[chosen.kind] if chosen.kind else every))
    return GOOD


def show_guide(chosen: argparse.Namespace) -> int:
    """``guide``: every key of a kind of file, as the author's guide has it."""
    print(guide(chosen.kind))
    return GOOD


def show_causes(chosen: argparse.Namespace) -> int:
    """``causes``: the catalogue, then what each does to the readings of a plant."""
    found = table(chosen.plant or library.path("plants", SPECIMEN))
    if chosen.csv:
        sys.stdout.write(table_csv(found))
    else:
        print(f"{catalogue_text()}\n\n{table_text(found)}")
    return GOOD


def evidence(chosen: argparse.Namespace) -> int:
    """``evidence``: which cause explains the readings of two days, and what to look at next."""
    print(evidence_text(chosen.plant, chosen.readings, chosen.beside))
    return GOOD


def compose(chosen: argparse.Namespace) -> int:
    """``compose``: puzzles from a seed; the share of draws that made one, on the standard error."""
    plant = None if chosen.plant is None else library.known("plants", chosen.plant)
    wish = Wish(chosen.seed, plant, chosen.group, chosen.level)
    every = list(composed(Order(wish, chosen.count, chosen.output, chosen.explain)))
    print(share(every), file=sys.stderr)
    return GOOD


def _resolve(chosen: argparse.Namespace) -> ResolvedPlant:
    return plant_of(chosen.plant, parse_settings(chosen.set))


def _json(output: Any) -> str:
    return json.dumps(msgspec.to_builtins(output), indent=2, ensure_ascii=False, allow_nan=False)


def _complain(fault: InputError, code: int) -> int:
    print(fault.text, file=sys.stderr)
    return code


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m loadfirst",
        description="What the instruments of a plant show, computed from its file.",
        epilog="Exit codes: 0 good, 1 a problem in the file (or no steady state found), 2 wrong usage.",
    )
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    _plant_command(commands, "read", "what every instrument shows, duty point, head breakdown, power", read)
    shower = _plant_command(commands, "curves", "load and machine over flow", show_curves)
    many = f"points per curve ({POINTS})"
    shower.add_argument("--points", type=_whole(2, 1000), default=POINTS, metavar="N", help=many)
    checker = commands.add_parser(
        "check",
        help="whether plants, pumps and puzzles hold, a puzzle's proof included",
        description="check: whether files hold. What each of them is, its keys tell.",
    )
    checker.add_argument(
        "files", type=Path, nargs="+", metavar="FILE.toml", help="a file, or a folder of them"
    )
    alone = "test a puzzle's claims alone; do not play it many times to see whether it is fair"
    checker.add_argument("--claims", action="store_true", help=alone)
    checker.set_defaults(command=check)
    schema = commands.add_parser("schema", help="JSON schemas of the files and of the JSON output")
    schema.add_argument("kind", nargs="?", choices=list(schemas()), help="only this one")
    schema.set_defaults(command=show_schema)
    tables = commands.add_parser(
        "guide", help="every key with unit, range and default, or a list of ids, as Markdown"
    )
    tables.add_argument("kind", choices=[*KINDS, *LISTS])
    tables.set_defaults(command=show_guide)
    causes = commands.add_parser(
        "causes",
        help="everything that can change at a plant, and what it does to the readings",
        description="causes: the catalogue of causes, and a table of what each does to a plant's readings.",
    )
    about = f"the plant of the table ({SPECIMEN}): {WANTED}"
    causes.add_argument("--plant", type=Path, metavar="PLANT", help=about)
    rows = "the table alone, every quantity in SI units, as comma-separated values"
    causes.add_argument("--csv", action="store_true", help=rows)
    causes.set_defaults(command=show_causes)
    weigher = commands.add_parser(
        "evidence",
        help="which cause explains the readings of two days, and what to look at next",
        description="evidence: weigh every cause that a plant can have against what was read and seen.",
    )
    known = f"the plant as it was known yesterday: {WANTED}"
    weigher.add_argument("plant", type=Path, metavar="PLANT", help=known)
    weigher.add_argument("readings", type=Path, metavar="READINGS.toml", help="what was read and seen")
    weigher.add_argument(
        "--with", dest="beside", metavar="CAUSE", help="weigh each cause together with this one too"
    )
    weigher.set_defaults(command=evidence)
    _compose_command(commands)
    return parser


def _compose_command(commands: Any) -> None:
    says = "puzzles drawn from a seed, for practice: proven and fair"
    parser = commands.add_parser("compose", help=says, description=f"compose: {says}.")
    parser.add_argument(
        "--seed", type=_whole(1, SEEDS), required=True, metavar="N", help="the same seed, the same puzzle"
    )
    parser.add_argument("--plant", metavar="ID", help="id of a packaged plant")
    parser.add_argument("--group", choices=GROUPS, help="where it is to sit")
    parser.add_argument("--level", choices=LEVELS, help="for whom it is meant")
    more = "so many, of this seed and those after it (1)"
    parser.add_argument("--count", type=_whole(1, 1000), default=1, metavar="K", help=more)
    parser.add_argument(
        "-o", "--output", type=Path, metavar="FOLDER", help="write files there instead of printing them"
    )
    parser.add_argument("--explain", action="store_true", help="say of each draw that was refused why")
    parser.set_defaults(command=compose)


def _plant_command(commands: Any, name: str, says: str, command: Any) -> argparse.ArgumentParser:
    parser: argparse.ArgumentParser = commands.add_parser(name, help=says, description=f"{name}: {says}.")
    parser.add_argument("plant", type=Path, metavar="PLANT", help=WANTED)
    parser.add_argument(
        "--set", action="append", default=[], metavar="KEY=VALUE", help="change a key: valve.opening=0.3"
    )
    parser.add_argument("--json", action="store_true", help="print JSON, units in the key names")
    parser.set_defaults(command=command)
    return parser


def _whole(low: int, high: int) -> Callable[[str], int]:
    def number(text: str) -> int:
        if not (text.isascii() and text.isdigit() and len(text) < 9 and low <= int(text) <= high):
            raise argparse.ArgumentTypeError(f"{text[:20]!r} is not a whole number from {low} to {high}")
        return int(text)

    return number
