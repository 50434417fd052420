"""The same seed gives the same noise natively and in the browser, to the last bit."""

from __future__ import annotations

from typing import Any

from loadfirst.instruments.faults.noise import tremble
from loadfirst.instruments.faults.own_error import own_error

CODE = """
from loadfirst.instruments.faults.noise import tremble
from loadfirst.instruments.faults.own_error import own_error

" ".join(
    f"{tremble(0.37, seed, id, look).hex()} {own_error(seed, id, seed % 7, look).hex()}"
    for seed in (1, 2, 77, 999)
    for id in ("gauge-suction", "gauge-discharge", "flow-meter", "ammeter-1", "level-supply")
    for look in range(50)
)
"""


def test_chance_is_the_same_to_the_last_bit(run: Any) -> None:
    """A thousand looks: noise and own errors, written as bits."""
    native = " ".join(
        f"{tremble(0.37, seed, id, look).hex()} {own_error(seed, id, seed % 7, look).hex()}"
        for seed in (1, 2, 77, 999)
        for id in ("gauge-suction", "gauge-discharge", "flow-meter", "ammeter-1", "level-supply")
        for look in range(50)
    )
    assert len(set(native.split())) > 1900
    assert run(CODE) == native
