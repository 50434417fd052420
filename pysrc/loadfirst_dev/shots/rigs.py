"""Pictures of every machine and every element that a plant may have, each in the state that tells of it."""

from __future__ import annotations

from loadfirst_dev.links import DEFAULT_PLANT
from loadfirst_dev.shots.scene import Scene

OIL = {
    "liquid.name": "lubricating oil",
    "liquid.density_kgm3": 870,
    "liquid.viscosity_mpas": 75,
    "liquid.vapour_bar": 0.001,
}
GEAR = {"pump.model": "gear", **OIL}
RELIEF = {"relief.fitted": True}
TWO = {"pump.arrangement": "side-by-side"}
EVERYTHING = {
    **RELIEF,
    "return_line.fitted": True,
    "branch.fitted": True,
    "filter.fitted": True,
    "filter.fouling": 3,
    "second_line.fitted": True,
    "summit.fitted": True,
    "burst.fitted": True,
    "burst.hole_mm": 10,
}
STRAY = {
    "gauges.discharge.fault.tapping": "after-valve",
    "gauges.discharge.fault.zero_bar": 0.3,
    "meters.flow_place": "after-return",
    "return_line.fitted": True,
    "valve.opening": 0.5,
}
SMALL_AND_LARGE = {**TWO, "pump.model": "small", "pump.second.model": "large"}
HELD = {"control.fitted": True, "control.set_m3h": 25}
HELD_LEVEL = {
    "control.fitted": True,
    "control.of": "delivery-level",
    "control.on": "drive",
    "delivery.draw_m3h": 25,
}

