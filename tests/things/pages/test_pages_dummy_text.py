"""Dummy text: paragraphs, chapters and pages with the shapes of a book, the same every time."""

from __future__ import annotations

from itertools import groupby, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import Art
from bookmaker.things.book.pages.patterns.dummy_text import DummyLine, DummyPage, DummyText
from bookmaker.typesetting.page import BookWords, PageFrame
from tests.kit.recording import Written, ink_box, record

FRAME = PageFrame(15.0, 21.0, 60, book=BookWords("The Grey Hours", "L. Mott"))


def pages(entry: DummyText, frame: PageFrame = FRAME) -> list[tuple[DummyLine, ...]]:
    """The lines of each page."""
    plain = entry.model_copy(update={"numbers": False})
    return [page.rows if isinstance(page, DummyPage) else () for page in plain.compose(frame).pages]


def ink(page: Art) -> list[Written]:
    return record(page).texts


def figures(page: Art) -> list[str]:
    return [text.text for text in record(page).texts if text.text.isdigit()]


def test_pages_left_blank_before_a_recto_bear_no_number() -> None:
    found = DummyText(chapter="5", opening="recto").compose(FRAME).pages
    bare = DummyText(chapter="5", opening="recto", numbers="no").compose(FRAME).pages
    blank = [number for number, page in enumerate(bare, start=1) if page is NOTHING]
    assert blank
    for number, page in enumerate(found, start=1):
        assert figures(page) == ([] if number in blank else [str(number)])


@given(title=st.text(max_size=5), count=st.integers(1, 40), chapter=st.integers(0, 20), size=st.floats(0.2, 8))
def test_every_page_is_filled_in_order_to_the_last(title: str, count: int, chapter: int, size: float) -> None:
    frame = PageFrame(15, 21, count, book=BookWords(title))
    assert DummyText(size=size).compose(frame).problems == ()
    shapes = pages(DummyText(chapter=str(chapter), size=size), frame)
    assert len(shapes) == count
    for rows in shapes:
        assert rows
        body = [row for row in rows if not row.heading]
        places = [row.row for row in body]
        assert places == list(range(places[0], places[0] + len(places)))
        assert all(0 <= row.start < row.end <= 1 for row in rows)


@given(title=st.text(max_size=5), size=st.floats(0.2, 3), width=st.floats(5, 60), height=st.floats(7, 80))
def test_ink_stays_in_the_type_area(title: str, size: float, width: float, height: float) -> None:
    frame = PageFrame(width, height, 2, book=BookWords(title))
    page = DummyText(size=size, numbers="no").compose(frame).pages[0]
    area = frame.type_area(1)
    for line in ink(page):
        reach = ink_box(line)
        if reach.width > area.width + 0.2 * size:  # not even one letter of such type is as narrow
            assert len(line.text) == 1
            continue
        assert area.x - 0.1 * size <= reach.x
        assert reach.right <= area.right + 0.1 * size
        assert area.y - 1e-6 <= reach.y
        assert reach.top <= area.top + 1e-6


def test_paragraphs_are_indented_and_end_short_and_full_lines_reach_both_edges() -> None:
    body = [row for rows in pages(DummyText(chapter="0")) for row in rows]
    firsts = [row for row in body if row.start > 0]
    assert 0.1 < len(firsts) / len(body) < 0.5
    assert {round(row.start, 6) for row in firsts} == {round(1 / 72 * 25.4 / 10, 6)}
    for row, following in pairwise(body):
        assert (row.end < 1) == (following.start > 0)


def test_no_line_of_a_paragraph_stands_alone_at_the_head_or_foot_of_a_page() -> None:
    shapes = pages(DummyText(chapter="0"))
    for above, below in pairwise(shapes):
        if above[-1].end == 1.0:  # the paragraph goes on overleaf
            assert above[-2].start == 0.0 or above[-1].start == 0.0
            assert not (below[0].end < 1.0)


def test_chapters_begin_low_under_a_heading_and_end_before_the_page_is_full() -> None:
    shapes = pages(DummyText(chapter="6"))
    full = max(row.row for rows in shapes for row in rows)
    openings = [number for number, rows in enumerate(shapes, start=1) if rows[0].heading]
    assert openings[0] == 1
    assert 6 <= len(openings) <= 16
    for number in openings:
        heading, first, *_ = shapes[number - 1]
        assert heading.start + heading.end == pytest.approx(1)
        assert heading.row < first.row
        assert first.start == 0.0
        assert number == 1 or shapes[number - 2][-1].row < full
    assert all(rows[0].row == 0 for rows in shapes if not rows[0].heading)


@given(title=st.text(max_size=5), first=st.integers(1, 4))
def test_chapters_begin_on_a_recto_if_asked(title: str, first: int) -> None:
    frame = PageFrame(15, 21, 41, first=first, book=BookWords(title))
    shapes = pages(DummyText(chapter="5", opening="recto"), frame)
    openings = [frame.folio(number) for number, rows in enumerate(shapes, start=1) if rows and rows[0].heading]
    assert openings
    assert all(folio % 2 for folio in openings)
    empty = [number for number, rows in enumerate(shapes, start=1) if not rows]
    assert all(frame.folio(number) % 2 == 0 for number in empty)
    assert len(shapes) not in empty


def test_the_same_book_looks_the_same_and_another_does_not() -> None:
    entry = DummyText()
    assert [ink(page) for page in entry.compose(FRAME).pages[:3]] == [
        ink(page) for page in entry.compose(FRAME).pages[:3]
    ]
    other = PageFrame(15.0, 21.0, 60, book=BookWords("The Grey Hours", "K. Mott"))
    assert ink(entry.compose(other).pages[1]) != ink(entry.compose(FRAME).pages[1])


