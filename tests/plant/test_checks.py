"""Keys that are each in their range and yet do not fit together."""

from __future__ import annotations

from typing import Any

import pytest
from tests.plants import LEAST, with_curve, with_table

from loadfirst.errors import InputError
from loadfirst.plant.read import decode_plant

SENTENCES = [
    (
        with_table("suction", bore_mm=20, roughness_mm=1.5),
        "suction.roughness_mm is 1.5, but must be at or below 1/20 of suction.bore_mm, 1 mm.",
    ),
    (
        with_table("discharge", bore_mm=50, roughness_mm=3),
        "discharge.roughness_mm is 3.0, but must be at or below 1/20 of discharge.bore_mm, 2.5 mm.",
    ),
    (
        with_table("supply", surface_m=4.5, top_m=4),
        "supply.surface_m is 4.5, but must be at or below supply.top_m, 4 m.",
    ),
    (
        with_table("delivery", surface_m=11, bottom_m=12),
        "delivery.surface_m is 11.0, but must be at or above delivery.bottom_m, 12 m.",
    ),
    (
        with_table("supply", bottom_m=5, top_m=5, surface_m=5),
        "supply.top_m is 5.0, but must be above supply.bottom_m, 5 m.",
    ),
    (
        with_table("delivery", outlet_m=3, bottom_m=12),
        "delivery.outlet_m is 3.0, but must be at or above delivery.bottom_m, 12 m.",
    ),
    (
        {**with_table("supply", gas_bar=-0.9), "site": {"barometer_bar": 0.6}},
        "supply.gas_bar is -0.9, but must be at or above full vacuum in the air of this site, -0.6 bar.",
    ),
    (
        {**LEAST, "gauges": {"suction": {"range_bar": [1, -1]}}},
        "gauges.suction.range_bar[1] is -1.0, but must be above its lower end, 1 bar.",
    ),
    (
        with_table("site", barometer_bar=0.9, altitude_m=900),
        "site.barometer_bar is 0.9, but must be left out where site.altitude_m is given.",
    ),
    (
        with_table("pump", model="medium"),
        "pump.model is 'medium', but must be left out where [pump.curve] is given.",
    ),
    (
        {**LEAST, "pump": {"centre_m": 0.4}},
        "pump.model is not there, but must be the id of a pump. "
        "Or give the pump's points in a table [pump.curve].",
    ),
    (
        with_table("liquid", name="must", density_kgm3=1050),
        "liquid.viscosity_mpas is not there, but must be given for any liquid but water. This one is 'must'.",
    ),
    (
        with_table("liquid", density_kgm3=1050),
        "liquid.density_kgm3 is 1050.0, but must be left out for water, whose temperature says all. "
        "Give the liquid another name.",
    ),
    (
        with_curve(flow_m3h=[1, 10, 20, 30]),
        "pump.curve.flow_m3h[0] is 1.0, but must be 0: the first point is at no flow.",
    ),
    (
        with_curve(flow_m3h=[0, 10, 10.001, 30]),
        "pump.curve.flow_m3h[2] is 10.001, but must be at least 0.003 m³/h above the one before it, 10 m³/h. "
        "It is number 3 of the list; of two points at one flow leave out one.",
    ),
    (
        with_curve(flow_m3h=[0, 1e-300, 2e-300, 3e-300]),
        "pump.curve.flow_m3h[3] is 3e-300, but must be at least 0.01 m³/h: it is the last one.",
    ),
    (
        with_curve(flow_m3h=[0, 10, 10, 30]),
        "pump.curve.flow_m3h[2] is 10.0, but must be above the one before it, 10 m³/h. "
        "It is number 3 of the list.",
    ),
    (
        with_curve(head_m=[30, 28, 23, 24]),
        "pump.curve.head_m[3] is 24.0, but must be below the one before it, 23 m. "
        "It is number 4 of the list. A curve may rise once on its way, and falls in the end.",
    ),
    (
        with_curve(head_m=[30, 30, 23, 14]),
        "pump.curve.head_m[1] is 30.0, but must be below the one before it, 30 m. "
        "It is number 2 of the list.",
    ),
    (
        with_curve(npshr_m=[1, 1, 1]),
        "pump.curve.npshr_m is a list of 3, but must be as long as pump.curve.flow_m3h, a list of 4.",
    ),
    (
        with_curve(power_kw=[1, 2, 3, 3]),
        "pump.curve.power_kw is a list of 4, but must be left out where efficiency_percent is given.",
    ),
    (
        with_curve(efficiency_percent=None),
        "pump.curve.efficiency_percent is not there, but must be given, or power_kw in its place.",
    ),
    (
        with_curve(efficiency_percent=[3, 50, 65, 55]),
        "pump.curve.efficiency_percent[0] is 3.0, but must be 0: no flow, no efficiency.",
    ),
    (
        with_curve(efficiency_percent=[0, 0, 65, 55]),
        "pump.curve.efficiency_percent[1] is 0.0, but must be above 0 % where liquid flows.",
    ),
    (
        with_curve(efficiency_percent=None, power_kw=[1, 2, 1.2, 3]),
        "pump.curve.power_kw[2] is 1.2, but must be above 1.251 kW, which the liquid alone takes away. "
        "It is number 3 of the list.",
    ),
]


@pytest.mark.parametrize(("data", "sentence"), SENTENCES, ids=[s[1][:45] for s in SENTENCES])
def test_keys_that_contradict_each_other_get_their_sentence(data: dict[str, Any], sentence: str) -> None:
    """The key to change, its value, and the other key it has to fit."""
    with pytest.raises(InputError) as caught:
        decode_plant(data)
    assert caught.value.text == sentence


@pytest.mark.parametrize(
    "data",
    [
        LEAST,
        with_table("supply", surface_m=4, top_m=4),
        with_table("supply", surface_m=0, bottom_m=0),
        with_table("delivery", surface_m=30),
        with_table("delivery", outlet_m=3),
        with_table("suction", bore_mm=20, roughness_mm=1),
        with_table("suction", bore_mm=20.005, roughness_mm=1.00025),  # in binary a hair above 1/20
        with_table("delivery", outlet_m=99),
        with_table("liquid", name="brine", density_kgm3=1180, viscosity_mpas=1.8, vapour_bar=0.02),
        with_curve(efficiency_percent=None, power_kw=[0.9, 1.5, 1.9, 2.1]),
    ],
)
def test_the_ends_of_what_fits_are_accepted(data: dict[str, Any]) -> None:
    """A full vessel, an empty one, the roughest pipe, another liquid, powers in place of efficiencies."""
    assert decode_plant(data).title == "A test stand"
