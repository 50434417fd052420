"""What of this clone the browser's Python runs: which test files, and with which packages."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import Any

from loadfirst_dev import packs
from loadfirst_dev.compiled import Compiler

TESTS = Path(__file__).parent
FOLDERS = ("physics", "plant", "instruments", "causes", "days", "evidence", "cases", "door", "published")
"""Folders of tests that hold in the browser too."""
ABSENT = {"fluids", "chemicals", "scipy", "subprocess", "playwright", "loadfirst_dev", "loadfirst.cli"}
"""What the browser's Python has not; a test file that imports one of these stays native."""


def imported(path: Path) -> set[str]:
    """Top names of all that a file or one of its helpers imports, and the command line where one does."""
    found, files = set[str](), [path]
    for file in files:  # grows; helpers may import each other
        for name in names(file):
            top, *rest = name.split(".")
            helper = TESTS.joinpath(*rest).with_suffix(".py")
            if top != "tests":
                found.add("loadfirst.cli" if name.startswith("loadfirst.cli") else top)
            elif helper.exists() and helper not in files:
                files.append(helper)
    return found


def names(path: Path) -> set[str]:
    """Full names of all modules that a file may import."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {name.name for name in node.names}
        elif isinstance(node, ast.ImportFrom):
            found |= {node.module or "", *(f"{node.module}.{name.name}" for name in node.names)}
    return found


def browser_files() -> list[Path]:
    """The test files that the browser's Python can run."""
    found = [path for folder in FOLDERS for path in sorted((TESTS / folder).rglob("test_*.py"))]
    return [path for path in found if not imported(path) & ABSENT]


def clone() -> dict[str, bytes]:
    """What of the clone the tests need beside the package."""
    repo = TESTS.parent
    wanted = set(browser_files())
    tests = {
        f"tests/{name}": data
        for name, data in packs.folder_contents(TESTS).items()
        if (TESTS / name) in wanted or not Path(name).name.startswith("test_")
    }
    scenarios = packs.folder_contents(repo / "scenarios", "scenarios/")
    return {**tests, **scenarios, "pyproject.toml": (repo / "pyproject.toml").read_bytes()}


def wheels(store: Any) -> dict[str, bytes]:
    """pytest and hypothesis, compiled as the site's Python is."""
    compiler = Compiler(store.pins, store)
    sources = {file.part: store.read(file) for file in store.pins.group("tests")}
    made = compiler.compile(compiler.library()["python"], sources, "Compiling pytest for the browser, once …")
    return {name: data for archive in made.values() for name, data in packs.zip_contents(archive).items()}
