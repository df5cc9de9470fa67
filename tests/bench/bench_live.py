"""From a saved change of one book of the demo to its new picture painted in a browser, in seconds of the clock.

    python -m tests.bench.bench_live

The reference is what the worker takes for the same answer without a browser: see `tests.bench.bench_edits`.
"""

from __future__ import annotations

import shutil
import statistics
import tempfile
import time
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from tests.kit.shown import BROWSER, FLAGS, running

DEMO = Path(__file__).parents[2] / "demo"

TIMES = 15


def painted(page: Page, path: Path, text: str) -> float:
    """Seconds from a file written to the next state of the shelf painted."""
    was = page.locator("html").get_attribute("data-version")
    start = time.monotonic()
    path.write_text(text, encoding="utf-8")
    while page.locator("html").get_attribute("data-version") == was:
        time.sleep(0.005)
    return time.monotonic() - start


def main() -> None:
    """Run the benchmark and print what was measured."""
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright:
        folder = Path(shutil.copytree(DEMO, Path(place) / "demo"))
        path = folder / "shelf.yaml"
        text = path.read_text(encoding="utf-8")
        browser = playwright.chromium.launch(executable_path=BROWSER, args=list(FLAGS))
        with running(path) as shown:
            page = browser.new_page()
            page.goto(shown.address)
            page.wait_for_selector("html[data-complete=yes]")
            took = [painted(page, path, text.replace("A. Fell", f"A. Fell {number}")) for number in range(TIMES)]
        browser.close()
    print(f"{TIMES} saved changes: median {statistics.median(took):.3f} s, worst {max(took):.3f} s")


if __name__ == "__main__":
    main()
