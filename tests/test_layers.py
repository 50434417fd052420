"""The architecture as a table, held against what the files really import."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "pysrc" / "loadfirst"

ORDER = ("errors", "units", "physics", "plant", "instruments", "clock", "causes", "days", "evidence", "cases",
         "door")  # fmt: skip
"""Left never imports right."""

OUTSIDE = {  # what a layer may import from elsewhere, besides the standard library
    "errors": set(),
    "units": set(),
    "physics": {"numpy"},
    "plant": {"numpy", "msgspec"},
    "instruments": {"numpy", "msgspec"},
    "clock": {"numpy", "msgspec"},
    "causes": {"numpy", "msgspec"},
    "evidence": {"numpy", "msgspec"},
    "cases": {"numpy", "msgspec"},
    "days": {"numpy", "msgspec"},
    "door": {"numpy", "msgspec"},
    "cli": {"numpy", "msgspec"},
    "__main__": set(),
}
ABOVE_ALL = ("cli", "__main__")  # the command line stands beside the door and may use everything

PURE = ("errors", "units", "physics")
IMPURE = {
    "os",
    "pathlib",
    "io",
    "sys",
    "json",
    "time",
    "random",
    "subprocess",
    "socket",
    "threading",
    "tomllib",
}
"""Numbers in, numbers out: these layers know no files, no clock, no chance."""


def layer_of(path: Path) -> str:
    """The layer that a file belongs to."""
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imports(path: Path) -> Iterator[str]:
    """Full names of the modules that a file imports, wherever in it."""
    for found in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(found, ast.Import):
            yield from (name.name for name in found.names)
        elif isinstance(found, ast.ImportFrom):
            assert found.level == 0, f"{path.name} imports relatively"
            yield found.module or ""
            if found.module == "loadfirst":
                yield from (f"loadfirst.{name.name}" for name in found.names)


def files() -> list[Path]:
    """All files that belong to a layer."""
    return sorted(
        path for path in PACKAGE.rglob("*.py") if path.parent != PACKAGE or path.name != "__init__.py"
    )


@pytest.mark.native
@pytest.mark.parametrize("path", files(), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_a_file_imports_only_what_its_layer_may(path: Path) -> None:
    """No import points right in the table, and outside packages are those listed for the layer."""
    import sys

    layer = layer_of(path)
    assert layer in OUTSIDE, f"{layer} is not in the table"
    allowed = set(ORDER) | {"cli"} if layer in ABOVE_ALL else set(ORDER[: ORDER.index(layer) + 1])
    for name in imports(path):
        top, *rest = name.split(".")
        if top == "loadfirst":
            assert not rest or rest[0] in allowed, f"{layer} imports {name}"
        elif top in sys.stdlib_module_names:
            assert layer not in PURE or top not in IMPURE, f"{layer} imports {name}"
        else:
            assert top in OUTSIDE[layer], f"{layer} imports {name}"


@pytest.mark.native
def test_the_door_loads_neither_scipy_nor_matplotlib() -> None:
    """The live path must stay light enough for a phone."""
    import subprocess
    import sys

    asked = (
        "import sys; import loadfirst.door.handle; "
        "print([name for name in ('scipy', 'matplotlib', 'pandas') if name in sys.modules])"
    )
    told = subprocess.run(
        [sys.executable, "-c", asked], env={"PYTHONPATH": str(PACKAGE.parent)}, capture_output=True, text=True
    )
    assert told.stdout.strip() == "[]", told.stderr
