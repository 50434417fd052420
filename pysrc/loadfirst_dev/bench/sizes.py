"""What every file of the built site weighs, as it is and in brotli."""

from __future__ import annotations

from pathlib import Path

from loadfirst_dev.bench.weights import weigh
from loadfirst_dev.packs import folder_contents


def table(site: Path) -> str:
    """A line for each file, the heaviest first, and the sum."""
    weights = weigh(site, folder_contents(site))
    lines = [f"  {'file':52} {'bytes':>12} {'brotli':>12}"]
    for name, (plain, packed) in sorted(weights.items(), key=lambda item: (-item[1][1], item[0])):
        lines.append(f"  {name:52} {plain:12,} {packed:12,}")
    plain, packed = (sum(column) for column in zip(*weights.values(), strict=True))
    return "\n".join([*lines, f"  {f'{len(weights)} files':52} {plain:12,} {packed:12,}"])
