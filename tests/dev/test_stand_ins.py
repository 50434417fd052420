"""Leaner modules in place of others, and the table that modules are imported from."""

from __future__ import annotations

import marshal

from loadfirst_dev import stand_ins


def test_a_replaced_file_is_kept_beside_its_stand_in() -> None:
    """A module under a longer name, a package inside itself; what is only added replaces nothing."""
    contents = {"a/__init__.pyc": b"package", "a/b.pyc": b"module", "c.pyc": b"other"}
    leaner = {"a/__init__.pyc": b"lean", "a/b.pyc": b"lean too", "new.pyc": b"new"}
    assert stand_ins.replace(contents, leaner) == {
        "a/__init__.pyc": b"lean",
        "a/_whole.pyc": b"package",
        "a/b.pyc": b"lean too",
        "a/b_whole.pyc": b"module",
        "c.pyc": b"other",
        "new.pyc": b"new",
    }


def test_code_goes_into_the_table_and_all_else_stays_a_file() -> None:
    """By full names, without the head of compiled files; what Python's start imports stays a file."""
    head = bytes(16)
    files = stand_ins.with_table(
        "x",
        {
            "a/__init__.pyc": head + b"package",
            "a/b.pyc": head + b"module",
            "a/c.so": b"library",
            "encodings/__init__.pyc": head + b"early",
            "sitecustomize.pyc": head + b"early",
        },
    )
    assert marshal.loads(files.pop("x.code")) == {
        "a": ("a/__init__.pyc", True, b"package"),
        "a.b": ("a/b.pyc", False, b"module"),
    }
    assert set(files) == {"a/c.so", "encodings/__init__.pyc", "sitecustomize.pyc"}


def test_every_stand_in_stands_for_something_that_is_there() -> None:
    """Of the pinned Python and numpy; a release that renames a module must not pass unnoticed."""
    import zipfile

    from loadfirst_dev.fetch import Store
    from loadfirst_dev.pins import read_pins

    store = Store(read_pins())
    store.fetch(store.pins.group("site"))
    for part in ("python", "numpy"):
        with zipfile.ZipFile(store.path(store.pins.of_part(part))) as archive:
            assert stand_ins.sources(part)
            assert set(stand_ins.sources(part)) <= set(archive.namelist())
