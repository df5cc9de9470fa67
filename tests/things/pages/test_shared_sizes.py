"""Several texts fitted into one book share its pages in type of one size."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.art import NOTHING
from bookmaker.ground.problems import Severity
from bookmaker.ground.units import from_pt, to_pt
from bookmaker.things.book.pages.inside import load_inside
from bookmaker.things.book.pages.patterns.dummy_text import DummyText
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.page import Inside, PageFrame
from tests.kit.recording import record

SENTENCE = "The keeper trims the lamp at dusk and writes down the wind. "
FRAME = PageFrame(15, 21, 16)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "a.md").write_text(SENTENCE * 20, "utf-8")
    (tmp_path / "b.md").write_text(SENTENCE * 8, "utf-8")
    return tmp_path


def fitted(name: str, **keys: object) -> TextInside:
    return TextInside.model_validate({"file": name, "size": "fit", "numbers": "no", **keys})


def bound(folder: Path, *parts: TextInside | DummyText, frame: PageFrame = FRAME) -> Inside:
    return load_inside(parts, folder).compose(frame)


def sizes(inside: Inside) -> list[float]:
    """The size of each page's type in points, to the hundredth."""
    found = [{round(to_pt(line.line.size), 2) for line in record(page).texts} for page in inside.pages]
    return [size for page in found for size in page]


def words(inside: Inside) -> str:
    return "".join(line.text for page in inside.pages for line in record(page).texts).replace("-", "").replace(" ", "")


@pytest.mark.parametrize("keys", [{}, {"largest": "5 pt"}])
@pytest.mark.parametrize("pages", [6, 16, 17, 24])
def test_two_texts_to_be_fitted_have_one_size_and_lose_nothing(
    folder: Path, pages: int, keys: dict[str, object]
) -> None:
    inside = bound(folder, fitted("a.md", **keys), fitted("b.md", **keys), frame=PageFrame(15, 21, pages))
    assert len(set(sizes(inside))) == 1
    assert len(inside.pages) == pages
    assert words(inside) == (SENTENCE * 28).replace(" ", "").replace("-", "")
    assert not [problem for problem in inside.problems if problem.severity is not Severity.NOTE]


def test_their_size_is_the_largest_that_the_pages_hold(folder: Path) -> None:
    """A twentieth of a point more, and the parts need a page that is not there."""
    six = PageFrame(15, 21, 6)
    [size] = set(sizes(bound(folder, fitted("a.md"), fitted("b.md"), frame=six)))
    larger = [TextInside.model_validate({"file": name, "size": f"{size + 0.05:.2f} pt"}) for name in ("a.md", "b.md")]
    assert [problem for problem in bound(folder, *larger, frame=six).problems if problem.severity is Severity.ERROR]


def test_each_text_keeps_to_its_own_bounds(folder: Path) -> None:
    inside = bound(folder, fitted("a.md", largest="1.5 pt"), fitted("b.md"))
    assert min(sizes(inside)) == 1.5 < max(sizes(inside))


def test_what_two_texts_lose_in_their_smallest_type_is_told_with_the_pages_that_hold_them(folder: Path) -> None:
    few = PageFrame(15, 21, 2)
    parts = fitted("a.md", smallest="2 pt"), fitted("b.md", smallest="2 pt")
    [lost] = [p for p in bound(folder, *parts, frame=few).problems if "words" in p.message]
    assert "not fit in 1 page even in the smallest type allowed, 2 pt" in lost.message
    enough = int(lost.remedy.split("pages: ")[1].split()[0])
    again = bound(folder, *parts, frame=PageFrame(15, 21, enough))
    assert not [p for p in again.problems if p.severity is Severity.ERROR]


def test_beside_a_part_that_takes_the_rest_a_text_cannot_be_fitted(folder: Path) -> None:
    inside = bound(folder, fitted("b.md"), DummyText(numbers=False))
    [problem] = [p for p in inside.problems if p.severity is not Severity.NOTE]
    assert (problem.severity, problem.field) == (Severity.WARNING, (0, "size"))
    assert str(problem) == (
        "this part would be fitted to what is left, and another part takes what is left: it is set in 2.2 pt type; "
        "write pages: with how many it shall have, or a size: in place of fit"
    )
    assert all(page is not NOTHING for page in inside.pages)
    assert round(to_pt(record(inside.pages[0]).texts[0].line.size), 2) == 2.2
    for keys in ({"pages": 4}, {"size": f"{to_pt(from_pt(2))} pt"}):
        parts = TextInside.model_validate({"file": "b.md", "size": "fit"} | keys), DummyText()
        assert not [p for p in bound(folder, *parts).problems if p.severity is not Severity.NOTE]
