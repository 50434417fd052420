"""The first moment: the plant at rest in its balance, as its file says."""

from __future__ import annotations

from msgspec.structs import replace

from loadfirst.clock.account import add
from loadfirst.clock.controller import first_integral, taken_over
from loadfirst.clock.moment import Moment, Shaft
from loadfirst.clock.pointers import pointers
from loadfirst.clock.present import through
from loadfirst.clock.relay import settled
from loadfirst.clock.shafts import asked_frequency, switched, wanted
from loadfirst.clock.vessel import after_hands, is_empty, stock
from loadfirst.plant.automatic import settled as settled_plants
from loadfirst.plant.build import build
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.solved import solve_plants


def begin(resolved: ResolvedPlant) -> Moment:
    """The moment at which a plant's clock starts: everything moves as in the plant's own answer.

    Its pumps have liquid unless the supply is empty.
    """
    given, resolved = resolved, _at_rest(resolved)
    one = solve_plants(build([resolved])).of(0)
    plant = resolved.plant
    shafts = []
    for number, on in enumerate(wanted(resolved)):
        law, running, column = one.running(number)
        speed, current = float(running.speed[0, column]), float(running.current[0, column])
        heat = settled(plant, current, float(one.per_machine(law.motor.rated_current)[column]))
        shafts.append(Shaft("running" if on else "standing", speed, asked_frequency(resolved), heat))
    supply, delivery = stock(plant.supply), stock(plant.delivery)
    begun = Moment(
        time=(0.0, 0.0),
        supply=supply,
        delivery=delivery,
        stem=plant.valve.opening,
        shafts=tuple(shafts),
        flows={spec.name: one.exact_flow(spec.name) for spec in one.layout.columns["pipes"]},
        marks={},
        through=through(one),
        pointers=pointers(plant, one),
        primed=not is_empty(supply.volume),
        drained=is_empty(delivery.volume),
    )
    return first_integral(plant, taken_over(given, begun), one.solved)


def _at_rest(resolved: ResolvedPlant) -> ResolvedPlant:
    """The plant with valve and drive where it has sent them by itself, its levels as its file has them."""
    plant, sent = resolved.plant, settled_plants([resolved])[0].plant
    valve = replace(plant.valve, opening=sent.valve.opening)
    drive = replace(plant.drive, frequency_hz=sent.drive.frequency_hz)
    return resolved._replace(plant=replace(plant, valve=valve, drive=drive))


def resumed(resolved: ResolvedPlant, moment: Moment) -> Moment:
    """The moment with what hands have done to the plant since: surfaces moved, pumps switched or fitted."""
    plant = resolved.plant
    supply, out = after_hands(plant.supply, moment.supply)
    delivery, off = after_hands(plant.delivery, moment.delivery)
    shafts = moment.shafts[: len(resolved.pumps)]
    more = len(resolved.pumps) - len(shafts)
    shafts += (Shaft("standing", 0.0, asked_frequency(resolved)),) * more
    moment = replace(
        moment,
        supply=supply,
        delivery=delivery,
        by_hand=add(add(moment.by_hand, out), off),
        shafts=shafts,
    )
    return taken_over(resolved, switched(resolved, moment))
