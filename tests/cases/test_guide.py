"""The author's guide of the cases says what the types say, and its specimen is a case."""

from __future__ import annotations

import re
from pathlib import Path
from typing import get_args

import pytest
from msgspec import Struct, inspect

from loadfirst.cases.bit_by_bit import at_once
from loadfirst.cases.case import Case, Change, Check, Choice, Hint, Prediction, ReadingId, Shown, Yesterday
from loadfirst.cases.collection import COLLECTION, EARNED, LARGEST
from loadfirst.cases.fairness import DECIDED, ENOUGH, RIVAL, fairness, unfair
from loadfirst.cases.held import DRAWS, LEAST, holding
from loadfirst.cases.load import proven
from loadfirst.cases.players import SURE
from loadfirst.cases.proof import Proven
from loadfirst.cases.proof_checks import BY_HAND
from loadfirst.cases.read import LONGEST, catalogue, decode_case
from loadfirst.cases.safety import DISMANTLES, OPENS, Refusal
from loadfirst.cases.score import ACTION, BORNE_OUT, GRACE, GUESSED, PATIENCE, VERDICT
from loadfirst.cases.truth import Rightness
from loadfirst.cases.weighing import Weighing
from loadfirst.cases.words import TYPED_UNITS, refuse_typed_numbers
from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.group import Group
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.causes.remedy import HARM, MINUTES, Action
from loadfirst.cli.check_case import VERDICTS, case_lines, fairness_lines, held_lines, last_line
from loadfirst.cli.guide import filled
from loadfirst.cli.guide_case import LISTS
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import TWO
from loadfirst.plant import library
from loadfirst.plant.expect import plain

pytestmark = pytest.mark.native

GUIDE_PATH = Path(__file__).parents[2] / "scenarios" / "cases" / "AUTHORS.md"
GUIDE = GUIDE_PATH.read_text(encoding="utf-8")
TABLES: list[type[Struct]] = [Case, Yesterday, Change, Prediction, Shown, Check, Choice, Hint]


def limits(node: inspect.Type) -> str:
    """The limits of a type as the guide prints them."""
    match node:
        case inspect.Metadata():
            return limits(node.type)
        case inspect.LiteralType():
            return " ".join(f"`{value}`" for value in node.values)
        case inspect.StrType():
            return f"{node.min_length or 0} to {node.max_length} characters" if node.max_length else "text"
        case inspect.FloatType() | inspect.IntType():
            return f"{node.ge:.10g} to {node.le:.10g}"
        case inspect.TupleType():
            return f"{len(node.item_types)} numbers"
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


@pytest.mark.parametrize("kind", TABLES)
def test_the_guide_has_a_line_for_every_key(kind: type[Struct]) -> None:
    """Key, whether it is needed, limits and meaning stand in the guide as they stand on the type."""
    missing = [row for row in rows(kind) if row not in GUIDE]
    assert not missing, "\n" + "\n".join(missing)


def test_the_guide_names_every_word_that_an_author_may_choose_from() -> None:
    """Readings, groups, what a hand may move, what is opened, why a check is refused."""
    for word in (*get_args(ReadingId), *get_args(Group), *BY_HAND, *OPENS, *get_args(Refusal)):
        assert f"`{word}`" in GUIDE, word
    assert OPENS > DISMANTLES


def test_the_guide_prices_every_action() -> None:
    """As the judgement does."""
    for action in get_args(Action):
        assert re.search(rf"^\| `{action}` \| .+ \| {MINUTES[action]:g} \|$", GUIDE, re.MULTILINE), action
    assert f"{HARM:g} minutes" in GUIDE


def test_the_lists_of_the_guide_are_those_of_the_catalogues() -> None:
    """To mend them, put the output of ``python -m loadfirst guide causes`` (or another) between its marks."""
    for name in LISTS:
        assert GUIDE.count(f"<!-- list of {name} -->") == GUIDE.count(f"<!-- end of {name} -->") == 1, name
    assert filled(GUIDE) == GUIDE
    for cause in CAUSES:
        assert f"| `{cause.id}` | {cause.says}" in GUIDE, cause.id
    for id in (*OBSERVATIONS, *library.ids("plants"), *library.ids("pumps")):
        assert f"\n| `{id}` | " in GUIDE, id


def test_the_guide_names_the_families_of_the_course() -> None:
    """A file of one's own may have another."""
    for family in {heading.family for heading in catalogue()}:
        assert f"`{family}`" in GUIDE, family