RIGS = (
    Scene("instruments", "A gauge tapped behind the valve, a meter behind the return line", STRAY),
    Scene("instruments-faults", "What may be wrong with a gauge, unfolded", STRAY, deed="faults"),
    Scene("gear", "A gear pump", {**GEAR, **RELIEF}),
    Scene("gear-lifted", "A gear pump, its relief valve lifted", {**GEAR, **RELIEF, "valve.opening": 0.02}),
    Scene(
        "gear-blocked",
        "A gear pump against a shut valve, its relief valve blocked",
        {**GEAR, **RELIEF, "relief.state": "blocked", "valve.opening": 0},
    ),
    Scene("gear-bare", "A gear pump without a relief valve", GEAR),
    Scene("lobe", "A lobe pump", {"pump.model": "lobe", **RELIEF}),
    Scene("screw", "A screw pump", {"pump.model": "screw", **RELIEF}),
    Scene(
        "mixed", "A mixed-flow pump", {"pump.model": "mixed", "delivery.bottom_m": 2, "delivery.surface_m": 5}
    ),
    Scene(
        "axial",
        "An axial pump",
        {
            "pump.model": "axial",
            "suction.bore_mm": 200,
            "discharge.bore_mm": 200,
            "discharge.length_m": 20,
            "valve.kv_open_m3h": 800,
            "meters.flow_range_m3h": 400,
            "delivery.bottom_m": 2,
            "delivery.surface_m": 4,
            "delivery.top_m": 6,
        },
    ),
    Scene(
        "gear-backward",
        "A gear pump that turns the wrong way, without a check valve",
        {**GEAR, **RELIEF, "pump.rotation": "wrong", "check.fitted": False},
    ),
    Scene("gear-dry", "The same behind its check valve", {**GEAR, **RELIEF, "pump.rotation": "wrong"}),
    Scene("held-flow", "A flow controller on the valve", HELD),
    Scene("held-worn", "The same, the pump worn: only the output tells", {**HELD, "pump.wear_percent": 20}),
    Scene("held-lost", "Control is lost at full output", {**HELD, "control.set_m3h": 60}),
    Scene("held-level", "A level controller on the drive, tapped", HELD_LEVEL, deed="controller panel"),
    Scene("held-by-hand", "A controller by hand", {**HELD, "control.mode": "manual"}),
    Scene("current-limit", "A drive at its current limit", {"drive.current_limit_percent": 55}),
    Scene("worn", "A worn pump, tapped", {"pump.wear_percent": 15}, deed="panel"),
    Scene("impeller-blocked", "A pump with half its impeller blocked", {"pump.blocked_percent": 50}),
    Scene("wrong-way", "A pump that turns the wrong way", {"pump.rotation": "wrong"}),
    Scene("belt", "A slack belt slips", {"drive.belt": "v-belt", "drive.belt_tension_percent": 25}),
    Scene(
        "tripped",
        "Too little load: the relay trips",
        {
            "drive.motor_kw": 5,
            "delivery.bottom_m": 2,
            "delivery.surface_m": 3,
            "discharge.bore_mm": 150,
            "valve.opening": 1,
            "valve.kv_open_m3h": 400,
        },
    ),
    Scene("low-voltage", "Low voltage, more current", {"drive.voltage_percent": 80}, deed="drive panel"),
    Scene("branch", "A second user draws", {}, plant="two-halls"),
    Scene(
        "branch-shut",
        "The second user shut, little through the return line",
        {"branch.opening": 0},
        plant="two-halls",
    ),
    Scene("return-line", "A return line alone", {"return_line.fitted": True, "valve.opening": 0}),
    Scene("fouled", "A fouled filter", {"filter.fouling": 20}, plant="twin-mains"),
    Scene("burst", "A burst pipe", {"burst.fitted": True, "burst.hole_mm": 40}),
    Scene("twin-mains", "Two lines side by side", plant="twin-mains"),
    Scene("late-second", "A second pump that cannot come in", plant="late-second"),
    Scene(
        "droop",
        "One pump with a droop, at the greater of two flows",
        {"pump.arrangement": "single"},
        plant="late-second",
    ),
    Scene("summit", "Over a summit", plant="over-the-dam"),
    Scene("summit-gas", "Over a summit, not primed", {"summit.primed": False}, plant="over-the-dam"),
    Scene("filling", "The line is filling", {"discharge.filled": 0.4}),
    Scene(
        "choked",
        "The valve chokes",
        {
            "valve.recovery": 0.6,
            "valve.opening": 0.25,
            "liquid.temperature_c": 85,
            "supply.surface_m": 3.8,
            "delivery.bottom_m": 0,
            "delivery.surface_m": 1.0,
        },
    ),
    Scene(
        "boiling",
        "Hot water, too little NPSH",
        {"liquid.temperature_c": 96, "supply.surface_m": 0.6, "valve.opening": 1},
        {"chart": "npsh"},
    ),
    Scene(
        "backward",
        "A standing pump that is driven backward",
        {**TWO, "pump.second.running": False, "check.stuck_open": True},
    ),
    Scene("standing", "One pump stands", {**TWO, "pump.second.running": False}),
    Scene(
        "unlike",
        "Two unlike pumps, the stronger one holds the check valve of the weaker one shut",
        {**SMALL_AND_LARGE, "valve.opening": 0.2},
    ),
    Scene("unlike-in-line", "Two unlike pumps in line", {**SMALL_AND_LARGE, "pump.arrangement": "in-line"}),
    Scene("everything", "Everything at once", EVERYTHING),
    Scene("everything-twice", "Everything at once, with two pumps", {**EVERYTHING, **TWO}),
    Scene("pit", "Two pumps above a pit", plant="pit-lift"),
    Scene("vessel", "The panel of the supply vessel", deed="vessel panel"),
    Scene(
        "gear-compared",
        "The same load, a gear pump beside a centrifugal one",
        {**GEAR, **RELIEF},
        {
            "beside": {
                "plant": DEFAULT_PLANT,
                "edits": {**OIL, **RELIEF},
            }
        },
    ),
    Scene(
        "gear-two-loads",
        "The same gear pump, two loads",
        {**GEAR, **RELIEF, "valve.opening": 0.2},
        {"beside": {"plant": DEFAULT_PLANT, "edits": {**GEAR, **RELIEF}}},
    ),
)
