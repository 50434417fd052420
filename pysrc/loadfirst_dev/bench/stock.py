"""A bare page beside the site: stock Pyodide that imports numpy, and nothing else.

The runtime's files are the pinned ones, untouched. The lock file lists numpy
alone: the release's own is 150 kB longer, which would only make the bare page
slower and heavier.
"""

from __future__ import annotations

import json
from pathlib import Path

from loadfirst_dev import places
from loadfirst_dev.compiled import lock
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import Pins

SERVED = places.TOOL / "bench" / "served"
RUNTIME = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")
PAGE = ("stock.html", "stock.js", "stock-worker.js")


def stock_lock(pins: Pins) -> bytes:
    """A lock file that knows one package."""
    wheel = pins.of_part("numpy")
    numpy = {
        "name": "numpy",
        "version": pins.parts["numpy"].version,
        "file_name": wheel.name,
        "sha256": wheel.sha256,
        "install_dir": "site",
        "package_type": "package",
        "imports": ["numpy"],
        "depends": [],
        "unvendored_tests": False,
    }
    return json.dumps({"info": lock(pins), "packages": {"numpy": numpy}}).encode()


def write_stock(pins: Pins, store: Store, folder: Path) -> None:
    """Write the page and its runtime into `folder`."""
    folder.mkdir(parents=True, exist_ok=True)
    files = [*(pins.file(name) for name in RUNTIME), pins.of_part("numpy")]
    contents = {file.name: store.read(file) for file in files}
    contents["pyodide-lock.json"] = stock_lock(pins)
    contents |= {name: (SERVED / name).read_bytes() for name in PAGE}
    for name, data in contents.items():
        (folder / ("index.html" if name == "stock.html" else name)).write_bytes(data)
