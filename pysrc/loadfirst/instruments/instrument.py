"""An instrument: what stands between the truth and the number that a person reads.

A sound one passes the truth on and is limited only by the ends of its scale.
A fault is a change made to the truth on its way here (`instruments.faults`),
before the scale cuts it.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from msgspec import Struct

from loadfirst.instruments.faults.noise import tremble
from loadfirst.instruments.faults.own_error import own_error, repeatable
from loadfirst.instruments.uncertainty import class_limit, reading_limit, repeatability, root_limit, standard

Quantity = Literal["pressure", "flow", "current", "speed", "height", "output"]


class Reading(Struct, frozen=True):
    """What one instrument shows. SI units: Pa (gauge), m³/s, A, rad/s, m above the floor, share of the
    full output.

    Attributes
    ----------
    id : str
        Which instrument: ``gauge-discharge``.
    quantity : str
        What it measures.
    value : float or None
        What its pointer stands at; None where there is nothing to be read.
    low, high : float
        Ends of its scale.
    accuracy : float or None
        Greatest error of a sound instrument here, either way; None without a value.
    off_scale : "low", "high" or None
        Set when the truth lies beyond an end by more than the instrument may
        err: `value` is that end, and the truth is somewhere past it. Nearer,
        a sound instrument might show the end by itself.
    uncertainty : float or None
        Standard uncertainty of the reading: its error is as likely anywhere
        within `accuracy` (rectangular, so accuracy/√3), and its noise besides.
    repeatability : float or None
        The part of it that differs between two looks at the same instrument,
        as a standard deviation; a difference between two days has only this.
    """

    id: str
    quantity: Quantity
    value: float | None
    low: float
    high: float
    accuracy: float | None
    off_scale: Literal["low", "high"] | None
    uncertainty: float | None = None
    repeatability: float | None = None


Shown = tuple[Reading, ...]
"""All that a person can read at a plant: never the true state itself."""


class Chance(NamedTuple):
    """What decides over chance.

    Attributes
    ----------
    seed : draws the own errors of all instruments; 0: none has any.
    look : number of the look: two days, or the steps of a clock.
    bare : leaves out all chance, and the stops of the scale too: what an instrument senses, as nobody
        can read it but as a reading is reckoned with.
    """

    seed: int = 0
    look: int = 0
    bare: bool = False


NONE = Chance()


class Instrument(NamedTuple):
    """A scale with two stops.

    Attributes
    ----------
    id, quantity : str
        As in `Reading`.
    low, high : float
        Ends of the scale, `low` < `high`. [SI]
    span_percent : float
        Greatest error in per cent of the span, as an accuracy class states it. [%]
    reading_percent : float
        Greatest error in per cent of the reading, added to the other. [%]
    square_root : bool
        Whether `span_percent` is that of something sensed whose square root is shown; `low` is then 0.
    serial : int
        Which piece it is: another has another error of its own.
    """

    id: str
    quantity: Quantity
    low: float
    high: float
    span_percent: float = 0.0
    reading_percent: float = 0.0
    square_root: bool = False
    serial: int = 0

    def limit(self, value: float) -> float:
        """Greatest error of a sound instrument where it shows `value`, on the scale. [SI]"""
        if self.square_root:
            of_span = root_limit(self.span_percent, self.high, value)
        else:
            of_span = class_limit(self.span_percent, self.low, self.high)
        return of_span + reading_limit(self.reading_percent, value)

    def on_scale(self, value: float) -> float:
        """Where the pointer rests: on its stop where the value is beyond the scale. [SI]"""
        return min(max(value, self.low), self.high)

    def show(
        self, truth: float | None, *, chance: Chance = NONE, noise: float = 0.0, times: float = 1.0
    ) -> Reading:
        """What a person reads.

        Parameters
        ----------
        truth : float or None
            What reaches the instrument; None: there is nothing to measure. [SI]
        chance : Chance
            Seed and look of its own error and of its noise.
        noise : float
            Standard deviation of its noise, from 0. [SI]
        times : float
            How many times too large its numbers are taken, above 0; 1 by a reader who minds the unit. [-]
        """
        low, high = self.low * times, self.high * times
        if truth is None:
            return Reading(self.id, self.quantity, None, low, high, None, None)
        sensed = truth if chance.bare else truth + self._chance(self.on_scale(truth), chance, noise)
        value = sensed if chance.bare else self.on_scale(sensed)
        accuracy = self.limit(self.on_scale(sensed))
        off: Literal["low", "high"] | None = None
        if abs(sensed - value) > accuracy:
            off = "low" if sensed < value else "high"
        return Reading(
            self.id, self.quantity, value * times, low, high, accuracy * times, off,
            standard(accuracy, noise) * times,
            repeatability(accuracy, noise, repeatable(self.quantity)) * times,
        )  # fmt: skip

    def _chance(self, truth: float, chance: Chance, noise: float) -> float:
        """Its own error at a value on the scale, and its noise. [SI]"""
        changes = repeatable(self.quantity)
        error = own_error(chance.seed, self.id, self.serial, chance.look, changes) * self.limit(truth)
        return error + tremble(noise, chance.seed, self.id, chance.look)
