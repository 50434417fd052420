"""The tool's file server, which remembers what was asked for."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from loadfirst_dev import web


class Asked:
    """Names of the files that were asked for since the last `clear`; a folder stands for its page."""

    def __init__(self) -> None:
        self.lock, self.names = threading.Lock(), set[str]()

    def add(self, target: str) -> None:
        """Remember one request."""
        name = urlsplit(target).path.lstrip("/")
        with self.lock:
            self.names.add(f"{name}index.html" if name.endswith("/") or not name else name)

    def clear(self) -> None:
        """Forget all."""
        with self.lock:
            self.names.clear()

    def below(self, folder: Path) -> set[str]:
        """Those that are files of the served folder."""
        with self.lock:
            return {name for name in self.names if (folder / name).is_file()}


class RecordingHandler(web.Handler):
    """Serves, and tells `asked`."""

    def __init__(self, *arguments: Any, asked: Asked, **options: Any) -> None:
        self.asked = asked
        super().__init__(*arguments, **options)

    def send_head(self) -> Any:
        """Part of `SimpleHTTPRequestHandler`: one request."""
        self.asked.add(self.path)
        return super().send_head()


@contextmanager
def recording(folder: Path) -> Iterator[tuple[str, Asked]]:
    """Serve a folder on a free port during the `with`: its address, and what was asked for."""
    asked = Asked()
    server = web.Server(("127.0.0.1", 0), partial(RecordingHandler, directory=str(folder), asked=asked))
    web.in_background(server)
    try:
        yield web.address(server), asked
    finally:
        server.shutdown()
        server.server_close()
