"""In place of Pyodide's own, which imports all that unpacking takes: the packages are there already."""

from importlib import import_module
from pathlib import Path
from typing import Any

SITE_PACKAGES = Path("/lib/python3.14/site-packages")
DSO_DIR = Path("/usr/lib")


def init_loaded_packages() -> None:
    """Tell which packages were there before the start: none."""


def __getattr__(name: str) -> Any:
    """All else is in the real module, which is brought when it is asked for."""
    return getattr(import_module("pyodide._package_loader_whole"), name)
