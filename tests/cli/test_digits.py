"""How many digits are printed of small numbers."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from loadfirst.__main__ import main
from loadfirst.cli.digits import fine

TINY = """
format = 1
title = "Tiny"
pump.curve = {motor_kw = 0.01, flow_m3h = [0, 0.01, 0.02], head_m = [0.5, 0.4, 0.1],
    power_kw = [0.001, 0.001, 0.0012], npshr_m = [0.1, 0.1, 0.1]}
suction = {bore_mm = 5, length_m = 0.1}
discharge = {bore_mm = 5, length_m = 1}
delivery = {surface_m = 2.1, bottom_m = 1}
valve = {kv_open_m3h = 0.01, opening = 1}
""".replace(",\n   ", ",")


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    """What a command prints."""
    assert main(list(arguments)) == 0
    return capsys.readouterr().out


@pytest.mark.native
def test_a_tiny_pump_does_not_read_as_nothing(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Flows, currents and powers have two digits at least, whatever their size; gauges stay as they are."""
    (tmp_path / "tiny.toml").write_text(TINY, encoding="utf-8")
    plant = str(tmp_path / "tiny.toml")
    found, out = json.loads(run(capsys, "read", plant, "--json")), run(capsys, "read", plant)
    shown = {reading["id"]: reading for reading in found["instruments"]}
    machine = found["machines"][0]
    assert 0.001 < shown["flow-meter"]["flow_m3h"] < 0.01 and 0.01 < machine["current_a"] < 0.1
    flow, current = f"{machine['flow_m3h']:.4f} m³/h", f"{machine['current_a']:.3f} A"
    assert out.count(flow) == 3 and f"Duty point   {flow} at" in out
    assert f"motor takes {machine['motor_input_kw']:.4f} kW, {current}" in out
    assert re.search(r"ammeter-1 +0\.\d{3} A +± 0\.000\d\n", out)
    assert re.search(r"gauge-suction +0\.\d\d bar", out)
    rows = [line.split() for line in run(capsys, "curves", plant).splitlines() if line.startswith("   ")]
    assert len({row[0] for row in rows[1:]}) == len(rows) - 1 and all(row[5] > "0.001" for row in rows[1:])


@pytest.mark.parametrize(
    ("number", "text"),
    [(0.0, "0.0"), (-1e-12, "0.000000"), (0.0132, "0.013"), (-0.5, "-0.50"), (9.96, "10.0"), (42.25, "42.2")],
)
def test_small_numbers_get_more_decimals_up_to_what_is_noise(number: float, text: str) -> None:
    """Two digits at least; those of ordinary size and nothing at all keep the usual ones."""
    assert fine(number, 1) == text
