"""Runs in the page's Python: brings a module that the first download left out, when it is imported.

The page starts with the files that the engine was seen to use. Whatever else
is imported, in a corner nobody walked through while building, is found here:
the rest is fetched then, once, and the import goes on as if it had been there.
"""

from __future__ import annotations

import importlib
import json
import sys
from collections.abc import Callable, Mapping, Sequence
from importlib.machinery import ModuleSpec, PathFinder
from types import ModuleType

ROOT = "/lib/late"


class LateFinder:
    """Asked last by Python's import.

    Parameters
    ----------
    bring : callable
        Fetches the late file of a key and unpacks it below `ROOT`; returns when it is there.
    modules : mapping
        Key of the late file that holds a module, by the module's full name.
    """

    def __init__(self, bring: Callable[[str], object], modules: Mapping[str, str]) -> None:
        self.bring, self.modules = bring, modules
        self.brought: set[str] = set()

    def find_spec(
        self, name: str, path: Sequence[str] | None = None, target: ModuleType | None = None
    ) -> ModuleSpec | None:
        """Where a module is that nobody else found; part of Python's import protocol."""
        key = self.modules.get(name)
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
            raise ImportError(f"{name} is not here yet and could not be fetched", name=name) from error
        self.brought.add(key)
        importlib.invalidate_caches()


def install(bring: Callable[[str], object], listing: str) -> None:
    """Let imports find the rest.

    Parameters
    ----------
    bring : callable
        See `LateFinder`.
    listing : str
        JSON: for each key of a late file the names of its modules, between spaces.
    """
    modules = {name: key for key, names in json.loads(listing).items() for name in names.split()}
    sys.meta_path.append(LateFinder(bring, modules))
