"""Draws the picture of the page in the browser for the README: the demo, with a book in the hand.

python demo/draw_page.py

It takes the chromium of the system, through Playwright, which the tests bring along.
"""

from __future__ import annotations

import io
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

BOOK = "1907"
"""The title that is taken into the hand."""

VIEW = {"width": 1200, "height": 720}
COLOURS = 128

SETTLED = 2000
"""So many ms after the last news what these show is drawn."""


@contextmanager
def shown(shelf: Path) -> Iterator[str]:
    """The address of the page, as long as it is served."""
    command = [sys.executable, "-m", "bookmaker", "show", str(shelf), "--no-browser", "--no-cache"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout
        try:
            yield process.stdout.readline().split()[-1]
        finally:
            process.send_signal(signal.SIGINT)


def photographed(address: str) -> Image.Image:
    """The page once the book is in the hand and everything is drawn."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        page = browser.new_page(viewport=VIEW, reduced_motion="reduce")
        page.goto(address)
        page.locator(f'button.thing[data-thing^="{BOOK}"]').first.click(timeout=60_000)
        page.get_by_text("The shelf is sound").first.wait_for(timeout=180_000)
        page.wait_for_timeout(SETTLED)
        picture = page.screenshot()
        browser.close()
    return Image.open(io.BytesIO(picture)).convert("RGB")


if __name__ == "__main__":
    here = Path(__file__).parent
    with shown(here / "shelf.yaml") as address:
        taken = photographed(address)
    taken.quantize(COLOURS, dither=Image.Dither.NONE).save(here / "page.png", optimize=True)
