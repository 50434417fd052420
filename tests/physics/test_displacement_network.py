"""A displacement pump, its relief valve and its load through the network: open, half, shut, unrelieved.

Each answer is held against scipy's brentq on one equation in the pressure at the pump's outlet.
"""

from __future__ import annotations

import numpy as np
import pytest
from tests.displacement import GEAR, MOTOR, OIL, THICKNESS, machine

from loadfirst.physics.breakdown import breakdown_torque
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.law import SHUT, Law
from loadfirst.physics.network import Element, Network, Solution, solve
from loadfirst.physics.relief import ReliefValves
from loadfirst.physics.valve import Valves, flow_coefficient
from loadfirst.units import BAR, G

SET, CAPACITY, LIFT = 12 * BAR, 0.003, 5.0  # [Pa] [m³/s] [m]
PER_BAR = BAR / (OIL * G)  # [m]
SCALE = 12 * PER_BAR, GEAR.rated_flow

PLANT = (
    Element("pump", "supply", "discharge", "pumps", 0),
    Element("relief", "discharge", "supply", "reliefs", 0),
    Element("valve", "discharge", "delivery", "valves", 0),
)


def plant(
    opening: float, *, pumps: DisplacementMachines | None = None, blocked: bool = False, leak: float = 0.0
) -> Network:
    """A supply at height 0, a pump with its relief valve back to it, a valve to a delivery above."""
    laws: dict[str, Law] = {
        "pumps": machine() if pumps is None else pumps,
        "reliefs": ReliefValves(SET, CAPACITY, OIL, blocked=blocked, leak=leak),
        "valves": Valves(flow_coefficient(10.0, opening)),
    }
    return Network(PLANT, laws, {"supply": np.zeros(1), "delivery": np.array([LIFT])})


def answer(network: Network) -> tuple[Solution, float, dict[str, float]]:
    """The solution, which must have converged, its pressure in bar, and its flows."""
    found = solve(network, *SCALE)
    assert found.converged.all()
    flow = {name: float(values[0]) for name, values in found.flow.items()}
    return found, float(found.head["discharge"][0]) / PER_BAR, flow


def by_brentq(network: Network) -> float:
    """Head at the pump's outlet where it gives what the two valves take, each law turned round by brentq."""
    from scipy.optimize import brentq

    def through(name: str, drop: float) -> float:
        law = network.laws[name]
        far = 10 * CAPACITY
        return float(brentq(lambda q: law.head_drop(np.array([[q]]))[0][0, 0] - drop, -far, far, xtol=1e-18))

    def surplus(head: float) -> float:
        taken = through("reliefs", head) + through("valves", head - LIFT)
        return through("pumps", -head) - taken

    return float(brentq(surplus, -20 * PER_BAR, 45 * PER_BAR, xtol=1e-12))


@pytest.mark.native
@pytest.mark.parametrize("leak", [0.0, 0.15], ids=["tight", "passing"])
@pytest.mark.parametrize("blocked", [False, True], ids=["relieved", "blocked"])
@pytest.mark.parametrize("opening", [1.0, 0.5, 0.2, 0.0], ids=["open", "half", "nearly shut", "shut"])
def test_the_network_stands_where_brentq_says(opening: float, blocked: bool, leak: float) -> None:
    """Whatever the valve and the relief valve do, to the tolerance of the solver."""
    network = plant(opening, blocked=blocked, leak=leak)
    found, _, _ = answer(network)
    assert found.head["discharge"][0] == pytest.approx(by_brentq(network), abs=1e-7 * SCALE[0])


def test_with_the_valve_open_the_load_makes_the_pressure_and_the_relief_valve_stays_shut() -> None:
    """Nearly the free flow goes to the delivery; nothing that shows returns."""
    _, pressure, flow = answer(plant(1.0))
    assert pressure < 2
    assert flow["valve"] == pytest.approx(float(machine().last_flow[0, 0]), rel=0.02)
    assert abs(flow["relief"]) <= 2 * SCALE[0] / SHUT


