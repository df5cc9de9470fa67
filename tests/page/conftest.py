"""One browser for all tests of the page; where there is none, one line says that they were skipped."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

from tests.kit.net_loft import SHELF, TABLE
from tests.kit.shown import BROWSER, FLAGS, NO_BROWSER, REQUIRED, Running, running

expect.set_options(timeout=20_000)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The browser of the system."""
    if BROWSER is None:
        assert not REQUIRED, "there is no chromium to test the page with"
        pytest.skip(NO_BROWSER)
    with sync_playwright() as playwright:
        found = playwright.chromium.launch(executable_path=BROWSER, args=list(FLAGS))
        yield found
        found.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A tab of its own; what goes wrong in its scripts fails the test."""
    context = browser.new_context(viewport={"width": 1280, "height": 900}, reduced_motion="reduce")
    context.grant_permissions(["clipboard-read", "clipboard-write"])
    tab = context.new_page()
    wrong: list[str] = []
    tab.on("pageerror", lambda error: wrong.append(str(error)))
    tab.set_default_timeout(20_000)
    yield tab
    context.close()
    assert wrong == []


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A shelf with a table beside it."""
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    (tmp_path / "more.csv").write_text(TABLE, encoding="utf-8")
    return tmp_path


@pytest.fixture
def shown(folder: Path) -> Iterator[Running]:
    """The shelf, shown."""
    with running(folder / "shelf.yaml") as found:
        yield found
