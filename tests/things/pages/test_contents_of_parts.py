"""The table of contents of a text in parts, its size, and where titles and chapters begin."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.art import NOTHING
from bookmaker.ground.units import from_pt
from bookmaker.things.book.pages.front_matter.contents import Contents
from bookmaker.typesetting.page import Heading, Inside, PageFrame
from tests.kit.front_matter import errors, inside, said, texts
from tests.kit.recording import Written

PARTS = "# One\n\n## Fog\n\nIt came.\n\n## Rain\n\nIt fell.\n\n# Two\n\n## Hail\n\nIt stung.\n\n# Epilogue\n\nDry."
TWO = "# Fog\n\nIt came.\n\n# Rain\n\nIt fell."
FRAME = PageFrame(30, 42, 0)


def text(folder: Path, written: str, **keys: str) -> dict[str, str]:
    (folder / "log.md").write_text(written, encoding="utf-8")
    return {"kind": "text", "file": "log.md", **keys}


def listed(found: Inside) -> dict[str, Written]:
    return {line.text: line for line in texts(found.pages[0]) if not line.text.isdigit()}


def table(*headings: Heading, frame: PageFrame, size: float = 0.8) -> Inside:
    given = PageFrame(frame.width, frame.height, 6, contents=headings)
    return Contents(size=size, title="Log", numbers=False).compose(None, given)


# ---- parts and chapters


def test_chapters_are_set_in_under_their_part_and_what_is_beside_parts_is_not(tmp_path: Path) -> None:
    found = inside([{"kind": "contents", "numbers": "no"}, text(tmp_path, PARTS)], 12, tmp_path, FRAME)
    at = {name: line.at.x for name, line in listed(found).items()}
    assert at["One"] == at["Two"] == at["Epilogue"] == pytest.approx(FRAME.type_area(1).x)
    assert at["Fog"] == at["Rain"] == at["Hail"] > at["One"] + 0.5


def test_parts_are_set_off_from_what_stands_over_them(tmp_path: Path) -> None:
    found = inside([{"kind": "contents", "numbers": "no"}, text(tmp_path, PARTS)], 12, tmp_path, FRAME)
    y = {name: line.at.y for name, line in listed(found).items()}
    step = y["Fog"] - y["Rain"]
    assert y["One"] - y["Fog"] == pytest.approx(step)
    assert y["Rain"] - y["Two"] == y["Hail"] - y["Epilogue"] == pytest.approx(1.5 * step)


def test_chapters_of_a_part_of_the_inside_are_set_in_one_step_further(tmp_path: Path) -> None:
    parts = [{"kind": "contents", "numbers": "no"}, text(tmp_path, PARTS, listed_as="All")]
    at = {name: line.at.x for name, line in listed(inside(parts, 12, tmp_path, FRAME)).items()}
    assert at["One"] - at["All"] == pytest.approx(at["Fog"] - at["One"])
    assert at["Fog"] > at["One"] > at["All"]


def test_a_part_is_not_the_last_line_of_a_page() -> None:
    headings = [Heading(f"Fog {number}", number) for number in range(1, 40)]
    for place in range(2, 12):
        two = Heading("Two", 9), Heading("Hail", 9, depth=1)
        made = table(*headings[:place], *two, *headings, frame=FRAME, size=1.6)
        pages = [said(page) for page in made.pages]
        [page] = [page for page in pages if "Two" in page]
        assert "Hail" in page


def test_an_entry_of_several_lines_is_broken_like_a_title() -> None:
    named = Heading("Preparations, Not All of Which Need Be Named, and Their Consequence", 7)
    lines = [line for line in texts(table(named, frame=PageFrame(24, 42, 0)).pages[0]) if len(line.text) > 3]
    assert [line.text for line in lines][-1] != "Consequence"
    widths = [line.end.x - line.at.x for line in lines]
    assert min(widths) > 0.6 * max(widths)


# ---- sizes


@pytest.mark.parametrize(("size", "used"), [("3.4 pt", 3.4), ("1.6 pt", 1.6), ("1 pt", 1.2)])
def test_the_table_has_the_size_of_the_text_but_is_not_too_small(size: str, used: float, tmp_path: Path) -> None:
    parts = [{"kind": "contents"}, text(tmp_path, TWO, size=size)]
    found = inside(parts, 12, tmp_path, PageFrame(26, 40, 0))
    assert listed(found)["Fog"].line.size == pytest.approx(from_pt(used))


def test_the_table_has_the_size_that_a_text_was_fitted_in(tmp_path: Path) -> None:
    parts = [{"kind": "contents"}, text(tmp_path, TWO, size="fit", smallest="1 pt", largest="1.7 pt")]
    found = inside(parts, 12, tmp_path, FRAME)
    assert listed(found)["Fog"].line.size == pytest.approx(from_pt(1.7))


def test_without_a_text_the_table_has_its_usual_size(tmp_path: Path) -> None:
    found = inside([{"kind": "contents"}, {"kind": "ruled", "listed_as": "Fog"}], 12, tmp_path, FRAME)
    assert listed(found)["Fog"].line.size == pytest.approx(from_pt(2.2))


@pytest.mark.parametrize("size", ["1.4 pt", "fit"])
def test_page_numbers_are_no_larger_than_the_text(size: str, tmp_path: Path) -> None:
    parts = [{"kind": "title page", "numbers": "yes"}, text(tmp_path, TWO, size=size, largest="1.4 pt")]
    found = inside(parts, 4, tmp_path, FRAME)
    for page, number in ((found.pages[0], "1"), (found.pages[1], "2")):
        [folio] = [line for line in texts(page) if line.text == number]
        assert folio.line.size == pytest.approx(from_pt(1.4))


# ---- rectos


def test_half_title_and_title_page_begin_on_the_right_if_not_told_otherwise() -> None:
    parts = [{"kind": "half title"}, {"kind": "title page"}, {"kind": "ruled"}]
    assert [page is NOTHING for page in inside(parts, 6, Path()).pages] == [False, True, False, False, False, False]
    parts[1]["begins"] = "new page"
    assert [page is NOTHING for page in inside(parts, 6, Path()).pages] == [False] * 6


@pytest.mark.parametrize(("before", "starts"), [(0, [1, 3]), (1, [3, 5]), (2, [3, 5])])
def test_chapters_begin_on_rectos_if_asked(before: int, starts: list[int], tmp_path: Path) -> None:
    parts = [{"kind": "blank", "pages": str(before)}] if before else []
    parts += [text(tmp_path, TWO, chapters="recto", running_heads="yes")]
    found = inside(parts, 6, tmp_path, FRAME)
    assert errors(found) == []
    assert [(heading.text, heading.page) for heading in found.headings] == [("Fog", starts[0]), ("Rain", starts[1])]
    inked = {number for number, page in enumerate(found.pages, start=1) if page is not NOTHING}
    assert inked == set(starts)


def test_contents_know_of_chapters_on_rectos_and_parts_begin_there_too(tmp_path: Path) -> None:
    parts = [{"kind": "contents", "numbers": "no"}, text(tmp_path, PARTS, chapters="recto")]
    found = inside(parts, 14, tmp_path, FRAME)
    assert [heading.page for heading in found.headings] == [3, 5, 7, 9, 11, 13]
    assert [line for line in said(found.pages[0]) if line.isdigit()] == ["3", "5", "7", "9", "11", "13"]
    assert errors(found) == []
    # one page fewer, and the last chapter is lost and told
    assert any("lost" in problem or "do not fit" in problem for problem in errors(inside(parts, 12, tmp_path, FRAME)))


def test_a_text_is_fitted_with_its_chapters_on_rectos(tmp_path: Path) -> None:
    long = "\n\n".join(f"# Fog\n\n{'The fog came in from the sea again. ' * 40}" for _ in range(3))
    sizes = {}
    for chapters in ("new page", "recto"):
        part = text(tmp_path, long, size="fit", chapters=chapters, numbers="no")
        found = inside([part], 10, tmp_path, PageFrame(20, 28, 0))
        assert errors(found) == []
        sizes[chapters] = min(line.line.size for line in texts(found.pages[0]))
        if chapters == "recto":
            assert [heading.page % 2 for heading in found.headings] == [1, 1, 1]
    assert sizes["recto"] < sizes["new page"]


# ---- emphasis and ends of lines


def test_emphasis_is_set_on_the_title_page_and_over_the_contents(tmp_path: Path) -> None:
    parts = [
        {"kind": "title page", "subtitle": "the cook's *own*", "imprint": "**Lark** Press"},
        {"kind": "contents", "title": "*What* is in it"},
        {"kind": "ruled", "pages": "1", "listed_as": "*Fog*"},
        {"kind": "colophon", "text": "Done.", "imprint": "*Lark* Press"},
    ]
    found = inside(parts, 4, tmp_path, FRAME)
    said_all = " ".join(line for page in found.pages for line in said(page))
    assert "*" not in said_all
    for wanted in ("the cook’s own", "Lark Press", "What is in it", "Fog"):
        assert wanted in said_all
    slanted = {
        run.text
        for page in found.pages
        for line in texts(page)
        for _, run in line.line.runs
        if "Italic" in run.typeface.name or "Bold" in run.typeface.name
    }
    assert slanted == {"own", "Lark", "What"}


@pytest.mark.parametrize("kind", ["dedication", "epigraph", "colophon"])
def test_an_end_of_line_that_is_none_is_told(kind: str, tmp_path: Path) -> None:
    found = inside([{"kind": kind, "text": r"To\nmother"}], 2, tmp_path, FRAME)
    assert [str(problem) for problem in found.problems if "\\n" in str(problem)] == [
        r"the \n in this text is printed as it stands: it ends a line only between double quotes; "
        "put the text between \" and \" in place of ' and '"
    ]
    assert inside([{"kind": kind, "text": "To\nmother"}], 2, tmp_path, FRAME).problems == ()
