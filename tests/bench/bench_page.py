"""The page with a thousand books in a browser: first picture, frames while it is scrolled and dragged, memory.

    python -m tests.bench.bench_page [BOOKS]

Seconds count from the start of the command to the first books in the page, and to the last of them drawn. A frame is
the time between two calls of the browser before it paints; the reference is an empty page in the same browser, scrolled
in the same way. Memory is what the process of the tab has for itself.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from pathlib import Path

import psutil
from playwright.sync_api import Page, sync_playwright

from tests.kit.shown import BROWSER, FLAGS, running

WORDS = ("Salt", "Fog", "Lamp", "Tide", "Rope", "Knot", "Winter", "Quay", "Heron", "Ledger", "Kelp", "Bell")
STYLES = ("cloth", "leather", "half leather", "paper boards", "paperback", "pamphlet")
ON_A_BOARD = 50

HEAD = """\
shelf: A Thousand
stocks:
  page paper: {caliper: 90 um, glue: spray}
  cover paper: {caliper: 160 um}
defaults:
  block: {kind: accordion, stock: page paper}
  cover: {kind: wrap, stock: cover paper}
"""

FRAMES = """(move) => new Promise((done) => {
  const place = document.querySelector('#shelf') ?? document.scrollingElement;
  const gaps = [];
  let last = performance.now();
  const step = (now) => {
    gaps.push(now - last);
    last = now;
    if (move) place.scrollTop += 60;
    if (gaps.length < 200) requestAnimationFrame(step);
    else done(gaps.slice(1));
  };
  requestAnimationFrame(step);
})"""


def thousand(books: int) -> str:
    """A shelf file with so many books, fifty on a board."""
    chance = random.Random(4)
    boards = range(1, books // ON_A_BOARD + 2)
    spaces = "".join(f"  board {number}: {{width: 260 mm, height: 27 mm, depth: 22 mm}}\n" for number in boards)
    lines = [
        f"  - {{title: {chance.choice(WORDS)} and {chance.choice(WORDS)} {at}, space: board {at // ON_A_BOARD + 1}, "
        f"size: {{height: {chance.randint(17, 25)} mm, width: {chance.randint(11, 16)} mm}}, "
        f"block: {{pages: {chance.choice([16, 24, 32])}}}, design: {{style: {chance.choice(STYLES)}}}}}\n"
        for at in range(books)
    ]
    return f"{HEAD}spaces:\n{spaces}books:\n{''.join(lines)}"


def frames(what: str, gaps: list[float]) -> None:
    """Say how long frames took."""
    ordered = sorted(gaps)
    late = sum(gap > 100 for gap in gaps)
    print(f"{what}: median {ordered[len(ordered) // 2]:.0f} ms, longest {ordered[-1]:.0f} ms, {late} over 100 ms")


def dragged(page: Page) -> None:
    """Drag a book along its shelf, a step for each frame, and let it fall back."""
    book = page.locator("button.thing").nth(3).bounding_box()
    assert book
    page.mouse.move(book["x"] + 3, book["y"] + 20)
    page.mouse.down()
    page.evaluate(f"() => {{ window.gaps = ({FRAMES})(false); }}")
    for step in range(60):
        page.mouse.move(book["x"] + 8 * step, book["y"] + 20 + step % 7)
    frames("dragged", page.evaluate("() => window.gaps"))
    page.keyboard.press("Escape")
    page.mouse.up()


def main() -> None:
    """Measure, and print."""
    books = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        shelf = Path(folder) / "shelf.yaml"
        shelf.write_text(thousand(books), encoding="utf-8")
        browser = playwright.chromium.launch(executable_path=BROWSER, args=list(FLAGS))
        page = browser.new_page(viewport={"width": 1280, "height": 900})
        page.set_default_timeout(600_000)
        page.set_content("<div style='height: 30000px; background: linear-gradient(red, blue)'></div>")
        frames("an empty page, scrolled", page.evaluate(FRAMES, True))
        begun = time.monotonic()
        with running(shelf) as shown:
            page.goto(shown.address)
            page.wait_for_selector("button.thing")
            print(f"first picture: {time.monotonic() - begun:.1f} s")
            page.wait_for_selector("html[data-complete=yes]")
            print(f"all drawn: {time.monotonic() - begun:.1f} s")
            frames("scrolled", page.evaluate(FRAMES, True))
            page.evaluate("() => { document.querySelector('#shelf').scrollTop = 0; }")
            dragged(page)
            tabs = [one for one in psutil.Process().children(recursive=True) if "--type=renderer" in one.cmdline()]
            print(f"memory of the tab: {max(one.memory_full_info().uss for one in tabs) / 1e6:.0f} MB")
        browser.close()


if __name__ == "__main__":
    main()
