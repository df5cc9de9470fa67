"""How long a newcomer takes from nothing to the sheets of forty books, by the page alone.

    python -m tests.bench.bench_newcomer [FOLDER FOR PICTURES]

What a person does is counted by the keystroke-level model (S. K. Card, T. P. Moran and A. Newell, The Keystroke-Level
Model for User Performance Time with Interactive Systems, Communications of the ACM 23 (1980), 396-410): a key of an
average typist 0.28 s, pointing 1.1 s, the hand from mouse to keys 0.4 s, making up one's mind 1.35 s. Reading goes at
200 words a minute, slower than readers of English prose are on average (238: M. Brysbaert, How many words do we read
per minute?, Journal of Memory and Language 109 (2019)). What the program takes is the clock's.
"""

from __future__ import annotations

import sys
import tempfile
import time
from pathlib import Path

from playwright.sync_api import Locator, Page, sync_playwright

from tests.kit.shown import BROWSER, FLAGS, running

KEY, POINT, HOMING, THINK = 0.28, 1.1, 0.4, 1.35

WORDS_A_SECOND = 200 / 60

WORDS = ["Salt", "Fog", "Lamp", "Tide", "Rope", "Knot", "Winter", "Quay", "Heron", "Ledger"]

TITLES = "\n".join(f"{one} and {other}" for one in WORDS for other in WORDS[:4])


class Newcomer:
    """Somebody before the page: how many steps were taken, and how many seconds."""

    def __init__(self, page: Page, pictures: Path | None) -> None:
        self.page, self.pictures = page, pictures
        self.steps, self.own, self.waited = 0, 0.0, 0.0

    def read(self, where: str) -> None:
        """All words that are seen."""
        words = self.page.locator(where).inner_text().split()
        self.own += len(words) / WORDS_A_SECOND

    def press(self, one: Locator) -> None:
        """Something found and pressed."""
        self.steps += 1
        self.own += THINK + POINT + KEY
        one.click()

    def type(self, one: Locator, text: str, *, pasted: bool = False) -> None:
        """A field filled in; a text that is pasted was copied elsewhere before."""
        self.steps += 1
        self.own += THINK + POINT + 2 * HOMING + KEY * (8 if pasted else len(text))
        one.fill(text)

    def wait(self, one: Locator, stage: str) -> None:
        """Until something is seen, by the clock; and told where that is."""
        start = time.monotonic()
        one.first.wait_for(timeout=120_000)
        self.waited += time.monotonic() - start
        print(f"{self.own + self.waited:6.0f} s, {self.steps:3} steps: {stage}")
        if self.pictures:
            self.page.screenshot(path=self.pictures / f"{stage.replace(' ', '-')}.png")


def first_shelf(one: Newcomer, *, pasted: bool) -> None:
    """From nothing to forty books that stand on two shelves."""
    page = one.page
    one.wait(page.locator("form.first"), "the page is open")
    one.read("form.first")
    one.type(page.get_by_label("name of the shelf"), "The Harbour Study")
    one.press(page.get_by_role("button", name="another space"))
    for number, sides in ((1, ("180", "30", "24")), (2, ("150", "26", "22"))):
        for side, value in zip(("width", "height", "depth"), sides, strict=True):
            one.type(page.locator(f"#space-{number}-{side}"), value)
    one.type(page.get_by_label("titles, one on each line"), TITLES, pasted=pasted)
    one.press(page.get_by_role("button", name="begin the shelf"))
    one.wait(page.locator("html[data-complete=yes] .space[data-verdict=fits]"), "forty books stand and fit")
    one.read("#shelf")


def sheets(one: Newcomer) -> None:
    """One book looked at and changed, then all made."""
    page = one.page
    one.press(page.get_by_role("button", name="Fog and Tide"))
    one.wait(page.locator(".stage img"), "a book is in the hand")
    one.press(page.get_by_role("tab", name="Looks"))
    one.wait(page.locator(".look").nth(5), "its looks are side by side")
    one.press(page.locator(".look").nth(3))
    one.press(page.get_by_role("tab", name="Change"))
    one.type(page.get_by_label("author", exact=True), "O. Quay")
    page.get_by_label("author", exact=True).press("Enter")
    one.wait(page.get_by_role("heading", name="Fog and Tide"), "the book is changed")
    one.press(page.get_by_role("button", name="make the sheets"))
    one.wait(page.locator(".rack figcaption"), "the sheets are made")
    one.read("dialog")
    one.press(page.locator("dialog h3 a").first)


def main() -> None:
    """Run the benchmark and print what was measured."""
    pictures = Path(sys.argv[1]) if len(sys.argv) > 1 else None
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=BROWSER, args=list(FLAGS))
        for pasted in (True, False):
            print("titles pasted" if pasted else "titles typed")
            with tempfile.TemporaryDirectory() as place, running(Path(place) / "shelf.yaml") as shown:
                page = browser.new_page(viewport={"width": 1280, "height": 800})
                page.goto(shown.address)
                one = Newcomer(page, pictures)
                first_shelf(one, pasted=pasted)
                sheets(one)
                print(f"in all {one.own + one.waited:.0f} s, {one.waited:.0f} s of them the program's")
                page.close()
        browser.close()


if __name__ == "__main__":
    main()
