"""Every kind of reading is printed with its error and its uncertainty, in one and the same unit."""

from __future__ import annotations

import math
from typing import get_args

import msgspec
import pytest

from loadfirst.cli.convert import printed
from loadfirst.instruments.instrument import Instrument, Quantity


@pytest.mark.parametrize("quantity", get_args(Quantity))
def test_a_reading_of_any_quantity_is_printed_whole(quantity: Quantity) -> None:
    """Rectangular error: the uncertainty is it over √3 (JCGM 100:2008, 4.3.7, from memory)."""
    reading = Instrument("any", quantity, 0.0, 2.0, span_percent=1.0).show(1.0)
    told = msgspec.to_builtins(printed(reading))
    errors = [value for name, value in told.items() if name.startswith("greatest_error_")]
    standards = [value for name, value in told.items() if name.startswith("standard_uncertainty_")]
    assert len(errors) == len(standards) == 1
    assert standards[0] == pytest.approx(errors[0] / math.sqrt(3))
    assert told["quantity"] == quantity and told["off_scale"] is None
