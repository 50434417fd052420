"""What every changed pump must still be, and a pump moved by the affinity laws."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.pumps import STEADY, across, far_and_wide

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.machine import Machines


def check_sound(pump: PumpCurve, like: PumpCurve) -> None:
    """Flow rises, head falls, power is wanted, and the machine's law is finite and monotone."""
    assert len(pump.flow) == len(like.flow)
    assert pump.flow[0] == 0 and (np.diff(pump.flow) > 0).all()
    assert pump.head[0] > 0 and (pump.head >= 0).all() and (np.diff(pump.head) <= 0).all()
    assert (pump.npsh_required >= 0).all()
    assert (pump.power > 0).all()
    machines = Machines.build([[pump]], STEADY, pump.density)
    assert not machines.limited.any()
    flow = far_and_wide(machines)
    drop, slope = machines.head_drop(flow)
    assert np.isfinite([drop, slope]).all() and (slope >= 0).all()
    running = machines.running(flow)
    assert np.isfinite([running.shaft_power, running.current, running.npsh_required]).all()
    assert (running.shaft_power > 0).all()


def at_ratio(pump: PumpCurve, ratio: float) -> PumpCurve:
    """The same pump tested at another speed: the affinity laws, written here once more."""
    return replace(
        pump,
        speed=ratio * pump.speed,
        flow=ratio * pump.flow,
        head=ratio**2 * pump.head,
        power=ratio**3 * pump.power,
        npsh_required=ratio**2 * pump.npsh_required,
    )


def check_same(one: PumpCurve, other: PumpCurve, *, npsh: bool = True, within: float = 1e-9) -> None:
    """Two curves that are one, point by point."""
    assert one.speed == pytest.approx(other.speed)
    assert one.flow == pytest.approx(other.flow, rel=within, abs=within * other.last_flow)
    assert one.head == pytest.approx(other.head, rel=within, abs=within * other.shut_off_head)
    assert one.power == pytest.approx(other.power, rel=within)
    if npsh:
        assert one.npsh_required == pytest.approx(other.npsh_required, rel=within, abs=1e-9)


def duty(pump: PumpCurve, static: float, k: float) -> tuple[float, float, float]:
    """Flow, head and power where the pump meets static + k q², by halving."""
    low, high = 0.0, pump.last_flow
    for _ in range(80):
        middle = (low + high) / 2
        short = float(pump.at([middle])[0][0]) < static + k * middle**2
        low, high = (low, middle) if short else (middle, high)
    head, power, _ = pump.at([low])
    return low, float(head[0]), float(power[0])


def machine_heads(pump: PumpCurve, flow: np.ndarray) -> np.ndarray:
    """Heads of the pump on a motor that holds 3000 1/min."""
    return np.asarray(-Machines.build([[pump]], STEADY, pump.density).head_drop(across(flow))[0].ravel())
