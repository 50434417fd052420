"""The site's list of licences: what the pins name, with the texts that came along."""

from __future__ import annotations

from loadfirst_dev import packs, places
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import Part, Pins

VENDORED = places.SITE_SOURCE / "js"
"""Below it stands other people's JavaScript, with the licences beside it."""

HEAD = """Loadfirst is built from the following. Each stands under its own licence.
"""


def licences(pins: Pins, store: Store) -> str:
    """The whole list as plain text."""
    used = sorted({file.part for file in pins.group("site")})
    sections = [HEAD]
    for part in used:
        sections.append(section(pins.parts[part], texts_in_wheel(pins, store, part)))
    for path in sorted(path for path in VENDORED.rglob("*") if is_licence(path.name)):
        name = path.relative_to(places.SITE_SOURCE).as_posix()
        sections.append(titled(f"For the files beside {name}", path.read_text(encoding="utf-8")))
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


def is_licence(name: str) -> bool:
    """Whether a file is called what licences are called."""
    return any(word in name.upper() for word in ("LICENSE", "LICENCE", "COPYING"))
