"""What is true of the motors of a solved plant beside their torque: relay, belt, start.

Nothing here changes the flow. A relay that trips stops its pump; until then the
answer is what it says, and the note tells how long that lasts.
"""

from __future__ import annotations

import numpy as np
from msgspec.structs import replace

from loadfirst.physics import starting
from loadfirst.physics.backward import Backward
from loadfirst.physics.belt import Belted, Drives
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.law import Array
from loadfirst.physics.machine import Machines
from loadfirst.physics.overload import PICK_UP, trip
from loadfirst.plant import drives
from loadfirst.plant.answer import Machine
from loadfirst.plant.drive_answer import Belt, Reason, Relay, Start
from loadfirst.plant.machines import MachineLaw
from loadfirst.plant.pump_file import Curve
from loadfirst.plant.services import gear_ratio
from loadfirst.plant.shaft import field_speed, inertia
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.stack import static_head
from loadfirst.units import PERCENT, RPM

WARM = 1.0  # [-] current beforehand, over the set one


def with_drive(one: OnePlant, machine: Machine, place: int) -> Machine:
    """A running machine with what is true of its motor, relay and belt."""
    if one.built.services[one.row][place].held is not None:
        return machine  # it runs up or coasts: neither relay nor start can be told from one moment
    law, _, column = one.running(place)
    law = law.turned if isinstance(law, Backward) else law
    motor = law.motor.one(one.row, column)
    return replace(
        machine,
        motor_speed=_motor_speed(one, machine, motor, place),
        relay=_relay(one, machine, law, motor, place),
        **({} if one.changing else {"start": _start(one, machine, law, motor, place)}),
        **({"belt": _belt(machine, motor)} if isinstance(motor, Belted) and np.isfinite(motor.grip) else {}),
    )


def _motor_speed(one: OnePlant, machine: Machine, motor: Drives, place: int) -> float:
    """Of the motor's own shaft, before belt and gearbox. [rad/s]"""
    speed = machine.speed
    if isinstance(motor, Belted):
        slow = machine.stalled is True
        ratio = float(motor.ratio[0, 0])
        speed = speed / ratio if slow else float(motor.motor.speed(machine.torque * motor.ratio)[0, 0])
    return speed * gear_ratio(one.built.services[one.row][place].pump)


def _belt(machine: Machine, motor: Belted) -> Belt:
    torque, speed = np.full((1, 1), machine.torque), np.full((1, 1), machine.speed)
    heat = 0.0 if machine.stalled is True else max(float(motor.heat(torque, speed)[0, 0]), 0.0)
    return Belt(slips=bool(motor.slips(torque)[0, 0]), torque=float(motor.grip[0, 0]), heat=heat)


def _relay(one: OnePlant, machine: Machine, law: MachineLaw, motor: Drives, place: int) -> Relay:
    drive = one.plant.drive
    setting = machine.rated_current * drive.relay_percent * PERCENT
    share = machine.current / setting
    if share <= PICK_UP:
        return Relay(setting, False, None, None)
    found = trip(share, drive.trip_class, WARM)
    if not found.trips:
        return Relay(setting, False, None, None)
    return Relay(setting, True, float(found.after), _reason(one, machine, law, motor, place, setting))


def _reason(
    one: OnePlant, machine: Machine, law: MachineLaw, motor: Drives, place: int, setting: float
) -> Reason:
    """Why the current is too much: the first of these without which it would not be.

    A pump whose power rises with the flow is overloaded beyond its best efficiency, where the load asks too
    little; one whose power falls, short of it. On the other side its motor is too small at any load.
    """
    if machine.stalled is True:
        return "stalled"
    if machine.current <= machine.rated_current:
        return "set-low"
    if at_full_voltage(motor, machine) <= PICK_UP * setting:
        return "phase-lost" if bool(motor.two_phases[0, 0]) else "low-voltage"
    service = one.built.services[one.row][place]
    load, pump = machine.load, service.pump
    turned = machine.speed / (pump.speed_rpm * RPM)
    if load / max(turned, 1.0) ** (3 if isinstance(pump, Curve) else 1) <= 1:
        return "speed"
    if isinstance(law, Machines):
        if load / max(service.density / pump.density_kgm3, 1.0) <= 1 or service.thick:
            return "liquid"
        at_rest = float(one.per_machine(law.shut_off_torque)[law_column(one, place)])
        rises = at_rest < machine.torque
        if rises == (abs(machine.flow) > machine.best_efficiency_flow):
            return "little-load" if rises else "much-load"
        return "small-motor"
    return "much-load"


