"""Keys of a file itself that stand below the line that opens a table, and so belong to that table."""

from __future__ import annotations

import re

from msgspec import inspect

from loadfirst.errors import InputError
from loadfirst.plant.expect import plain

DEEPEST = 3  # tables within tables, in which a key that is missed is looked for


def of_the_file(kind: type, where: str) -> bool:
    """Whether what stands in a table of free names is called like a plain key of the file itself."""
    table, _, name = where.partition(".")
    info = inspect.type_info(kind)
    if not isinstance(info, inspect.StructType) or "[" in table:
        return False
    fields = {field.encode_name: plain(field.type) for field in info.fields}
    tables = inspect.StructType | inspect.DictType | inspect.VarTupleType
    return isinstance(fields.get(table), inspect.DictType) and not isinstance(fields.get(name, info), tables)


def above(error: InputError) -> InputError:
    """The same error of a key that was written too late, below the line that opens a table."""
    key = error.where.rpartition(".")[2]
    hint = f"{key} is a key of the file itself: it belongs above the first [table]."
    facts = error.facts | {"above": key}
    return InputError(error.where, error.got, error.allowed, hint, rule=error.rule, **facts)


def below_which(data: object, name: str, where: str = "") -> str:
    """The table in which a key stands that the file itself misses; those of lists are not looked into."""
    if where.count(".") >= DEEPEST:
        return ""
    inner = {key: one for key, one in data.items() if isinstance(one, dict)} if isinstance(data, dict) else {}
    for key, table in inner.items():
        path = join(where, str(key))
        if found := path if name in table else below_which(table, name, path):
            return found
    return ""


def join(where: str, name: str) -> str:
    """A dotted path; a key that TOML would have in quotation marks gets them."""
    name = name if re.fullmatch(r"[A-Za-z0-9_-]+", name) else f'"{name}"'
    return f"{where}.{name}" if where else name
