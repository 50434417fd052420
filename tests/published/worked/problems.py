"""The published problems, with every answer that their books print and a plant has.

Left out, as no key of a plant can say it: what a motor of a given efficiency takes up (Crane 7-34), and
lines of
three bores, one after another (White 6.17).
"""

from __future__ import annotations

from tests.published.worked.table import Answer, Problem, delivered, junction_head

FLOW, HEAD = "duty/flow_m3h", "duty/head_m"
POWER, NPSH = "machines/pump-1/shaft_power_kw", "machines/pump-1/npsh_available_m"
EFFICIENCY = "machines/pump-1/efficiency_percent"
SECOND_LINE, BRANCH = "aside_m3h/second-line", "aside_m3h/branch-line"

HI = "Hydraulic Institute, Engineering Data Book (open source), 1.C"
WHITE = "White, Fluid Mechanics, Example"
CRANE = "Crane TP-410, Example"
MUNSON = "Munson, Young & Okiishi, Fundamentals of Fluid Mechanics, Example"
ESPOSITO = "Esposito, Fluid Power with Applications, Example"
VISCOUS = "ANSI/HI 9.6.7 = ISO/TR 17766, worked example 1"
IN_FLUIDS = "quoted (documentation of fluids, which says what the book prints)"
ITS_OWN = "quoted (inputs; the answer is what the documentation of fluids computes)"
IEC = "quoted (inputs, in the documentation of fluids); recomputed"
CHART = "the book takes its friction factors from the chart, to two or three digits"
SLIP = "last digit, and the motor's slip at this load, which takes 0.1 % of the pump's head"
GRAPH = "the curve was read off a graph, twice: 2 %"
THROUGH = "the notes draw another curve through the same points"


def _white_11(part: str, gpm: float, *more: Answer, arrangement: str) -> Problem:
    return Problem(
        f"White {part}", "white-11-6", f"{WHITE} {part}", "from memory; recomputed",
        (Answer("flow", FLOW, gpm, "1000 US gpm", 0.06, SLIP), *more), (f"pump.arrangement={arrangement}",),
    )  # fmt: skip


def _course(part: str, flow: float, head: float, kw: float, pumps: int, arrangement: str) -> Problem:
    """Section 3 of the notes; the power is that of all pumps. Part a gives the line."""
    given = ", as given" if part == "a" else ""
    return Problem(
        f"course notes 3{part}, {arrangement}", "course-pump-and-pipe",
        "Pump Theory and Performance, notes of a public course, section 3", "read (data and printed results)",
        (
            Answer(f"flow{given}", FLOW, flow, "m³/h", 0.001 * flow, THROUGH),
            Answer(f"head{given}", HEAD, head, "m", 0.001 * head, THROUGH),
            Answer("power of each pump", POWER, kw / pumps, "kW", 0.006 * kw / pumps, THROUGH),
        ),
        (f"pump.arrangement={arrangement}",),
    )  # fmt: skip


