"""What the checks of a case claim: each tells something, of what is there, and a hand can make its test."""

from __future__ import annotations

from loadfirst.cases.case import Case, Check
from loadfirst.cases.safety import OPENS
from loadfirst.causes.present import missing_for
from loadfirst.days.two_days import flat
from loadfirst.errors import InputError
from loadfirst.plant.keys import keys_of
from loadfirst.plant.places import inside
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant

BY_HAND = frozenset({
    "valve.opening", "drive.frequency_hz", "pump.running", "pump.second.running", "pump.arrangement",
    "branch.opening", "return_line.opening", "control.mode",
})  # fmt: skip
"""Plant keys that a hand moves for a test, and moves back."""


def checks_hold(case: Case, yesterday: ResolvedPlant) -> None:
    """Each check by itself.

    Raises
    ------
    InputError
        At the first that tells nothing, looks at what the plant does not have or moves what no hand moves.
    """
    for number, check in enumerate(case.checks):
        with inside(f"checks[{number}]"):
            _tells_something(check)
            _looks_at_what_is_there(check, yesterday)
            _opens_something(check)
            _is_by_hand(check)


def _tells_something(check: Check) -> None:
    if check.does and check.observes:
        raise InputError("does", check.does, "left out where it observes", rule="together")
    if check.does and not check.reads:
        allowed = "given: a test tells by what is read while it is on"
        raise InputError("reads", None, allowed, rule="missing", other="does")
    if not (check.observes or check.reads):
        allowed = "given where the check reads no instrument (`reads`)"
        raise InputError("observes", None, allowed, rule="missing")
    for name in ("shows", "shows_nothing"):
        text = getattr(check, name)
        if text is None and check.observes is not None:
            raise InputError(name, None, "given with `observes`", rule="missing", other="observes")
        if text is not None and check.observes is None:
            raise InputError(name, text, "left out without `observes`", rule="together")


def _looks_at_what_is_there(check: Check, plant: ResolvedPlant) -> None:
    reason = None if check.observes is None else missing_for(check.observes, plant)
    if reason is not None:
        raise InputError(
            "observes", check.observes, "something that this plant has",
            f"Here {reason}, so it tells nothing.",
            rule="together",
        )  # fmt: skip


def _opens_something(check: Check) -> None:
    if not check.isolated and check.observes not in OPENS:
        raise InputError(
            "isolated", False, "left out where nothing is opened",
            f"Only these open something that stands under pressure: {', '.join(sorted(OPENS))}.",
            rule="together",
        )  # fmt: skip


def _is_by_hand(check: Check) -> None:
    for key in flat(check.does):
        if key not in BY_HAND:
            known = [each for each in keys_of(Plant) if each in BY_HAND]
            allowed = f"what a hand moves: {', '.join(known)}"
            raise InputError("does", key, allowed, rule="choice", choices=known)
