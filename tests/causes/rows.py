"""Which way readings go for each cause, as others computed it or as the trade says.

Sources
-------
"computed": a steady model of the reference system that shares nothing with
this program (H = 60 - 0.002 Q², power rising by 0.41 of itself over the flow,
current in proportion to power); it prints per cent. "practice": cause lists of
the trade, directions only.

Signs: ``+`` ``-`` ``0`` (no move); ``~`` moves by less than 2 %; ``--``, ``++`` by more
than 30 %; ``gone`` next to nothing is left; several, parted by blanks: any of them.
"""

from __future__ import annotations

from typing import Any, NamedTuple

Percent = dict[str, float]


class Row(NamedTuple):
    """One row: what happens to which plant, and how the readings should move."""

    id: str
    fault: str
    happens: tuple[tuple[str, float | None], ...]
    suction: str
    discharge: str
    flow: str
    current: str
    head: str = ""
    percent: Percent = {}
    plant: str = "reference"
    before: dict[str, Any] = {}
    hunts: bool = False
    contradicts: tuple[str, ...] = ()
    because: str = ""
    share: float = 0.08
    """How near a per cent must come, besides 0.6: the line here is a pipe (exponent not quite 2)."""


def _percent(discharge: float, suction: float, flow: float, current: float, head: float) -> Percent:
    return {"discharge": discharge, "suction": suction, "flow": flow, "current": current, "head": head}


BESIDE = {"pump.arrangement": "side-by-side", "pump.second.running": False}
BOTH = {"pump.arrangement": "side-by-side"}
ORIFICE = {"meters.flow_kind": "orifice"}

COMPUTED = (
    Row(
        "SIM-01", "discharge valve throttled, or a filter fouled: resistance + 2.0e-3",
        (("valve-throttled", 0.555),), "+", "+", "-", "-", "+", _percent(18.8, 18.8, -17.4, -7.1, 18.8),
    ),
    Row(
        "SIM-02", "discharge valve opened: resistance - 0.8e-3",
        (("valve-opened", 0.839),), "-", "-", "+", "+", "-", _percent(-13.5, -13.5, 10.8, 4.5, -13.5),
    ),
    Row(
        "SIM-03", "destination level lower by 5 m",
        (("delivery-level-lower", 5.0),), "-", "-", "+", "+", "-", _percent(-6.2, -6.2, 5.1, 2.1, -6.2),
    ),
    Row(
        "SIM-04", "destination level higher by 5 m",
        (("delivery-level-higher", 5.0),), "+", "+", "-", "-", "+", _percent(6.2, 6.2, -5.4, -2.2, 6.2),
    ),
    Row(
        "SIM-07", "worn wear rings, internal leakage about 10 %",
        (("worn", 10.0),), "+", "-", "-", "+", "-", _percent(-4.6, 4.4, -3.8, 1.7, -5.0),
    ),
    Row(
        "SIM-10", "suction strainer plugged, no cavitation: resistance + 7e-4",
        (("strainer-blocked", 0.769),), "-", "-", "-", "-", "+", _percent(-8.7, -348.4, -7.3, -3.0, 8.3),
    ),
    Row(
        "SIM-11", "suction tank level lower by 2 m",
        (("supply-level-lower", 2.0),), "-", "-", "-", "-", "+", _percent(-2.6, -103.7, -2.1, -0.9, 2.5),
    ),
    Row(
        "SIM-13", "return line's valve passing, the flow meter behind its tee",
        (("return-passing", 0.43),), "-", "-", "-", "+", "-", _percent(-8.6, -8.6, -7.2, 2.9, -8.6),
        before={"meters.flow_place": "after-return"},
    ),
    Row(  # it assumes what head, power and friction do; here they follow from a viscosity that raises
        # friction by nearly as much, so its per cents can only be met roughly
        "SIM-16", "higher viscosity: head - 4 %, power + 12 %, friction + 40 %",
        (("thicker-liquid", 30.0),), "+", "+", "-", "+", "+", _percent(3.6, 7.8, -6.8, 7.5, 3.4), share=0.2,
    ),
    Row(
        "SIM-17", "second identical pump started in parallel",
        (("second-pump-starts", None),), "-", "+", "+", "-", "+",
        _percent(33.3, -31.7, 23.9, -15.4, 36.5), before=BESIDE,
    ),
)  # fmt: skip

