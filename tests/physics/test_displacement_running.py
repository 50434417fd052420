"""What a displacement pump does: the load makes its pressure, the clearances its slip, the motor its end."""

from __future__ import annotations

import numpy as np
import pytest
from tests.displacement import (
    GEAR,
    MOTOR,
    RPM,
    at_pressure,
    machine,
    steady,
)

from loadfirst.physics.breakdown import breakdown_torque, starting_current
from loadfirst.physics.displacement_curve import STALLING
from loadfirst.physics.displacement_pump import DisplacementPump
from loadfirst.physics.motor import Motor
from loadfirst.units import BAR

NONE = np.zeros((1, 1))


def test_the_load_makes_the_pressure_and_hardly_touches_the_flow() -> None:
    """From no pressure to the rated: the flow falls by slip and a little speed, the torque many times."""
    free = machine().running(machine().last_flow)
    full = machine().running(np.array([[at_pressure(machine(), 10 * BAR)]]))
    flows = machine().last_flow[0, 0], at_pressure(machine(), 10 * BAR)
    assert 0.85 < flows[1] / flows[0] < 1
    assert full.torque > 5 * free.torque
    assert full.current > 1.5 * free.current


def test_slip_grows_with_pressure_and_falls_with_viscosity() -> None:
    """On thick oil in proportion to pressure over viscosity."""
    thick = machine(motor=steady(GEAR.speed), viscosity=0.5)
    free = float(thick.last_flow[0, 0])
    one, two = (free - at_pressure(thick, pressure) for pressure in (5 * BAR, 10 * BAR))
    assert two == pytest.approx(2 * one, rel=1e-3)
    thicker = machine(motor=steady(GEAR.speed), viscosity=1.0)
    assert free - at_pressure(thicker, 10 * BAR) == pytest.approx(two / 2, rel=1e-3)


def test_a_thin_liquid_slips_more_nearly_with_the_root_of_the_pressure() -> None:
    """Twice the pressure: less than twice the slip, more than √2 times."""
    thin = machine(motor=steady(GEAR.speed), viscosity=3e-4, density=700.0)
    slips = [float(thin.last_flow[0, 0]) - at_pressure(thin, pressure) for pressure in (BAR, 2 * BAR)]
    assert 2**0.5 < slips[1] / slips[0] < 1.7


def test_wear_lets_more_through_with_the_cube_of_the_gap() -> None:
    """A gap a quarter higher: about twice the slip on oil, at the same pressure."""
    new, worn = (machine(motor=steady(GEAR.speed), clearance=gap) for gap in (1.0, 1.25))
    slips = [float(m.last_flow[0, 0]) - at_pressure(m, 10 * BAR) for m in (new, worn)]
    assert slips[1] / slips[0] == pytest.approx(1.25**3, rel=0.01)
    assert worn.shut_off_head < machine(motor=steady(GEAR.speed)).shut_off_head


def test_gas_takes_the_place_of_liquid() -> None:
    """A tenth of gas at the inlet, a tenth less liquid, the same torque at the same pressure."""
    pure, gassed = machine(motor=steady(GEAR.speed)), machine(motor=steady(GEAR.speed), gas=0.1)
    assert gassed.last_flow == pytest.approx(0.9 * pure.last_flow)
    one, other = (m.running(np.array([[at_pressure(m, 8 * BAR)]])) for m in (pure, gassed))
    assert one.torque == pytest.approx(other.torque, rel=1e-6)
    assert other.volumetric_efficiency < one.volumetric_efficiency - 0.09


def test_thick_liquid_costs_torque() -> None:
    """Drag goes with the viscosity, and so the mechanical efficiency falls."""
    found = []
    for machines in (machine(viscosity=thick) for thick in (0.05, 0.2, 0.5)):
        running = machines.running(np.array([[at_pressure(machines, 10 * BAR)]]))
        found.append(float(running.mechanical_efficiency[0, 0]))
    assert found == sorted(found, reverse=True)
    assert found[-1] < 0.6


