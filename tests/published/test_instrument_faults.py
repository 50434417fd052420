"""Faults of instruments: sizes and directions that are published or known in the trade, on whole plants."""

from __future__ import annotations

import copy
import math
from functools import partial
from typing import Any

import pytest
from tests.plants import LEAST
from tests.published.printed import Printed, each

from loadfirst.instruments.faults.misread_unit import SIZES
from loadfirst.instruments.faults.orifice import extracted, scaled
from loadfirst.instruments.instrument import Instrument, Reading
from loadfirst.instruments.panel import readings
from loadfirst.instruments.uncertainty import root_limit, standard
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import true_state
from loadfirst.units import BAR, G

ROOT_VALVE = "gauges.discharge.fault.root_valve"
RANGES = {"gauges.discharge.range_bar": [-1, 10], "gauges.after_valve.range_bar": [-1, 10]}


def shown(**edits: Any) -> dict[str, Reading]:
    """What the instruments of a test stand show; keys are written with __ for the point."""
    keys = {key.replace("__", "."): value for key, value in edits.items()}
    resolved = resolve_data(apply_edits(copy.deepcopy(LEAST), RANGES | keys))
    return {reading.id: reading for reading in readings(true_state(resolved), resolved.plant)}


def value(reading: Reading) -> float:
    """What it shows, which is something."""
    assert reading.value is not None
    return reading.value


def moved(**edits: Any) -> dict[str, float]:
    """By how much each instrument shows more than it does on the sound plant."""
    before, after = shown(), shown(**edits)
    return {id: value(after[id]) - value(before[id]) for id in before}


def others_stand_still(change: dict[str, float], but: str) -> bool:
    """Whether only one instrument tells another story: nothing has happened to the plant."""
    return all(by == 0 for id, by in change.items() if id != but)


root = partial(
    Printed, source="ISO 5167: q proportional to √Δp", provenance="exact", within=1e-3
)  # fmt: skip


@each(
    *(
        root(f"{part:g} of the pressure", {"signal": part}, {"flow": flow})
        for part, flow in ((0.25, 0.5), (0.5, 0.7071), (0.81, 0.9))
    )
)
def test_a_flow_goes_with_the_root_of_the_differential_pressure(row: Printed) -> None:
    """What a meter makes of its signal."""
    assert {"flow": extracted(row.given["signal"], "right")} == row.expected


def test_a_root_that_is_missing_or_doubled() -> None:
    """At half the flow the signal is a quarter: without the root 25 %, with two 70.7 %; at the end all agree.

    Source: common practice, computed from q ∝ √Δp.
    """
    assert extracted(0.25, "missing") == 0.25
    assert extracted(0.25, "doubled") == pytest.approx(math.sqrt(0.5))
    for way in ("right", "missing", "doubled"):
        assert extracted(1.0, way) == 1  # type: ignore[arg-type]


def test_a_meter_scaled_for_another_density_errs_by_the_root_of_the_ratio() -> None:
    """Made for 850 kg/m³ and used on water it shows √(998.2/850) = 1.084 times the flow.

    Source: q = k √(Δp/ρ), computed.
    """
    assert scaled(1.0, 998.2, 850.0) == pytest.approx(1.0837, abs=5e-5)
    sound = shown(meters__flow_kind="orifice")
    wrong = shown(meters__flow_kind="orifice", meters__flow_density_kgm3=850.0)
    ratio = value(wrong["flow-meter"]) / value(sound["flow-meter"])
    assert ratio == pytest.approx(math.sqrt(998.2 / 850), rel=1e-4)


def test_a_sound_orifice_meter_shows_the_flow() -> None:
    """Squared and rooted again: to rounding."""
    assert value(shown(meters__flow_kind="orifice")["flow-meter"]) == pytest.approx(
        value(shown()["flow-meter"]), rel=1e-12
    )


def test_a_reversed_plate_reads_low_by_10_to_20_per_cent() -> None:
    """And nothing else moves. Source: common practice; 15 to 17 % of a gas meter (quoted, public page)."""
    sound = shown(meters__flow_kind="orifice")
    wrong = shown(meters__flow_kind="orifice", meters__flow_fault__plate="reversed")
    assert 0.80 <= value(wrong["flow-meter"]) / value(sound["flow-meter"]) <= 0.90
    assert {id for id in sound if sound[id] != wrong[id]} == {"flow-meter"}


