"""The tool's file server: types that browsers insist on, the next free port, compressed neighbours."""

from __future__ import annotations

import gzip
import socket
import urllib.error
import urllib.request
from collections.abc import Iterator
from email.message import Message
from pathlib import Path

import pytest

from loadfirst_dev import web
from loadfirst_dev.say import Problem


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A site of a few files."""
    (tmp_path / "runtime").mkdir()
    for name in (
        "index.html",
        "a.js",
        "a.wasm",
        "a.ftl",
        "a.pack",
        "runtime/x.0123.wasm",
        "runtime/manifest.json",
    ):
        (tmp_path / name).write_bytes(b"plain")
    return tmp_path


@pytest.fixture
def address(folder: Path) -> Iterator[str]:
    """The site, served."""
    server = web.listen(folder, 0)
    web.in_background(server)
    yield web.address(server)
    server.shutdown()
    server.server_close()


def get(address: str, **headers: str) -> tuple[bytes, Message]:
    """Body and headers of one reply."""
    with urllib.request.urlopen(urllib.request.Request(address, headers=headers)) as reply:
        return reply.read(), reply.headers


@pytest.mark.parametrize(
    ("name", "type_"),
    [
        ("", "text/html; charset=utf-8"),
        ("a.js", "text/javascript; charset=utf-8"),
        ("a.wasm", "application/wasm"),
        ("a.ftl", "text/plain; charset=utf-8"),
        ("a.pack", "application/octet-stream"),
    ],
)
def test_files_have_the_type_that_browsers_insist_on(address: str, name: str, type_: str) -> None:
    """Whatever this machine's own table of types says."""
    assert get(address + name)[1]["Content-Type"] == type_


def test_only_files_named_by_their_hash_are_kept_for_good(address: str) -> None:
    """All others are asked for again, so that a reload shows what was just changed."""
    assert "immutable" in get(address + "runtime/x.0123.wasm")[1]["Cache-Control"]
    assert get(address + "runtime/manifest.json")[1]["Cache-Control"] == "no-cache"
    assert get(address + "a.js")[1]["Cache-Control"] == "no-cache"


def test_a_failure_is_not_kept_by_browsers(address: str) -> None:
    """A file that is missing now may be there when the page tries again."""
    with pytest.raises(urllib.error.HTTPError) as told:
        get(address + "runtime/gone.0123.wasm")
    assert told.value.headers["Cache-Control"] == "no-cache"
    told.value.close()


def test_a_compressed_neighbour_is_sent_to_who_takes_it(address: str, folder: Path) -> None:
    """And its type is that of the file itself."""
    (folder / "a.js.gz").write_bytes(gzip.compress(b"plain"))
    body, headers = get(address + "a.js", **{"Accept-Encoding": "gzip, br"})
    assert (gzip.decompress(body), headers["Content-Encoding"]) == (b"plain", "gzip")
    assert headers["Content-Type"] == "text/javascript; charset=utf-8"
    assert get(address + "a.js")[0] == b"plain"


def test_a_taken_port_gives_way_to_the_next_free_one(folder: Path) -> None:
    """Two people, or two terminals, may serve at once."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        server = web.listen(folder, port)
        try:
            assert port < server.server_address[1] < port + web.TRIES
        finally:
            server.server_close()


def test_no_free_port_is_told_in_one_sentence(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The message says which option helps."""
    monkeypatch.setattr(web, "TRIES", 1)
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        with pytest.raises(Problem, match="--port"):
            web.listen(folder, taken.getsockname()[1])
