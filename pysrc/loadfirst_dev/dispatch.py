"""Finds the command that was asked for, and words what went wrong."""

from __future__ import annotations

import importlib
import pkgutil
import sys

from loadfirst_dev import commands
from loadfirst_dev.say import Problem


def known() -> list[str]:
    """Names of all commands: the files of the folder `commands`."""
    return sorted(found.name for found in pkgutil.iter_modules(commands.__path__))


def usage() -> str:
    """The list of commands, one line each."""
    lines = ["python3 pysrc/loadfirst_dev COMMAND [--help]", ""]
    for name in known():
        about = importlib.import_module(f"{commands.__name__}.{name}").__doc__ or ""
        lines.append(f"  {name:8} {about.splitlines()[0]}")
    return "\n".join(lines)


def main(arguments: list[str]) -> int:
    """Run one command. Returns the exit code: 0 good, 1 it did not work, 2 wrong usage."""
    name, *rest = arguments or ["--help"]
    if name in ("-h", "--help"):
        print(usage())
        return 0
    if name not in known():
        print(f"{name!r} is not a command.\n\n{usage()}", file=sys.stderr)
        return 2
    try:
        return int(importlib.import_module(f"{commands.__name__}.{name}").main(rest))
    except Problem as problem:
        print(f"\n{problem}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("\nStopped.", file=sys.stderr)
        return 130