def test_words_of_a_full_line_reach_from_edge_to_edge_with_even_gaps() -> None:
    page = DummyText(chapter="0", numbers="no").compose(FRAME).pages[1]
    assert isinstance(page, DummyPage)
    area, size = FRAME.type_area(2), 25.4 / 72
    assert len(ink(page)) == len(page.rows)
    for row, written in zip(page.rows, ink(page), strict=True):
        line, at = written.line, written.at
        assert at.x == pytest.approx(area.x + row.start * area.width)
        if row.end < 1:
            assert at.x + line.width <= area.x + area.width
            continue
        assert at.x + line.width == pytest.approx(area.x + row.end * area.width)
        ends = [x + run.width * size for x, run in line.runs]
        gaps = [x - end for (x, _), end in zip(line.runs[1:], ends, strict=False)]
        assert all(gap == pytest.approx(gaps[0]) for gap in gaps)
        assert 0.1 < gaps[0] / size < 0.9


def test_words_are_sentences_in_a_tongue_of_the_book() -> None:
    """A paragraph begins with a capital and ends with a stop; two books have few words in common."""
    said = []
    for author in ("L. Mott", "K. Mott"):
        frame = PageFrame(15.0, 21.0, 12, book=BookWords("The Grey Hours", author))
        found = DummyText(chapter="0", numbers="no").compose(frame).pages
        lines = [(row, text.line) for page in found for row, text in zip(page.rows, ink(page), strict=True)]  # type: ignore[attr-defined]
        for row, line in lines:
            assert row.start == 0 or line.runs[0][1].text[0].isupper()
            assert row.end == 1 or line.runs[-1][1].text.endswith(".")
        said.append({run.text.strip(",.").casefold() for _, line in lines for _, run in line.runs})
    assert min(map(len, said)) > 100
    assert len(said[0] & said[1]) < 0.2 * len(said[0])


BOOKS = [PageFrame(16.0, 25.0, 24, book=BookWords(f"Volume {n}", "L. Mott")) for n in range(6)]


@pytest.mark.parametrize("frame", BOOKS)
def test_sentences_go_on_in_small_letters_and_begin_with_capitals_after_stops(frame: PageFrame) -> None:
    for page in DummyText(numbers="no").compose(frame).pages:
        assert isinstance(page, DummyPage)
        before = ""
        for row, text in zip(page.rows, ink(page), strict=True):
            for number, (_, run) in enumerate(() if row.heading else text.line.runs):
                begins = before.endswith(".") or (row.opens and not number)
                assert run.text[0].isupper() == begins, (before, run.text)
                before = run.text


@pytest.mark.parametrize("frame", BOOKS)
def test_no_word_comes_twice_on_end_and_no_paragraph_has_one_word(frame: PageFrame) -> None:
    for page in DummyText(numbers="no").compose(frame).pages:
        assert isinstance(page, DummyPage)
        said: list[str] = []
        for row, text in zip(page.rows, ink(page), strict=True):
            if row.heading:
                continue
            said += [run.text.strip(",.").casefold() for _, run in text.line.runs]
            assert len(text.line.runs) > 1 or row.end == 1 or not row.opens
        assert all(one != other for one, other in pairwise(said))


@pytest.mark.parametrize("frame", BOOKS)
def test_words_stand_apart_in_headings_too_and_nowhere_far(frame: PageFrame) -> None:
    """A space is a quarter of an em; what is under an eighth is none."""
    for page in DummyText(numbers="no").compose(frame).pages:
        assert isinstance(page, DummyPage)
        for row, text in zip(page.rows, ink(page), strict=True):
            line = text.line
            for (x, run), (after, _) in pairwise(line.runs):
                gap = (after - x) / line.size - run.width
                assert 0.125 < gap < 0.45, text.text
                assert gap > 0.24 or not row.heading, text.text


@pytest.mark.parametrize("size", [0.2, 0.35, 0.5, 3.0])
def test_numbers_are_no_larger_than_the_text(size: float) -> None:
    page = DummyText(size=size).compose(FRAME).pages[1]
    (number,) = (text for text in record(page).texts if text.text.isdigit())
    assert number.line.size == pytest.approx(min(size, FRAME.height / 30))


def test_pages_are_numbered_unless_told_not_to_be() -> None:
    frame = PageFrame(15, 21, 2, first=9)
    assert [figures(page) for page in DummyText().compose(frame).pages] == [["9"], ["10"]]
    assert figures(DummyText(numbers="no").compose(frame).pages[0]) == []


def test_type_that_no_line_of_fits_the_page_is_an_error() -> None:
    inside = DummyText(size="60 pt").compose(PageFrame(15, 21, 2))
    assert inside.pages == (NOTHING, NOTHING)
    # a line takes 1.02 em of the 14 mm of the type area: 13.73 mm, 38.9 pt
    assert [(str(problem), problem.severity.value, problem.field) for problem in inside.problems] == [
        (
            "dummy text does not fit in 60 pt type on a page of 15 mm × 21 mm; write size: 38.9 pt or smaller",
            "error",
            ("size",),
        )
    ]
    assert [len(rows) for rows in pages(DummyText(size="38.9 pt"), PageFrame(15, 21, 2))] == [1, 1]


def test_the_verso_left_over_before_a_chapter_is_blank_and_never_more_than_one() -> None:
    frame = PageFrame(15, 21, 80, book=BookWords("Void"))
    art = DummyText(chapter="3", opening="recto", numbers="no").compose(frame).pages
    runs = [len(list(group)) for blank, group in groupby(art, lambda page: page is NOTHING) if blank]
    assert set(runs) == {1}
