"""What is done on the page goes into the file, smallest change first, and can be taken back."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.kit.net_loft import SHELF, TABLE, book, changed
from tests.kit.shown import Running, until


@pytest.fixture
def shelf(page: Page, shown: Running) -> Page:
    """Its page."""
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    return page


def test_a_form_changes_one_value_and_undo_brings_it_back(shelf: Page, folder: Path) -> None:
    book(shelf, "Tarred Twine").click()
    shelf.get_by_role("tab", name="Change").click()
    shelf.get_by_label("title", exact=True).fill("Tarred Rope")
    shelf.get_by_label("title", exact=True).press("Enter")
    expect(book(shelf, "Tarred Rope")).to_be_visible()
    assert changed(folder) == ["-  - title: Tarred Twine      # the first", "+  - title: Tarred Rope      # the first"]
    expect(shelf.locator("#desk h2")).to_have_text("Tarred Rope")
    shelf.get_by_label("design: style", exact=True).select_option("leather")
    until(lambda: any("style: leather, colour" in line for line in changed(folder)))
    for _ in range(2):
        shelf.get_by_role("button", name="undo").click()
        expect(shelf.locator("#said")).to_have_text("Taken back.")
        shelf.wait_for_timeout(400)
    until(lambda: changed(folder) == [])
    expect(book(shelf, "Tarred Twine")).to_be_visible()
    shelf.get_by_role("button", name="redo").click()
    expect(book(shelf, "Tarred Rope")).to_be_visible()


def test_what_the_file_would_refuse_is_refused_and_not_written(shelf: Page, folder: Path) -> None:
    book(shelf, "Tarred Twine").click()
    shelf.get_by_role("tab", name="Change").click()
    pages = shelf.get_by_label("block: pages", exact=True)
    pages.fill("31")
    pages.press("Enter")
    expect(shelf.locator("#desk .refused:visible")).to_contain_text("write 30 or 32")
    expect(pages).to_have_attribute("aria-invalid", "true")
    assert changed(folder) == []


def test_books_are_dragged_along_a_shelf_and_onto_another(shelf: Page, folder: Path) -> None:
    book(shelf, "Weights of Lead").drag_to(book(shelf, "Tarred Twine"), target_position={"x": 1, "y": 30})
    until(lambda: len(changed(folder)) > 0)
    text = (folder / "shelf.yaml").read_text(encoding="utf-8")
    assert text.index("# this one has a note") < text.index("Weights of Lead") < text.index("Tarred Twine")
    expect(shelf.locator(".space:first-child button.thing").first).to_have_attribute("title", "Weights of Lead")
    book(shelf, "Floats of Cork").drag_to(book(shelf, "Hooks"))
    until(lambda: "stack: pile" in text_of(folder, "Floats of Cork"))
    assert "space: lower board" in text_of(folder, "Floats of Cork")
    expect(shelf.locator(".space:nth-child(2) [data-lies=yes]")).to_have_count(3)


def test_a_book_is_dragged_only_where_its_file_can_have_it(shelf: Page, folder: Path) -> None:
    """One of a table stays in its table, whatever space it stands on; one of the list never comes between them."""
    book(shelf, "Salt").drag_to(book(shelf, "Tarred Twine"))
    until(lambda: changed(folder, "more.csv", TABLE) != [])
    assert changed(folder, "more.csv", TABLE) == ["-Salt;lower board;16;plain", "+Salt;upper board;16;plain"]
    assert changed(folder) == []
    expect(shelf.locator(".space:first-child button.thing")).to_have_count(4)
    expect(shelf.locator(".space:first-child button.thing").last).to_have_attribute("title", "Salt")
    shelf.get_by_role("button", name="undo").click()
    expect(shelf.locator(".space:first-child button.thing")).to_have_count(3)
    book(shelf, "Tarred Twine").drag_to(book(shelf, "Salt"), target_position={"x": 1, "y": 30})
    until(lambda: changed(folder) != [])
    expect(shelf.locator(".space:nth-child(2) button.thing").last).to_have_attribute("title", "Tarred Twine")
    text = (folder / "shelf.yaml").read_text(encoding="utf-8")
    assert text.index("from more.csv") < text.index("Tarred Twine")


def test_a_book_dragged_to_the_edge_scrolls_the_shelf(shelf: Page) -> None:
    shelf.set_viewport_size({"width": 900, "height": 560})
    place = shelf.locator("#shelf")
    box, seen = book(shelf, "Tarred Twine").bounding_box(), place.bounding_box()
    assert box and seen
    shelf.mouse.move(box["x"] + 5, box["y"] + 8)
    shelf.mouse.down()
    shelf.mouse.move(box["x"] + 40, seen["y"] + seen["height"] - 4, steps=5)
    until(lambda: place.evaluate("one => one.scrollTop + one.clientHeight >= one.scrollHeight - 2"))
    shelf.keyboard.press("Escape")
    shelf.mouse.up()
    expect(shelf.locator(".ghost")).to_have_count(0)


def text_of(folder: Path, title: str) -> str:
    """The lines of an entry of the shelf file."""
    text = (folder / "shelf.yaml").read_text(encoding="utf-8")
    return text[text.index(title) :].partition("\n  - ")[0]


def test_keys_move_a_book_as_well(shelf: Page, folder: Path) -> None:
    book(shelf, "Tarred Twine").focus()
    shelf.keyboard.press("ArrowRight")
    expect(book(shelf, "Floats of Cork")).to_be_focused()
    shelf.keyboard.press("Shift+ArrowLeft")
    until(lambda: changed(folder) != [])
    expect(shelf.locator(".space:first-child button.thing").first).to_have_attribute("title", "Floats of Cork")
    expect(book(shelf, "Floats of Cork")).to_be_focused()
    shelf.keyboard.press("Control+z")
    until(lambda: changed(folder) == [])


def test_a_book_of_a_table_is_changed_in_its_table(shelf: Page, folder: Path) -> None:
    book(shelf, "Salt").click()
    shelf.get_by_role("tab", name="Change").click()
    shelf.get_by_label("block: pages", exact=True).fill("20")
    shelf.get_by_label("block: pages", exact=True).press("Enter")
    until(lambda: changed(folder, "more.csv", TABLE) != [])
    assert changed(folder, "more.csv", TABLE) == ["-Salt;lower board;16;plain", "+Salt;lower board;20;plain"]
    assert changed(folder) == []


def test_a_change_meets_a_file_changed_elsewhere(shelf: Page, folder: Path) -> None:
    """Made on the new text where it is about something else; refused where the very value is another by now."""
    book(shelf, "Tarred Twine").click()
    shelf.get_by_role("tab", name="Change").click()
    title = shelf.get_by_label("title", exact=True)
    title.fill("Tarred Rope")
    other = SHELF.replace("Floats of Cork", "Floats of Glass")
    (folder / "shelf.yaml").write_text(other, encoding="utf-8")
    title.press("Enter")
    expect(book(shelf, "Tarred Rope")).to_be_visible()
    expect(book(shelf, "Floats of Glass")).to_be_visible()
    assert changed(folder, old=other) == [
        "-  - title: Tarred Twine      # the first",
        "+  - title: Tarred Rope      # the first",
    ]


def test_copy_add_remove(shelf: Page) -> None:
    shelf.get_by_role("button", name="add a book").click()
    shelf.get_by_label("title", exact=True).fill("Tar")
    shelf.get_by_label("height of the page").fill("19 mm")
    shelf.get_by_label("width of the page").fill("13 mm")
    shelf.get_by_role("button", name="add", exact=True).click()
    expect(book(shelf, "Tar")).to_be_visible()
    book(shelf, "Tar").click()
    shelf.get_by_role("tab", name="Change").click()
    shelf.get_by_role("button", name="copy the book").click()
    expect(book(shelf, "Tar")).to_have_count(2)
    shelf.get_by_role("button", name="remove the book").click()
    expect(book(shelf, "Tar")).to_have_count(1)


def test_looks_side_by_side_and_one_chosen(shelf: Page, folder: Path) -> None:
    book(shelf, "Floats of Cork").click()
    shelf.get_by_role("tab", name="Looks").click()
    cloth = shelf.get_by_role("button", name="cloth", exact=True)
    expect(cloth.locator("img")).to_have_count(2)
    assert changed(folder) == []
    cloth.click()
    until(lambda: changed(folder) == ["-    design: {style: leather}", "+    design: {style: cloth}"])


def test_two_tabs_show_the_same(shelf: Page, shown: Running, folder: Path) -> None:
    other = shelf.context.new_page()
    other.goto(shown.address)
    other.wait_for_selector("html[data-complete=yes]")
    book(shelf, "Hooks").click()
    shelf.get_by_role("tab", name="Change").click()
    shelf.get_by_label("title", exact=True).fill("Eyes")
    shelf.get_by_label("title", exact=True).press("Enter")
    expect(book(other, "Eyes")).to_be_visible()
    other.get_by_role("button", name="undo").click()
    expect(book(shelf, "Hooks")).to_be_visible()
    assert changed(folder) == []


def test_an_order_is_seen_then_written(shelf: Page, folder: Path) -> None:
    shelf.locator(".menu > summary").click()
    shelf.get_by_role("button", name="arrange the books").click()
    shelf.get_by_label("order").select_option("title")
    shelf.get_by_role("button", name="show how it would be").click()
    would = shelf.get_by_role("group", name=re.compile("^upper board, as it would be: Floats of Cork, Tarred Twine"))
    expect(would).to_be_visible()
    expect(would.locator("canvas[data-picture]")).to_have_count(3)
    assert changed(folder) == []
    shelf.get_by_role("button", name="write it into the file").click()
    expect(shelf.locator(".space:first-child button.thing").first).to_have_attribute("title", "Floats of Cork")
    assert changed(folder) != []
    shelf.get_by_role("button", name="undo").click()
    until(lambda: changed(folder) == [])


def test_what_the_pages_show_is_changed_part_by_part(shelf: Page, folder: Path) -> None:
    book(shelf, "Tarred Twine").click()
    shelf.get_by_role("tab", name="Change").click()
    shelf.get_by_label("inside: part 1: kind").select_option("ruled")
    until(lambda: "    inside: {kind: ruled}" in "\n".join(changed(folder)))
    expect(shelf.get_by_label("inside: part 1: kind")).to_have_value("ruled")
    shelf.get_by_label("inside: part 1: keys").click()
    shelf.get_by_label("spacing", exact=True).fill("1.4 mm")
    shelf.get_by_label("spacing", exact=True).press("Enter")
    until(lambda: "spacing: 1.4 mm" in "\n".join(changed(folder)))
    expect(shelf.locator(".part summary")).to_have_text("keys (1 set)")
    shelf.get_by_label("kind of another part").select_option("title page")
    shelf.get_by_role("button", name="add a part").click()
    shelf.get_by_role("button", name="part 2 earlier").click()
    expect(shelf.get_by_label("inside: part 1: kind")).to_have_value("title page")
    shelf.get_by_role("button", name="take part 1 out").click()
    expect(shelf.get_by_label("inside: part 2: kind")).to_have_count(0)
    assert "spacing: 1.4 mm" in text_of(folder, "Tarred Twine")