PRACTICE = (
    Row(
        "PR-03", "air leak in suction line or seal; pressure hunts, often + at the suction",
        (("air-leak", 4.0),), "+", "-", "-", "-", hunts=True,
    ),
    Row(
        "PR-04", "pump not primed; suction at its static value",
        (("air-bound", None),), "+", "gone", "gone", "-",
    ),
    Row("PR-05", "discharge valve shut, radial", (("valve-throttled", 0.0),), "+", "+", "gone", "-"),
    Row(
        "PR-05 axial", "discharge valve shut, propeller",
        (("valve-throttled", 0.0),), "+", "+", "gone", "+",
        before={
            "pump.model": "axial", "delivery.surface_m": 5.5, "delivery.bottom_m": 2.0,
            "suction.strainer_k": 1, "suction.fittings_k": 2, "discharge.length_m": 20,
            "discharge.bore_mm": 300, "valve.kv_open_m3h": 1000, "valve.opening": 1.0,
        },
    ),
    Row("PR-06", "wrong direction of rotation, radial", (("phases-swapped", None),), "+", "--", "-", "- +"),
    Row("PR-07", "impeller completely plugged", (("impeller-plugged", None),), "+", "--", "gone", "-"),
    Row("PR-09", "smaller impeller fitted", (("impeller-smaller", 0.93),), "+", "-", "-", "-"),
    Row("PR-10 supply", "frequency of the supply lower", (("supply-slow", 0.95),), "+", "-", "-", "-"),
    Row(
        "PR-10 drive", "variable-speed drive set back", (("drive-set-back", 0.9),), "+", "-", "-", "-",
        before={"drive.start": "ramp"},
    ),
    Row(
        "PR-10 belt", "belt slips", (("belt-slack", 0.4),), "+", "-", "-", "-",
        before={"drive.belt": "v-belt"},
    ),
    Row("PR-11", "voltage low at rated frequency", (("voltage-low", 0.9),), "~", "~", "~", "+"),
    Row(
        "PR-12", "standby pump's check valve passing", (("standby-passing", 30.0),), "-", "-", "-", "+",
        before=BESIDE, contradicts=("suction",),
        because=(
            "what leaks back goes round between the pumps; the suction gauge stands in their common line, "
            "which carries the net flow alone, and that has fallen, so it loses less and the gauge rises. "
            "In the running pump's own branch, where the row looks, the flow has risen."
        ),
    ),
    Row("PR-13", "parallel pump stopped", (("second-pump-stops", None),), "+", "-", "-", "+", before=BOTH),
    Row(
        "PR-14", "whirl at the tank's outlet, its level very low",
        (("supply-level-lower", 2.5), ("whirl-at-outlet", 3.0)), "-", "-", "-", "-", hunts=True,
    ),
    Row(
        "PR-15", "hotter liquid, limited by vapour at the suction",
        (("hotter-liquid", 10.0),), "0 + ~", "-", "-", "-", before={"liquid.temperature_c": 88.0},
    ),
    Row("PR-16", "discharge gauge's root valve shut", (("gauge-shut-off", None),), "0", "0", "0", "0"),
    Row("PR-17", "gauge 5 m higher", (("gauge-moved-up", 5.0),), "0", "-", "0", "0"),
    Row("PR-18", "gauge 5 m lower", (("gauge-moved-down", 5.0),), "0", "+", "0", "0"),
    Row("PR-19 zero", "gauge's zero low", (("gauge-zero-off", -10.0),), "0", "-", "0", "0"),
    Row("PR-19 span", "gauge's span high", (("gauge-span-off", 10.0),), "0", "+", "0", "0"),
    Row(
        "PR-20", "leg of a gauge 5 m above its tapping half empty", (("gauge-leg-gassed", 0.5),),
        "0", "+", "0", "0", before={"gauges.discharge.height_m": 5.5},
    ),
    Row("PR-21", "orifice plate reversed", (("plate-reversed", None),), "0", "0", "-", "0", before=ORIFICE),
    Row(
        "PR-23", "flow meter scaled for another density", (("flow-meter-other-density", 1.2),),
        "0", "0", "+ -", "0", before=ORIFICE,
    ),
    Row(
        "PR-24", "displacement pump, discharge restricted", (("valve-throttled", 0.5),),
        "~", "++", "- ~", "+", plant="displacement",
    ),
    Row(
        "PR-25", "displacement pump, lighter load", (("valve-opened", 1.0),), "~", "--", "+ ~", "-",
        plant="displacement",
    ),
    Row(
        "PR-28", "displacement pump, higher viscosity", (("thicker-liquid", 3.0),), "-", "+", "0 +", "+",
        plant="displacement",
    ),
)  # fmt: skip

OURS = (
    Row("OWN-01", "check valve sticks", (("check-valve-sticks", 40.0),), "+", "+", "-", "-", "+"),
    Row(
        "OWN-02", "first of two pumps stopped, as its twin", (("first-pump-stops", None),), "+", "-", "-", "",
        before=BOTH,
    ),
    Row(
        "OWN-03", "second of two pumps worn: less together, and the first takes over",
        (("second-pump-worn", 20.0),), "+", "-", "-", "+", before=BOTH,
    ),
    Row(
        "OWN-04", "relief valve lifts in service, displacement pump", (("relief-set-too-low", 0.2),),
        "~", "--", "+ ~", "-", plant="displacement",
    ),
    Row("OWN-05", "relief valve gagged: nothing shows in service", (("relief-gagged", None),),
        "0", "0", "0", "0", plant="displacement"),
    Row("OWN-06", "orifice plate's edge worn", (("plate-worn", 6.0),), "0", "0", "-", "0", before=ORIFICE),
    Row("OWN-07", "suction gauge's span low", (("suction-gauge-span-off", -20.0),), "-", "0", "0", "0"),
    Row(
        "OWN-08", "next larger pump fitted, where the load rises with the flow",
        (("pump-replaced-larger", None),), "-", "+", "+", "+",
        before={"pump.model": "medium"},
    ),
    Row("OWN-09", "motor with twice the poles", (("motor-of-more-poles", None),), "+", "--", "--", "--"),
)  # fmt: skip
"""Directions that are common practice, in no list that was read."""

ROWS = COMPUTED + PRACTICE + OURS