def test_half_open_the_pressure_rises_and_the_flow_hardly_falls() -> None:
    """A heavier load: many times the pressure, a few per cent of the flow, more torque and current."""
    (_, light, before), (_, heavy, after) = answer(plant(1.0)), answer(plant(0.65))
    assert heavy > 4 * light
    assert 0.92 < after["valve"] / before["valve"] < 1
    running = [machine().running(np.array([[flow["pump"]]])) for flow in (before, after)]
    assert running[1].torque > 2 * running[0].torque
    assert running[1].current > running[0].current


def test_shut_the_whole_flow_goes_through_the_relief_valve_at_its_setting() -> None:
    """Between the set pressure and its accumulation; the motor holds, the maker's limit is just passed."""
    _, pressure, flow = answer(plant(0.0))
    assert flow["relief"] == pytest.approx(flow["pump"], rel=1e-4)
    assert abs(flow["valve"]) <= 2 * SCALE[0] / SHUT
    assert 12 < pressure < 13.2
    running = machine().running(np.array([[flow["pump"]]]))
    assert not running.stalled.any()
    assert flow["pump"] > 0.9 * GEAR.rated_flow


def test_shut_and_the_relief_valve_blocked_nothing_but_the_motor_stops_the_pressure() -> None:
    """Finite, over three times the rating of pump and pipe: the motor is past its breakdown torque."""
    _, pressure, flow = answer(plant(0.0, blocked=True))
    assert abs(flow["pump"]) <= 3 * pressure * PER_BAR / SHUT  # the leakage of two shut valves
    assert 3 * GEAR.pressure < pressure * BAR < 5 * GEAR.pressure
    running = machine().running(np.array([[flow["pump"]]]))
    assert running.stalled.all() and running.beyond.all()
    assert running.torque >= breakdown_torque(MOTOR)


def test_on_thin_liquid_shut_and_blocked_slip_takes_all_of_the_flow() -> None:
    """Water in an oil pump: the clearances relieve it, below its rating."""
    thin = machine(viscosity=1e-3)
    _, pressure, flow = answer(plant(0.0, pumps=thin, blocked=True))
    running = thin.running(np.array([[flow["pump"]]]))
    assert not running.stalled.any()
    assert running.slip == pytest.approx(GEAR.per_radian * running.speed, rel=1e-3)
    assert pressure * BAR < GEAR.pressure


def test_a_passing_relief_valve_and_a_worn_pump_both_deliver_less_at_the_same_pressure() -> None:
    """Hydraulically alike: only the warm return line tells the one from the other."""
    sound, passing = answer(plant(0.65)), answer(plant(0.65, leak=0.15))
    worn = answer(plant(0.65, pumps=machine(clearance=1.5)))
    for _, pressure, flow in (passing, worn):
        assert pressure < 0.99 * sound[1]
        assert flow["valve"] < 0.99 * sound[2]["valve"]
    assert passing[2]["relief"] > 1e-4 > worn[2]["relief"]


def test_a_batch_of_openings_equals_one_by_one() -> None:
    """From shut to open, relieved and blocked, in one solution."""
    opening = np.linspace(0, 1, 9)[:, None]
    blocked = (np.arange(9) % 2)[:, None]
    laws: dict[str, Law] = {
        "pumps": DisplacementMachines.build([[GEAR]], MOTOR, OIL, THICKNESS),
        "reliefs": ReliefValves(SET, CAPACITY, OIL, blocked=blocked),
        "valves": Valves(flow_coefficient(10.0, opening)),
    }
    many = Network(PLANT, laws, {"supply": np.zeros(9), "delivery": np.full(9, LIFT)})
    found = solve(many, *SCALE)
    assert found.converged.all() and (found.iterations <= 30).all()
    for i in range(9):
        _, pressure, _ = answer(plant(float(opening[i, 0]), blocked=bool(blocked[i, 0])))
        assert found.head["discharge"][i] / PER_BAR == pytest.approx(pressure, rel=1e-9)
