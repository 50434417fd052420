"""The page of thumbnails: a row for each scene, a column for each look."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape
from pathlib import Path

from loadfirst_dev.shots.looks import Look
from loadfirst_dev.shots.scenes import Scene

HEAD = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Pictures of Loadfirst</title><style>
body { font: 15px sans-serif; margin: 24px; } td, th { padding: 6px; vertical-align: top; text-align: left; }
img { height: 190px; border: 1px solid #999; } th { max-width: 12em; }
</style></head><body><table>
"""


def contents(scenes: Sequence[Scene], looks: Sequence[Look], folder: Path) -> str:
    """HTML; a picture that is not in the folder is left out."""
    columns = "".join(f"<th>{escape(look.name)}</th>" for look in looks)
    rows = "".join(row(scene, looks, folder) for scene in scenes)
    return f"{HEAD}<tr><th></th>{columns}</tr>\n{rows}</table></body></html>\n"


def row(scene: Scene, looks: Sequence[Look], folder: Path) -> str:
    """One scene in every look."""
    cells = "".join(f"<td>{thumbnails(f'{scene.name}-{look.name}', folder)}</td>" for look in looks)
    return f"<tr><th>{escape(scene.title)}</th>{cells}</tr>\n"


def thumbnails(name: str, folder: Path) -> str:
    """What is in sight, then the whole page."""
    found = [f"{name}{ending}.png" for ending in ("", "-whole") if (folder / f"{name}{ending}.png").is_file()]
    return " ".join(f'<a href="{file}"><img src="{file}" alt="{file}" loading="lazy"></a>' for file in found)
