"""What is done to a page before its picture is taken."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import FilePayload, Page

BAD_FILE = b"format = 1\ntitle = 'My own plant'\n[valve]\nopenning = 0.5\n"


def bad_number(page: Page) -> None:
    """Type an opening that no valve has."""
    box = page.locator("#valve-opening-number")
    box.fill("140")
    box.press("Enter")
    page.locator("#valve-opening-bad").wait_for(state="visible")


def bad_file(page: Page) -> None:
    """Open a plant file with a misspelt key."""
    own: FilePayload = {"name": "own-plant.toml", "mimeType": "text/plain", "buffer": BAD_FILE}
    page.locator("#file").set_input_files(own)
    page.locator(".file-error").wait_for(state="visible")


def menu(page: Page) -> None:
    """Open the dialog of plants, cases and files."""
    tools(page)
    page.locator("#tool-open").click()
    page.locator("#open[open]").wait_for(state="visible")


def tools(page: Page) -> None:
    """Unfold the tools where they are folded."""
    more = page.locator("#tool-more")
    if more.is_visible():
        more.click()


def panel(page: Page) -> None:
    """Open the panel of the pump."""
    page.locator('#apparatus [data-control="pump-1"]').click()
    page.locator("#part-pump-model").wait_for(state="visible")


def vessel_panel(page: Page) -> None:
    """Open the panel of the supply vessel."""
    page.locator('#apparatus [data-control="supply.surface_m"]').click()
    page.locator("#parts .lead").first.wait_for(state="visible")


def faults(page: Page) -> None:
    """Open the panel of the discharge gauge and unfold what may be wrong with it."""
    page.locator('#apparatus [data-part="gauge-discharge"]').click()
    page.locator(".part-faults summary").click()
    page.locator("#part-gauges-discharge-fault-zero_bar").scroll_into_view_if_needed()


def drive_panel(page: Page) -> None:
    """Open the panel of motor and drive."""
    panel(page)
    page.locator("#parts select").first.select_option("drive")
    page.locator("#part-drive-voltage_percent").wait_for(state="visible")


def controller_panel(page: Page) -> None:
    """Open the panel of the controller."""
    page.locator('#apparatus [data-part="controller"] .controller-output').click()
    page.locator("#parts .part-key").first.wait_for(state="visible")


def time_run(page: Page) -> None:
    """Let time run at a hundred times for a while, then pause."""
    page.locator("#switch-clock").click()
    page.locator("label:has(input[name=clock-rate][value='100'])").click()
    page.wait_for_timeout(4000)
    page.locator("#clock-go").click()


def trend(page: Page) -> None:
    """The same, then look at the strip and read it in its middle."""
    time_run(page)
    page.locator("#clock-trend").click()
    page.locator("#trend [role=slider]").hover()


DEEDS: dict[str, Callable[[Page], None]] = {
    "bad number": bad_number,
    "bad file": bad_file,
    "menu": menu,
    "tools": tools,
    "panel": panel,
    "vessel panel": vessel_panel,
    "faults": faults,
    "drive panel": drive_panel,
    "controller panel": controller_panel,
    "time": time_run,
    "trend": trend,
}
