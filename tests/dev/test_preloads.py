"""The page names all its modules at once."""

from __future__ import annotations

import re

from loadfirst_dev import packs, places
from loadfirst_dev.preloads import modules, with_preloads


def test_every_module_that_the_page_imports_is_named_once() -> None:
    """In the head, in front of the first of them; nothing else of the page changes."""
    files = packs.folder_contents(places.SITE_SOURCE)
    page = with_preloads(files)["index.html"].decode()
    named = re.findall(r'<link rel="modulepreload" href="([^"]+)">\n', page)
    assert named == modules(files)
    assert len(named) == len(set(named)) > 50
    assert page.index("modulepreload") < page.index('<script type="module"')
    assert re.sub(r'<link rel="modulepreload"[^>]*>\n', "", page) == files["index.html"].decode()


def test_imports_are_followed_from_folder_to_folder() -> None:
    """Over several lines, up and down, exports from elsewhere too; what is imported late is not."""
    files = {
        "js/main.js": b'import {a,\n  b} from "./lib/a.js";\nimport("./late.js");\n',
        "js/lib/a.js": b'export {c} from "../c.js";\nimport * as d from "./d.js";\n',
        "js/lib/d.js": b"",
        "js/c.js": b'import "./main.js";\n',
    }
    assert modules(files) == ["js/main.js", "js/lib/a.js", "js/c.js", "js/lib/d.js"]
