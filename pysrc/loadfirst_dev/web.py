"""A small file server for the built site, on this machine only."""

from __future__ import annotations

import errno
import http.server
import os
import threading
from functools import partial
from http import HTTPStatus
from pathlib import Path
from typing import Any

from loadfirst_dev.say import Problem

TYPES = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".wasm": "application/wasm",
    ".svg": "image/svg+xml",
    ".ftl": "text/plain; charset=utf-8",
    ".txt": "text/plain; charset=utf-8",
    ".toml": "text/plain; charset=utf-8",
}
OTHER = "application/octet-stream"
SQUEEZED = {"br": ".br", "gzip": ".gz"}
TRIES = 50


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves files with the types that browsers insist on, and a compressed neighbour where there is one."""

    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True  # else each small file on a kept connection waits 40 ms for its other half
    extensions_map = {**TYPES, "": OTHER}
    found = False

    def send_head(self) -> Any:
        """Part of `SimpleHTTPRequestHandler`: opens what is asked for and sends the headers."""
        path = Path(self.translate_path(self.path))
        squeezed = self.neighbour(path)
        if squeezed is None:
            return super().send_head()
        encoding, packed = squeezed
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", encoding)
        self.send_header("Content-Length", str(packed.stat().st_size))
        self.end_headers()
        return packed.open("rb")

    def neighbour(self, path: Path) -> tuple[str, Path] | None:
        """A compressed file beside the wanted one that this browser takes, not older than it."""
        words = self.headers.get("Accept-Encoding", "").split(",")
        accepted = {word.partition(";")[0].strip() for word in words}
        for encoding, ending in SQUEEZED.items():
            packed = path.with_name(path.name + ending)
            if encoding in accepted and packed.is_file() and packed.stat().st_mtime >= path.stat().st_mtime:
                return encoding, packed
        return None

    def send_response(self, code: int, message: str | None = None) -> None:
        """Part of `SimpleHTTPRequestHandler`; the code decides how long the reply is kept."""
        self.found = code < HTTPStatus.BAD_REQUEST
        super().send_response(code, message)

    def end_headers(self) -> None:
        """Files named by their hash never change; all others, and failures, are asked for again each time."""
        hashed = self.found and "/runtime/" in self.path and not self.path.endswith("/manifest.json")
        self.send_header("Cache-Control", "public, max-age=31536000, immutable" if hashed else "no-cache")
        self.send_header("Vary", "Accept-Encoding")
        super().end_headers()

    def log_message(self, format: str, *args: Any) -> None:
        """Silent: what went wrong shows in the page."""


class Server(http.server.ThreadingHTTPServer):
    """Threads end with the program; a browser that goes away is no error."""

    daemon_threads = True
    allow_reuse_address = os.name != "nt"

    def handle_error(self, request: Any, client_address: Any) -> None:
        """A connection that broke is the browser's business."""


def listen(folder: Path, port: int, host: str = "127.0.0.1", exactly: bool = False) -> Server:
    """A server for `folder` on `port`, or on the next free one.

    Raises
    ------
    Problem
        When no port is free.
    """
    for number in [port] if exactly or port == 0 else range(port, port + TRIES):
        try:
            return Server((host, number), partial(Handler, directory=str(folder)))
        except OSError as error:
            if error.errno not in (errno.EADDRINUSE, errno.EACCES):
                raise
    raise Problem(f"No port from {port} to {port + TRIES - 1} is free; choose another with --port.")


def address(server: Server) -> str:
    """What to open."""
    host, port = server.server_address[:2]
    return f"http://{'localhost' if host in ('127.0.0.1', '0.0.0.0') else str(host)}:{port}/"


def in_background(server: Server) -> threading.Thread:
    """Serve without waiting for it."""
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.1}, daemon=True)
    thread.start()
    return thread
