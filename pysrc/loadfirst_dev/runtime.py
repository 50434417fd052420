"""The folder `runtime` of the site: Pyodide, the Python that is used at once, the rest, a manifest."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import Any

from loadfirst_dev import packs, places, stand_ins
from loadfirst_dev.compiled import Compiler, Trace, lock
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import Pins, digest

STDLIB = "/lib/python314.zip/"
PACKAGES = "/lib/python3.14/site-packages/"
MEMORY = "sitecustomize.py"
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
    return {name: data for name, data in (code | scenarios | late).items() if wanted(name)}


def added_sources(pins: Pins) -> dict[str, bytes]:
    """What the standard library is given: leaner modules, and the imports from memory."""
    leaner = stand_ins.sources("python")
    version = pins.pyodide["version"].encode()
    leaner["pyodide/__init__.py"] = leaner["pyodide/__init__.py"].replace(b"PINNED", version)
    return leaner | {MEMORY: (places.TOOL / "inside" / MEMORY).read_bytes()}


def wanted(name: str) -> bool:
    """Whether the page has any use for a file: it has no command line, and its readers no authors' guide."""
    return not name.endswith(".md") and not name.startswith(("loadfirst/cli/", "loadfirst/__main__"))


def make_runtime(pins: Pins, store: Store) -> Runtime:
    """Everything of the folder `runtime`, by name."""
    compiler = Compiler(pins, store)
    library = compiler.library()
    source = {"loadfirst": own_sources(), "python": added_sources(pins), "numpy": stand_ins.sources("numpy")}
    zipped = {part: packs.stored_zip(files) for part, files in source.items()}
    compiled = compiler.compile(library["python"], zipped, "Compiling the engine for the browser …")
    own, leaner_stdlib, leaner_numpy = (packs.zip_contents(compiled[part]) for part in source)
    stdlib = stand_ins.replace(packs.zip_contents(library["python"]), leaner_stdlib)
    numpy = stand_ins.replace(packs.zip_contents(library["numpy"]), leaner_numpy)
    packages = numpy | packs.zip_contents(library["msgspec"])
    trace = compiler.trace(packs.stored_zip(stdlib), [packs.pack(packages), packs.pack(own)])
    first_stdlib, rest_stdlib = packs.split(stdlib, names_under(trace, STDLIB))
    first_packages, rest_packages = packs.split(packages, names_under(trace, PACKAGES))
    at_once = {
        "pyodide": ("js", store.read(pins.file("pyodide.mjs"))),
        "module": ("js", store.read(pins.file("pyodide.asm.mjs"))),
        "wasm": ("wasm", store.read(pins.file("pyodide.asm.wasm"))),
        "stdlib": ("pack", packs.pack(stand_ins.with_table("stdlib", first_stdlib))),
        "packages": ("pack", packs.pack(stand_ins.with_table("packages", first_packages))),
        "loadfirst": ("pack", packs.pack(stand_ins.with_table("loadfirst", own))),
    }
    late = {"late-stdlib": rest_stdlib, "late-packages": rest_packages}
    return Runtime(runtime_files(pins, at_once, late), trace)


def names_under(trace: Trace, root: str) -> set[str]:
    """The used files below a folder of the browser's Python."""
    return {path.removeprefix(root) for path in trace.files if path.startswith(root)}


def module_names(contents: packs.Contents) -> str:
    """Full names of the modules among these files, between spaces."""
    names = set()
    for path in contents:
        stem = path.removesuffix(".pyc") if path.endswith(".pyc") else path.split(".cpython-")[0]
        if path.endswith((".pyc", ".so")):
            names.add(stem.removesuffix("/__init__").replace("/", "."))
    return " ".join(sorted(names))


def named(ending: str, key: str, data: bytes) -> str:
    """A name that holds the hash of what is in the file."""
    return f"{key}.{digest(data)[:12]}.{ending}"


def runtime_files(
    pins: Pins, at_once: dict[str, tuple[str, bytes]], late: dict[str, dict[str, bytes]]
) -> dict[str, bytes]:
    """Files under their names, and the manifest that the worker reads first."""
    files: dict[str, bytes] = {}
    manifest: dict[str, Any] = {"lock": lock(pins), "files": {}, "late": {}}
    for key, (ending, data) in at_once.items():
        name = named(ending, key, data)
        files[name] = data
        manifest["files"][key] = {"file": name, "size": len(data)}
    for key, contents in late.items():
        data = packs.pack(contents)
        name = named("pack", key, data)
        files[name] = data
        manifest["late"][key] = {"file": name, "size": len(data), "modules": module_names(contents)}
    text = json.dumps(manifest, indent=1) + "\n"
    return files | {"manifest.json": text.encode()}