@pytest.mark.parametrize(("up", "reads"), [(5.0, -0.49), (-5.0, 0.49)])
def test_a_gauge_moved_up_or_down_by_5_m(up: float, reads: float) -> None:
    """0.49 bar low or high, the rest as it was. Source: hydrostatics, 998.2 kg/m³ × g × 5 m; computed."""
    change = moved(gauges__discharge__height_m=0.5 + up)
    assert change["gauge-discharge"] / BAR == pytest.approx(reads, abs=5e-3)
    assert others_stand_still(change, "gauge-discharge")


@pytest.mark.parametrize("filled", [0.0, 0.3, 0.8])
def test_a_leg_partly_empty_errs_between_nothing_and_the_whole_leg(filled: float) -> None:
    """Source: common practice; hydrostatics: only what is full of liquid weighs."""
    change = moved(gauges__discharge__height_m=5.5, gauges__discharge__fault__leg_filled=filled)
    assert change["gauge-discharge"] == pytest.approx(-filled * 998.2 * G * 5, rel=1e-4, abs=1e-6)
    assert others_stand_still(change, "gauge-discharge")


def test_a_gauge_that_is_shut_off_does_not_move_when_the_valve_is_worked() -> None:
    """The best test of it; every other instrument moves. Source: common practice."""
    frozen = {ROOT_VALVE.replace(".", "__"): "shut", "gauges__discharge__fault__frozen_bar": 2.0}
    before, after = shown(**frozen), shown(**frozen, valve__opening=0.2)
    assert value(before["gauge-discharge"]) == value(after["gauge-discharge"]) == 2 * BAR
    for id in ("gauge-suction", "gauge-after-valve", "flow-meter", "ammeter-1"):
        assert value(before[id]) != value(after[id]), id


def test_a_wrong_zero_and_a_wrong_span() -> None:
    """Everywhere 0.3 bar more, or a tenth of the pressure less; class 1.6 on 10 bar allows only 0.16 bar.

    Source: common practice; EN 837-1:1996, table 11 (read).
    """
    assert Instrument("g", "pressure", 0.0, 10 * BAR, 1.6).show(4e5).accuracy == pytest.approx(0.16 * BAR)
    zero = moved(gauges__discharge__fault__zero_bar=0.3)
    assert zero["gauge-discharge"] == pytest.approx(0.3 * BAR)
    span = moved(gauges__discharge__fault__span_percent=-10)
    assert span["gauge-discharge"] == pytest.approx(-0.1 * value(shown()["gauge-discharge"]))
    assert others_stand_still(zero, "gauge-discharge") and others_stand_still(span, "gauge-discharge")


def test_an_absolute_gauge_taken_for_another_reads_an_atmosphere_too_much() -> None:
    """1.013 bar; at 2000 m above the sea 0.795 (standard atmosphere: ISO 2533, 79 495 Pa, from memory)."""
    assert moved(gauges__suction__fault__reads="absolute", gauges__suction__range_bar=[-1, 5])[
        "gauge-suction"
    ] == pytest.approx(1.01325 * BAR)
    high = {"site__altitude_m": 2000, "gauges__suction__range_bar": [-1, 5]}
    before, after = shown(**high), shown(**high, gauges__suction__fault__reads="absolute")
    assert value(after["gauge-suction"]) - value(before["gauge-suction"]) == pytest.approx(79495, abs=1)


sizes = partial(
    Printed, source="NIST SP 811 (2008), appendix B.8", provenance="from memory", within=1e-6
)  # fmt: skip


@each(
    sizes("psi", {}, {"pascal": 6.894757e3}),
    sizes("kgf-cm2", {}, {"pascal": 9.80665e4}),
    sizes("m-water", {}, {"pascal": 9.80665e3}),
)
def test_units_have_their_sizes(row: Printed) -> None:
    """Pound-force per square inch, kilogram-force per square centimetre, conventional metre of water."""
    assert {"pascal": SIZES[row.name]} == row.expected


def test_psi_taken_for_bar_are_fourteen_and_a_half_times_too_many() -> None:
    """The pointer stands where it stood, on a dial of other numbers. Source: 1 bar = 14.5038 psi."""
    sound, wrong = shown()["gauge-discharge"], shown(gauges__discharge__fault__unit="psi")["gauge-discharge"]
    assert value(wrong) == pytest.approx(14.5038 * value(sound), rel=1e-5)
    assert wrong.high == pytest.approx(14.5038 * sound.high, rel=1e-5)


