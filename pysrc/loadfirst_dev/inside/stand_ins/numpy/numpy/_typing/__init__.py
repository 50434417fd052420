"""In place of numpy's own, of which numpy itself uses one name, in annotations that nobody evaluates."""

from importlib import import_module
from typing import Any


class NDArray:
    """Stands for an array in an annotation."""

    def __class_getitem__(cls, item: Any) -> Any:
        """`NDArray[Any]`."""
        return cls


def __getattr__(name: str) -> Any:
    """All else is in the real package, which is brought when it is asked for."""
    return getattr(import_module("numpy._typing._whole"), name)
