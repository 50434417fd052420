"""From navigation to the first live reading, against the bare stock page: time and bytes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from playwright.sync_api import Browser

from loadfirst_dev.bench.figures import Figure
from loadfirst_dev.bench.recording import recording
from loadfirst_dev.bench.stock import SERVED
from loadfirst_dev.bench.weights import weigh
from loadfirst_dev.chromium import LONGEST
from loadfirst_dev.links import fragment

OPENING = 0.37  # no plant of ours has it: the answer made while building is of no use

LIVE = """globalThis.benchWanted = () => {
  const drawing = document.querySelector("#apparatus .drawing-svg");
  const reading = document.querySelector('#apparatus [data-reading="gauge-discharge"]');
  return drawing?.dataset.origin === "live" && /\\d/.test(reading?.getAttribute("aria-valuetext") ?? "");
};"""
COMPUTED = """globalThis.benchWanted = () => document.getElementById("reading")?.textContent === "6";"""
MB = 1e6


@dataclass
class Start:
    """One of the two pages: how it is opened, how its reading is known, and what it took."""

    path: str
    wanted: str
    times: list[float]  # [ms]
    fetched: set[str]


def one_start(browser: Browser, url: str, wanted: str) -> float:
    """Time from navigation to the painted reading, in a fresh context with nothing cached. [ms]"""
    context = browser.new_context(viewport={"width": 1280, "height": 800}, locale="en-GB")
    try:
        page = context.new_page()
        page.set_default_timeout(LONGEST)
        page.add_init_script(f"{wanted}\n{(SERVED / 'painted.js').read_text(encoding='utf-8')}")
        page.goto(url, wait_until="commit")
        return float(page.evaluate("() => benchPainted"))
    finally:
        context.close()


def measure(browser: Browser, folder: Path, runs: int) -> tuple[Start, Start]:
    """Both pages in turn, `runs` times each after one that does not count: (ours, stock)."""
    ours = Start(f"site/#{fragment({'valve.opening': OPENING})}", LIVE, [], set())
    stock = Start("stock/", COMPUTED, [], set())
    with recording(folder) as (address, asked):
        for _ in range(runs + 1):
            for start in (ours, stock):
                asked.clear()
                start.times.append(one_start(browser, address + start.path, start.wanted))
                start.fetched |= asked.below(folder)
    for start in (ours, stock):
        del start.times[0]
    return ours, stock


def weight(folder: Path, names: Iterable[str]) -> int:
    """Of these files in brotli. [bytes]"""
    return sum(packed for _, packed in weigh(folder, names).values())


def figures(browser: Browser, folder: Path, runs: int) -> list[Figure]:
    """Ratio of the times, ratio of the bytes."""
    ours, stock = measure(browser, folder, runs)
    time, bare = median(ours.times), median(stock.times)
    bytes_, bare_bytes = weight(folder, ours.fetched), weight(folder, stock.fetched)
    spread = " against ".join(f"{min(each.times):.0f}–{max(each.times):.0f}" for each in (ours, stock))
    return [
        Figure(
            "first live reading, to a bare stock page with numpy",
            time / bare,
            most=0.50,
            basis=f"medians of {runs} cold starts: {time:.0f} ms against {bare:.0f} ms ({spread})",
        ),
        Figure(
            "bytes until then in brotli, to the bare stock page",
            bytes_ / bare_bytes,
            most=0.65,
            basis=f"{bytes_ / MB:.2f} MB in {len(ours.fetched)} files against "
            f"{bare_bytes / MB:.2f} MB in {len(stock.fetched)} files",
        ),
    ]