def test_a_gauge_in_kilograms_force_that_is_taken_for_bar_has_the_same_numbers_on_its_dial() -> None:
    """And its pointer stands two per cent higher; a dial in metres has ten times as many.

    Source: 1 bar = 1.01972 kgf/cm².
    """
    sound, wrong = (
        shown()["gauge-discharge"],
        shown(gauges__discharge__fault__unit="kgf-cm2")["gauge-discharge"],
    )
    assert (wrong.low, wrong.high) == pytest.approx((sound.low, sound.high), rel=1e-12)
    assert value(wrong) == pytest.approx(1.01972 * value(sound), rel=1e-5)
    metres = shown(gauges__discharge__fault__unit="m-water")["gauge-discharge"]
    assert metres.high == pytest.approx(10 * sound.high, rel=1e-12)


def test_a_gauge_on_the_wrong_side_of_the_valve_misses_its_pressure_drop() -> None:
    """It reads as the gauge behind the valve does. Source: common practice."""
    wrong = shown(gauges__discharge__fault__tapping="after-valve", valve__opening=0.4)
    assert value(wrong["gauge-discharge"]) == pytest.approx(value(wrong["gauge-after-valve"]))
    assert value(wrong["gauge-discharge"]) < value(shown(valve__opening=0.4)["gauge-discharge"])


def test_a_return_line_that_passes_is_seen_by_the_meter_on_its_own_side_of_the_tee_alone() -> None:
    """At the pump the flow rises, behind the tee it falls. Source: mass balance (and a passing minimum-flow
    valve: flow falls where the meter stands downstream of the branch, computed on a reference plant)."""
    for place, sign in (("pump", 1), ("before-return", 1), ("after-return", -1)):
        shut = shown(return_line__fitted=True, return_line__opening=0.0, meters__flow_place=place)
        open_ = shown(return_line__fitted=True, return_line__opening=1.0, meters__flow_place=place)
        assert sign * (value(open_["flow-meter"]) - value(shut["flow-meter"])) > 0, place


def test_the_ammeter_before_a_drive_follows_power_and_not_the_motors_current() -> None:
    """From 50 to 25 Hz the power falls to about an eighth, the current in the motor's cable by far less.

    Source: common practice; affinity laws.
    """
    ratios = {}
    for place in ("motor", "before-drive"):
        fast, slow = (
            shown(
                drive__start="ramp",
                drive__frequency_hz=hz,
                meters__current_place=place,
                meters__current_range_a=30,
            )
            for hz in (50, 25)
        )
        ratios[place] = value(slow["ammeter-1"]) / value(fast["ammeter-1"])
    assert ratios["before-drive"] < 0.25
    assert ratios["motor"] > 1.5 * ratios["before-drive"]
    assert (
        moved(meters__current_place="before-drive")["ammeter-1"] == 0
    )  # straight on the supply there is one place


@each(
    Printed(
        "half-width 1",
        {"limit": 1.0},
        {"standard": 0.57735},
        within=1e-5,
        source="JCGM 100:2008 (GUM), 4.3.7: a/√3",
        provenance="from memory",
    )
)
def test_an_error_as_likely_anywhere_within_a_limit(row: Printed) -> None:
    """Rectangular distribution."""
    assert {"standard": standard(row.given["limit"])} == row.expected


def test_every_reading_carries_its_uncertainty() -> None:
    """From class and range: limit over √3; what does not repeat is smaller; noise adds in squares."""
    for reading in shown().values():
        assert reading.accuracy is not None and reading.uncertainty is not None
        assert reading.uncertainty == pytest.approx(reading.accuracy / math.sqrt(3))
        assert reading.repeatability is not None and 0 < reading.repeatability <= reading.uncertainty
        lasts = reading.quantity != "speed"  # what a tachometer errs by is the supply's frequency
        assert (reading.repeatability < reading.uncertainty) == lasts
    noisy, still = shown(gauges__suction__fault__noise_bar=0.02)["gauge-suction"], shown()["gauge-suction"]
    assert noisy.uncertainty is not None and still.uncertainty is not None
    assert noisy.uncertainty**2 - still.uncertainty**2 == pytest.approx((0.02 * BAR) ** 2)


def test_an_orifice_meter_is_the_worse_the_lower_it_reads() -> None:
    """1 % of the differential pressure: 0.5 % of the range at its end, four times that at a quarter of it.

    Source: dq/q = dΔp/(2Δp), from q ∝ √Δp; the exact root differs by less than a tenth here.
    """
    assert root_limit(1.0, 100.0, 100.0) == pytest.approx(0.5, rel=0.01)
    assert root_limit(1.0, 100.0, 25.0) == pytest.approx(2.0, rel=0.1)
    assert root_limit(1.0, 100.0, 0.0) == pytest.approx(10.0)  # √0.01: nothing can be told near no flow
