"""Runs in the page's Python: brings a module that the first download left out, when it is imported.

The page starts with the files that the engine was seen to use. Whatever else
is imported, in a corner nobody walked through while building, is found here:
the rest is fetched then, once, and the import goes on as if it had been there.
"""

from __future__ import annotations

import importlib
import sys
from collections.abc import Callable, Sequence
from importlib.machinery import ModuleSpec, PathFinder
from types import ModuleType

ROOT = "/lib/late"
PACKAGES = frozenset({"numpy", "msgspec"})


def holder(name: str) -> str | None:
    """Key of the late file that would hold a module; None where none would."""
    top = name.partition(".")[0]
    if top in PACKAGES:
        return "late-packages"
    return "late-stdlib" if top in sys.stdlib_module_names else None


class LateFinder:
    """Asked last by Python's import.

    Parameters
    ----------
    bring : callable
        Fetches the late file of a key and unpacks it below `ROOT`; returns when it is there.
    """

    def __init__(self, bring: Callable[[str], object]) -> None:
        self.bring = bring
        self.brought: set[str] = set()

    def find_spec(
        self, name: str, path: Sequence[str] | None = None, target: ModuleType | None = None
    ) -> ModuleSpec | None:
        """Where a module is that nobody else found; part of Python's import protocol."""
        key = holder(name)
        if key is None:
            return None
        if key not in self.brought:
            self.fetch(name, key)
        parent = name.rpartition(".")[0].replace(".", "/")
        return PathFinder.find_spec(name, [f"{ROOT}/{parent}" if parent else ROOT], target)

    def fetch(self, name: str, key: str) -> None:
        """Have the rest brought; an import that needs it fails as an import where that fails."""
        try:
            self.bring(key)
        except Exception as error:
            raise ImportError(f"{name} was left out of the first download and could not be fetched", name=name) from error
        self.brought.add(key)
        importlib.invalidate_caches()


def install(bring: Callable[[str], object]) -> None:
    """Let imports find the rest; see `LateFinder`."""
    sys.meta_path.append(LateFinder(bring))
