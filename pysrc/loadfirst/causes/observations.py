"""What a person can look at, feel or ask, besides reading the instruments: each with its two chances.

`hit` is the chance that it shows a cause that is there, `false_alarm` that it
seems to show one that is not. They are our own statement of common practice,
for a careful person who knows the plant: nobody has published such figures.
Looking costs time; how much is a puzzle's business.
"""

from __future__ import annotations

from typing import NamedTuple


class Observation(NamedTuple):
    """One thing to look at.

    Attributes
    ----------
    says : what a person does, for the command line.
    hit, false_alarm : chances, above 0 and below 1, the first the larger. [-]
    """

    says: str
    hit: float
    false_alarm: float


OBSERVATIONS: dict[str, Observation] = {
    # the load, discharge side
    "valve-stem": Observation("Look at the control valve's stem and its scale.", 0.95, 0.03),
    "hand-valves": Observation("Walk the line and look at the hand valves' spindles.", 0.9, 0.05),
    "other-user": Observation("Ask the second user, or look at the valve of that line.", 0.95, 0.03),
    "far-vessel": Observation("Look into the delivery vessel, or at its own level gauge.", 0.95, 0.03),
    "far-pressure": Observation("Read the pressure in the delivery vessel at that vessel.", 0.95, 0.03),
    "filter-drop": Observation("Compare the pressures before and behind the filter.", 0.9, 0.05),
    "line-walked": Observation("Walk the line and look for wet ground and noise.", 0.85, 0.03),
    "piece-of-pipe": Observation("Look into a piece of the pipe at the next shutdown.", 0.9, 0.05),
    "return-felt": Observation("Hold a contact thermometer and an ear to the return line.", 0.8, 0.1),
    "relief-felt": Observation(
        "Hold a contact thermometer and an ear to the relief valve's outlet.", 0.8, 0.1
    ),
    "standby-shaft": Observation("Look, past its guard, whether the standby's shaft turns.", 0.85, 0.02),
    "relief-tested": Observation(
        "Take the relief valve to a test bench, or read its seal and tag.", 0.9, 0.05
    ),
    "check-lever": Observation("Look at the check valve's lever, and listen to its disc.", 0.75, 0.1),
    "pumps-counted": Observation("Look which pumps run.", 0.98, 0.01),
    "shift-log": Observation("Ask the shift what was started, opened or filled.", 0.8, 0.05),
    "summit-vented": Observation("See whether air comes from the vent at the summit.", 0.85, 0.05),
    # the load, suction side
    "near-vessel": Observation("Look into the supply vessel, or at its own level gauge.", 0.95, 0.03),
    "near-vent": Observation(
        "See whether the supply vessel's vent is free, and read its pressure.", 0.9, 0.03
    ),
    "strainer-basket": Observation("Isolate, drain and open the strainer: look into its basket.", 0.95, 0.05),
    "suction-valve": Observation("Look at the spindle of the valve in the suction line.", 0.95, 0.03),
    "thermometer": Observation("Measure the temperature of the liquid at the suction.", 0.95, 0.03),
    "rattle": Observation("Listen for a rattle as of gravel in the pump.", 0.8, 0.1),
    "suction-joints": Observation("Wet joints and stuffing box with soap: the film is drawn in.", 0.7, 0.05),
    "surface-watched": Observation(
        "Watch the surface over the suction mouth for a dimple or a whirl.", 0.85, 0.05
    ),
    "casing-vented": Observation(
        "Open the casing's vent with the pump stopped: gas first, then liquid.", 0.9, 0.05
    ),
    "suction-pipe-seen": Observation(
        "Isolate, drain and enter by permit, or lower a camera: look at the suction pipe's foot.", 0.9, 0.03
    ),
    "barometer": Observation("Read a barometer at the pump.", 0.98, 0.01),
    # the liquid
    "sample-weighed": Observation("Weigh a sample with a hydrometer.", 0.95, 0.03),
    "sample-run": Observation("Time a sample through a flow cup.", 0.9, 0.05),
    "sample-settled": Observation("Let a sample stand in a glass: bubbles rise.", 0.8, 0.05),
    # the drive
    "drive-display": Observation("Read frequency and limit at the drive's display.", 0.98, 0.01),
    "supply-measured": Observation(
        "Let an electrician measure voltage and frequency at the motor.", 0.95, 0.02
    ),
    "motor-plate": Observation("Read the motor's plate: poles, speed and power.", 0.97, 0.02),
    "belt-seen": Observation("Look at the belt through its guard with a stroboscope.", 0.85, 0.05),
    "arrow": Observation("Compare the shaft's turning with the arrow, as it runs down.", 0.95, 0.02),
    "controller-face": Observation("Read set point, output and mode at the controller.", 0.98, 0.01),
    # the machine
    "job-card": Observation("Read the job card of the last overhaul.", 0.8, 0.05),
    "impeller-seen": Observation(
        "Open the pump, isolated, locked and drained: look at the impeller.", 0.97, 0.02
    ),
    "gaps-measured": Observation(
        "Open the pump, isolated, locked and drained: measure the rings' gaps.", 0.95, 0.05
    ),
    "pump-plate": Observation("Read the pump's plate: model and serial number.", 0.97, 0.02),
    "shaking": Observation("Feel or measure vibration: a blocked passage is out of balance.", 0.7, 0.15),
    # the instruments
    "height-measured": Observation("Measure at what height the gauge hangs.", 0.95, 0.02),
    "gauge-compared": Observation("Hang a test gauge at the same tapping.", 0.95, 0.05),
    "gauge-vented": Observation(
        "Shut its root valve, vent it: does it rest at zero? Open the valve: does it come back?", 0.9, 0.05
    ),
    "pointer-lively": Observation("Move the valve a little: does the pointer follow?", 0.95, 0.03),
    "leg-bled": Observation("Bleed the gauge's leg: gas, then liquid, and the pointer moves.", 0.9, 0.05),
    "dial-read": Observation("Read what is printed on the dial: unit, type, serial number.", 0.95, 0.02),
    "range-read": Observation("Read the range that the transmitter is set to.", 0.9, 0.03),
    "snubber-seen": Observation("Look at the gauge's snubber and at what it is fixed to.", 0.85, 0.05),
    "tapping-traced": Observation("Trace the gauge's line to its tapping.", 0.95, 0.02),
    "tank-timed": Observation("Time how fast the level in a vessel moves, and compare the flow.", 0.85, 0.1),
    "plate-tag": Observation("Read the orifice plate's tag: which side is upstream?", 0.9, 0.03),
    "plate-seen": Observation(
        "Take the orifice plate out, line isolated and drained: look at its edge.", 0.9, 0.05
    ),
    "meter-lines": Observation(
        "Vent the flow meter's pulse lines, and look at its earth and screen.", 0.8, 0.1
    ),
    "meter-settings": Observation(
        "Read the flow meter's settings: range, damping and square root.", 0.9, 0.03
    ),
    "density-set": Observation("Read the density that the orifice meter is set to.", 0.95, 0.02),
    "meter-place": Observation(
        "See on which side of the return line's tee the flow meter stands.", 0.98, 0.01
    ),
    "current-clamped": Observation(
        "Let an electrician clamp another ammeter round the motor's cable.", 0.95, 0.03
    ),
    "second-look": Observation("Read everything again, and compare with the scatter of good days.", 0.8, 0.1),
}