def law_column(one: OnePlant, place: int) -> int:
    """Which of the machines of its law a pump is."""
    return one.running(place)[2]


def at_full_voltage(motor: Drives, machine: Machine) -> float:
    """Current at the same torque, if all phases and the voltage of the frequency were there. [A]"""
    inner = motor.motor if isinstance(motor, Belted) else motor
    torque = np.full((1, 1), machine.torque) * (motor.ratio if isinstance(motor, Belted) else 1.0)
    if float(inner.relative_voltage[0, 0]) >= 1:
        return machine.current
    sound = inner._replace(relative_voltage=np.ones((1, 1)), phases=np.full((1, 1), 3.0))
    return float(sound.current(sound.input_power(torque, sound.speed(torque)))[0, 0])


def _start(one: OnePlant, machine: Machine, law: MachineLaw, motor: Drives, place: int) -> Start:
    """Started against what stands behind its check valve by now."""
    drive, asked = one.plant.drive, _asked(one, machine, law, place)
    ramped = drives.has_drive(drive)
    if ramped:
        plant, power = one.built.plants[one.row], one.built.services[one.row][place].rated_power
        own = inertia(plant, place, power) * field_speed(plant, place) / drive.ramp_s
        found = starting.ramp(motor, asked, machine.speed, own)
    else:
        found = starting.direct(motor, asked)
    return Start("ramp" if ramped else "direct", found.current, found.spare, found.hangs, found.speed)


def _against(one: OnePlant, machine: Machine) -> float:
    """Head that a pump must reach before anything flows: another pump's, or the static one. [m]

    One that pumps backward has nothing against it.
    """
    if machine.backward is True:
        return 0.0
    return machine.head if one.layout.side_by_side > 1 else static_head(one) / one.layout.in_line


def _asked(one: OnePlant, machine: Machine, law: MachineLaw, place: int) -> starting.Asked:
    """The load's torque at any speed of the pump's shaft on its way up. [rad/s] -> [N·m]

    A centrifugal pump's goes with the square of the speed, as at no flow until it opens its check valve,
    from there on more and more as where it runs (its flow as if the load went with the square of the flow).
    A displacement pump has the static head from the start.
    """
    running, against, column = max(machine.speed, 1e-9), _against(one, machine), law_column(one, place)
    if isinstance(law, Machines):
        at_rest = float(one.per_machine(law.shut_off_torque)[column])
        top = float(one.per_machine(law.shut_off_head)[column])
        opens = min(max(against, 0.0) / max(top, 1e-9), 1.0) if machine.flow else 1.0

        def centrifugal(speed: Array) -> Array:
            square = (speed / running) ** 2
            shut = np.minimum(opens / np.maximum(square, 1e-12), 1.0)
            open_way = np.sqrt((1 - shut) / max(1 - opens, 1e-9))
            return np.asarray(square * (at_rest + np.minimum(open_way, 1.0) * (machine.torque - at_rest)))

        return centrifugal
    assert isinstance(law, DisplacementMachines)
    curves = law.curves
    per_head, drag, bearings = (
        float(one.per_machine(part)[column])
        for part in (curves.torque_per_head, curves.drag, curves.bearings)
    )
    push = 1 + float(one.per_machine(law.pumps.friction)[column])
    most = abs(machine.head) if machine.backward is True else max(machine.head, 0.0)
    still = min(max(against, 0.0), most)

    def displacement(speed: Array) -> Array:
        head = still + (most - still) * (speed / running) ** 2
        return np.asarray(bearings + drag * speed + per_head * push * head)

    return displacement
