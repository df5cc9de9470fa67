"""The page by touch: a tap opens a book, a rest and a drag moves it, a swipe scrolls, two fingers zoom."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from playwright.sync_api import Browser, CDPSession, Locator, Page, expect

from tests.kit.net_loft import book, changed
from tests.kit.shown import Running, until

Point = tuple[float, float]


@pytest.fixture
def shelf(browser: Browser, shown: Running) -> Iterator[Page]:
    """Its page on a telephone."""
    context = browser.new_context(viewport={"width": 390, "height": 800}, has_touch=True, is_mobile=True)
    page = context.new_page()
    wrong: list[str] = []
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.set_default_timeout(20_000)
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    yield page
    context.close()
    assert wrong == []


class Hand:
    """Fingers on the screen."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.wire: CDPSession = page.context.new_cdp_session(page)

    def touch(self, kind: str, *points: Point) -> None:
        """One event of the fingers that are down."""
        at = [{"x": x, "y": y, "id": number} for number, (x, y) in enumerate(points)]
        self.wire.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": at})

    def drag(self, ways: Sequence[tuple[Point, Point]], *, rest: float = 0, steps: int = 12) -> None:
        """Fingers put down, kept still for `rest` ms, moved, and lifted."""
        self.touch("touchStart", *(start for start, _ in ways))
        self.page.wait_for_timeout(rest)
        for step in range(1, steps + 1):
            share = step / steps
            self.touch("touchMove", *((a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share) for a, b in ways))
            self.page.wait_for_timeout(16)
        self.touch("touchEnd")


def middle(one: Locator, *, along: float = 0.5) -> Point:
    """A point of something that is seen, so far along it."""
    box = one.bounding_box()
    assert box
    return box["x"] + box["width"] * along, box["y"] + box["height"] / 2


def test_a_tap_opens_a_book(shelf: Page) -> None:
    book(shelf, "Floats of Cork").tap()
    expect(shelf.locator("#desk h2")).to_have_text("Floats of Cork")
    shelf.get_by_role("tab", name="Pages").tap()
    shelf.get_by_role("button", name="leaf on").tap()
    expect(shelf.get_by_text("opening 2 of")).to_be_visible()
    shelf.get_by_role("button", name="close the book").tap()
    expect(shelf.locator("#desk")).to_be_hidden()


def test_a_book_that_was_rested_on_is_dragged(shelf: Page, folder: Path) -> None:
    hand, before = Hand(shelf), shelf.locator("#shelf").evaluate("one => one.scrollTop")
    hand.drag([(middle(book(shelf, "Weights of Lead")), middle(book(shelf, "Tarred Twine"), along=0.1))], rest=500)
    until(lambda: changed(folder) != [])
    text = (folder / "shelf.yaml").read_text(encoding="utf-8")
    assert text.index("Weights of Lead") < text.index("Tarred Twine")
    expect(shelf.locator(".space:first-child button.thing").first).to_have_attribute("title", "Weights of Lead")
    assert shelf.locator("#shelf").evaluate("one => one.scrollTop") == before
    expect(shelf.locator("#desk")).to_be_hidden()
    hand.drag([(middle(book(shelf, "Weights of Lead")), middle(book(shelf, "Hooks")))], rest=500)
    until(lambda: "stack: pile" in (folder / "shelf.yaml").read_text(encoding="utf-8").partition("Weights")[2][:80])
    shelf.get_by_role("button", name="undo").tap()
    until(lambda: "stack: pile" not in (folder / "shelf.yaml").read_text(encoding="utf-8").partition("Weights")[2][:80])


def test_a_swipe_scrolls_and_moves_no_book(shelf: Page, folder: Path) -> None:
    shelf.set_viewport_size({"width": 390, "height": 420})
    x, y = middle(book(shelf, "Floats of Cork"))
    Hand(shelf).drag([((x, y), (x, y - 90))])
    until(lambda: shelf.locator("#shelf").evaluate("one => one.scrollTop") > 20)
    assert changed(folder) == []
    expect(shelf.locator("#desk")).to_be_hidden()


def test_two_fingers_zoom(shelf: Page, folder: Path) -> None:
    told = shelf.locator(".zoom output")
    before = int(told.inner_text().split()[0])
    x, y = middle(shelf.locator(".recess").first)
    Hand(shelf).drag([((x - 20, y), (x - 60, y)), ((x + 20, y), (x + 60, y))])
    until(lambda: int(told.inner_text().split()[0]) > before * 1.8)
    zoomed = int(told.inner_text().split()[0])
    assert zoomed < before * 4.5
    assert shelf.evaluate("visualViewport.scale") == 1
    Hand(shelf).drag([((x - 60, y), (x - 20, y)), ((x + 60, y), (x + 20, y))])
    until(lambda: int(told.inner_text().split()[0]) < zoomed / 1.8)
    assert changed(folder) == []


def test_a_book_is_turned_in_the_hand(shelf: Page) -> None:
    book(shelf, "Floats of Cork").tap()
    stage = shelf.locator(".stage")
    expect(stage).to_be_visible()
    stage.scroll_into_view_if_needed()
    turned = stage.locator(".box").get_attribute("style")
    x, y = middle(stage)
    Hand(shelf).drag([((x, y), (x + 80, y))])
    until(lambda: stage.locator(".box").get_attribute("style") != turned)


def test_all_that_is_pressed_is_as_large_as_a_fingertip(shelf: Page) -> None:
    """24 CSS pixels at least, as the Web Content Accessibility Guidelines 2.2 ask for (criterion 2.5.8)."""
    small = """() => [...document.querySelectorAll('button:not(.thing), summary, select, input')]
      .filter(one => one.checkVisibility())
      .filter(one => one.getBoundingClientRect().height < 24 || one.getBoundingClientRect().width < 24)
      .map(one => one.outerHTML.slice(0, 90))"""
    book(shelf, "Floats of Cork").tap()
    shelf.get_by_role("tab", name="Change").tap()
    assert shelf.evaluate(small) == []
