"""A law of pages of text: no ink of theirs lies outside the type area, and no words are lost without a word."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker.ground.problems import Severity
from bookmaker.things.book.pages.prose.loaded_text import LoadedText, TextSource
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.page import Inside, PageFrame
from tests.kit.recording import record

WORDS = st.text(st.sampled_from("aeinorstlbdgpykwmAHWgfijl"), min_size=1, max_size=14)
LINE = st.lists(WORDS, min_size=1, max_size=24).map(" ".join)
HEADINGS = st.tuples(st.sampled_from(["# ", "## ", "## ", "### ", "#### "]), LINE).map("".join)
ASIDES = st.tuples(st.sampled_from(["> ", "- ", "1. "]), LINE).map("".join)
VERSES = st.lists(LINE, min_size=2, max_size=4).map("\\\n".join)
PLATES = LINE.map('![x](plate.png "{}")'.format)
MANUSCRIPTS = st.lists(HEADINGS | LINE | ASIDES | VERSES | PLATES | st.just("***"), min_size=1, max_size=8)
FRAMES = st.builds(
    PageFrame,
    width=st.floats(8, 30),
    height=st.floats(8, 40),
    pages=st.integers(2, 12),
    right_to_left=st.booleans(),
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("texts")
    Image.new("L", (300, 200), 90).save(made / "plate.png")
    return made


def entry_of(size: float, **keys: object) -> TextInside:
    keys = {"file": "log.md", "numbers": False, "hanging": False, "language": "none", **keys}
    return TextInside.model_validate({**keys, "size": size})


def source_of(folder: Path, text: str) -> TextSource:
    (folder / "log.md").write_text(text, "utf-8")
    return entry_of(1.0).load(folder).source


OVERSHOOT = 0.01
"""Ems by which ligatures and round letters stand out over plain ones."""


def outside(inside: Inside, frame: PageFrame) -> list[str]:
    """What is drawn outside the type area."""
    found: list[str] = []
    for number, page in enumerate(inside.pages, start=1):
        area, drawn = frame.type_area(number).grown(*[1e-6] * 4), record(page)
        for written in drawn.texts:
            size = written.line.size
            top = max(run.top for _, run in written.line.runs) * size + written.at.y
            bottom = min(run.bottom for _, run in written.line.runs) * size + written.at.y
            above = top > area.top + OVERSHOOT * size
            below = bottom < area.y - OVERSHOOT * size
            if above or below or written.at.x < area.x or written.end.x > area.right:
                found.append(f"page {number}: {written.text} at {written.at}, in {area}")
    return found


@given(
    blocks=MANUSCRIPTS,
    frame=FRAMES,
    size=st.floats(0.4, 3),
    leading=st.floats(0.8, 2),
    run_on=st.booleans(),
    capitals=st.sampled_from([0, 0, 2, 3]),
)
@settings(max_examples=150, deadline=None)
def test_no_ink_lies_outside_the_type_area(
    folder: Path, blocks: list[str], frame: PageFrame, size: float, leading: float, run_on: bool, capitals: int
) -> None:
    chapters = "run on" if run_on else "new page"
    entry = entry_of(size, leading=leading, chapters=chapters, drop_capital=capitals)
    inside = LoadedText(entry, source_of(folder, "\n\n".join(["Fog.", *blocks]))).compose(frame)
    assert outside(inside, frame) == []


@given(blocks=st.lists(HEADINGS | LINE, min_size=1, max_size=6), frame=FRAMES, size=st.floats(0.6, 3))
@settings(max_examples=100, deadline=None)
def test_headings_however_long_lose_no_letter_that_is_not_told(
    folder: Path, blocks: list[str], frame: PageFrame, size: float
) -> None:
    source = source_of(folder, "\n\n".join(blocks))
    inside = LoadedText(entry_of(size), source).compose(frame)
    shown = "".join(written.text for page in inside.pages for written in record(page).texts).replace(" ", "")
    whole = "".join(source.manuscript.text.split())
    told = any(problem.severity is Severity.ERROR for problem in inside.problems)
    assert shown == whole or (told and whole.startswith(shown))


def test_a_heading_takes_half_a_page_at_most_if_smaller_type_does_it(folder: Path) -> None:
    """Two lines in the usual size would take three of the five lines; the other chapter is set alike."""
    frame = PageFrame(15, 16, 8)
    source = source_of(folder, "# Book\n\n## Of the lamp and its keeper\n\nFog.\n\n## Ice\n\nSnow.")
    inside = LoadedText(entry_of(1.5, leading=1.25), source).compose(frame)
    sizes = {line.text: line.line.size for page in inside.pages for line in record(page).texts}
    heads = {size for text, size in sizes.items() if text not in {"Book", "Fog.", "Snow."}}
    assert len(heads) == 1
    assert 1.5 <= heads.pop() < 1.5 * 1.3
    [first] = [page for page in inside.pages if "Fog." in {line.text for line in record(page).texts}]
    assert "Of the lamp" in {line.text for line in record(first).texts}


def test_a_heading_longer_than_a_page_goes_on_and_is_named(folder: Path) -> None:
    source = source_of(folder, "## " + "Misunderstandings " * 12 + "\n\nFog.\n\n## Ice\n\nSnow.")
    inside = LoadedText(entry_of(1.0), source).compose(PageFrame(10, 8, 12))
    assert [heading.text.split()[0] for heading in inside.headings] == ["Misunderstandings", "Ice"]
    [told] = [str(problem) for problem in inside.problems if problem.severity is Severity.WARNING]
    assert told == (
        "the heading 'Misunderstandings Misunderstandings Misu…' of log.md is longer than a page, which has 4 lines, "
        "and divided; write shorter headings, or a smaller size"
    )


def test_captions_of_plates_are_of_one_size_and_leave_half_the_page(folder: Path) -> None:
    source = source_of(folder, 'Fog.\n\n![x](plate.png "Ice")\n\n![x](plate.png "' + "drift ice " * 16 + '")')
    frame = PageFrame(9, 12, 4)
    inside = LoadedText(entry_of(0.8), source).compose(frame)
    plates = [record(page) for page in inside.pages if record(page).pictures]
    [size] = {line.line.size for plate in plates for line in plate.texts}
    assert size < 0.8
    assert min(line.at.y for plate in plates for line in plate.texts) > frame.type_area(1).y
    assert "the captions" in next(str(problem) for problem in inside.problems if "caption" in problem.message)
