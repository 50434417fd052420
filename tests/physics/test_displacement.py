"""A displacement pump on its motor: one falling law, in closed form, and what it does at any flow."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.displacement import (
    GEAR,
    MOTOR,
    OIL,
    RPM,
    THICKNESS,
    Service,
    every,
    far_and_wide,
    machine,
    pumps,
    services,
    steady,
)

from loadfirst.errors import InputError
from loadfirst.physics.breakdown import breakdown_torque
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.displacement_curve import STALLING
from loadfirst.physics.displacement_pump import KINDS, DisplacementPump
from loadfirst.physics.motor import Motor
from loadfirst.units import BAR


@given(pumps(), services())
def test_the_head_never_rises_with_the_flow(pump: DisplacementPump, service: Service) -> None:
    """Whatever the pump, the motor, the liquid and the wear: the solver relies on it."""
    machines = service.of(pump)
    drop, slope = machines.head_drop(far_and_wide(machines))
    assert np.isfinite(drop).all() and np.isfinite(slope).all()
    assert (slope >= 0).all()
    size = np.maximum(np.abs(drop[1:]), np.abs(machines.shut_off_head))
    assert (np.diff(drop, axis=0) >= -1e-9 * size).all()


@given(pumps(), services())
def test_everything_a_machine_does_is_finite(pump: DisplacementPump, service: Service) -> None:
    """At any flow: forced backwards, stalled, run away with; no efficiency leaves 0 to 1."""
    running = service.of(pump).running(far_and_wide(service.of(pump)))
    assert np.isfinite(every(running)).all()
    for name in ("efficiency", "volumetric_efficiency", "mechanical_efficiency"):
        share = getattr(running, name)
        assert (share >= 0).all() and (share <= 1 + 1e-9).all(), name
    assert (running.current > 0).all() and (running.npsh_required >= 0).all()


@given(pumps(), services())
def test_the_slope_is_the_derivative_of_the_drop(pump: DisplacementPump, service: Service) -> None:
    """By central differences inside each piece, against the average of the two slopes there."""
    machines = service.of(pump)
    knots = machines.curves.knots[:, 0, 0]
    span = knots[-1] - knots[0] + pump.rated_flow + float(np.abs(knots).max())
    middle = np.concatenate([[knots[0] - span], (knots[1:] + knots[:-1]) / 2, [knots[-1] + span]])
    width = 1e-3 * np.concatenate([[span], np.diff(knots), [span]])
    wide = width > 1e-6 * np.abs(middle)
    middle, width = middle[wide, None], width[wide, None]
    (ahead, late), (behind, early) = (machines.head_drop(middle + side * width) for side in (1, -1))
    wanted = width * (late + early)
    assert ahead - behind == pytest.approx(wanted, rel=2e-3, abs=1e-7 * float(np.abs(ahead).max()))


@given(pumps(), services())
def test_the_pieces_meet(pump: DisplacementPump, service: Service) -> None:
    """No step in the head where one piece ends and the next begins, to rounding."""
    machines = service.of(pump)
    knots = machines.curves.knots[:, 0]
    at, after = machines.head_drop(knots)[0], machines.head_drop(np.nextafter(knots, np.inf))[0]
    steep = machines.head_drop(knots)[1]
    size = np.abs(at) + steep * machines.best_efficiency_flow * 10
    assert at == pytest.approx(after, abs=1e-9 * float(size.max()))


def test_at_the_makers_speed_pressure_and_liquid_stands_the_makers_point() -> None:
    """Flow, pressure, efficiencies, power and NPSH, all at once, of every kind."""
    for kind in KINDS:
        pump = DisplacementPump(
            kind=kind,
            displacement=2e-3,
            speed=600 * RPM,
            pressure=6 * BAR,
            viscosity=0.2,
            density=1100.0,
            volumetric_efficiency=0.88,
            mechanical_efficiency=0.71,
            npsh_required=2.5,
        )
        machines = machine(pump, steady(pump.speed), density=1100.0, viscosity=0.2)
        running = machines.running(np.array([[pump.rated_flow]]))
        assert running.pressure == pytest.approx(6 * BAR, rel=1e-9)
        assert running.speed == pytest.approx(pump.speed, rel=1e-12)
        assert running.volumetric_efficiency == pytest.approx(0.88)
        assert running.mechanical_efficiency == pytest.approx(0.71)
        assert running.efficiency == pytest.approx(0.88 * 0.71)
        assert running.shaft_power == pytest.approx(pump.rated_power)
        assert running.npsh_required == pytest.approx(2.5)
        assert running.reduced_flow == pytest.approx(pump.rated_flow)


def motor_torque(motor: Motor, speed: float) -> float:
    """What a motor gives at a speed, written apart: straight, and nearly level past breakdown."""
    most = float(breakdown_torque(motor)[0, 0])
    field = float(motor.synchronous_speed[0, 0]) * float((motor.supply_frequency / motor.frequency)[0, 0])
    droop = float(motor.droop[0, 0])
    straight = (float(motor.synchronous_speed[0, 0]) - speed) / droop
    if abs(straight) <= most:
        return straight
    side = np.sign(straight)
    spare = abs(straight) - most
    return float(side * (most + spare * droop / (droop + field / (STALLING * most))))


@pytest.mark.native
@pytest.mark.parametrize("viscosity", [1e-3, 0.05, 5.0], ids=["thin", "as tested", "thick"])
@pytest.mark.parametrize(
    "motor",
    [MOTOR, Motor.rated(1100.0, poles=4), Motor.rated(4000.0, poles=4, frequency=65), Motor.rated(90.0)],
    ids=["usual", "overloaded", "fast", "far too small"],
)
def test_it_keeps_to_the_equations_it_was_made_from(motor: Motor, viscosity: float) -> None:
    """Speed and head solved apart by scipy's brentq, one inside the other, at flows of every piece."""
    from scipy.optimize import brentq

    density, clearance, gas = 900.0, 1.3, 0.05
    machines = machine(GEAR, motor, density=density, viscosity=viscosity, clearance=clearance, gas=gas)
    bearings = float(machines.curves.bearings[0, 0])

    def slip(pressure: float) -> float:
        a, b = GEAR.laminar * viscosity / clearance**3, GEAR.inertia * density / clearance**2
        far = 1.01 * pressure / a
        return float(
            brentq(lambda s: a * s + b * s * abs(s) - pressure, min(far, 0), max(far, 0), xtol=1e-16)
        )

    def speed(pressure: float) -> float:
        share = 1 + GEAR.friction if pressure > 0 else 1 / (1 + GEAR.friction)
        wanted = GEAR.per_radian * pressure * share + bearings

        def short(speed: float) -> float:
            return wanted + GEAR.drag * viscosity * speed - motor_torque(motor, speed)

        return float(brentq(short, -1e9, 1e9, xtol=1e-9))

    def delivered(pressure: float) -> float:
        return (1 - gas) * GEAR.per_radian * speed(pressure) - slip(pressure)

    knots = machines.curves.knots[:, 0, 0]
    for flow in [knots[0] - 0.001, *((knots[1:] + knots[:-1]) / 2), knots[2] + 0.001, 0.0, 0.0005]:
        pressure = brentq(lambda p, q=flow: delivered(p) - q, -1e9, 1e9, xtol=1e-3)
        running = machines.running(np.array([[flow]]))
        assert running.pressure[0, 0] == pytest.approx(pressure, rel=1e-7, abs=1.0)
        assert running.speed[0, 0] == pytest.approx(speed(pressure), rel=1e-6, abs=1e-4)


