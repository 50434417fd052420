"""The Python of the site, compiled by the browser's own Python in Node, kept by hash."""

from __future__ import annotations

import json
import os
import shutil
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from loadfirst_dev import node, places
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import Pins, digest
from loadfirst_dev.say import say

START = places.SITE_SOURCE / "js" / "engine" / "start.js"
UNPACK = places.SITE_SOURCE / "js" / "engine" / "pack.js"
RUNTIME = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
KEPT = 12  # compiled sets of one clone's changing sources; older ones are thrown away


@dataclass(frozen=True)
class Trace:
    """What a run of the door used, and what the page may show before its own Python answers."""

    files: frozenset[str]
    first: Mapping[str, Any]
    cases: Mapping[str, Any]


class Compiler:
    """Runs the browser's Python in Node; remembers results by the hash of all that went in."""

    def __init__(self, pins: Pins, store: Store) -> None:
        self.pins, self.store = pins, store
        self.kept = store.root / "compiled"

    def library(self) -> dict[str, bytes]:
        """Archives of compiled files by part: ``python``, ``numpy``, ``msgspec``; from the pins alone."""
        sources = {part: self.store.read(self.pins.of_part(part)) for part in ("python", "numpy", "msgspec")}
        stock = sources["python"]
        return self.compile(
            stock, sources, "Compiling the standard library and numpy for the browser, once …"
        )

    def compile(self, stdlib: bytes, sources: Mapping[str, bytes], saying: str) -> dict[str, bytes]:
        """Archives of sources as archives of compiled files."""
        what = [node.INSIDE / "compile.mjs", node.INSIDE / "compile.py", node.INSIDE / "python.mjs", START]
        key = self.key(what, *sources.values())

        def make(folder: Path) -> dict[str, bytes]:
            archives = []
            for name, data in sources.items():
                (folder / f"{name}.from").write_bytes(data)
                archives.append([str(folder / f"{name}.from"), str(folder / f"{name}.to")])
            job = {"archives": archives, "compiler": str(node.INSIDE / "compile.py")}
            self.run("compile.mjs", folder, stdlib, job)
            return {name: (folder / f"{name}.to").read_bytes() for name in sources}

        return self.remember(key, make, saying)

    def trace(self, stdlib: bytes, contents: list[bytes]) -> Trace:
        """Work the door with these packs and see which files it needs."""
        what = [
            node.INSIDE / "trace.mjs",
            node.INSIDE / "trace.py",
            node.INSIDE / "python.mjs",
            START,
            UNPACK,
        ]
        key = self.key(what, stdlib, *contents)

        def make(folder: Path) -> dict[str, bytes]:
            paths = [folder / f"{number}.pack" for number in range(len(contents))]
            for path, data in zip(paths, contents, strict=True):
                path.write_bytes(data)
            job = {
                "packs": [str(path) for path in paths],
                "tracer": str(node.INSIDE / "trace.py"),
                "result": str(folder / "result.json"),
            }
            self.run("trace.mjs", folder, stdlib, job)
            return {"result": (folder / "result.json").read_bytes()}

        found = json.loads(self.remember(key, make, "Trying the engine in the browser's Python …")["result"])
        return Trace(frozenset(found["files"]), found["first"], found["cases"])

    def run(self, script: str, folder: Path, stdlib: bytes, job: dict[str, Any]) -> None:
        """One run of Node with the runtime laid out in `folder`."""
        for name in RUNTIME:
            (folder / name).write_bytes(self.store.read(self.pins.file(name)))
        (folder / "stdlib.zip").write_bytes(stdlib)
        job |= {
            "start": str(START),
            "runtime": f"{folder}{os.sep}",
            "stdlib": str(folder / "stdlib.zip"),
            "lock": lock(self.pins),
        }
        (folder / "job.json").write_text(json.dumps(job))
        node.run(node.node(self.pins), script, str(folder / "job.json"))

    def key(self, scripts: list[Path], *inputs: bytes) -> str:
        """Hash of everything that a result depends on."""
        runtime = [self.pins.file(name).sha256.encode() for name in RUNTIME]
        parts = [*runtime, *(path.read_bytes() for path in scripts), *inputs]
        return digest(b"".join(digest(part).encode() for part in parts))[:24]

    def remember(self, key: str, make: Any, saying: str) -> dict[str, bytes]:
        """The kept result for this key, whole and unchanged, or a new one."""
        folder = self.kept / key
        known = self.recall(folder)
        if known is not None:
            os.utime(folder)
            return known
        say(saying)
        self.kept.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=self.kept, prefix="making-") as scratch:
            result: dict[str, bytes] = make(Path(scratch))
        self.keep(folder, result)
        return result

    def recall(self, folder: Path) -> dict[str, bytes] | None:
        """What `keep` wrote, unless it was damaged since."""
        try:
            sums: dict[str, str] = json.loads((folder / "sums.json").read_text())
            found = {name: (folder / name).read_bytes() for name in sums}
        except (OSError, ValueError):
            return None
        return found if all(digest(found[name]) == sums[name] for name in sums) else None

    def keep(self, folder: Path, result: Mapping[str, bytes]) -> None:
        """Store a result; the sums come last, so that half a result is never taken for one."""
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
        for name, data in result.items():
            (folder / name).write_bytes(data)
        (folder / "sums.json").write_text(json.dumps({name: digest(data) for name, data in result.items()}))
        by_age = sorted(
            (path for path in self.kept.iterdir() if path.is_dir()), key=lambda path: path.stat().st_mtime
        )
        for old in by_age[:-KEPT]:
            shutil.rmtree(old, ignore_errors=True)


def lock(pins: Pins) -> dict[str, str]:
    """What Pyodide wants to read from a release's lock file, of which no package is used."""
    python = f"{pins.pyodide['python']}.0"
    return {"abi_version": pins.pyodide["abi"], "arch": "wasm32", "platform": "emscripten", "python": python}
