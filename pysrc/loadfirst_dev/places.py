"""Where things stand: the clone, what is made in it, and the user's cache."""

from __future__ import annotations

import os
from pathlib import Path

REPO = Path(__file__).resolve().parents[2]
SITE_SOURCE = REPO / "site"
PYTHON_SOURCE = REPO / "pysrc" / "loadfirst"
SCENARIOS = REPO / "scenarios"
TOOL = Path(__file__).resolve().parent

VENV = REPO / ".venv"
BUILT = REPO / ".built"
SITE = BUILT / "site"


def cache() -> Path:
    """The user's cache: LOADFIRST_CACHE, else `loadfirst` in XDG_CACHE_HOME or ~/.cache."""
    own = os.environ.get("LOADFIRST_CACHE")
    if own:
        return Path(own).absolute()
    return Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "loadfirst"