@given(pumps(), services())
def test_speed_and_torque_stand_on_the_motors_line_until_it_stalls(
    pump: DisplacementPump, service: Service
) -> None:
    """The slip is inside: where no breakdown is passed, the speed is what the motor holds at that torque."""
    machines = service.of(pump)
    low, _, high = np.sort(machines.curves.knots[:, 0, 0])
    low = max(low, float(machines.curves.stall[0, 0]))
    running = machines.running(np.linspace(low, high, 9)[1:-1, None])
    size = np.abs(running.speed) + machines.motor.synchronous_speed
    off = np.abs(running.speed - machines.motor.speed(running.torque))
    most = breakdown_torque(machines.motor)
    assert (off <= 1e-6 * size).all()
    assert (np.abs(running.torque) <= most * (1 + 1e-6)).all()
    assert not running.stalled.any()


def test_a_batch_of_machines_equals_one_by_one() -> None:
    """Different pumps, motors, liquids, wear and gas in one batch; and so do its rows."""
    lobe = DisplacementPump(
        kind="lobe",
        displacement=1e-3,
        speed=400 * RPM,
        pressure=5 * BAR,
        viscosity=0.01,
        density=1000.0,
        volumetric_efficiency=0.8,
        mechanical_efficiency=0.7,
        npsh_required=2.0,
    )
    rows = [[GEAR, lobe], [lobe, GEAR], [GEAR, GEAR]]
    power = np.array([[4000.0, 7500.0], [300.0, 4000.0], [50.0, 11e3]])
    frequency = np.array([[50.0], [35.0], [60.0]])
    density, viscosity = np.array([[870.0], [1000.0], [1200.0]]), np.array([[0.05], [0.001], [2.0]])
    clearance, gas = np.array([[1.0, 1.5], [1.0, 1.0], [1.2, 2.0]]), np.array([[0.0], [0.2], [0.0]])
    many = DisplacementMachines.build(
        rows,
        Motor.rated(power, poles=4, frequency=frequency),
        density,
        viscosity,
        clearance=clearance,
        gas=gas,
    )
    flow = np.array([[0.002, 0.0], [-0.01, 0.002], [0.05, 0.0023]])
    together = every(many.running(flow))
    for b in range(3):
        picked = every(many.rows(np.array([b])).running(flow[b : b + 1]))
        assert (picked[:, 0] == together[:, b]).all()
        for m in range(2):
            alone = machine(
                rows[b][m],
                Motor.rated(power[b, m], poles=4, frequency=frequency[b, 0]),
                density=density[b, 0],
                viscosity=viscosity[b, 0],
                clearance=clearance[b, m],
                gas=gas[b, 0],
            )
            apart = every(alone.running(flow[b : b + 1, m : m + 1]))[:, 0, 0]
            assert together[:, b, m] == pytest.approx(apart, rel=1e-12)
            assert many.shut_off_head[b, m] == pytest.approx(float(alone.shut_off_head[0, 0]), rel=1e-12)


