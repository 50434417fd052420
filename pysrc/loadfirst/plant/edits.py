"""Changing a plant by dotted keys: what `--set`, a drag on the page and a case all do."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from loadfirst.errors import InputError
from loadfirst.plant.keys import keys_of
from loadfirst.plant.near import nearest
from loadfirst.plant.plant import Plant
from loadfirst.plant.vessels import with_walls

MOST = 200  # edits at once; a plant has about sixty keys

NAMING = ("model", "curve", "displacement")
"""Any of them names the pump: to set one is to take the others away."""
TABLES = ("pump.curve", "pump.displacement")
"""Keys that are set as a whole table."""


def apply_edits(data: Mapping[str, Any], edits: Mapping[str, Any]) -> dict[str, Any]:
    """The plant's data with some keys changed; what was given stays as it was.

    Parameters
    ----------
    data : dict
        A plant as it stands in its file, not yet decoded.
    edits : dict
        Dotted keys and their new values in file units: ``{"valve.opening": 0.3}``.
        None puts a key back to its default.

    Returns
    -------
    dict
        Bottom and rim of the vessels are said in it, so that they stay where
        they were when a surface is moved.

    Raises
    ------
    InputError
        Where a key is unknown or lies inside something that is no table.
        Values are judged when the result is decoded.
    """
    if len(edits) > MOST:
        raise InputError("edits", len(edits), f"at most {MOST} keys", high=MOST)
    result = dict(data)
    for key, value in edits.items():
        _require_known(key)
        _put(result, key, value)
        table, _, name = key.partition(".")
        if table == "pump" and name in NAMING and value is not None:
            for other in set(NAMING) - {name}:
                result["pump"].pop(other, None)
    return with_walls(result, data)


def _put(result: dict[str, Any], key: str, value: Any) -> None:
    *tables, name = key.split(".")
    table = result
    for depth, part in enumerate(tables):
        inner = table.get(part, {})
        if not isinstance(inner, Mapping):
            raise InputError(".".join(tables[: depth + 1]), inner, "a table", rule="type", kind="table")
        table[part] = dict(inner)
        table = table[part]
    if value is None:
        table.pop(name, None)
    else:
        table[name] = value


def _require_known(key: str) -> None:
    known = keys_of(Plant)
    if key in known or key in TABLES:
        return
    below = len(key) + 1
    inside = dict.fromkeys(  # the next level alone: a gauge has some twenty keys
        key + "." + k[below:].partition(".")[0] for k in known if k.startswith(f"{key}.")
    )
    near = nearest(key, list(known)) or next((k for k in known if k.rpartition(".")[2] == key), "")
    hint = f"Did you mean {near}?" if near else f"Known here: {', '.join(inside)}." if inside else ""
    raise InputError(key, None, "left out", hint, rule="unknown", **({"nearest": near} if near else {}))
