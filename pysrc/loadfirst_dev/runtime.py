"""The folder `runtime` of the site: Pyodide, the Python that is used at once, the rest for later, a manifest."""

from __future__ import annotations

import json
from dataclasses import dataclass

from loadfirst_dev import packs, places
from loadfirst_dev.compiled import Compiler, Trace, lock
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import Pins, digest

STDLIB = "/lib/python314.zip/"
PACKAGES = "/lib/python3.14/site-packages/"
LATE = "late_imports.py"
"""Found last by Python's import: brings a file that the first packs left out."""


@dataclass(frozen=True)
class Runtime:
    """Contents of the folder, and what was learnt while making it."""

    files: dict[str, bytes]
    trace: Trace


def own_sources() -> dict[str, bytes]:
    """The package as it is installed in the browser: its code, the scenarios beside it, the late imports."""
    code = packs.folder_contents(places.PYTHON_SOURCE, "loadfirst/")
    scenarios = packs.folder_contents(places.SCENARIOS, "loadfirst/scenarios/")
    late = {LATE: (places.TOOL / "inside" / LATE).read_bytes()}
    return {name: data for name, data in (code | scenarios | late).items() if not name.endswith(".md")}


def make_runtime(pins: Pins, store: Store) -> Runtime:
    """Everything of the folder `runtime`, by name."""
    compiler = Compiler(pins, store)
    library = compiler.library()
    source = {"loadfirst": packs.stored_zip(own_sources())}
    own = packs.zip_contents(compiler.compile(library["python"], source, "Compiling the engine for the browser …")["loadfirst"])
    stdlib = packs.zip_contents(library["python"])
    packages = packs.zip_contents(library["numpy"]) | packs.zip_contents(library["msgspec"])
    trace = compiler.trace(library["python"], [packs.pack(packages), packs.pack(own)])
    first_stdlib, rest_stdlib = packs.split(stdlib, names_under(trace, STDLIB))
    first_packages, rest_packages = packs.split(packages, names_under(trace, PACKAGES))
    at_once = {
        "pyodide": ("js", store.read(pins.file("pyodide.mjs"))),
        "module": ("js", store.read(pins.file("pyodide.asm.mjs"))),
        "wasm": ("wasm", store.read(pins.file("pyodide.asm.wasm"))),
        "stdlib": ("zip", packs.stored_zip(first_stdlib)),
        "packages": ("pack", packs.pack(first_packages)),
        "loadfirst": ("pack", packs.pack(own)),
    }
    late = {
        "late-stdlib": ("pack", packs.pack(rest_stdlib)),
        "late-packages": ("pack", packs.pack(rest_packages)),
    }
    return Runtime(named(pins, at_once, late), trace)


def names_under(trace: Trace, root: str) -> set[str]:
    """The used files below a folder of the browser's Python."""
    return {path.removeprefix(root) for path in trace.files if path.startswith(root)}


def named(pins: Pins, at_once: dict[str, tuple[str, bytes]], late: dict[str, tuple[str, bytes]]) -> dict[str, bytes]:
    """Files under names that hold their hash, and the manifest that the worker reads first."""
    files: dict[str, bytes] = {}
    manifest: dict[str, object] = {"lock": lock(pins)}
    for group, members in (("files", at_once), ("late", late)):
        table = {}
        for key, (ending, data) in members.items():
            name = f"{key}.{digest(data)[:12]}.{ending}"
            files[name] = data
            table[key] = {"file": name, "size": len(data)}
        manifest[group] = table
    text = json.dumps(manifest, indent=1) + "\n"
    return files | {"manifest.json": text.encode()}
