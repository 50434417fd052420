"""The one door between the page and Python: text in, text out, always an answer."""

from __future__ import annotations

import os
from typing import Any

from loadfirst.door.describe import describe
from loadfirst.door.kinds import KINDS
from loadfirst.door.messages import PROTOCOL, check_version, open_body, open_envelope, to_text
from loadfirst.errors import InputError, LoadfirstError
from loadfirst.plant.expect import one_of

RERAISE = "LOADFIRST_RERAISE"
"""Set in the environment of the tests: a bug then raises instead of being answered."""


def handle(text: str) -> str:
    """Answer one ask.

    Parameters
    ----------
    text : str
        An ask as JSON (see `door.messages`).

    Returns
    -------
    str
        Its reply as JSON. A failure is a reply like any other: this never
        raises, except for a bug where the environment asks for that.
    """
    ask_id: Any = None
    try:
        envelope = open_envelope(text)
        ask_id = envelope.id if isinstance(envelope.id, int | str) else None
        check_version(envelope)
        kind = KINDS.get(envelope.kind) if isinstance(envelope.kind, str) else None
        if kind is None:
            raise InputError("kind", envelope.kind, one_of(list(KINDS)), rule="choice", choices=list(KINDS))
        body = kind.reply(open_body(envelope, kind.longest))
        return to_text({"v": PROTOCOL, "id": ask_id, "ok": True, "body": body})
    except LoadfirstError as error:
        return _failure(ask_id, error)
    except Exception as error:  # the page must always get an answer
        if os.environ.get(RERAISE):
            raise
        return _failure(ask_id, error)


def _failure(ask_id: Any, error: Exception) -> str:
    return to_text({"v": PROTOCOL, "id": ask_id, "ok": False, "error": describe(error)})
