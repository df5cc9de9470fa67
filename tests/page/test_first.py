"""From nothing to sheets: a form, forty titles, two shelves; a file that the command line finds sound."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import bookmaker
from bookmaker.ground.problems import CommandError, ShelfFileError
from bookmaker.page.work.first_shelf import first_shelf, first_wanted_of, listed_titles
from bookmaker.workshop import Workshop
from tests.kit.shown import Running, running

WORDS = ["Salt", "Fog", "Lamp", "Tide", "Rope", "Knot", "Winter", "Quay", "Heron", "Ledger"]
TITLES = "\n".join(
    f"{WORDS[at % 10]} and {WORDS[(at * 3 + 1) % 10]} {at}; A. {WORDS[(at + 4) % 10]}" for at in range(40)
)


@pytest.fixture
def shown(tmp_path: Path) -> Iterator[Running]:
    """A page without a shelf."""
    with running(tmp_path / "shelf.yaml") as found:
        yield found


def test_forty_books_on_two_shelves_without_an_editor(page: Page, shown: Running, tmp_path: Path) -> None:
    page.goto(shown.address)
    page.get_by_role("button", name="another space").click()
    for number, sides in ((1, ("180", "30", "24")), (2, ("150", "26", "22"))):
        for side, value in zip(("width", "height", "depth"), sides, strict=True):
            page.locator(f"#space-{number}-{side}").fill(value)
    page.get_by_label("titles, one on each line").fill(TITLES)
    page.get_by_role("button", name="begin the shelf").click()
    expect(page.locator("button.thing")).to_have_count(40, timeout=30_000)
    expect(page.locator(".space[data-verdict=fits]")).to_have_count(2)
    checked = bookmaker.check(tmp_path / "shelf.yaml")
    assert checked.sound and len(checked.plan.plans) == 40
    assert [str(one.message) for one in checked.problems if str(one.severity) == "warning"] == []
    assert [str(one.message) for one in checked.problems if "stay empty" in one.message] == []
    assert sum(line.lstrip().startswith("#") for line in (tmp_path / "shelf.yaml").read_text().splitlines()) > 4


def test_a_book_is_made_and_its_sheets_are_seen(page: Page, shown: Running, tmp_path: Path) -> None:
    page.goto(shown.address)
    for side, value in (("width", "2 3/8 in"), ("height", "1"), ("depth", "7/8")):
        page.locator(f"#space-1-{side}").fill(value)
    page.get_by_label("lengths in", exact=True).select_option("inches")
    page.get_by_label("titles, one on each line").fill("Fog")
    page.get_by_role("button", name="begin the shelf").click()
    expect(page.locator("button.thing")).to_have_count(1, timeout=30_000)
    assert "width: 2 3/8 in, height: 1 in, depth: 7/8 in" in (tmp_path / "shelf.yaml").read_text()
    for changed in (False, True):
        page.get_by_role("button", name="make the sheets").click()
        expect(page.locator(".rack figcaption").first).to_be_visible(timeout=60_000)
        expect(page.locator(".rack figcaption", has_text="changed")).to_have_count(2 if changed else 0)
        assert page.locator(".thumb").first.evaluate("one => one.decode().then(() => one.naturalWidth)") > 300
        page.get_by_role("button", name="close").last.click()
        page.get_by_role("button", name="Fog").click()
        page.get_by_role("tab", name="Change").click()
        page.get_by_label("author", exact=True).fill(f"O. Quay {changed}")
        page.get_by_label("author", exact=True).press("Enter")
        expect(page.locator("#said")).to_be_attached()
        page.wait_for_timeout(1200)
    assert (tmp_path / "shelf-to-print" / "guide.pdf").is_file()


def wanted(**changed: object) -> bytes:
    """A form filled in."""
    space = {"name": "ledge", "width": "40 mm", "height": "25 mm", "depth": "20 mm"}
    return json.dumps({"name": "A Ledge", "spaces": [space], "titles": TITLES} | changed).encode()


def test_more_books_than_fit_are_told_in_numbers(tmp_path: Path) -> None:
    with pytest.raises(CommandError, match=r"40 books do not fit on ledge.*paste at most \d+"):
        first_shelf(tmp_path / "shelf.yaml", first_wanted_of(wanted()), Workshop())
    assert list(tmp_path.iterdir()) == []


def test_a_length_that_is_none_is_told(tmp_path: Path) -> None:
    space = {"name": "ledge", "width": "forty", "height": "25 mm", "depth": "20 mm"}
    with pytest.raises(ShelfFileError, match="forty"):
        first_shelf(tmp_path / "shelf.yaml", first_wanted_of(wanted(spaces=[space])), Workshop())
    with pytest.raises(CommandError, match=r"spaces.0.width"):
        first_wanted_of(wanted(spaces=[space | {"width": "1 mm}\nbooks: ["}]))


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Fog", [("Fog", "")]),
        ("Salt, Rope and Tar", [("Salt, Rope and Tar", "")]),
        ("Fog; A. Fell\n\n Salt ", [("Fog", "A. Fell"), ("Salt", "")]),
        ("author,title\nA. Fell,Fog\n,\"Salt, and Rope\"", [("Fog", "A. Fell"), ("Salt, and Rope", "")]),
        ("Title\tPages\nFog\t12", [("Fog", "")]),
        ("", []),
    ],
)  # fmt: skip
def test_titles_however_they_are_pasted(text: str, found: list[tuple[str, str]]) -> None:
    assert list(listed_titles(text)) == found
