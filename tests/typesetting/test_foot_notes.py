"""Notes at the foot: each begins on the page that refers to it, all stand once and in order, clear of the text."""

from __future__ import annotations

from itertools import chain, pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.typesetting.galleys.made_pages import MadePage, Slot
from bookmaker.typesetting.galleys.makeup import make_up
from bookmaker.typesetting.galleys.matter import Initial, Matter, SetLine
from bookmaker.typesetting.lines.fount import Style
from bookmaker.typesetting.manuscripts.passage import Role
from tests.kit.text_pages import FRAME, PROSE, SIZE, STEP, inside, lines, row

NOTE_STEP = 0.85
"""Rows from line to line of notes."""


def note(figure: int, count: int) -> Matter:
    said = tuple(SetLine(f"note {figure} {line}", 0, 0, line) for line in range(count))
    return Matter(Role.NOTE, said, count, 0.85, NOTE_STEP * 1.25, initials=(Initial(f"{figure}.", 0, 0.85),))


@st.composite
def galleys(draw: st.DrawFn) -> tuple[list[Matter], int]:
    """Paragraphs and heads that refer to notes in some of their lines, and how many rows a page has."""
    figure, found = 0, list[Matter]()
    for _ in range(draw(st.integers(1, 12))):
        said, notes = list[str](), list[Matter]()
        for line in range(draw(st.integers(1, 14))):
            said.append(f"line {line}")
            if draw(st.integers(0, 5)) == 0:
                figure += 1
                said[-1] += f"{Style.SUPERIOR}{figure}"
                notes.append(note(figure, draw(st.integers(1, 9))))
        placed = tuple(SetLine(words, 0, 0, number) for number, words in enumerate(said))
        matter = Matter(Role.BODY, placed, len(placed), 1.0, 1.25, notes=tuple(notes))
        if draw(st.integers(0, 5)) == 0:
            opens = draw(st.booleans())
            matter = matter._replace(
                role=Role.HEADING, together=len(placed), stays=True, opens=opens, sink=2 * opens, heading="h", after=1
            )
        found.append(matter)
    return found, draw(st.integers(1, 24))


def noted(page: MadePage) -> list[Slot]:
    """The notes of a page: on one that has nothing else they are its slots."""
    return [slot for slot in (*page.slots, *page.notes) if slot.matter.role is Role.NOTE]


def said(slots: list[Slot]) -> list[str]:
    return [line.words for slot in slots for line in slot.matter.lines[slot.start : slot.end]]


@given(made=galleys(), first=st.integers(1, 2))
@settings(deadline=None, max_examples=300)
def test_every_line_of_text_and_notes_stands_once_and_in_order(made: tuple[list[Matter], int], first: int) -> None:
    galley, rows = made
    pages = list(make_up(galley, rows, first))
    text = [slot for page in pages for slot in page.slots if slot.matter.role is not Role.NOTE]
    assert said(text) == [line.words for matter in galley for line in matter.lines]
    notes = chain.from_iterable(matter.notes for matter in galley)
    assert said(list(chain.from_iterable(map(noted, pages)))) == [line.words for one in notes for line in one.lines]


@given(made=galleys(), first=st.integers(1, 2))
@settings(deadline=None, max_examples=300)
def test_notes_end_on_the_last_row_and_stay_clear_of_the_text(made: tuple[list[Matter], int], first: int) -> None:
    galley, rows = made
    for page in make_up(galley, rows, first):
        at = noted(page)
        if not at:
            continue
        for one, other in pairwise(at):
            assert other.row == pytest.approx(one.row + (one.end - one.start) * NOTE_STEP)
        last = at[-1].row + (at[-1].end - at[-1].start - 1) * NOTE_STEP
        if not page.notes:
            assert last <= rows - 1 + 1e-9
            continue
        assert last == pytest.approx(round(last))
        assert rows - 4 <= last <= rows - 1 + 1e-9
        text = page.slots[-1]
        foot = text.row + (text.end - text.start or text.matter.rows) - 1
        assert at[0].row - foot >= 1.6 - 1e-9


@given(made=galleys(), first=st.integers(1, 2))
@settings(deadline=None, max_examples=300)
def test_a_note_begins_on_the_page_that_refers_to_it(made: tuple[list[Matter], int], first: int) -> None:
    """On pages that have room for it: those of ten lines and more, of which heads take no more than six."""
    galley, rows = made
    galley = [matter for matter in galley if matter.role is Role.BODY]
    if rows < 10:
        return
    waiting: list[str] = []
    for page in make_up(galley, rows, first):
        figures = [
            line.words.partition(Style.SUPERIOR)[2]
            for slot in page.slots
            if slot.matter.role is Role.BODY
            for line in slot.matter.lines[slot.start : slot.end]
        ]
        begun = [slot.matter.initials[0].words.rstrip(".") for slot in noted(page) if slot.start == 0]
        assert begun == [*waiting, *filter(None, figures)]


