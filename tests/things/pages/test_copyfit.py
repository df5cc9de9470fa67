"""Copyfitting: the largest type that so many pages hold, between bounds, and what is said where pages stay empty."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.problems import Severity
from bookmaker.ground.typefaces import bundled
from bookmaker.things.book.pages.prose import copyfit
from bookmaker.things.book.pages.prose.loaded_text import LoadedText, TextSource
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.galleys.made_pages import MadePage
from bookmaker.typesetting.galleys.makeup import make_up
from bookmaker.typesetting.galleys.matter import Matter
from bookmaker.typesetting.lines.fount import Fount, Style
from bookmaker.typesetting.manuscripts.manuscript import Manuscript
from bookmaker.typesetting.page import Inside, PageFrame
from bookmaker.typesetting.standing_type import StandingType

FACE = bundled("text")
OR_FILLED = ", or add a part that takes what is left, such as dummy text, for a book as thick"
SENTENCE = "The keeper trims the lamp at dusk and writes down the wind."
POINT = 25.4 / 72
STEP = POINT / 20
"""Sizes are whole steps."""

WORDS = st.lists(st.text("aeinorstlbdgpy", min_size=1, max_size=11), min_size=30, max_size=400)
SIDES = st.tuples(st.floats(9, 24), st.floats(12, 30))


def fitted(source: TextSource, frame: PageFrame, **keys: str) -> Inside:
    return LoadedText(TextInside.model_validate({"file": "log.txt", "size": "fit", **keys}), source).compose(frame)


def size_of(inside: Inside) -> float:
    """The size of type in mm that was found, from its x-height."""
    assert inside.x_height
    return inside.x_height / FACE.x_height


def fits(source: TextSource, frame: PageFrame, size: float) -> bool:
    found = LoadedText(TextInside(file="log.txt", size=size), source).compose(frame).problems
    return not any(problem.severity is Severity.ERROR for problem in found)


def source_of(words: list[str]) -> TextSource:
    return TextSource(Manuscript.plain("log.txt", " ".join(words)), Fount({Style.ROMAN: FACE}, "en_US"))


@given(words=WORDS, sides=SIDES, half=st.integers(1, 12))
@settings(max_examples=40, deadline=None)
def test_the_size_found_fits_and_none_a_little_larger_does(
    words: list[str], sides: tuple[float, float], half: int
) -> None:
    source, frame = source_of(words), PageFrame(*sides, 2 * half)
    found = fitted(source, frame)
    if any(problem.severity is Severity.ERROR for problem in found.problems):
        assert size_of(found) == pytest.approx(1.2 * POINT)
        return
    size, most = size_of(found), frame.type_area(1).width / 11
    assert size / STEP == pytest.approx(round(size / STEP), abs=1e-6)
    assert fits(source, frame, size)
    larger = [size + steps * STEP for steps in (1, 2, 3)]
    assert not any(fits(source, frame, other) for other in larger if other <= most + 1e-6)


def test_a_text_that_fits_again_in_larger_type_is_set_in_that() -> None:
    """This one needs more than ten pages in 5.15 pt and 5.2 pt, and ten in 5.25 pt, where its lines fall well."""
    words = (
        "dusk in harbour keeper writes and writes of wind down wind lamp in down sea lamp a a dusk was "
        "sea at state was sky and state at trims trims lamp keeper it sea was keeper it sea sky state "
        "lamp down trims dusk wind of of and"
    )
    source, frame = source_of(words.split()), PageFrame(10, 14, 10)
    assert [fits(source, frame, steps * STEP) for steps in (102, 103, 104, 105, 106)] == [
        True,
        False,
        False,
        True,
        False,
    ]
    assert size_of(fitted(source, frame, largest="9 pt")) == pytest.approx(105 * STEP)


def test_sizes_are_looked_for_where_letters_are_likely_to_fill_the_pages(monkeypatch: pytest.MonkeyPatch) -> None:
    """By halving what is left between 1.2 pt and 24 pt ten of them were tried, and the text set once more then."""
    tried = list[Sequence[Matter]]()

    def counted(matter: Iterable[Matter], *setting: Any) -> Iterator[MadePage]:
        tried.append([*matter])
        return make_up(tried[-1], *setting)

    monkeypatch.setattr(copyfit, "make_up", counted)
    source, frame = source_of((f"{SENTENCE} " * 60).split()), PageFrame(15, 21, 40)
    with StandingType().used():
        size = size_of(fitted(source, frame, largest="24 pt"))
        assert fits(source, frame, size)
        assert len(tried) <= 5


@given(words=WORDS, sides=SIDES, half=st.integers(1, 10), largest=st.integers(30, 80))
@settings(max_examples=30, deadline=None)
def test_more_pages_and_a_wider_bound_never_make_type_smaller(
    words: list[str], sides: tuple[float, float], half: int, largest: int
) -> None:
    source = source_of(words)
    few, many = PageFrame(*sides, 2 * half), PageFrame(*sides, 2 * half + 2)
    tight, wide = f"{largest / 20:.2f} pt", f"{largest / 20 + 0.3:.2f} pt"
    size = size_of(fitted(source, few, largest=tight))
    assert size <= size_of(fitted(source, many, largest=tight)) + 1e-9
    assert size <= size_of(fitted(source, few, largest=wide)) + 1e-9


@pytest.mark.parametrize(("width", "height"), [(15.0, 21.0), (10.75, 16.5), (40.0, 60.0)])
def test_a_short_text_is_set_no_larger_than_leaves_24_letters_to_a_line(width: float, height: float) -> None:
    """11 ems hold about 24 letters: shorter lines cannot be filled well (common practice)."""
    found = fitted(source_of(SENTENCE.split() * 4), PageFrame(width, height, 90))
    most = width * 6 / 9 / 11
    assert size_of(found) == pytest.approx(math.floor(most / STEP + 1e-6) * STEP)


def test_a_bound_is_kept_to_the_step() -> None:
    source, frame = source_of(SENTENCE.split() * 25), PageFrame(15, 21, 48)
    assert size_of(fitted(source, frame, largest="4 pt")) == pytest.approx(4 * POINT)
    assert size_of(fitted(source, frame, largest="4.04 pt")) == pytest.approx(4 * POINT)
    assert size_of(fitted(source, frame, smallest="3 pt", largest="3 pt")) == pytest.approx(3 * POINT)


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ({}, "fills 7 of 48 pages in 2.55 pt type, the largest that leaves 24 letters to a line;"),
        ({"largest": "4 pt"}, "fills 16 of 48 pages in 4 pt type, the largest allowed;"),
        ({"smallest": "3 pt"}, "fills 10 of 48 pages in 3 pt type, the smallest allowed;"),
    ],
)
def test_a_bound_that_leaves_pages_empty_is_told(keys: dict[str, str], told: str) -> None:
    source, frame = source_of(SENTENCE.split() * 25), PageFrame(15, 21, 48)
    *_, note = fitted(source, frame, **keys).problems
    assert note.severity is Severity.NOTE
    assert note.message == f"log.txt {told} the others stay empty"
    pages = int(note.message.split()[2])
    # larger type would have too few letters to a line: it is not offered
    assert note.remedy == f"write pages: {pages + pages % 2} for a thinner book{OR_FILLED}"
    assert "largest" not in str(fitted(source, PageFrame(15, 21, pages + pages % 2), **keys).problems[-1:])
    *_, note = fitted(source, frame, largest="6.55 pt").problems
    assert str(note) == (
        "log.txt fills 45 of 48 pages in 6.55 pt type, and would need more than all in larger type; "
        f"the others stay empty; write pages: 46 for a thinner book{OR_FILLED}"
    )


def test_a_larger_bound_is_offered_if_it_fills_more_pages_with_lines_of_enough_letters() -> None:
    """24 letters to a line of 10 mm are 10/11 mm, 2.57 pt, to the step 2.55."""
    source, frame = source_of(SENTENCE.split() * 25), PageFrame(15, 21, 48)
    *_, note = fitted(source, frame, largest="1.8 pt").problems
    *_, more = note.remedy.split(", or largest: ")
    assert more == "2.55 pt to fill 7, or add a part that takes what is left, such as dummy text, for a book as thick"
    *_, again = fitted(source, frame, largest="2.55 pt").problems
    assert "fills 7 of 48 pages in 2.55 pt type, the largest allowed" in again.message
    assert "largest:" not in again.remedy


def test_bounds_the_wrong_way_round_are_refused() -> None:
    with pytest.raises(ValueError, match="smallest: 3 pt is larger than largest: 2 pt"):
        TextInside.model_validate({"file": "log.txt", "smallest": "3 pt", "largest": "2 pt"})


@pytest.mark.parametrize("key", ["size", "smallest", "largest"])
def test_a_size_of_type_without_a_unit_is_taken_for_points(key: str) -> None:
    with pytest.raises(ValueError, match=r"2\.2 has no unit") as caught:
        TextInside.model_validate({"file": "log.txt", key: "2.2"})
    [error] = caught.value.errors()  # type: ignore[attr-defined]  # pydantic's
    assert error["ctx"]["remedy"] == "write 2.2 pt"


def test_a_fitted_text_that_is_too_long_is_told_the_smallest_size_that_would_do() -> None:
    source = source_of([SENTENCE] * 40)
    [*_, problem] = fitted(source, PageFrame(15, 21, 2), smallest="2 pt").problems
    assert problem.severity is Severity.ERROR
    size = float(problem.remedy.rpartition("smallest: ")[2].removesuffix(" pt"))
    assert "size:" not in problem.remedy
    enough = fitted(source, PageFrame(15, 21, 2), smallest=f"{size} pt").problems
    assert not any(p.severity is Severity.ERROR for p in enough)
    longer = fitted(source, PageFrame(15, 21, 2), smallest=f"{size + 0.05:g} pt").problems
    assert any(p.severity is Severity.ERROR for p in longer)


def test_a_smallest_size_that_breaks_all_words_is_told() -> None:
    told = fitted(source_of([SENTENCE]), PageFrame(15, 21, 12), smallest="20 pt").problems
    assert any(p.message.startswith("lines in 20 pt type hold about 3 letters") for p in told)
    assert any(p.remedy == "write smallest: 2.5 pt or smaller" for p in told)