def test_nothing_but_the_motor_stops_it_against_a_shut_valve() -> None:
    """Far beyond the maker's limit; the motor is past its breakdown torque, at a multiple of its current."""
    running = machine().running(NONE)
    assert running.beyond.all() and running.stalled.all()
    assert running.pressure > 3 * GEAR.pressure
    most = breakdown_torque(MOTOR)
    assert most <= running.torque <= (1 + STALLING) * most
    assert running.pressure * GEAR.per_radian < running.torque
    assert running.current > 4 * MOTOR.rated_current
    assert 0 < running.speed < 0.4 * GEAR.speed
    assert running.efficiency == 0


def test_on_thin_liquid_slip_takes_all_of_the_flow_before_the_motor_stalls() -> None:
    """A gear pump for oil on water cannot reach its rated pressure: that is the clearances' doing."""
    running = machine(density=998.0, viscosity=1e-3).running(NONE)
    assert not running.stalled.any() and not running.beyond.any()
    assert running.slip == pytest.approx(GEAR.per_radian * running.speed)
    assert running.pressure < GEAR.pressure


def test_a_stalled_motors_current_climbs_to_that_of_standstill() -> None:
    """From breakdown, where the shaft still turns fast, to the starting current where it stands."""
    machines = machine()
    stall = float(machines.curves.stall[0, 0])
    flow = np.linspace(stall, -3 * GEAR.rated_flow, 60)[:, None]
    running = machines.running(flow)
    assert (np.diff(running.current[1:], axis=0) >= 0).all()
    backwards = running.speed <= 0
    assert backwards.any()
    assert running.current[backwards] == pytest.approx(float(starting_current(MOTOR)[0, 0]))


def test_liquid_that_drives_the_pump_is_braked_by_the_motor_up_to_its_breakdown_torque() -> None:
    """Above the free flow the pressure is negative and the motor generates; then it is run away with."""
    machines = machine()
    running = machines.running(np.array([[1.15 * GEAR.rated_flow], [10 * GEAR.rated_flow]]))
    assert (running.pressure < 0).all() and (running.efficiency == 0).all()
    most = float(breakdown_torque(MOTOR)[0, 0])
    torque = running.torque[:, 0]
    assert abs(torque[0]) < most < -torque[1] < 1.5 * most
    assert running.speed[1, 0] > 5 * GEAR.speed


def test_bearings_that_ask_more_than_the_motor_has_keep_the_shaft_still() -> None:
    """A tenth of a watt against a two-litre lobe pump: no turn, no flow, no negative speed."""
    pump = DisplacementPump(
        kind="lobe",
        displacement=2e-3,
        speed=400 * RPM,
        pressure=10 * BAR,
        viscosity=1e-3,
        density=998.0,
        volumetric_efficiency=0.7,
        mechanical_efficiency=0.4,
        npsh_required=2.0,
    )
    running = machine(pump, Motor.rated(0.1), density=998.0, viscosity=1e-3).running(NONE)
    assert abs(running.speed[0, 0]) < 1e-6 and abs(running.pressure[0, 0]) < 1e-3


def test_slower_by_drive_it_gives_less_flow_at_the_same_pressure() -> None:
    """At half the frequency a little less than half the flow: the slip stays."""
    full, half = machine(), machine(motor=Motor.rated(4000.0, poles=4, frequency=25))
    flows = [at_pressure(m, 10 * BAR) for m in (full, half)]
    assert flows[1] < 0.49 * flows[0]
    slips = [float(m.last_flow[0, 0]) - q for m, q in zip((full, half), flows, strict=True)]
    assert slips[0] == pytest.approx(slips[1], rel=0.05)
    needed = [m.running(m.last_flow).npsh_required[0, 0] for m in (full, half)]
    assert needed[1] == pytest.approx(needed[0] / 4, rel=0.02)