def test_a_note_that_is_parted_leaves_two_lines_on_either_page() -> None:
    """Of 14 rows, eleven lines of text leave room for two of notes; of a note of three none may go over."""
    for count, on_first in ((8, 2), (4, 2), (3, 0)):
        body = tuple(SetLine(f"line{Style.SUPERIOR}1" if n == 10 else "line", 0, 0, n) for n in range(30))
        galley = [Matter(Role.BODY, body, 30, 1.0, 1.25, notes=(note(1, count),))]
        page, *_ = make_up(galley, 14)
        assert sum(slot.end - slot.start for slot in page.notes) == on_first
        assert page.slots[0].end == (11 if on_first else 10)


TEXT = f"""# Fog

The scale upsets at a moth.[^a] {PROSE}

# Rain

{PROSE} The clock loses.[^b]

[^a]: A wet one weighs more.[^c]

[^b]: Ten minutes a day.

[^c]: And lies less.
"""


def test_notes_stand_at_the_foot_in_smaller_type_under_a_short_rule(tmp_path: Path) -> None:
    found = inside(tmp_path, TEXT, notes="foot")
    page = lines(found.pages[0])
    at = {line.text: line for line in page}
    first, second = (at[words] for words in ("1.", "2."))
    assert {first.line.size, second.line.size} == {0.85 * SIZE}
    assert first.at.y - second.at.y == pytest.approx(0.85 * STEP)
    assert row(second) == pytest.approx(round(row(second)))
    assert FRAME.type_area(1).y <= second.at.y < FRAME.type_area(1).y + STEP
    assert "A wet one weighs more." in " ".join(line.text for line in page)


def all_lines(tmp_path: Path, notes: str) -> list[list[str]]:
    return [[line.text for line in lines(page)] for page in inside(tmp_path, TEXT, notes=notes).pages]


def test_notes_stand_where_they_are_asked_for(tmp_path: Path) -> None:
    one, other = "A wet one weighs more.", "Ten minutes a day."
    foot, chapter, text = (
        ["".join(page) for page in all_lines(tmp_path, at)[:2]] for at in ("foot", "chapter", "text")
    )
    for pages in (foot, chapter):
        assert [one in page for page in pages] == [True, False]
        assert [other in page for page in pages] == [False, True]
    assert [one in page for page in text] == [other in page for page in text] == [False, True]
    # through the whole text they are counted on, those last that only a note refers to
    assert "1.A wet one weighs more.32.Ten" in text[1]
    assert "1.A wet one weighs more.22.And" in foot[0]


@pytest.mark.parametrize(
    ("refers", "beside"),
    [
        ("| oil[^a] | wick |\n|---|---|\n| one | two |", "oil"),
        ("- oil[^a]\n- wick", "oil"),
        ("> The oil[^a] is out.", "The oil1 is out."),
        ("The oil[^a] is out,\\\nthe wick is in.", "The oil1 is out,"),
        ("## Oil[^a]\n\nOut.", "Oil"),
    ],
)
def test_whatever_refers_to_it_has_its_note_at_its_foot(tmp_path: Path, refers: str, beside: str) -> None:
    found = inside(tmp_path, f"# Fog\n\n{PROSE}\n\n{refers}\n\n# Rain\n\nIt rains.\n\n[^a]: Whale.", notes="foot")
    page = [line.text for line in lines(found.pages[0])]
    assert any(line.startswith(beside) for line in page)
    assert page[-2:] == ["1.", "Whale."]


def test_verses_and_lists_in_notes_are_run_in(tmp_path: Path) -> None:
    note = "[^a]: It goes:\n\n    Oil is dear,\\\n    wick is dearer.\n\n    - whale"
    found = inside(tmp_path, f"# Fog\n\nThe oil[^a] is out.\n\n{note}", notes="foot")
    said = " ".join(line.text for line in lines(found.pages[0]))
    assert said.replace("\u00a0", " ").endswith("1. It goes: Oil is dear, / wick is dearer. \u2022 whale")


def test_nothing_is_asked_for_twice_and_plain_pages_are_as_ever(tmp_path: Path) -> None:
    plain = f"# Fog\n\n{PROSE}"
    one, other = (
        [[line.at for line in lines(page)] for page in inside(tmp_path, plain, notes=where).pages]
        for where in ("foot", "chapter")
    )
    assert one == other
