"""The words round a composed case: title, story, question, hints, goal."""

from __future__ import annotations

from typing import Any

from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.lead import Lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.offer import Check
from loadfirst.cases.compose.pieces import instrument, pieces, story_piece
from loadfirst.evidence.weigh import Posterior
from loadfirst.evidence.worth import worth


def title(of: Lead, chance: Chance) -> str:
    """By the reading and the way it went."""
    return story_piece(chance, "title", of.way, **instrument(of.told))


def story(morning: Morning, of: Lead, chance: Chance) -> str:
    """Two paragraphs: who comes with which reading, and what is blamed."""
    places = pieces("stories")["place"]
    place: dict[str, Any] = places.get(morning.subject.plant, places["any"])
    who = chance.pick("who", place["who"])
    blame = of.blamed.hypothesis.causes[0].says
    scene = [
        story_piece(chance, "hour"),
        story_piece(chance, "opening", who=who, at=place["at"]),
        story_piece(chance, "reading", of.way, **instrument(of.told)),
    ]
    opinion = [
        story_piece(chance, "blame", of.teller, who=_again(who), blame=blame),
        chance.pick("stake", place["stakes"]),
        story_piece(chance, "close"),
    ]
    return " ".join(scene) + "\n\n" + " ".join(opinion)


def _again(who: str) -> str:
    """How somebody is called who has been introduced."""
    return who.split(",")[0]


def prediction(morning: Morning, of: Lead, checks: list[Check], chance: Chance) -> dict[str, str]:
    """A reading that somebody has to go to, one that has moved where there is one."""
    ids = [id for check in checks if "does" not in check for id in check.get("reads", ())]
    moved = [id for id in ids if morning.shifts[id].moved in ("up", "down")]
    reading = chance.pick("prediction", moved or [id for id in ids if "level" not in id] or ids)
    return {"reading": reading, "asks": story_piece(chance, "asks", **instrument(reading))}


def teaches(morning: Morning, of: Lead) -> list[str]:
    """One goal for the truth's group."""
    goals: list[str] = pieces("stories")["teaches"][morning.subject.cause.group]
    return goals


def hints(morning: Morning, of: Lead, checks: list[Check], chance: Chance) -> list[dict[str, str]]:
    """A question, then the reading that is expected to tell most for its minutes."""
    said = [story_piece(chance, "hint", "first")]
    known = morning.after([of.told, *of.at_first])
    best = _telling(known, [check for check in checks if "does" not in check and "reads" in check])
    if best is not None:
        said.append(story_piece(chance, "hint", "second", check=best["says"]))
    return [{"text": text} for text in said]


def _telling(known: Posterior, checks: list[Check]) -> Check | None:
    if not checks:
        return None
    asked = sorted({id for check in checks for id in check["reads"]})
    bits = {one.check: one.cause for one in worth(known, asked)}
    return max(checks, key=lambda check: sum(bits[id] for id in check["reads"]) / check["minutes"])
