"""A plant as data: every key of a plant file, with its unit, range and default.

The key names carry the units that people write; the elements turn them into
SI. What goes beyond one key's own range is in `plant.checks`.
"""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from loadfirst.plant.dials import Gauge, Gauges
from loadfirst.plant.meta import Part, choice, name, words
from loadfirst.plant.pump_file import Curve, Displacement, DisplacementFile, Pump, PumpFile
from loadfirst.plant.tables.branch import Branch
from loadfirst.plant.tables.burst import Burst
from loadfirst.plant.tables.control import Control
from loadfirst.plant.tables.control_valve import ControlValve
from loadfirst.plant.tables.filter import Filter
from loadfirst.plant.tables.lines import Discharge, Suction
from loadfirst.plant.tables.liquid import Liquid
from loadfirst.plant.tables.meters import Meters
from loadfirst.plant.tables.relief import Relief
from loadfirst.plant.tables.return_line import ReturnLine
from loadfirst.plant.tables.second_line import SecondLine
from loadfirst.plant.tables.site import Site
from loadfirst.plant.tables.station import Check, Drive, PumpStation, SecondPump
from loadfirst.plant.tables.summit import Summit
from loadfirst.plant.tables.vessels import Delivery, Supply

__all__ = [
    "Branch",
    "Burst",
    "Check",
    "Control",
    "ControlValve",
    "Curve",
    "Delivery",
    "Discharge",
    "Displacement",
    "DisplacementFile",
    "Drive",
    "Filter",
    "Gauge",
    "Gauges",
    "Liquid",
    "Meters",
    "Part",
    "Plant",
    "Pump",
    "PumpFile",
    "PumpStation",
    "Relief",
    "ReturnLine",
    "SecondLine",
    "SecondPump",
    "Site",
    "Suction",
    "Summit",
    "Supply",
]


class Plant(Part, frozen=True, kw_only=True):
    """A whole plant file. `pump` is needed; every other table may be left out."""

    format: Annotated[Literal[1], choice("Number of this file format.")]
    title: Annotated[str, name("What people call the plant.", 80)]
    about: Annotated[str, words("A sentence or two on what it does.", 600)] = ""
    liquid: Liquid = Liquid()
    site: Site = Site()
    supply: Supply = Supply()
    suction: Suction = Suction()
    pump: PumpStation
    drive: Drive = Drive()
    relief: Relief = Relief()
    check: Check = Check()
    valve: ControlValve = ControlValve()
    control: Control = Control()
    discharge: Discharge = Discharge()
    delivery: Delivery = Delivery()
    branch: Branch = Branch()
    return_line: ReturnLine = ReturnLine()
    filter: Filter = Filter()
    burst: Burst = Burst()
    second_line: SecondLine = SecondLine()
    summit: Summit = Summit()
    gauges: Gauges = Gauges()
    meters: Meters = Meters()
