"""A file that is no TOML is answered with line and column."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import FileError
from loadfirst.plant.toml_text import LARGEST, parse, read


def refusal(content: str | bytes) -> FileError:
    """The error that this content gets."""
    with pytest.raises(FileError) as caught:
        parse(content, "x.toml")
    return caught.value


def test_a_syntax_error_names_line_column_and_the_line_itself() -> None:
    """Where it is, what stands there, what TOML wanted."""
    error = refusal("format = 1\n[valve]\nopening 0.6\n")
    assert error.text == (
        "x.toml: line 3, column 9 is 'opening 0.6', but must be valid TOML. "
        "Expected '=' after a key in a key/value pair."
    )
    assert (error.rule, error.facts["line"], error.facts["column"]) == ("syntax", 3, 9)


def test_line_ends_of_windows_count_as_one() -> None:
    """The line number is the one the editor shows."""
    assert refusal("a = 1\r\nb = 2\r\nc 3\r\n").facts["line"] == 3


def test_a_decimal_comma_gets_its_own_advice() -> None:
    """The commonest slip of half the world."""
    assert refusal("opening = 0,6\n").text.endswith("Write numbers with a decimal point.")


def test_a_word_without_quotation_marks_gets_its_own_advice() -> None:
    """TOML wants quotation marks round words."""
    assert refusal("arrangement = single\n").text.endswith('Write words in quotation marks: "single".')


def test_a_key_given_twice_is_refused() -> None:
    """The first of the two would silently win or lose; TOML forbids both."""
    error = refusal("a = 1\na = 2\n")
    assert "Write each key and each table once only." in error.text
    assert error.facts["line"] == 2


def test_a_table_given_twice_is_refused() -> None:
    """The same for a table."""
    assert "once only" in refusal("[valve]\nopening = 1\n[valve]\nopening = 0\n").text


def test_a_table_given_twice_is_called_as_the_author_wrote_it() -> None:
    """Not as Python keeps its name."""
    text = "[yesterday.plant]\na = 1\n[yesterday.plant]\na = 0\n"
    assert "valid TOML. [yesterday.plant] stands there already. " in refusal(text).text
    assert "valid TOML. seed stands there already. " in refusal("seed = 1\nseed = 2\n").text


@pytest.mark.parametrize(
    ("line", "slip", "way_out"),
    [
        ("level = “operator”", "curly", "Use straight quotation marks here"),
        ('reads = ["flow-meter", “ammeter-1”]', "curly", "Use straight quotation marks here"),
        ("“level” = 1", "curly", "Use straight quotation marks here"),
        ('story = "\nIt rings.\n"', "lines", "one over several lines stands in three"),
        ('story = "“It is done”', "lines", "one over several lines stands in three"),
        ('says = "Read the "suction" gauge."', "inside", "Inside a text write “these”"),
        ("opening = 0,6", "comma", "with a decimal point"),
        ("level = operator # “so”", "words", "Write words in quotation marks"),
    ],
)
def test_a_slip_of_quotation_marks_gets_its_own_advice(line: str, slip: str, way_out: str) -> None:
    """What an office program or a careless hand makes of them; the page is told which slip it is."""
    error = refusal(f"format = 1\n{line}\n")
    assert (error.facts["slip"], error.facts["line"]) == (slip, 2)
    assert way_out in error.text


def test_what_is_none_of_the_slips_is_told_as_toml_has_it() -> None:
    """No advice that does not fit."""
    assert "slip" not in refusal("opening 0.6\n").facts


def test_an_unfinished_text_is_placed_at_the_end_of_the_file() -> None:
    """tomllib gives no line there, we do."""
    error = refusal('title = """never closed')
    assert error.facts["line"] == 1
    assert error.facts["column"] >= len('title = """never closed')


def test_a_picture_or_another_encoding_is_no_text() -> None:
    """Bytes that are not UTF-8: the line where they start, and the way out."""
    error = refusal(b'title = "M\xfcller"\n')
    assert error.text == (
        "x.toml: line 1 is 'not UTF-8', but must be plain text in UTF-8. Save it again with this encoding."
    )
    assert refusal(b"\x89PNG\r\n\x1a\n\x00\x00").rule == "syntax"


def test_a_byte_order_mark_is_no_fault() -> None:
    """Some editors write one."""
    assert parse(b"\xef\xbb\xbfformat = 1\n") == {"format": 1}
    assert parse("\ufeffformat = 1\n") == {"format": 1}


def test_a_huge_file_is_refused_before_it_is_parsed() -> None:
    """Size and limit are named."""
    text = "x.toml: the file cannot be read: it is longer than 256 kB. Is it a plant file?"
    assert refusal("#" * (LARGEST + 1)).text == text


@pytest.mark.parametrize("content", ["a = " + "[" * 5000, "a = " + "{b=" * 5000, "a" + ".a" * 500 + " = 1"])
def test_absurd_nesting_is_refused(content: str) -> None:
    """Brackets or dotted keys without end cannot make the reader fall over."""
    assert refusal(content).text == "x.toml: the file cannot be read: its tables are nested too deeply."


def test_a_number_of_ten_thousand_digits_is_refused() -> None:
    """Python itself refuses to read it."""
    assert "a number in it has too many digits" in refusal("a = " + "9" * 10_000).text


@pytest.mark.native
def test_a_name_that_no_file_can_have_says_so() -> None:
    """Every name is answered, and none may write into the terminal."""
    with pytest.raises(FileError) as caught:
        read(Path("a\0\n.toml"))
    assert caught.value.text == "a··.toml: the file cannot be read: no such name."


@pytest.mark.native
def test_a_file_that_is_not_there_or_a_folder_says_so(tmp_path: Path) -> None:
    """The reason is the system's, the sentence ours."""
    with pytest.raises(FileError, match=r"none.toml: the file cannot be read: No such file"):
        read(tmp_path / "none.toml")
    with pytest.raises(FileError, match="the file cannot be read"):
        read(tmp_path)


@given(st.text() | st.binary())
def test_whatever_a_file_holds_only_our_own_error_goes_out(content: str | bytes) -> None:
    """Any content at all is data or is refused with one line."""
    try:
        parse(content)
    except FileError as error:
        assert "\n" not in error.text