@pytest.mark.parametrize(
    "says",
    [
        f"likely to {ENOUGH:.0%} |",
        f"more than {'half' if RIVAL == 0.5 else RIVAL} as likely as the right one",
        f"decides rightly in {DECIDED:.0%} of the plays",
        f"with {DRAWS} draws of the instruments' errors each",
        f"has to hold in {LEAST:.0%} of them",
        f"in more than {LARGEST:.0%} of them",
        f"more than {EARNED:.0%} of what looking earns",
        f"worth {VERDICT['right']:g} of the 100 points",
        f"the other {ACTION['fits']:g}.",
        f"likely to {BORNE_OUT:.0%}, and for {GUESSED:.0%} of them",
        f"{GRACE:g} more than the best way are free, and at {PATIENCE:g} beyond",
        f"until one verdict is likely to {SURE:.0%}",
        f"{'ten' if TWO == 0.1 else TWO} times less likely than none",
        f"a file may have {LONGEST // 1000} 000",
        f"{'Twelve' if COLLECTION == 12 else COLLECTION} puzzles or more",
    ],
)
def test_the_guide_gives_the_figures_that_judge(says: str) -> None:
    """Of fairness, of points, of a collection."""
    assert says.replace("%", " %") in " ".join(GUIDE.split())


def test_the_guide_lists_the_units_before_which_no_number_may_be_typed() -> None:
    """All of them, in one spelling each; and those that it calls free are."""
    said = GUIDE.split("followed by a unit of a reading is refused: ")[1].split("are refused.")[0]
    named = re.sub(r"\(with .*?\)", "", said, flags=re.DOTALL)
    refused, free = (re.findall("`([^`]+)`", part) for part in named.split("Lengths, "))
    other = {"3": "³", "cm2": "cm²", "^": "", "L/": "l/"}
    for unit in TYPED_UNITS:
        for written, usual in other.items():
            unit = unit.replace(written, usual)
        assert {unit, f"{unit}s"} & set(refused), unit
    for unit in refused:
        with pytest.raises(InputError):
            refuse_typed_numbers(f"It was 5 {unit}.", "story")
    for unit in (*free, "m"):
        refuse_typed_numbers(f"It was 5 {unit}.", "story")
    assert "%" in free


def test_the_guide_gives_the_limits_of_texts_that_have_no_row() -> None:
    """Of the words that a seed draws, and of goals."""
    told = " ".join(GUIDE.split())
    info = inspect.type_info(Case)
    assert isinstance(info, inspect.StructType)
    fields = {field.name: plain(field.type) for field in info.fields}
    words = fields["words"]
    assert isinstance(words, inspect.DictType)
    drawn = plain(words.value_type)
    assert isinstance(drawn, inspect.VarTupleType)
    word = limits(drawn.item_type).removeprefix("1 to ")
    assert f"{limits(drawn)} texts of at most {word}" in told
    for name in ("teaches", "leaves_out"):
        goals = fields[name]
        assert isinstance(goals, inspect.VarTupleType)
        assert limits(goals.item_type) == f"1 to {word}"
    assert f"Each text of `teaches` and `leaves_out` has at most {word}." in told


def test_how_right_a_verdict_is_has_its_words() -> None:
    """In the guide, and on the page: after the verdict, on the map, in the table of results."""
    words = (GUIDE_PATH.parents[2] / "site" / "words" / "cases.ftl").read_text(encoding="utf-8")
    for one in get_args(Rightness):
        assert f"- **{VERDICTS[one]}**: " in GUIDE, one
        for name in ("case-rightness", "course-done", "course-rightness"):
            assert f"\n{name}-{one} = " in words, (name, one)


def test_no_table_of_the_guide_has_a_key_that_no_type_has() -> None:
    """A key that was taken away leaves the guide too."""
    known = {row for kind in TABLES for row in rows(kind)}
    written = re.findall(r"^\| `[a-z_]+` \| (?:yes|no) \|.*\|$", GUIDE, re.MULTILINE)
    assert set(written) == known


def specimen(seed: int) -> Proven:
    """The fenced file of the guide, as a seed draws it, read, computed and proven."""
    found = re.search(r"```toml\n(format = 1.*?)```", GUIDE, re.DOTALL)
    assert found is not None
    return proven("specimen", decode_case(found[1], "specimen.toml"), "specimen.toml", seed)


def test_the_specimen_of_the_guide_is_a_case_that_holds() -> None:
    """What authors copy must work."""
    assert specimen(1).truth == (("strainer-blocked",), ("suction-side",), "heavier")


def test_what_the_check_is_said_to_print_it_prints() -> None:
    """Line by line, of the specimen; a line of three dots stands for more of the kind."""
    shown = re.search(r"```\nmy-puzzle.toml: (.*?)```", GUIDE, re.DOTALL)
    assert shown is not None
    case = specimen(1)
    found = fairness(Weighing(case))
    printed = [*case_lines(case), *held_lines(at_once(holding(case))), *fairness_lines(found)]
    printed.append(f"  {last_line(list(unfair(found, Weighing(case))))}")
    for line in shown[1].splitlines():
        assert line in [*printed, "  …"]


@pytest.mark.parametrize("seed", range(2, 12))
def test_the_specimen_holds_with_other_seeds(seed: int) -> None:
    """Its range of sizes, its words and its claims are wide enough for anybody's draw."""
    assert specimen(seed).case.seed == seed
