"""The command line for authors and engineers: ``python -m loadfirst read PLANT.toml``."""

from __future__ import annotations

import io
import os
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
    try:
        code = run(sys.argv[1:] if arguments is None else arguments)
        sys.stdout.flush()
    except BrokenPipeError:  # the reader of a pipe (`| head`) has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    return code


if __name__ == "__main__":
    sys.exit(main())
