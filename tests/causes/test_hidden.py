"""A cause under its veil: back as it went in, equally long, unseen in the answer, drawn by chance."""

from __future__ import annotations

import json
from collections import Counter
from typing import Any

import pytest

from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.hidden import Hidden, drawn, unveil, veil
from loadfirst.door.hidden import hide, reveal, shown
from loadfirst.door.messages import HideAsk, Rig, ShownAsk, UnveilAsk
from loadfirst.errors import InputError
from loadfirst.plant.read import plant_data, resolve_data

pytestmark = pytest.mark.native  # reads files

PLANT = "rinse-transfer"
BELIEVED = Rig(plant=PLANT)


def under(id: str, size: float | None = None, seed: int = 7) -> str:
    """A cause of the packaged plant under its veil."""
    return str(hide(HideAsk(plant=PLANT, seed=seed, cause=id, size=size))["hidden"])


def read(text: str, edits: dict[str, Any] | None = None) -> dict[str, Any]:
    """What the instruments show with it at work, beside the plant as its file has it."""
    return shown(ShownAsk(plant=PLANT, edits=edits or {}, hidden=text, yesterday=BELIEVED))


def test_a_veil_comes_off_as_it_went_on_and_its_length_tells_nothing() -> None:
    """Every cause, at its smallest and largest size."""
    lengths = set()
    for one in CAUSES:
        for size in (1.0,) if one.size is None else (one.size.low, one.size.high, one.size.usual / 3):
            text = veil(Hidden(one, size), 123456789)
            assert unveil(text) == Hidden(one, size)
            lengths.add(len(text))
            assert one.id not in text
    assert len(lengths) == 1
    assert under("worn", seed=1) != under("worn", seed=2)


@pytest.mark.parametrize("text", ["", "abc", "A" * 126, "no veil at all", "é" * 20])
def test_what_is_no_veil_is_refused(text: str) -> None:
    """Whatever a stranger's link holds."""
    with pytest.raises(InputError, match="hidden"):
        unveil(text)


def test_the_answer_holds_readings_and_the_plant_as_anyone_believes_it() -> None:
    """For every cause that can happen: no key of the truth, the plant unchanged, no dial of another scale."""
    plant = resolve_data(plant_data(PLANT))
    sound = read(under("nothing"))
    for one in CAUSES:
        if one.applies(plant) is not None:
            continue
        told = read(under(one.id))
        assert set(told) == {"plant", "title", "converged", "shown", "readings"}
        assert told["plant"] == sound["plant"]
        assert one.id not in json.dumps([told["shown"], told["readings"]])
        for mine, theirs in zip(told["shown"], sound["shown"], strict=True):
            assert set(mine) == set(theirs)
            assert mine["id"] == theirs["id"]
            ends = [pytest.approx(theirs[end], rel=1e-12) for end in ("low", "high")]
            assert [mine["low"], mine["high"]] == ends, one.id
        same = [one["same_instrument"] for one in told["readings"]]
        assert same == [one["same_instrument"] for one in sound["readings"]]


def test_readings_are_those_of_the_same_cause_in_the_open() -> None:
    """Hidden or not, the instruments see one and the same plant."""
    edits = reveal(UnveilAsk(plant=PLANT, hidden=under("worn", 25.0)))["edits"]
    assert edits == {"pump.wear_percent": 25.0}
    hidden = read(under("worn", 25.0))["shown"]
    assert hidden == read(under("nothing"), edits)["shown"]


def test_what_is_hidden_starts_from_what_a_hand_sets_later() -> None:
    """Half of the opening stays half of it, and a plant without room for it is as it is set."""
    text = under("valve-throttled", 0.5)
    told = reveal(UnveilAsk(plant=PLANT, edits={"valve.opening": 0.8}, hidden=text))
    assert (told["cause"], told["size"], told["edits"]) == ("valve-throttled", 0.5, {"valve.opening": 0.4})
    shut = {"valve.opening": 0.0}
    assert reveal(UnveilAsk(plant=PLANT, edits=shut, hidden=text))["edits"] == {}
    assert read(text, shut)["shown"] == read(under("nothing"), shut)["shown"]


def test_an_error_does_not_tell_what_is_hidden() -> None:
    """A setting that goes by itself, and not with what is hidden."""
    text = under("line-scaled", 0.7)
    with pytest.raises(InputError) as refused:
        read(text, {"discharge.bore_mm": 20.0, "discharge.roughness_mm": 0.9, "discharge.filled": 9.0})
    assert refused.value.where == "discharge.filled"  # wrong by itself: told as ever
    assert "bore" not in str(refused.value)


def test_chance_draws_the_same_for_a_seed_and_every_group_in_the_long_run() -> None:
    """And nothing that no instrument would tell."""
    data = plant_data(PLANT)
    plant = resolve_data(data)
    found = [drawn(plant, data, seed) for seed in range(60)]
    assert found[:5] == [drawn(plant, data, seed) for seed in range(5)]
    assert set(Counter(one.cause.group for one in found)) == {
        "discharge-side", "suction-side", "liquid", "drive", "machine", "instrument",
    }  # fmt: skip
    assert not {"nothing", "thinner-air", "flow-meter-damped"} & {one.cause.id for one in found}
    assert all(one.edits(plant) for one in found)
