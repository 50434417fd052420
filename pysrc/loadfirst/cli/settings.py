"""``--set key=value``: the value is written as in a plant file, words without quotation marks too."""

from __future__ import annotations

import tomllib
from typing import Any

from loadfirst.errors import InputError


def parse_settings(settings: list[str]) -> dict[str, Any]:
    """Edits from the command line.

    Raises
    ------
    InputError
        Where a setting is not of the form key=value.
    """
    return dict(_parse(setting) for setting in settings)


def _parse(setting: str) -> tuple[str, Any]:
    key, equals, value = setting.partition("=")
    if not equals or not key.strip():
        hint = "For example valve.opening=0.3"
        raise InputError("--set", setting, "of the form key=value", hint, rule="syntax")
    return key.strip(), _value(value.strip())


def _value(text: str) -> Any:
    """A number, true, false or a list as TOML has it; anything else is a word."""
    try:
        data = tomllib.loads(f"value = {text}")
    except (ValueError, RecursionError):  # a TOML error is a ValueError
        return text
    return data["value"] if list(data) == ["value"] else text
