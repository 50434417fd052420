"""The command line for authors and engineers: ``python -m loadfirst read PLANT.toml``."""

from __future__ import annotations

import io
import sys

from loadfirst.cli.commands import run


def main(arguments: list[str] | None = None) -> int:
    """Run one command.

    Parameters
    ----------
    arguments : list of str, optional
        Without the program's name; those of the process when left out.

    Returns
    -------
    int
        0 good, 1 a problem in the file, 2 wrong usage.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):  # a terminal that lacks "m³" gets a question mark, no crash
            stream.reconfigure(errors="replace")
    return run(sys.argv[1:] if arguments is None else arguments)


if __name__ == "__main__":
    sys.exit(main())
