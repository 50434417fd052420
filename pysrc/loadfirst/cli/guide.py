"""The tables of the author's guide, made from the types so that they cannot go stale."""

from __future__ import annotations

import re
from typing import Any

from msgspec import inspect

from loadfirst.cli.guide_case import LISTS
from loadfirst.plant import library
from loadfirst.plant.expect import plain
from loadfirst.plant.keys import Key, keys_of
from loadfirst.plant.plant import DisplacementFile, Plant, PumpFile

KINDS = {"plant": Plant, "pump": PumpFile, "displacement": DisplacementFile}
WHOLE = {
    "pump.curve": "The points: the keys of a centrifugal pump's file",
    "pump.displacement": "The rated point: the keys of a displacement pump's file",
}
"""Tables that are a file of their own elsewhere."""
SPECIMEN = "rinse-transfer"
HEADER = "| key | unit | what would do | default | meaning |\n|---|---|---|---|---|"


def guide(kind: str) -> str:
    """Every key of a kind of file as Markdown, a table for each of the file's; or a list of the cases' guide.

    Parameters
    ----------
    kind : "plant", "pump" or "displacement", or one of `LISTS`
    """
    if kind in LISTS:
        return LISTS[kind]()
    tables: dict[str, list[Key]] = {}
    for key in keys_of(KINDS[kind]).values():
        tables.setdefault(key.path.rpartition(".")[0], []).append(key)
    return "\n\n".join(_table(kind, where, keys) for where, keys in tables.items())


def filled(text: str) -> str:
    """A guide with each of its marked places (``<!-- keys of a plant file -->``) filled anew."""
    for kind in KINDS:
        text = _fill(text, f"keys of a {kind} file", f"end of {kind} file", guide(kind))
    specimen = library.path("plants", SPECIMEN).read_text(encoding="utf-8").rstrip()
    text = _fill(text, "specimen plant", "end of specimen plant", f"```toml\n{specimen}\n```")
    for name, content in LISTS.items():
        text = _fill(text, f"list of {name}", f"end of {name}", content())
    return text


def _fill(text: str, opening: str, closing: str, content: str) -> str:
    pattern = re.compile(f"<!-- {opening} -->.*?<!-- {closing} -->", re.DOTALL)
    return pattern.sub(lambda _: f"<!-- {opening} -->\n\n{content}\n\n<!-- {closing} -->", text)


def _table(kind: str, where: str, keys: list[Key]) -> str:
    if where in WHOLE:
        return f"**`[{where}]`** {WHOLE[where]}, without `format` and `about`."
    title = f"**`[{where}]`** {_says(KINDS[kind], where)}" if where else "At the top, before any table:"
    return "\n".join([title, "", HEADER, *(_row(key) for key in keys)])


def _says(kind: type, where: str) -> str:
    """The docstring of the table's type."""
    node = inspect.type_info(kind)
    for name in where.split("."):
        assert isinstance(node, inspect.StructType)
        node = plain(next(field.type for field in node.fields if field.encode_name == name))
    assert isinstance(node, inspect.StructType)
    return str(node.cls.__doc__)


def _row(key: Key) -> str:
    name = key.path.rpartition(".")[2]
    needed = "needed" if key.required else _value(key.default)
    return f"| `{name}` | {key.unit.replace('-', '–') or '–'} | {key.expected.text} | {needed} | {key.says} |"


def _value(default: Any) -> str:
    if default is None:
        return "–"
    if isinstance(default, bool):
        return "true" if default else "false"
    if isinstance(default, list | tuple):
        return f"[{', '.join(f'{entry:g}' for entry in default)}]"
    return f"{default:g}" if isinstance(default, int | float) else f"`{default}`" if default else "empty"
