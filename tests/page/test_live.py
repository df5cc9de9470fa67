"""The picture in a browser: it follows the file at once, and what is broken for the moment spoils nothing."""

from __future__ import annotations

import os
import re
import shutil
import signal
import time
from collections.abc import Iterator
from pathlib import Path

import psutil
import pytest
from playwright.sync_api import Page, expect

from tests.kit.shown import Running, running, until

DEMO = Path(__file__).parents[2] / "demo"
READY = "html[data-complete=yes]"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the demo."""
    return Path(shutil.copytree(DEMO, tmp_path_factory.mktemp("live") / "demo"))


@pytest.fixture(scope="module")
def shown(folder: Path) -> Iterator[Running]:
    """The demo, shown."""
    with running(folder / "shelf.yaml") as found:
        yield found


def version(page: Page) -> int:
    """Which state of the shelf the page has painted."""
    return int(page.locator("html").get_attribute("data-version") or 0)


def test_every_book_stands_in_the_picture(page: Page, shown: Running) -> None:
    page.goto(shown.address)
    page.wait_for_selector(READY)
    expect(page.locator("h1")).to_have_text("The Tidewatch Reading Room")
    almanac = page.get_by_role("button", name="The Keeper’s Almanac")
    box = almanac.bounding_box()
    assert box and box["height"] > box["width"] > 10
    assert page.locator("button.thing").count() == 41
    first = page.locator(".space:first-child canvas[data-picture]")
    expect(first).to_have_count(12)
    colours = "new Set(one.getContext('2d').getImageData(0, 0, one.width, one.height).data).size"
    inked = f"all => all.filter(one => {colours} > 9).length"
    assert first.evaluate_all(inked) == 12


def test_a_saved_change_is_painted(page: Page, shown: Running, folder: Path) -> None:
    """The new picture of the one book; how soon is measured by `tests.bench.bench_live` on a machine of its own."""
    page.goto(shown.address)
    page.wait_for_selector(READY)
    path, image = folder / "shelf.yaml", page.get_by_role("button", name="Nine Winters").locator("canvas")
    text = path.read_text(encoding="utf-8")
    expect(image).to_have_attribute("data-picture", re.compile("."))
    before, was = image.get_attribute("data-picture"), version(page)
    path.write_text(text.replace("A. Fell", "A. Fell 2"), encoding="utf-8")
    until(lambda: version(page) > was, within=10)
    assert image.get_attribute("data-picture") != before
    path.write_text(text, encoding="utf-8")


def test_a_broken_file_keeps_the_last_good_picture(page: Page, shown: Running, folder: Path) -> None:
    page.goto(shown.address)
    page.wait_for_selector(READY)
    path = folder / "shelf.yaml"
    text = path.read_text(encoding="utf-8")
    count = page.locator("button.thing").count()
    path.write_text(text.replace("space: lower shelf", "space: lower shlef", 1), encoding="utf-8")
    told = page.locator("#wrong li[data-severity=error]")
    expect(told).to_contain_text("did you mean 'lower shelf'")
    assert page.locator("button.thing").count() == count
    place = told.locator("button.place").first
    place.click()
    expect(page.locator("#said")).to_contain_text("is on the clipboard")
    assert page.evaluate("() => navigator.clipboard.readText()") == place.inner_text()
    path.write_text(text, encoding="utf-8")
    expect(page.locator("#outcome")).to_contain_text("sound")


def test_a_named_file_counts_as_the_shelf_does(page: Page, shown: Running, folder: Path) -> None:
    page.goto(shown.address)
    page.wait_for_selector(READY)
    was = version(page)
    text = folder / "texts" / "small-tales.txt"
    text.write_text(text.read_text(encoding="utf-8") + "\nAnd one tale more.\n", encoding="utf-8")
    until(lambda: version(page) > was, within=10)


def test_a_worker_that_is_killed_is_replaced(page: Page, shown: Running, folder: Path) -> None:
    page.goto(shown.address)
    page.wait_for_selector(READY)
    was = version(page)
    server = psutil.Process(shown.process.pid)
    worker = next(one for one in server.children() if "spawn_main" in " ".join(one.cmdline()))
    os.kill(worker.pid, signal.SIGKILL)
    until(lambda: version(page) > was)
    page.reload()
    page.wait_for_selector(READY)
    path = folder / "shelf.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("Nine Winters", "Ten Winters"), encoding="utf-8")
    expect(page.get_by_role("button", name="Ten Winters")).to_be_visible()


def test_ending_it_leaves_nothing_running(folder: Path) -> None:
    with running(folder / "shelf.yaml") as found:
        server = psutil.Process(found.process.pid)
        until(server.children)
        others = server.children(recursive=True)
        begun = time.monotonic()
    assert time.monotonic() - begun < 3
    until(lambda: not any(one.is_running() and one.status() != psutil.STATUS_ZOMBIE for one in others), within=3)
