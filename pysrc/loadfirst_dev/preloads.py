"""Names every module of the page in its head, so that a browser asks for all at once.

Otherwise it learns of a module only when it has read the one that imports it:
five rounds on a slow line, while the runtime's large files take the line's room.
"""

from __future__ import annotations

import posixpath
import re
from collections.abc import Mapping

PAGE, FIRST = "index.html", "js/main.js"
BEFORE = b'<script type="module" src="js/main.js"></script>\n'
IMPORT = re.compile(rb"""^(?:import|export)\b(?!\()[^"';]*["'](\.[^"']+)["']""", re.MULTILINE)


def modules(files: Mapping[str, bytes], first: str = FIRST) -> list[str]:
    """A module and all that it imports, near ones first."""
    found = [first]
    for name in found:
        for target in IMPORT.findall(files[name]):
            address = posixpath.normpath(posixpath.join(posixpath.dirname(name), target.decode()))
            if address not in found:
                found.append(address)
    return found


def with_preloads(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """The site's files, with the page naming its modules."""
    lines = "".join(f'<link rel="modulepreload" href="{name}">\n' for name in modules(files))
    return {**files, PAGE: files[PAGE].replace(BEFORE, lines.encode() + BEFORE)}
