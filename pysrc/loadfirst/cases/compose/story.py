"""The words round a composed case: title, story, question, hints, goal, and what its seed draws of them."""

from __future__ import annotations

from typing import NamedTuple

from loadfirst.cases.bit_by_bit import Pieces, Stage
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.lead import Lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.offer import Check
from loadfirst.cases.compose.pieces import fill, pieces, story_piece
from loadfirst.evidence.weigh import Posterior
from loadfirst.evidence.worth import worth

LOT = 3
"""Readings whose information is reckoned in one piece."""
HOURS = 4
"""Hours of the day from which a case's seed draws."""
SAME = 0.3
"""Share of the questions after a reading that did not move, where another did. [-]"""


class Words(NamedTuple):
    """What is told before the play. `drawn` are the words from which the case's own seed draws."""

    title: str
    story: str
    asks: dict[str, str]
    drawn: dict[str, list[str]]


def words(morning: Morning, of: Lead, checks: list[Check], chance: Chance) -> Words:
    """Title, story, and the question."""
    spans = pieces("stories")["span"][morning.subject.span]
    span: dict[str, str] = chance.pick("span", spans)
    drawn = {
        "when": chance.mixed("hour", pieces("stories")["hour"]["pieces"])[:HOURS],
        "who": list(morning.place.who),
        "stake": list(morning.place.stakes),
    }
    title = story_piece(chance, "title", of.way, **morning.place.instrument(of.told))
    return Words(title, _story(morning, of, span, chance), _prediction(morning, checks, span, chance), drawn)


def _story(morning: Morning, of: Lead, span: dict[str, str], chance: Chance) -> str:
    """Two paragraphs: who comes with which reading, and what is blamed."""
    told = morning.place.instrument(of.told) | {"then": span["then"], "day": span["day"]}
    scene = [
        "{word.when}", story_piece(chance, "opening", at=morning.place.at), span["since"],
        story_piece(chance, "reading", of.way, **told),
    ]  # fmt: skip
    opinion = [_opinion(morning, of, chance), "{word.stake}", story_piece(chance, "close")]
    return " ".join(filter(None, scene)) + "\n\n" + " ".join(opinion)


def _opinion(morning: Morning, of: Lead, chance: Chance) -> str:
    cause, table = of.blamed.causes[0], pieces("stories")["blame"]
    blame = chance.pick("spoken", morning.place.lines(cause)[1:])
    return story_piece(chance, "blame", "plain" if cause.id in table["plain-for"] else of.teller, blame=blame)


def _prediction(
    morning: Morning, checks: list[Check], span: dict[str, str], chance: Chance
) -> dict[str, str]:
    """A reading that somebody has to go to; as a rule one that has moved, where there is one."""
    ids = [id for check in checks if "does" not in check for id in check.get("reads", ())]
    moved = [id for id in ids if morning.shifts[id].moved in ("up", "down")]
    still = [id for id in ids if "level" not in id] or ids
    reading = chance.pick("prediction", moved if moved and chance.share("same") >= SAME else still)
    asks = story_piece(
        chance, "asks", then=span["then"], day=span["day"], **morning.place.instrument(reading)
    )
    return {"reading": reading, "asks": asks}


def teaches(of: Lead) -> list[str]:
    """One goal for the instrument of the story: open before the play, it tells nothing of what happened."""
    return [pieces("stories")["teaches"][of.told]]


def hints(
    morning: Morning, of: Lead, checks: list[Check], chance: Chance, stage: Stage
) -> Pieces[list[dict[str, str]]]:
    """A question, then the reading that is expected to tell most for its minutes; `stage` between pieces."""
    said = [story_piece(chance, "hint", "first")]
    known = morning.after([of.told, *of.at_first])
    best = yield from _telling(
        known, [check for check in checks if "does" not in check and "reads" in check], stage
    )
    if best is not None:
        said.append(fill(chance.pick("hint.second", pieces("stories")["hint"]["second"]), check=best["says"]))
    return [{"text": text} for text in said]


def _telling(known: Posterior, checks: list[Check], stage: Stage) -> Pieces[Check | None]:
    if not checks:
        return None
    asked = sorted({id for check in checks for id in check["reads"]})
    bits = dict[str, float]()
    for at in range(0, len(asked), LOT):
        bits |= {one.check: one.cause for one in worth(known, asked[at : at + LOT])}
        yield stage
    return max(checks, key=lambda check: sum(bits[id] for id in check["reads"]) / check["minutes"])