PROBLEMS: tuple[Problem, ...] = (
    Problem(
        "data book 1.C", "hi-data-book-1c", f"{HI}, worked example", "read",
        (Answer("flow", FLOW, 200, "US gpm", 0.5), Answer("head", HEAD, 296, "ft", 0.5)),
    ),
    Problem(
        "data book 1.C, 10 ft higher", "hi-data-book-1c", f"{HI}, destination level 10 ft higher", "read",
        (Answer("flow", FLOW, 190.6, "US gpm", 0.05),), ("delivery.surface_m=83.82",),
    ),
    _white_11(
        "11.6", 15.2, Answer("head", HEAD, 430, "ft", 1.1, SLIP),
        arrangement="single",
    ),
    _white_11("11.7", 16.3, arrangement="side-by-side"),
    _white_11("11.8", 21.5, arrangement="in-line"),
    Problem(
        "Çengel, chapter 14", "cengel-14-reservoirs",
        "Çengel & Cimbala, Fluid Mechanics, chapter 14, end-of-chapter problem",
        "read (inputs); answers from memory; recomputed",
        (Answer("flow", FLOW, 7.43, "L/min", 0.005), Answer("head", HEAD, 4.96, "m", 0.005)),
    ),
    Problem(
        "Munson 12.4", "munson-12-4", f"{MUNSON} 12.4",
        "read (inputs, the curve off a graph); answers from memory",
        (
            Answer("flow", FLOW, 1600, "US gpm", 50),
            Answer("head", HEAD, 66.5, "ft", 1.4, GRAPH),
            Answer("brake power", POWER, 32.0, "hp", 1.3, f"{GRAPH}, of flow and head"),
        ),
    ),
    Problem(
        "Munson 12.3", "munson-12-3", f"{MUNSON} 12.3", "from memory; recomputed",
        (
            Answer("flow, as given", FLOW, 0.5, "ft³/s", 0.0005),
            Answer("loss before the pump", "head_breakdown/suction-line/head_m", 10.2, "ft", 0.05),
            Answer("NPSH left at 7.65 ft", NPSH, 15.0, "ft", 0.05),
        ),
    ),
    Problem(
        "Crane 7-15", "crane-7-15", f"{CRANE} 7-15", IN_FLUIDS,
        (
            Answer("flow, as given", FLOW, 100, "US gpm", 0.05),
            Answer("head", HEAD, 421, "ft", 1.3, CHART),
            Answer("brake power", POWER, 15.2, "hp", 0.1, f"{CHART}: last digit, and as the head"),
        ),
    ),
    Problem(
        "Crane 7-17", "crane-7-17", f"{CRANE} 7-17", IN_FLUIDS,
        (
            Answer("flow, as given", FLOW, 1900, "bbl/h", 1.0, "the motor's slip"),
            Answer("head", HEAD, 3406.5, "ft", 28, f"{CHART}: 2 % of 1406 ft of friction"),
            Answer("brake power", POWER, 1496, "hp", 12.5, f"{CHART}: as the head"),
        ),
    ),
    Problem(
        "Crane 7-32", "crane-7-32", f"{CRANE} 7-32", ITS_OWN,
        (
            Answer("flow, as given", FLOW, 400, "US gpm", 0.5),
            Answer("loss before the pump", "head_breakdown/suction-line/head_m", 6, "ft", 0.05),
            Answer("NPSH available", NPSH, 13.89, "ft", 0.05, "the loss of 6 ft is had to 0.05 ft"),
        ),
    ),
    Problem(
        "Crane 7-33, 3500 rpm", "crane-7-33", f"{CRANE} 7-33, as given", IN_FLUIDS,
        (
            Answer("flow", FLOW, 400, "US gpm", 0.5), Answer("head", HEAD, 126, "ft", 0.5),
            Answer("brake power", POWER, 17.5, "hp", 0.05),
        ),
    ),
    Problem(
        "Crane 7-33, 1700 rpm", "crane-7-33", f"{CRANE} 7-33", IN_FLUIDS,
        (
            Answer("flow", FLOW, 194.3, "US gpm", 0.05), Answer("head", HEAD, 29.7, "ft", 0.05),
            Answer("brake power", POWER, 2.0, "hp", 0.05),
        ),
        (f"drive.frequency_hz={1700 / 60!r}",),
    ),
    Problem(
        "Crane 7-34", "crane-7-34", f"{CRANE} 7-34", ITS_OWN,
        (
            Answer("flow, as given", FLOW, 700, "US gpm", 0.5),
            Answer("head, as given", HEAD, 428, "ft", 0.5),
            Answer("brake power", POWER, 107.06, "hp", 0.16, "flow and head have three digits: 0.15 %"),
        ),
    ),
    Problem(
        "White 6.18", "white-6-18", f"{WHITE} 6.18", "from memory; recomputed",
        (
            Answer("flow of pipe 1", delivered, 62.5, "m³/h", 0.75, f"{CHART}: 1.2 %"),
            Answer("flow of pipe 2", SECOND_LINE, 25.9, "m³/h", 0.31, f"{CHART}: 1.2 %"),
            Answer("flow of pipe 3", BRANCH, 11.4, "m³/h", 0.14, f"{CHART}: 1.2 %"),
            Answer("flow together", FLOW, 99.8, "m³/h", 1.2, f"{CHART}: 1.2 %"),
        ),
    ),
    Problem(
        "White 6.19", "white-6-19", f"{WHITE} 6.19",
        "read (final figures, in a public excerpt); pipes from memory",
        (
            Answer("junction", junction_head(90), 34.53, "m", 0.52, f"{CHART}, and iterates: 1.5 %"),
            Answer("flow of pipe 2", FLOW, 47.0, "m³/h", 0.7, f"{CHART}, and iterates: 1.5 %"),
            Answer("flow of pipe 1", delivered, 52.8, "m³/h", 0.8, f"{CHART}, and iterates: 1.5 %"),
            Answer("flow of pipe 3, out", BRANCH, -5.8, "m³/h", 0.1, f"{CHART}, and iterates: 1.5 %"),
        ),
    ),
    Problem(
        "three reservoirs, 9.12", "three-reservoirs-9-12",
        "FOSSEE/Scilab-TBC-Uploads, book 1962, Example 9.12 (p. 340 of the book)", "read; recomputed",
        (
            Answer("junction", junction_head(125), 131.6, "m", 0.05),
            Answer("flow of pipe 1", FLOW, 2.116, "m³/s", 0.006, "printed digits of the three, 0.3 %"),
            Answer("flow of pipe 2", BRANCH, 0.565, "m³/s", 0.0017, "printed digits of the three, 0.3 %"),
            Answer("flow of pipe 3", delivered, 1.549, "m³/s", 0.0047, "printed digits of the three, 0.3 %"),
        ),
    ),
    Problem(
        "Esposito 3-10", "esposito-3-10", f"{ESPOSITO} 3-10, turned round",
        "read (data and solution, in a public collection)",
        (
            Answer("flow, as given", FLOW, 30, "US gpm", 0.05),
            Answer("pump head", HEAD, 732, "ft", 1.8, "the book rounds 265 psi down and 732 ft up"),
            Answer("power", POWER, 5.0, "hp", 0.05),
        ),
    ),
    Problem(
        "Esposito 5-1", "esposito-5-1", f"{ESPOSITO} 5-1", "read (inputs); answers from memory; recomputed",
        (Answer("flow", FLOW, 28, "US gpm", 0.5),),
    ),
    Problem(
        "Esposito 5-1, no load", "esposito-5-1", f"{ESPOSITO} 5-1, theoretical flow",
        "read (inputs); answers from memory; recomputed",
        (Answer("flow", FLOW, 30.6, "US gpm", 0.05),), ("delivery.gas_bar=0",),
    ),
    Problem(
        "Esposito 5-2", "esposito-5-2", f"{ESPOSITO} 5-2", "read (inputs); answer from memory; recomputed",
        (Answer("flow", FLOW, 0.0553, "m³/min", 0.0001, "goes on with 0.0614 dm³, rounded"),),
    ),
    Problem(
        "viscous example 1, water", "viscous-example-1", f"{VISCOUS}, as given",
        "quoted (inputs, in public code)",
        (
            Answer("flow", FLOW, 110, "m³/h", 0.5), Answer("head", HEAD, 77, "m", 0.5),
            Answer("efficiency", EFFICIENCY, 68, "%", 0.5),
        ),
        ("liquid.viscosity_mpas=0.9",),
    ),
    Problem(
        "viscous example 1, oil", "viscous-example-1",
        f"{VISCOUS}: 0.938 of flow and head, 0.738 of the efficiency",
        "quoted (inputs, in public code); factors from memory; recomputed",
        (
            Answer("flow", FLOW, 103.2, "m³/h", 0.4, "the example rounds B: 0.4 %"),
            Answer("head", HEAD, 72.2, "m", 0.3, "the example rounds B: 0.4 %"),
            Answer("efficiency", EFFICIENCY, 50.2, "%", 0.2, "the example rounds B: 0.4 %"),
        ),
    ),
    Problem(
        "control valve, example 1", "iec-60534-examples", "IEC 60534-2-1, worked example 1", IEC,
        (Answer("flow", FLOW, 360, "m³/h", 1.1, "Kv 165 is half a unit wide: 0.3 %"),),
    ),
    Problem(
        "control valve, example 2, choked", "iec-60534-examples", "IEC 60534-2-1, worked example 2", IEC,
        (Answer("flow", FLOW, 360, "m³/h", 0.8, "Kv 238 is half a unit wide: 0.2 %"),),
        ("valve.kv_open_m3h=238", "valve.recovery=0.6"),
    ),
    _course("a", 1042.7, 187.87, 802, 1, "single"),
    _course("b", 1074.0, 199.32, 1349, 2, "side-by-side"),
    _course("c", 1429.1, 352.7, 1810, 2, "in-line"),
    Problem(
        "slower against a lift, x = 1", "slower-against-a-lift", "affinity rules", "computed by hand",
        (Answer("flow", FLOW, 81.65, "m³/h", 0.01),),
    ),
    Problem(
        "slower against a lift, x = 0.9", "slower-against-a-lift", "affinity rules", "computed by hand",
        (Answer("flow", FLOW, 69.04, "m³/h", 0.01),), ("drive.frequency_hz=45",),
    ),
)  # fmt: skip
