"""The site's list of licences: what the pins name, with the texts that came along."""

from __future__ import annotations

from pathlib import Path

from loadfirst_dev import packs, places
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import Part, Pins

HEAD = """Loadfirst is built from the following. Each stands under its own licence.

Python's standard library, NumPy and msgspec are here as compiled files without their docstrings; what the
page does not need at once is in files of its own. Pyodide is unchanged.
"""


def licences(pins: Pins, store: Store) -> str:
    """The whole list as plain text."""
    fetched = {file.part for file in pins.group("site")}
    sections = [HEAD]
    for name, part in sorted(pins.parts.items()):
        if name in fetched:
            sections.append(section(part, texts_in_wheel(pins, store, name)))
        elif part.folder:
            sections.append(section(part, texts_in_folder(places.SITE_SOURCE / part.folder)))
    return "\n".join(sections)


def section(part: Part, texts: dict[str, str]) -> str:
    """One part: name, version, licence, where its source is, and the licence's text where it came along."""
    head = f"{part.title} {part.version}\nLicence: {part.licence}\nSource: {part.source}"
    return titled(head, "\n\n".join(text.strip() for _, text in sorted(texts.items())))


def titled(title: str, text: str) -> str:
    """A title between rules, and its text."""
    rule = "=" * 79
    return f"{rule}\n{title}\n{rule}\n\n{text.strip()}\n"


def texts_in_wheel(pins: Pins, store: Store, part: str) -> dict[str, str]:
    """Licence texts inside a part's wheel, by name."""
    found = {}
    for file in pins.group("site"):
        if file.part == part and file.name.endswith(".whl"):
            for name, data in packs.zip_contents(store.read(file)).items():
                if ".dist-info/licenses/" in name and is_licence(name.rsplit("/", 1)[-1]):
                    found[name] = data.decode("utf-8", errors="replace")
    return found


def texts_in_folder(folder: Path) -> dict[str, str]:
    """Licence texts beside committed files, by name."""
    return {path.name: path.read_text(encoding="utf-8") for path in folder.iterdir() if is_licence(path.name)}


def is_licence(name: str) -> bool:
    """Whether a file is called what licences are called."""
    return any(word in name.upper() for word in ("LICENSE", "LICENCE", "COPYING"))
