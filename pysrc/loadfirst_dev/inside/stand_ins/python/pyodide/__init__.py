"""In place of Pyodide's own: without its event loop, for questions are answered one after the other."""

from importlib import import_module

__version__ = "PINNED"  # the build puts the version here that the pins name

__all__ = ["__version__", "console", "code", "ffi", "http", "webloop"]
import_module("pyodide._state")
