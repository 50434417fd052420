"""From the bytes of a TOML file to plain data, whatever a stranger's file may hold."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any

from loadfirst.errors import FileError, InputError

LARGEST = 256 * 1024  # [bytes]; a plant with a long curve has about 4 kB
DEEPEST = 12  # tables within tables; ours need four
NESTED = "its tables are nested too deeply"

AT = re.compile(r"\s*\(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)$")


def read(path: Path) -> dict[str, Any]:
    """Read a file and parse it.

    Raises
    ------
    FileError
        Where it cannot be read, is no text, is too large or is not TOML.
    """
    try:
        with path.open("rb") as stream:
            raw = stream.read(LARGEST + 1)
    except OSError as trouble:
        raise FileError(str(path), _unreadable(trouble.strerror or type(trouble).__name__)) from None
    except ValueError:  # a null byte in the name
        raise FileError(str(path), _unreadable("no such name")) from None
    return parse(raw, path.name)


def parse(content: str | bytes, file: str = "a file") -> dict[str, Any]:
    """Parse TOML text.

    Parameters
    ----------
    content : str or bytes
        The whole file; bytes are UTF-8, with or without a byte order mark.
    file : str
        Its name, for the error.

    Returns
    -------
    dict
        Tables as dicts, in file order.

    Raises
    ------
    FileError
        With the line and the column where the text stops being TOML.
    """
    try:
        text = _decoded(content)
        data = tomllib.loads(text.replace("\r\n", "\n"))
    except InputError as cause:
        raise FileError(file, cause) from None
    except tomllib.TOMLDecodeError as refusal:
        raise FileError(file, _syntax(text, str(refusal))) from None
    except (RecursionError, ValueError) as refusal:  # absurd nesting; a number of thousands of digits
        why = NESTED if isinstance(refusal, RecursionError) else "a number in it has too many digits"
        raise FileError(file, _unreadable(why)) from None
    if _deep(data):
        raise FileError(file, _unreadable(NESTED))
    return data


def _unreadable(why: str, hint: str = "", **facts: Any) -> InputError:
    return InputError("the file", why, "a file that can be read", hint, rule="unreadable", **facts)


def _decoded(content: str | bytes) -> str:
    if len(content) > LARGEST:
        why = f"it is longer than {LARGEST // 1024} kB"
        raise _unreadable(why, "Is it a plant file?", high=LARGEST, unit="bytes")
    if isinstance(content, str):
        return content.removeprefix("\ufeff")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as trouble:
        line = content.count(b"\n", 0, trouble.start) + 1
        raise InputError(
            f"line {line}", "not UTF-8", "plain text in UTF-8", "Save it again with this encoding.",
            rule="syntax", line=line,
        ) from None  # fmt: skip


def _syntax(text: str, refusal: str) -> InputError:
    """Our error from tomllib's sentence: where, the line as it stands, what TOML wanted."""
    place = AT.search(refusal)
    problem = AT.sub("", refusal)
    lines = text.split("\n")
    line = int(place["line"]) if place and place["line"] else len(lines)
    column = int(place["column"]) if place and place["column"] else len(lines[-1]) + 1
    whole = lines[line - 1] if line <= len(lines) else ""
    slip = _slip(whole, problem, whole[column - 1 : column])
    facts = {"line": line, "column": column, "problem": problem} | ({"slip": slip} if slip else {})
    return InputError(
        f"line {line}, column {column}", whole.strip(), "valid TOML", _way_out(slip, whole, problem),
        rule="syntax", **facts,
    )  # fmt: skip


WAYS_OUT = {
    "twice": "Write each key and each table once only.",
    "comma": "Write numbers with a decimal point.",
    "words": 'Write words in quotation marks: "single".',
    "curly": 'Use straight quotation marks here: "single".',
    "lines": 'A text ends on its line; one over several lines stands in three quotation marks: """…""".',
    "inside": "Inside a text write “these” quotation marks: straight ones end it.",
}
"""The commonest slips, and what to do."""


def _slip(line: str, problem: str, letter: str) -> str:
    """Which of the commonest slips it is; `letter` stands where the text stops being TOML."""
    seen = {
        "twice": problem.startswith(("Cannot overwrite", "Cannot declare")),
        "comma": re.search(r"=\s*[-+]?\d+,\d", line),
        "curly": problem.startswith("Invalid") and letter in [*"“”„‟‘’‚«»"],
        "words": problem == "Invalid value" and re.search(r"=\s*[A-Za-z]", line),
        "lines": problem == r"Illegal character '\n'",
        "inside": problem.startswith("Expected newline") and re.search(r'=\s*"[^"]*"\s*[^\s"#]', line),
    }
    return next((slip for slip, is_it in seen.items() if is_it), "")


def _way_out(slip: str, line: str, problem: str) -> str:
    """What TOML wanted and what to do, but not what says the same twice or nothing to an author."""
    if slip in ("curly", "lines", "inside"):
        return WAYS_OUT[slip]
    name = re.match(r"\s*(\[+[^\]]*\]+|[^=\s]+)", line)
    wanted = f"{name[1]} stands there already" if slip == "twice" and name else problem
    return f"{wanted}. {WAYS_OUT.get(slip, '')}".rstrip()


def _deep(data: dict[str, Any]) -> bool:
    """Whether anything lies deeper than any file of ours; without recursion, for it may be very deep."""
    level: list[Any] = [data]
    for _ in range(DEEPEST):
        level = [
            inner
            for outer in level
            for inner in (outer.values() if isinstance(outer, dict) else outer)
            if isinstance(inner, dict | list)
        ]
        if not level:
            return False
    return True
