"""In place of Python's own, which Pyodide imports at its start and the engine has no use for."""

from typing import Any


def __getattr__(name: str) -> Any:
    """Become the real package as soon as a name is asked for that is not one of its modules."""
    from importlib.util import find_spec

    if name.startswith("__") or find_spec(f"asyncio.{name}"):
        raise AttributeError(name)
    whole = find_spec("asyncio._whole")
    namespace = globals()
    del namespace["__getattr__"]
    exec(whole.loader.get_code(whole.name), namespace)  # type: ignore[union-attr]
    if name not in namespace:
        raise AttributeError(name)
    return namespace[name]
