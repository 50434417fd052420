"""What a learner says to have seen, before saying what follows from it."""

from __future__ import annotations

from tests.cases.samples import changed, check, decide, play_text, predict, see, sound


def test_it_is_asked_what_was_seen_of_the_told_and_the_foreseen_reading() -> None:
    """The foreseen one only once it was read; nothing is asked twice, or after the verdict."""
    assert sound()["to_see"] == []
    assert sound(predict("machine"))["to_see"] == ["gauge-discharge"]
    assert sound(predict("machine"), check("flow"))["to_see"] == ["gauge-discharge", "flow-meter"]
    said_one = sound(predict("machine"), check("flow"), see("gauge-discharge", "down"))
    assert said_one["to_see"] == ["flow-meter"]
    assert sound(predict("machine"), decide("worn"))["to_see"] == []


def test_what_was_seen_stands_beside_what_the_instrument_did() -> None:
    """Right or not, it changes neither the verdict nor the bill."""
    moves = [predict("machine"), check("flow"), see("gauge-discharge", "down"), see("flow-meter", "same")]
    seen = sound(*moves, decide("lighter"))
    assert seen["saw"] == [
        {"reading": "gauge-discharge", "says": "down", "moved": "down"},
        {"reading": "flow-meter", "says": "same", "moved": "up"},
    ]
    blind = sound(predict("machine"), check("flow"), decide("lighter"))
    assert blind["saw"] == []
    assert (seen["verdict"], seen["minutes"]) == (blind["verdict"], blind["minutes"])


def test_there_is_nothing_to_see_where_nothing_can_be_compared() -> None:
    """A pipe taken off leaves the gauge behind the valve without a reading: no question is asked of it."""
    text = changed(
        ("valve.opening = 0.65", "discharge.attached = false"),
        ('cause = "valve-opened"\nsize = 0.6', 'cause = "strainer-blocked"'),
        ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["suction-side"]'),
        ("It stands at {today.valve.opening}.", "It was touched."),
        ('reading = "flow-meter"', 'reading = "gauge-after-valve"'),
        ('reads = ["flow-meter"]', 'reads = ["flow-meter", "gauge-after-valve"]'),
        ('gauge-discharge = "falls"\nflow-meter = "rises"', 'flow-meter = "falls"'),
        ("The gauge has gone to {today.gauge-discharge}, from {yesterday.gauge-discharge}.", "Less water."),
    )
    seen = play_text(text, predict("machine"), check("flow"))
    assert [one["moved"] for one in seen["readings"] if one["id"] == "gauge-after-valve"] == [None]
    assert seen["to_see"] == []
