"""Firefox and WebKit for smoke tests, each driven by the standard protocol that it speaks.

Firefox speaks WebDriver BiDi (W3C) over a web socket, WebKitGTK's driver
speaks WebDriver (W3C) over HTTP. Two small clients take the place of big ones.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import signal
import socket
import subprocess
import tempfile
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Protocol

KEYS = {"Tab": "\ue004", "Enter": "\ue007", "Space": " ", "ArrowLeft": "\ue012", "ArrowDown": "\ue015"}
"""Keys without a letter, as WebDriver writes them (W3C WebDriver, 17.4.2)."""

WAIT = 60.0  # [s] for a browser to start, or a page to come to a state


class Engine(Protocol):
    """What the smoke tests ask of a browser."""

    def open(self, address: str) -> None:
        """Go to a page and wait until it is loaded."""

    def run(self, expression: str) -> Any:
        """The JSON value of a JavaScript expression in the page; a promise is waited for."""

    def press(self, key: str) -> None:
        """Press and release a key where the focus is: a letter, or one of `KEYS`."""


def until(engine: Engine, expression: str, seconds: float = WAIT) -> Any:
    """Wait until an expression is true in the page; its value. What it was last is told when time is up."""
    end = time.monotonic() + seconds
    while True:
        value = engine.run(expression)
        if value:
            return value
        assert time.monotonic() < end, f"still {value!r} after {seconds} s: {expression}"
        time.sleep(0.1)


@contextmanager
def process(command: list[str], **options: Any) -> Iterator[subprocess.Popen[str]]:
    """A program and all that it starts; gone afterwards."""
    with subprocess.Popen(command, text=True, start_new_session=True, **options) as program:
        try:
            yield program
        finally:
            os.killpg(program.pid, signal.SIGTERM)
            try:
                program.wait(10)
            except subprocess.TimeoutExpired:
                os.killpg(program.pid, signal.SIGKILL)


def needed(*names: str) -> str:
    """Path of a program under one of its names."""
    found = [path for path in map(shutil.which, names) if path]
    assert found, f"{names[0]} is not here, and the browser tests are not skipped"
    return found[0]


def pressing(key: str) -> dict[str, Any]:
    """Down and up of a key, in the words that both protocols share."""
    value = KEYS.get(key, key)
    both = [{"type": "keyDown", "value": value}, {"type": "keyUp", "value": value}]
    return {"type": "key", "id": "keyboard", "actions": both}


class Firefox:
    """One tab of Firefox, over WebDriver BiDi."""

    def __init__(self, address: str) -> None:
        import websocket

        self.socket = websocket.create_connection(f"{address}/session", timeout=WAIT, suppress_origin=True)
        self.number = 0
        self.ask("session.new", capabilities={})
        self.tab = self.ask("browsingContext.getTree")["contexts"][0]["context"]

    def ask(self, method: str, **parameters: Any) -> Any:
        """One command and its result."""
        self.number += 1
        self.socket.send(json.dumps({"id": self.number, "method": method, "params": parameters}))
        while True:
            told = json.loads(self.socket.recv())
            if told.get("id") == self.number:
                assert told["type"] == "success", told
                return told["result"]

    def open(self, address: str) -> None:
        """See `Engine`."""
        self.ask("browsingContext.navigate", context=self.tab, url=address, wait="complete")

    def run(self, expression: str) -> Any:
        """See `Engine`."""
        text = f"(async () => JSON.stringify(await ({expression})) ?? 'null')()"
        told = self.ask("script.evaluate", expression=text, target={"context": self.tab}, awaitPromise=True)
        assert told["type"] == "success", told
        return json.loads(told["result"]["value"])

    def press(self, key: str) -> None:
        """See `Engine`."""
        self.ask("input.performActions", context=self.tab, actions=[pressing(key)])


@contextmanager
def firefox() -> Iterator[Firefox]:
    """Firefox without a window and with a profile of its own."""
    program = needed("firefox-esr", "firefox")
    with tempfile.TemporaryDirectory() as profile:
        command = [program, "--headless", "--no-remote", "--remote-debugging-port", "0", "--profile", profile]
        with process(command, stderr=subprocess.PIPE, env={**os.environ, "HOME": profile}) as browser:
            assert browser.stderr is not None
            for line in browser.stderr:
                listening = re.search(r"listening on (ws://\S+)", line)
                if listening:
                    tab = Firefox(listening[1])
                    try:
                        yield tab
                    finally:
                        tab.socket.close()
                    return
        raise AssertionError("Firefox ended without listening")


class WebKit:
    """One window of WebKitGTK's small browser, over WebDriver."""

    def __init__(self, driver: str) -> None:
        options = {"binary": str(minibrowser()), "args": ["--automation"]}
        wanted = {"capabilities": {"alwaysMatch": {"webkitgtk:browserOptions": options}}}
        self.session = f"{driver}/session"
        self.session += "/" + self.ask("POST", "", wanted)["sessionId"]
        self.ask("POST", "/timeouts", {"script": int(WAIT * 1000)})

    def ask(self, method: str, path: str, body: Any = None) -> Any:
        """One command and its result."""
        data = None if body is None else json.dumps(body).encode()
        asked = urllib.request.Request(self.session + path, data, method=method)
        try:
            with urllib.request.urlopen(asked, timeout=2 * WAIT) as reply:
                return json.load(reply)["value"]
        except urllib.error.HTTPError as error:
            raise AssertionError(error.read().decode()) from None

    def open(self, address: str) -> None:
        """See `Engine`."""
        self.ask("POST", "/url", {"url": address})

    def run(self, expression: str) -> Any:
        """See `Engine`."""
        script = (
            "const done = arguments[arguments.length - 1];"
            f"(async () => JSON.stringify(await ({expression})) ?? 'null')()"
            ".then((text) => done(text), (error) => done(JSON.stringify({error: String(error)})));"
        )
        return json.loads(self.ask("POST", "/execute/async", {"script": script, "args": []}))

    def press(self, key: str) -> None:
        """See `Engine`."""
        self.ask("POST", "/actions", {"actions": [pressing(key)]})


def minibrowser() -> Path:
    """WebKitGTK's small browser, which comes with its driver."""
    found = sorted(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))
    assert found, "WebKitGTK's MiniBrowser is not here, and the browser tests are not skipped"
    return found[-1]


def free_port() -> int:
    """A port that nobody uses just now."""
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        return int(found.getsockname()[1])


@contextmanager
def webkit() -> Iterator[WebKit]:
    """WebKitGTK on a screen of its own."""
    port = free_port()
    command = [needed("xvfb-run"), "-a", needed("WebKitWebDriver"), f"--port={port}"]
    with tempfile.TemporaryDirectory() as home:
        own = {**os.environ, "HOME": home, "XDG_CACHE_HOME": home, "XDG_DATA_HOME": home}
        with process(command, env=own, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL):
            end = time.monotonic() + WAIT
            while True:
                try:
                    urllib.request.urlopen(f"http://127.0.0.1:{port}/status", timeout=5).close()
                    break
                except OSError:
                    assert time.monotonic() < end, "WebKitGTK's driver does not listen"
                    time.sleep(0.1)
            browser = WebKit(f"http://127.0.0.1:{port}")
            try:
                yield browser
            finally:
                browser.ask("DELETE", "")