def test_one_pump_type_in_many_plants_is_kept_once() -> None:
    """Plants that differ in nothing but the valve share one curve."""
    machines = DisplacementMachines.build([[GEAR, GEAR]] * 500, MOTOR, OIL, THICKNESS)
    assert machines.curves.table.shape == (8, 6)
    drop, slope = machines.head_drop(np.full((500, 2), 0.002))
    assert drop.shape == slope.shape == (500, 2)
    assert machines.count == 2
    assert not machines.shut(drop).any()
    assert machines.rows(np.array([3, 1])).curves.table is machines.curves.table


def test_the_corner_for_the_line_search_is_where_the_motor_stalls() -> None:
    """Just above it runs, just below it does not."""
    corner = machine().corners()
    running = machine().running(corner * np.array([[1 + 1e-9], [1 - 1e-9]]))
    assert running.stalled.ravel().tolist() == [False, True]
    assert running.torque == pytest.approx(float(breakdown_torque(MOTOR)[0, 0]), rel=1e-6)


@pytest.mark.parametrize(
    ("name", "value"), [("density", 0.0), ("viscosity", -1.0), ("clearance", float("nan")), ("gas", 0.95)]
)
def test_a_service_that_cannot_be_is_refused(name: str, value: float) -> None:
    """The error names what is wrong."""
    with pytest.raises(InputError, match=f"pump.{name} is"):
        machine(**{name: value})


@given(pumps(), services(), st.floats(0, 1))
def test_the_flow_at_a_head_is_the_inverse_of_the_head_at_a_flow(
    pump: DisplacementPump, service: Service, part: float
) -> None:
    """At any head that is not negative, stalled or not: that flow has that head."""
    machines = service.of(pump)
    head = part * machines.shut_off_head
    back = -machines.head_drop(machines.flow_at(head))[0]
    slope = machines.head_drop(machines.flow_at(head))[1]
    rounding = 1e-14 * slope * (machines.last_flow + machines.curves.table[:, 0].max())
    assert np.allclose(back, np.maximum(head, 0.0), rtol=1e-9, atol=1e-9 + 10 * rounding.max())
