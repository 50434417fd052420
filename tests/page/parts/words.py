"""The words of the page, by their names.

What they are is the page's business; that they stand there is ours.
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

FOLDER = Path(__file__).parents[3] / "site" / "words"
PLAIN = re.compile(r"^([a-z][\w-]*) = (.+)$", re.MULTILINE)


@cache
def table() -> dict[str, str]:
    """Every message of one line."""
    return {
        name: text
        for file in sorted(FOLDER.glob("*.ftl"))
        for name, text in PLAIN.findall(file.read_text(encoding="utf-8"))
    }


def say(message: str, /, **values: object) -> str:
    """A message, with values in the places of its variables."""
    text = table()[message]
    for key, value in values.items():
        text = text.replace(f"{{ ${key} }}", str(value))
    assert "{" not in text, f"{message} needs more values: {text}"
    return text
