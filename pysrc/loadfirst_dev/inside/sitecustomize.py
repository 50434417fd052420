"""Runs in the page's Python, found by the name that Python's start looks for: imports from memory.

Python's own import looks for each module in folder after folder, and each look
is a call out of wasm. The build puts the code of all modules of a pack into one
table, a file `*.code`; here a module is one look into that table.
"""

import marshal
import os
import sys

TYPE_CHECKING = False  # nothing may be imported here that is not built into Python
if TYPE_CHECKING:
    from importlib.abc import Loader as Base
    from importlib.machinery import ModuleSpec
    from types import CodeType, ModuleType
else:
    Base = object
    ModuleSpec = type(sys.__spec__)

LIBRARY = "/lib/python3.14"
PACKAGES = f"{LIBRARY}/site-packages"


class MemoryFinder(Base):
    """Asked first by Python's import.

    Attributes
    ----------
    code : dict
        By a module's full name: where its file would be, whether it is a package, its marshalled code.
    """

    def __init__(self) -> None:
        self.code: dict[str, tuple[str, bool, bytes]] = {}

    def add(self, folder: str) -> None:
        """Take up the tables of a folder."""
        for table in os.listdir(folder):
            if not table.endswith(".code"):
                continue
            with open(f"{folder}/{table}", "rb") as file:
                for name, (place, package, code) in marshal.load(file).items():
                    self.code[name] = (f"{folder}/{place}", package, code)

    def find_spec(self, name: str, path: object = None, target: object = None) -> ModuleSpec | None:
        """Part of Python's import protocol."""
        if name not in self.code:
            return None
        place, package, _ = self.code[name]
        spec = ModuleSpec(name, self, origin=place, is_package=package)
        spec.has_location = True
        if spec.submodule_search_locations is not None:
            spec.submodule_search_locations.append(place.rpartition("/")[0])
        return spec

    def create_module(self, spec: ModuleSpec) -> None:
        """Part of Python's import protocol: a module like any other."""

    def exec_module(self, module: ModuleType) -> None:
        """Part of Python's import protocol."""
        exec(self.get_code(module.__name__), module.__dict__)

    def get_code(self, name: str) -> CodeType:
        """Part of Python's import protocol."""
        code: CodeType = marshal.loads(self.code[name][2])
        return code

    def get_source(self, name: str) -> None:
        """Part of Python's import protocol: there are no sources here."""


FINDER = MemoryFinder()
FINDER.add(LIBRARY)
sys.meta_path.insert(0, FINDER)


def add_packages() -> None:
    """Take up what was unpacked since Python started, and forget what Python knows of folders."""
    FINDER.add(PACKAGES)
    sys.path_importer_cache.clear()
