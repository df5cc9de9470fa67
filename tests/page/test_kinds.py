"""Every kind of cover and block is reached in the form: what a kind cannot be without is asked for with it."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from bookmaker.things.book.blocks.kinds import KINDS as BLOCKS
from bookmaker.things.book.covers.kinds import KINDS as COVERS
from tests.kit.net_loft import book
from tests.kit.shown import Running, until

NEEDED: Mapping[str, Mapping[str, str]] = {
    "cover: kind: case": {"cover: boards": "cover paper", "cover: stock": "cover paper"},
    "cover: kind: wrap": {},
    "cover: binding: quarter": {"cover: spine stock": "page paper"},
    "cover: binding: half": {},
    "jacket: stock: page paper": {},
    "block: kind: accordion": {},
    "block: kind: leaves": {"block: stock": "page paper", "block: pages": "24"},
    "block: kind: sections": {},
    "block: kind: dummy": {"block: thickness": "4 mm"},
}
"""What is asked for with each in the order of `STEPS`, and what is given; what was given before is still there."""
STEPS: tuple[tuple[str, ...], ...] = (
    (
        "cover: kind: case",
        "cover: binding: quarter",
        "cover: binding: half",
        "cover: kind: wrap",
        "jacket: stock: page paper",
    ),
    ("block: kind: leaves", "block: kind: sections", "block: kind: dummy", "block: kind: accordion"),
)


@pytest.fixture
def desk(page: Page, shown: Running) -> Page:
    """A book on the desk, with all its keys in sight."""
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    book(page, "Tarred Twine").click()
    page.get_by_role("tab", name="Change").click()
    page.get_by_text("all other keys").click()
    return page


def test_every_kind_is_walked_through() -> None:
    walked = {step.rpartition(": ")[2] for steps in STEPS for step in steps}
    assert walked >= {kind.model_fields["kind"].default for kind in (*BLOCKS, *COVERS)}
    assert {step for steps in STEPS for step in steps} == set(NEEDED)


@pytest.mark.parametrize("steps", STEPS, ids=("covers", "blocks"))
def test_each_kind_is_written_with_what_it_needs(desk: Page, folder: Path, steps: tuple[str, ...]) -> None:
    for step in steps:
        key, _, value = step.rpartition(": ")
        desk.evaluate("document.getElementById('leaf').dataset.before = 1")
        desk.get_by_label(key, exact=True).first.select_option(value)
        if NEEDED[step]:
            beside = desk.locator(".beside")
            expect(beside).to_be_visible(timeout=20_000)
            expect(desk.locator("#said.shown")).to_have_count(0)
            for name, given in NEEDED[step].items():
                asked = beside.get_by_label(name, exact=True)
                if not asked.count():
                    desk.get_by_role("button", name=f": {value} with").click()
                    expect(asked).to_be_visible(timeout=20_000)
                one = asked.evaluate("one => one.localName")
                if one == "select":
                    asked.select_option(given)
                else:
                    asked.fill(given)
                    asked.press("Tab")
            desk.get_by_role("button", name=f": {value} with").click()
        until(lambda key=key, value=value: f"{key.split(': ')[1]}: {value}" in entry_of(folder))
        expect(desk.locator("#leaf[data-before]")).to_have_count(0)
        expect(desk.locator(".beside")).to_have_count(0)


def entry_of(folder: Path) -> str:
    """The lines of the first book."""
    text = (folder / "shelf.yaml").read_text(encoding="utf-8")
    return text[text.index("Tarred Twine") :].partition("\n  - ")[0]
