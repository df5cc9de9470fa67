"""Group backs: something stands on each, within its edges, in words that no language has."""

from __future__ import annotations

import io
from dataclasses import replace
from itertools import combinations
from typing import get_args

import pypdf
import pytest

from bookmaker.ground.geometry import Rect
from bookmaker.sheets.flat import Role
from bookmaker.things.book.designs.design import InSet, Words
from bookmaker.things.book.designs.letters.backs import BackName
from bookmaker.things.book.designs.styles.picture_cover import PictureCover
from bookmaker.writers.pdf import PdfFile
from tests.kit.flats import flat_of, panel
from tests.kit.recording import Filled, Stroked, Written, ink_box
from tests.kit.styles import drawn, dressed

FRAMED = {"scene": "castle", "colour": "#6e2428"}


def words_of(look: int, volume: str = "") -> Words:
    return Words("Salt Roads", "T. Ash", volume, look=look)


def framed_words(volume: str = "") -> Words:
    """Words whose cover shows its scene behind a window: then the back has no landscape."""
    return words_of(next(look for look in range(1, 99) if len(on_back("plain", words_of(look))) < 5), volume)


def on_back(kind: str, words: Words | None = None) -> list[Filled | Stroked | Written]:
    flat = flat_of(5.0)
    back = panel(flat, Role.BACK)
    canvas = drawn(PictureCover, flat, words or framed_words(), back=kind, wear="none", **FRAMED)
    marks: list[Filled | Stroked | Written] = [
        mark for mark in canvas.marks
        if isinstance(mark, (Filled, Stroked)) and back.grown(-0.2).contains(Rect.around(mark.path.points()))
    ]  # fmt: skip
    return marks + [text for text in canvas.texts if back.contains(ink_box(text))]


@pytest.mark.parametrize("kind", [name for name in get_args(BackName) if name not in ("auto", "plain")])
def test_every_kind_of_back_shows_something(kind: str) -> None:
    assert len(on_back(kind)) > len(on_back("plain"))


def test_no_back_is_blank_unless_that_is_asked_for() -> None:
    """There is a landscape on it, or one of the kinds of backs."""
    back = panel(flat_of(5.0), Role.BACK).grown(-1.0)
    for look in range(1, 40):
        canvas = drawn(PictureCover, flat_of(5.0), words_of(look), wear="none", **FRAMED)
        over = [mark.colour if isinstance(mark, Filled) else mark.pen.colour for mark in canvas.marks
                if isinstance(mark, (Filled, Stroked)) and Rect.around(mark.path.points()).overlaps(back)]  # fmt: skip
        assert len(set(over)) > 1 or any(back.overlaps(ink_box(text)) for text in canvas.texts)


@pytest.mark.parametrize("kind", ["blurb", "list"])
@pytest.mark.parametrize("thickness", [1.5, 5.0, 12.0])
@pytest.mark.parametrize("width", [8.0, 14.0, 24.0])
def test_no_word_of_a_back_leaves_it(kind: str, thickness: float, width: float) -> None:
    flat = flat_of(thickness, width, width * 1.4)
    homes = [panel(flat, role) for role in (Role.BACK, Role.SPINE, Role.FRONT)]
    for text in drawn(PictureCover, flat, framed_words(), back=kind, **FRAMED).texts:
        assert any(home.contains(ink_box(text), 1e-6) for home in homes)


def test_books_have_blurbs_of_their_own() -> None:
    others = [words_of(look) for look in range(1, 99) if len(on_back("plain", words_of(look))) < 5][:4]
    blurbs = [{mark.text for mark in on_back("blurb", words) if isinstance(mark, Written)} for words in others]
    for one, other in combinations(blurbs, 2):
        assert len(one) > 5
        assert not {line for line in one & other if len(line) > 8}


def test_the_list_of_a_set_names_its_volumes() -> None:
    titles = ("Salt Roads", "Tin Birds", "Gorse")
    fellows = tuple(Words(title, "T. Ash", series="Quill", look=4) for title in titles)
    words = replace(fellows[0], in_set=InSet(0.0, 0.0, 15.0, fellows))
    said = " ".join(mark.text for mark in on_back("list", words) if isinstance(mark, Written))
    assert all(title in said for title in titles)


def test_a_blurb_can_be_copied_from_the_pdf_word_by_word() -> None:
    flat, words, file = flat_of(5.0), framed_words(), io.BytesIO()
    with PdfFile(file, title="cover") as pdf, pdf.page(flat.size) as canvas:
        dressed(PictureCover, flat, words, back="blurb", **FRAMED).art.draw(canvas)
    copied = pypdf.PdfReader(file).pages[0].extract_text()
    lines = [mark.text for mark in on_back("blurb", words) if isinstance(mark, Written)]
    assert len(lines) > 5
    assert all(line.split()[0] in copied for line in lines)


@pytest.mark.parametrize(("date", "sign"), [("1935", "/"), ("1988", "."), ("1850", "")])
def test_prices_are_those_of_their_time(date: str, sign: str) -> None:
    words = framed_words()
    dated = Words(words.title, words.author, date=date, look=words.look)
    said = [mark.text for mark in on_back("list", dated) if isinstance(mark, Written) and mark.text[0].isdigit()]
    assert [sign in text for text in said] == ([True] if sign else [])
