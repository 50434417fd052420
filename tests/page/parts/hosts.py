"""Web servers as the world has them: slow, incomplete, with odd ideas of file types, in a folder, or gone."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import Any

from loadfirst_dev import web


class Host:
    """A server for the built site, with knobs that can be turned while it runs.

    Attributes
    ----------
    missing : set of str
        What is answered with 404: a piece of the address is enough.
    bytes_for : set of str
        Endings of files that are sent as mere bytes, whatever they are.
    refused : int
        How often something missing was asked for.
    gate : threading.Event
        While it is not set, the second half of the runtime's wasm is held back.
    """

    def __init__(self, folder: Path, under: str) -> None:
        self.folder, self.under = folder, under
        self.missing: set[str] = set()
        self.bytes_for: set[str] = set()
        self.refused = 0
        self.gate = threading.Event()
        self.gate.set()
        self.server = web.Server(("127.0.0.1", 0), partial(Handler, host=self, directory=str(folder)))
        self.thread = web.in_background(self.server)

    @property
    def address(self) -> str:
        """Where the site is; ends with a slash."""
        return web.address(self.server) + self.under

    def close(self) -> None:
        """Go away, as a network does; nobody listens any more."""
        self.gate.set()
        self.server.shutdown()
        self.server.server_close()


class Handler(web.Handler):
    """The project's own server, made worse."""

    def __init__(self, *arguments: Any, host: Host, **options: Any) -> None:
        self.host = host
        super().__init__(*arguments, **options)

    def send_head(self) -> Any:
        """See `web.Handler`."""
        if any(part in self.path for part in self.host.missing):
            self.host.refused += 1
            return self.send_error(404)
        self.path = "/" + self.path.removeprefix("/" + self.host.under)
        return super().send_head()

    def guess_type(self, path: Any) -> str:
        """See `SimpleHTTPRequestHandler`."""
        plain = any(str(path).endswith(ending) for ending in self.host.bytes_for)
        return web.OTHER if plain else super().guess_type(path)

    def copyfile(self, source: Any, outputfile: Any) -> None:
        """Send a file; the second half of the wasm only when the gate is open."""
        if self.path.endswith(".wasm"):
            size = Path(self.translate_path(self.path)).stat().st_size
            outputfile.write(source.read(size // 2))
            self.host.gate.wait(60)
        super().copyfile(source, outputfile)


@contextmanager
def hosting(folder: Path, under: str = "") -> Iterator[Host]:
    """A host for a built site, gone afterwards."""
    host = Host(folder, under)
    try:
        yield host
    finally:
        host.close()
