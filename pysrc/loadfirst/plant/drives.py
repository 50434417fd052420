"""What reaches a plant's motors, and what stands between them and the pumps.

A motor straight on the supply gets the voltage and the frequency that the
supply has. A variable-speed drive makes its own frequency, so a supply that
sags in frequency is not felt at all; and it keeps voltage in proportion to
frequency up to what the supply has, not beyond. So low voltage is felt only
where the drive would need more than there is: 80 % of the voltage serves up to
80 % of the rated frequency (common practice of drives with a direct-current link).
"""

from __future__ import annotations

from functools import lru_cache

from loadfirst.physics import belt
from loadfirst.physics.efficiency_class import class_efficiency
from loadfirst.plant.tables.station import Drive
from loadfirst.units import PERCENT

FULL = 100.0  # [%]
TOOTHED = 2.0
"""Torque at which a toothed belt jumps, over the rated one, well tensioned (common practice). [-]"""


def line_frequency(drive: Drive) -> float:
    """Frequency that the supply truly has. [Hz]"""
    return drive.supply_hz * drive.mains_percent / FULL


def has_drive(drive: Drive) -> bool:
    """Whether there is a variable-speed drive."""
    line = line_frequency(drive)
    return drive.start == "ramp" or (drive.frequency_hz is not None and drive.frequency_hz != line)


def frequency(drive: Drive) -> float:
    """Frequency that reaches the motors. [Hz]"""
    if drive.frequency_hz is not None:
        return drive.frequency_hz
    return float(drive.supply_hz) if has_drive(drive) else line_frequency(drive)


def relative_voltage(drive: Drive) -> float:
    """Voltage at the motors over the one that belongs to the frequency there, as `Motor` has it. [-]"""
    volts = drive.voltage_percent / FULL
    offered = volts / min(frequency(drive) / drive.supply_hz, 1.0)
    return min(offered, 1.0) if has_drive(drive) else offered


def phases(drive: Drive) -> int:
    """Phases that reach the motors: a variable-speed drive makes three of its own. [-]"""
    return 3 if has_drive(drive) else drive.phases


@lru_cache(maxsize=256)
def efficiency(power: float, poles: int, efficiency_class: str, supply_frequency: int) -> float:
    """Of a motor at rated load. [W], -, -, [Hz] -> [-]"""
    return float(class_efficiency(power, poles, efficiency_class, supply_frequency))


def creep(drive: Drive) -> float:
    """Share of the speed that the belt loses at rated torque. [-]

    A slack V-belt creeps more, in inverse proportion to its tension (our choice); teeth do not creep.
    """
    return belt.CREEP / (drive.belt_tension_percent * PERCENT) if drive.belt == "v-belt" else 0.0


def tightness(drive: Drive) -> float:
    """Torque at which the belt slips (or jumps), over the rated one; it goes with the tension. [-]"""
    if drive.belt == "none":
        return float("inf")
    return (TOOTHED if drive.belt == "toothed" else belt.GRIP) * drive.belt_tension_percent * PERCENT


def ratio(drive: Drive) -> float:
    """Speed of the pump over that of the motor, without creep. [-]"""
    return 1.0 if drive.belt == "none" else drive.belt_ratio
