"""Figures: whole pictures on whole rows, in order, where the text names them or at the head of the next page."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker.typesetting.galleys.made_pages import MadePage
from bookmaker.typesetting.galleys.makeup import make_up
from bookmaker.typesetting.galleys.matter import Matter, SetLine
from bookmaker.typesetting.manuscripts.passage import Role
from bookmaker.typesetting.page import Inside
from tests.kit.recording import record
from tests.kit.text_pages import FACE, FRAME, PROSE, SIZE, STEP, inside, row, said

AREA = FRAME.type_area(1)
ROWS = 1 + math.floor((AREA.height - (FACE.shape("dfl").top - FACE.shape("gjpqy").bottom) * SIZE) / STEP)


def body(lines: int) -> Matter:
    return Matter(Role.BODY, tuple(SetLine(f"p{n}", 0, 0, n) for n in range(lines)), lines, 1.0, 1.25)


def figure(rows: int) -> Matter:
    return Matter(
        Role.FIGURE, (), rows, 0.85, 1.06, before=0.5, after=0.5, together=0, run=rows, picture="wreck.png"
    )  # fmt: skip


def opening() -> Matter:
    return body(1)._replace(
        role=Role.HEADING, together=1, stays=True, opens=True, sink=2, after=1, heading="h", before=1
    )  # fmt: skip


@st.composite
def galleys(draw: st.DrawFn) -> tuple[list[Matter], int]:
    rows = draw(st.integers(8, 20))
    kinds = st.one_of(st.integers(1, 20).map(body), st.integers(1, int(rows * 0.6)).map(figure), st.builds(opening))
    return draw(st.lists(kinds, min_size=1, max_size=20)), rows


def at(pages: list[MadePage], role: Role) -> list[tuple[int, Matter]]:
    """What has a role and begins on each page, with the number of that."""
    return [
        (number, slot.matter)
        for number, page in enumerate(pages)
        for slot in page.slots
        if slot.start == 0 and (slot.matter.role is Role.FIGURE) is (role is Role.FIGURE)
    ]


@given(made=galleys(), first=st.integers(1, 2))
@settings(deadline=None, max_examples=300)
def test_figures_and_text_stand_once_each_in_its_order_and_nothing_over_another(
    made: tuple[list[Matter], int], first: int
) -> None:
    galley, rows = made
    pages = list(make_up(galley, rows, first))
    for role in (Role.FIGURE, Role.BODY):
        wanted = [matter for matter in galley if (matter.role is Role.FIGURE) is (role is Role.FIGURE)]
        assert [matter for _, matter in at(pages, role)] == wanted
    for page in pages:
        reached = 0.0
        for slot in page.slots:
            assert slot.row >= reached
            reached = slot.row + (slot.matter.rows if slot.matter.role is Role.FIGURE else slot.end - slot.start)
            assert reached <= rows
            if slot.matter.role is not Role.FIGURE:
                assert slot.row % 1 == 0


@given(made=galleys(), first=st.integers(1, 2))
@settings(deadline=None, max_examples=300)
def test_a_figure_stands_after_its_text_and_before_the_next_chapter_as_soon_as_there_is_room(
    made: tuple[list[Matter], int], first: int
) -> None:
    galley, rows = made
    pages = list(make_up(galley, rows, first))
    text = at(pages, Role.BODY)
    ends = [max(n for n, page in enumerate(pages) if any(s.matter is m for s in page.slots)) for _, m in text]
    figures, before = iter(at(pages, Role.FIGURE)), 0
    waited = -1
    for place, matter in enumerate(galley):
        if matter.role is not Role.FIGURE:
            before += 1
            continue
        page, _ = next(figures)
        named = ends[before - 1] if before else 0
        assert page >= named
        chapters = [number for (number, found), _ in zip(text[before:], galley[place:], strict=False) if found.opens]
        assert not chapters or page < chapters[0]
        if page > named and waited <= named and before and galley[place - 1].role is not Role.FIGURE:
            last = next(slot for slot in reversed(pages[named].slots) if slot.matter is text[before - 1][1])
            assert last.row + (last.end - last.start) + 0.5 + matter.rows > rows - 1
        waited = max(waited, page)


SHAPES = {"wide.png": (160, 70), "square.png": (100, 100), "tall.png": (70, 160)}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name, size in SHAPES.items():
        Image.new("RGB", size, (90, 110, 120)).save(tmp_path / name)
    return tmp_path


def shown(folder: Path, text: str, **keys: object) -> Inside:
    return inside(folder, text, pictures="figures", **keys)


@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize(
    "caption", ["", "The old quay", "The old quay, as it was before the wall and the long ice came"]
)
def test_a_figure_is_as_wide_as_the_text_or_as_high_as_it_may_be(folder: Path, name: str, caption: str) -> None:
    found = shown(folder, f'{PROSE}\n\n![]({name} "{caption}")\n\n{PROSE}{PROSE}')
    page = record(found.pages[0])
    [placed] = page.pictures
    width, height = SHAPES[name]
    into = placed.bounds
    assert into.height / into.width == pytest.approx(height / width)
    assert into.centre.x == pytest.approx(AREA.centre.x)
    assert into.width <= AREA.width + 1e-6
    captions = [line for line in page.texts if line.line.size < SIZE - 1e-6]
    assert {round(line.line.size / SIZE, 6) for line in captions} == ({0.85} if caption else set())
    foot = min([into.y, *(line.at.y for line in captions)])
    rows = (into.top - foot) / STEP
    assert into.width >= 0.9 * AREA.width - 1e-6 or rows > 0.6 * ROWS - 2
    for line in page.texts:
        if line not in captions:
            assert row(line) == pytest.approx(round(row(line)))
            top, bottom = line.at.y + FACE.shape("dfl").top * SIZE, line.at.y + FACE.shape("gp").bottom * SIZE
            assert bottom > into.top or top < foot
    for line in captions:
        assert line.at.y + FACE.cap_height * line.line.size < into.y
        assert (line.at.x + line.end.x) / 2 == pytest.approx(AREA.centre.x)


def test_white_over_and_under_a_figure_is_alike(folder: Path) -> None:
    """From the baseline over the picture, and from the top of capitals under it."""
    for name in SHAPES:
        page = record(shown(folder, f"It fell.\n\n![]({name})\n\n{PROSE}{PROSE}").pages[0])
        [placed] = page.pictures
        over = min(line.at.y for line in page.texts if line.at.y > placed.bounds.top) - placed.bounds.top
        under = placed.bounds.y - max(line.at.y for line in page.texts if line.at.y < placed.bounds.y)
        assert over == pytest.approx(under - FACE.cap_height * SIZE)


def test_a_figure_at_the_head_of_a_page_begins_with_its_first_line(folder: Path) -> None:
    found = shown(folder, f"{PROSE * 4}\n\n![](square.png)\n\n{PROSE * 4}")
    page = next(page for page in map(record, found.pages) if page.pictures)
    top = AREA.top - FACE.shape("dfl").top * SIZE + FACE.cap_height * SIZE
    assert page.pictures[0].bounds.top == pytest.approx(top)


def test_plates_have_pages_of_their_own_unless_figures_are_asked_for(folder: Path) -> None:
    text = f"{PROSE}\n\n![](wide.png)\n\n{PROSE}"
    plates, figures = inside(folder, text), shown(folder, text)
    assert [len(record(page).pictures) for page in plates.pages[:2]] == [0, 1]
    assert record(plates.pages[1]).texts == []
    assert len(record(figures.pages[0]).pictures) == 1
    assert said(plates) == said(figures)


def test_a_note_to_a_caption_stands_at_the_foot_of_its_page(folder: Path) -> None:
    text = f"{PROSE}\n\n![The quay[^a]](wide.png)\n\n{PROSE}\n\n[^a]: It fell."
    page = [line.text for line in record(shown(folder, text, notes="foot").pages[0]).texts]
    assert any(line.startswith("The quay") for line in page)
    assert page[-2:] == ["1.", "It fell."]


def test_a_long_caption_leaves_half_the_room_to_its_picture(folder: Path) -> None:
    caption = "The old quay, as it was before the wall and the long ice came. " * 6
    found = shown(folder, f'{PROSE}\n\n![](wide.png "{caption}")\n\n{PROSE}')
    page = next(page for page in map(record, found.pages) if page.pictures)
    captions = [line for line in page.texts if line.line.size < SIZE - 1e-6]
    foot = min(line.at.y for line in captions)
    assert page.pictures[0].bounds.height >= 0.4 * (page.pictures[0].bounds.top - foot)
    assert any("for the longest to leave half the room to its picture" in str(problem) for problem in found.problems)
