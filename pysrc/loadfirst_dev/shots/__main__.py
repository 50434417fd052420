"""Takes the pictures in one run; started by the command `shots` in the whole environment."""

from __future__ import annotations

import argparse
import shutil
import sys
import time
from pathlib import Path

from loadfirst_dev import places, web
from loadfirst_dev.build import build
from loadfirst_dev.chromium import chromium
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import read_pins
from loadfirst_dev.say import Problem, say
from loadfirst_dev.shots.contents import contents
from loadfirst_dev.shots.looks import LOOKS
from loadfirst_dev.shots.scenes import SCENES
from loadfirst_dev.shots.take import take_all

FOLDER = places.REPO / ".shots"
SITE = places.BUILT / "shots" / "site"


def main(arguments: list[str]) -> int:
    """Picture the chosen scenes in the chosen looks."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev shots")
    parser.add_argument("--only", default="")
    parser.add_argument("--look", default="")
    parser.add_argument("--runtime", type=Path)
    options = parser.parse_args(arguments)
    looks = [look for look in LOOKS if options.look in look.name]
    scenes = [scene for scene in SCENES if options.only in scene.name]
    if not looks or not scenes:
        names = [", ".join(each.name for each in every) for every in (SCENES, LOOKS)]
        raise Problem(f"No such picture. Scenes: {names[0]}. Looks: {names[1]}.")
    pins = read_pins()
    build(pins, Store(pins, runtime=options.runtime), SITE)
    if len(looks) == len(LOOKS) and len(scenes) == len(SCENES):
        shutil.rmtree(FOLDER, ignore_errors=True)
    FOLDER.mkdir(exist_ok=True)
    server = web.listen(SITE, 0)
    web.in_background(server)
    started, count = time.monotonic(), 0
    with chromium() as browser:
        for picture in take_all(browser, web.address(server), looks, scenes, FOLDER):
            say(f"  {picture.name}")
            count += 1
    server.shutdown()
    (FOLDER / "index.html").write_text(contents(SCENES, LOOKS, FOLDER), encoding="utf-8")
    say(f"{count} pictures in {time.monotonic() - started:.0f} s: {FOLDER / 'index.html'}")
    return 0


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except Problem as problem:
        sys.exit(str(problem))
