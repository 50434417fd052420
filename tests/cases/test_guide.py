"""The author's guide of the cases says what the types say, and its specimen is a case."""

from __future__ import annotations

import re
from pathlib import Path
from typing import get_args

import pytest
from msgspec import Struct, inspect

from loadfirst.cases.case import Case, Check, Choice, Day, Group, Hint, Prediction, ReadingId, Shown, Today
from loadfirst.cases.load import proven
from loadfirst.cases.read import decode_case

pytestmark = pytest.mark.native

GUIDE = (Path(__file__).parents[2] / "scenarios" / "cases" / "AUTHORS.md").read_text(encoding="utf-8")


def limits(node: inspect.Type) -> str:
    """The limits of a type as the guide prints them."""
    match node:
        case inspect.Metadata():
            return limits(node.type)
        case inspect.LiteralType():
            return " ".join(f"`{value}`" for value in node.values)
        case inspect.StrType():
            return f"{node.min_length or 0} to {node.max_length} characters" if node.max_length else "text"
        case inspect.FloatType():
            return f"{node.ge:g} to {node.le:g}"
        case inspect.BoolType():
            return "`true` `false`"
        case inspect.VarTupleType() | inspect.DictType():
            return f"{node.min_length or 0} to {node.max_length}" if node.max_length else "a table"
        case inspect.UnionType():
            return " or ".join(limits(one) for one in node.types if not isinstance(one, inspect.NoneType))
    return "a table"


def rows(kind: type[Struct]) -> list[str]:
    """One line of the guide per key of a table."""
    info = inspect.type_info(kind)
    assert isinstance(info, inspect.StructType)
    return [_row(field) for field in info.fields]


def _row(field: inspect.Field) -> str:
    needed = "yes" if field.required else "no"
    return f"| `{field.encode_name}` | {needed} | {limits(field.type)} | {says(field)} |"


def says(field: inspect.Field) -> str:
    """The sentence that a key carries; a table's own docstring where it carries none."""
    node = field.type
    options = node.types if isinstance(node, inspect.UnionType) else (node,)
    for option in options:
        found = (getattr(option, "extra_json_schema", None) or {}).get("description")
        if found:
            return str(found)
    assert isinstance(node, inspect.StructType), field
    return str(node.cls.__doc__).split("\n")[0]


@pytest.mark.parametrize("kind", [Case, Day, Today, Prediction, Shown, Check, Choice, Hint])
def test_the_guide_has_a_line_for_every_key(kind: type[Struct]) -> None:
    """Key, whether it is needed, limits and meaning stand in the guide as they stand on the type."""
    missing = [row for row in rows(kind) if row not in GUIDE]
    assert not missing, "\n" + "\n".join(missing)


def test_the_guide_names_every_reading_and_every_group() -> None:
    """Words that an author may choose from are all there."""
    for word in (*get_args(ReadingId), *get_args(Group)):
        assert f"`{word}`" in GUIDE


def test_no_table_of_the_guide_has_a_key_that_no_type_has() -> None:
    """A key that was taken away leaves the guide too."""
    known = {row for kind in (Case, Day, Today, Prediction, Shown, Check, Choice, Hint) for row in rows(kind)}
    written = re.findall(r"^\| `[a-z_]+` \| (?:yes|no) \|.*\|$", GUIDE, re.MULTILINE)
    assert set(written) == known


def test_the_specimen_of_the_guide_is_a_case_that_holds() -> None:
    """What authors copy must work: the fenced file is read, computed and proven."""
    specimen = re.search(r"```toml\n(format = 0.*?)```", GUIDE, re.DOTALL)
    assert specimen is not None
    case = decode_case(specimen[1], "specimen.toml")
    assert proven("specimen", case, "specimen.toml").truth == "suction-side"
