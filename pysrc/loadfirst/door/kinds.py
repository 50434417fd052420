"""Every kind of ask: how long its body may be and who answers it. A new kind is one line here."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import msgspec

from loadfirst.cases.play import view
from loadfirst.door.answer import answer, answer_plant
from loadfirst.door.catalogue import catalogue
from loadfirst.door.messages import TEXT_LARGEST, AnswerAsk, CatalogueAsk, PlantFileAsk, decode_body
from loadfirst.door.plants import plant_file

Body = dict[str, Any]


@dataclass(frozen=True)
class Kind:
    """One kind of ask.

    Attributes
    ----------
    reply : callable
        Body of the ask, plain data, to body of the reply, plain data or a msgspec Struct.
    longest : int
        Greatest length of the ask's body. [bytes]
    """

    reply: Callable[[Body], Any]
    longest: int


def _catalogue(body: Body) -> Body:
    decode_body(CatalogueAsk, body)
    return catalogue()


KINDS = {
    "answer": Kind(lambda body: answer(decode_body(AnswerAsk, body)), 64 * 1024),
    "plant-file": Kind(lambda body: plant_file(decode_body(PlantFileAsk, body)), 2 * TEXT_LARGEST),
    "catalogue": Kind(_catalogue, 1024),
    "case": Kind(lambda body: msgspec.to_builtins(view(body, answer_plant)), 2 * TEXT_LARGEST),
}
