"""Runs in the browser's Python while building: turns archives of sources into archives of compiled files.

Standard library only, and the same bytes at every run: names sorted, dates
fixed, nothing compressed (a server compresses better what is not).
"""

from __future__ import annotations

import importlib.util
import marshal
import zipfile

LONG_AGO = (1980, 1, 1, 0, 0, 0)
WITHOUT_DOCSTRINGS = 2  # as python -OO; the page sets PYTHONOPTIMIZE to match
HEAD = importlib.util.MAGIC_NUMBER + (0b01).to_bytes(4, "little")  # PEP 552: by hash, unchecked
ONLY_DOCSTRINGS = ("numpy/_core/_add_newdocs.py", "numpy/_core/_add_newdocs_scalars.py")
"""Modules that do nothing but hang docstrings on compiled functions; empty ones take their place."""
LEFT_OUT = (".pyi", ".pxd", ".pyx", ".h", ".c", ".a", ".pc", ".ini", ".typed", ".bat")


def compile_archive(source: str, target: str) -> None:
    """Compile every Python file of the archive `source` into the new archive `target`."""
    with zipfile.ZipFile(source) as archive:
        names = sorted(info.filename for info in archive.infolist() if not info.is_dir())
        made = dict(compiled(name, archive.read(name)) for name in names if wanted(name))
    with zipfile.ZipFile(target, "w", zipfile.ZIP_STORED) as archive:
        for name in sorted(made):
            entry = zipfile.ZipInfo(name, LONG_AGO)
            entry.create_system = 3
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, made[name])


def wanted(name: str) -> bool:
    """Whether a file can be of use when Python runs."""
    return not name.endswith(LEFT_OUT) and "/tests/" not in name and ".dist-info/" not in name


def compiled(name: str, data: bytes) -> tuple[str, bytes]:
    """A source as its compiled file, never checked against the source again; any other file as it is."""
    if not name.endswith(".py"):
        return name, data
    code = compile(
        b"" if name in ONLY_DOCSTRINGS else data, name, "exec", dont_inherit=True, optimize=WITHOUT_DOCSTRINGS
    )
    return name + "c", HEAD + importlib.util.source_hash(data) + marshal.dumps(code)
