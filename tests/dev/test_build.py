"""The built site: the same at every build, whole, and at home under any address."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import pytest
from tests.same import differences

from loadfirst_dev.build import build, remove_others, write
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import digest


def hashes(folder: Path) -> dict[str, str]:
    """SHA-256 of every file, by its address."""
    files = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): digest(path.read_bytes()) for path in files}


def test_two_clean_builds_are_equal_byte_for_byte(store: Store, built_site: Path, tmp_path: Path) -> None:
    """Nothing compiled is taken over: only the fetched files are shared."""
    clean = Store(store.pins, tmp_path / "cache")
    shutil.copytree(store.files, clean.files)
    build(store.pins, clean, tmp_path / "site")
    assert hashes(tmp_path / "site") == hashes(built_site)


def test_a_build_without_changes_writes_nothing(store: Store, tmp_path: Path) -> None:
    """So that `serve` can build as often as it likes."""
    assert build(store.pins, store, tmp_path / "site") != []
    assert build(store.pins, store, tmp_path / "site") == []


def test_the_manifest_names_every_runtime_file_by_its_hash(built_site: Path) -> None:
    """What the worker reads first agrees with what lies there, sizes included."""
    runtime = built_site / "runtime"
    manifest = json.loads((runtime / "manifest.json").read_text())
    named = {**manifest["files"], **manifest["late"]}
    assert set(manifest["files"]) == {"pyodide", "module", "wasm", "stdlib", "packages", "loadfirst"}
    for file in named.values():
        data = (runtime / file["file"]).read_bytes()
        assert len(data) == file["size"]
        assert digest(data)[:12] == file["file"].split(".")[-2]
    assert {path.name for path in runtime.iterdir()} == {file["file"] for file in named.values()} | {
        "manifest.json"
    }


def test_no_file_ends_in_a_way_that_servers_get_wrong(built_site: Path) -> None:
    """Some servers do not know `.mjs`; the site has none."""
    assert [path.name for path in built_site.rglob("*.mjs")] == []


@pytest.mark.parametrize("ending", ["html", "css", "js"])
def test_all_addresses_are_relative(built_site: Path, ending: str) -> None:
    """The site works under any sub-path, and asks no other host for anything."""
    wrong = re.compile(
        r"""(?:href|src|action|from|import|url\(|fetch\()\s*[=(]?\s*["'`](/[^"'`]*|\w+://[^"'`]*)"""
    )
    for path in built_site.rglob(f"*.{ending}"):
        if "runtime" in path.parts or "vendor" in path.parts:
            continue
        assert wrong.findall(path.read_text(encoding="utf-8")) == [], path.name


def test_the_first_answer_is_one_that_the_door_gives(built_site: Path) -> None:
    """Made by the browser's Python while building, equal to what Python says here (design tolerance 1e-9)."""
    from loadfirst.door.handle import handle

    first = json.loads((built_site / "first-answer.json").read_text())
    ask = {"v": 1, "id": 0, "kind": "answer", "body": {"plant": first["default"], "edits": {}}}
    told = json.loads(handle(json.dumps(ask)))["body"]
    assert differences(first["answer"], told, 1e-9) == []


def test_the_licence_list_names_every_part_that_is_pinned_for_the_site(
    store: Store, built_site: Path
) -> None:
    """With version, licence and source; and the texts that came with the parts."""
    text = (built_site / "licences.txt").read_text(encoding="utf-8")
    for part in {file.part for file in store.pins.group("site")}:
        known = store.pins.parts[part]
        for word in (f"{known.title} {known.version}", known.licence, known.source):
            assert word in text
    assert "Redistribution and use in source and binary forms" in text


def test_a_part_without_a_licence_cannot_be_pinned(store: Store) -> None:
    """Every file of the site belongs to a part with all four facts filled in."""
    for file in store.pins.group("site"):
        part = store.pins.parts[file.part]
        assert all([part.title, part.version, part.licence, part.source])


def test_other_peoples_scripts_are_in_the_licence_list(store: Store, built_site: Path) -> None:
    """Each vendored folder is a pinned part, holds its licence, and the list holds it too."""
    text = (built_site / "licences.txt").read_text(encoding="utf-8")
    parts = {part.folder: part for part in store.pins.parts.values() if part.folder}
    for folder in (path for path in (built_site / "js" / "vendor").iterdir() if path.is_dir()):
        part = parts[folder.relative_to(built_site).as_posix()]
        assert f"{part.title} {part.version}" in text
        licences = [path for path in folder.iterdir() if "LICEN" in path.name.upper()]
        assert licences, f"{folder.name} has no licence beside it"
        assert all(path.read_text(encoding="utf-8").strip() in text for path in licences)
        readme = (folder / "README.md").read_text(encoding="utf-8")
        assert all(version in readme for version in part.version.split(" and "))


def test_what_no_longer_belongs_to_the_site_is_removed(tmp_path: Path) -> None:
    """A file that was renamed in the sources does not linger."""
    write({"a.txt": b"a", "old/b.txt": b"b"}, tmp_path)
    assert write({"a.txt": b"a"}, tmp_path) == []
    assert sorted(path.name for path in tmp_path.rglob("*")) == ["a.txt"]
    remove_others({}, tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_every_case_has_its_opening_ready(built_site: Path) -> None:
    """Story and prediction can be read before Python is there: exactly what the door would say."""
    from loadfirst.door.handle import handle
    from loadfirst.plant import library

    assert library.ids("cases")
    for name in library.ids("cases"):
        ask = {"v": 1, "id": 0, "kind": "case", "body": {"case": name, "moves": []}}
        told = json.loads(handle(json.dumps(ask)))["body"]
        opening = json.loads((built_site / "cases" / f"{name}.json").read_text(encoding="utf-8"))
        assert differences(opening, {"protocol": 1, "view": told}, 1e-9) == []
