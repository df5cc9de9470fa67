"""Words that a newcomer types after `bookmaker manual` are answered, and with a meaning or a section of their own."""

from __future__ import annotations

import re

import pytest

from bookmaker.ground.colours.plain_names import PLAIN_NAMES
from bookmaker.ground.drawing import Colour
from bookmaker.ground.typefaces.files import bundled
from bookmaker.ground.typefaces.names import BUNDLED
from bookmaker.ground.units import from_pt
from bookmaker.paper.eyesight import Legibility, Sight
from bookmaker.shelf.schema import shelf_schema
from bookmaker.writers.manual.chapters import chapters, sections_of
from bookmaker.writers.manual.keys import every_key
from bookmaker.writers.manual.page import manual_page
from bookmaker.writers.manual.topics import look_up

TEXTS = chapters()
SECTIONS = [section for name, text in TEXTS.items() for section in sections_of(name, text)]
KEYS = list(every_key(shelf_schema()))

WORDS = {
    "accents": "accents", "aging": "browned leaves", "blank pages": "blank pages", "bookshelf": "space",
    "booklet": "pamphlet", "borderless": "margins of the printer", "cardboard": "board", "cardstock": "card",
    "cereal box": "cereal box", "color": "colour", "colours": "colours", "command line": "terminal",
    "copy paper": "copier paper", "dollhouse": "dolls' house", "double sided": "printing both sides",
    "duplex": "printing both sides", "dust jacket": "jacket", "emoji": "emoji", "encoding": "utf-8",
    "fabric": "book cloth", "font": "typeface", "font size": "size of type", "gsm": "grammage",
    "hardback": "case", "hardcover": "case", "hex": "colour", "inches": "inches", "logo": "device",
    "magazine": "pamphlet", "old paper": "browned leaves", "paper weight": "grammage",
    "photo album": "album", "plotter": "craft cutter", "poem": "verse", "powershell": "terminal",
    "printer paper": "copier paper", "scrapbook": "album", "softcover": "wrap", "spray glue": "spray adhesive",
    "stapler": "staple", "text editor": "your text editor", "umlaut": "umlauts", "unicode": "utf-8",
}  # fmt: skip
"""Each with a word of the entry or of the heading that answers it."""

MENTIONED = ("windows", "notepad", "macos", "apostrophe", "knife", "greek", "poster")
"""Words that passages of the manual tell of."""


@pytest.mark.parametrize(("word", "answer"), WORDS.items())
def test_a_word_of_a_newcomer_is_answered(word: str, answer: str) -> None:
    topic = look_up(word, SECTIONS, KEYS, TEXTS["glossary"])
    found = [meaning.partition(":")[0] for meaning in topic.meanings] + [one.heading for one in topic.sections]
    assert any(answer in name.lower() for name in found), found


@pytest.mark.parametrize("word", MENTIONED)
def test_a_word_that_has_no_entry_is_found_where_it_stands(word: str) -> None:
    assert not look_up(word, SECTIONS, KEYS, TEXTS["glossary"]).empty


def section(chapter: str, heading: str) -> str:
    return next(one.text for one in SECTIONS if (one.chapter, one.heading) == (chapter, heading))


def test_the_colours_of_the_manual_are_those_that_messages_propose_and_are_shown_beside_their_digits() -> None:
    told = dict(re.findall(r'^\| ([a-z]+) \| `"(#[0-9a-f]{6})"` \|$', section("designs", "Colours"), re.MULTILINE))
    assert told == PLAIN_NAMES
    assert all(Colour.from_hex(digits) for digits in told.values())
    page = manual_page({"designs": TEXTS["designs"]})
    assert f'fill="{told["teal"]}"/></svg> <code>&quot;{told["teal"]}&quot;</code>' in page


def least_readable(face: str) -> float:
    """The smallest type that is read at the usual distance, in tenths of a point."""
    x_height = bundled(face).x_height
    sizes = (tenths / 10 for tenths in range(10, 60))
    return next(size for size in sizes if Legibility(x_height * from_pt(size), 600).sight is Sight.READABLE)


def test_the_sizes_that_can_be_read_are_those_that_check_calls_readable() -> None:
    rows = re.findall(r"^\| ([\d.]+) pt \| (.+) \|$", section("typefaces", "Sizes that can be read"), re.MULTILINE)
    told = {name: float(size) for size, faces in rows for name in re.findall(r"`([a-z ]+)`", faces)}
    plain = {face.removesuffix(" italic").removesuffix(" bold") for face in BUNDLED}
    assert told.keys() == plain
    for face in BUNDLED:
        assert least_readable(face) == told[face.removesuffix(" italic").removesuffix(" bold")], face
    assert sum(size <= 3 for size in told.values()) >= len(told) - 2  # so 3 pt is a size to begin with


def test_the_letters_that_faces_are_said_to_have_are_in_them() -> None:
    said = section("typefaces", "Accents, umlauts, emoji and other signs")
    assert "Greek and Cyrillic letters are in `text`, `sans` and `old style`, Hebrew ones in `sans`" in said
    assert not any(bundled(face).missing("αβγωабвя") for face in ("text", "sans", "old style"))
    assert bundled("sans").covers("א")
    assert not any(bundled(face).missing("éñøüß") for face in BUNDLED)
    assert [face for face in BUNDLED if bundled(face).missing("łő")] == ["blackletter"]
    assert not any(bundled(face).covers(sign) for face in BUNDLED for sign in "★☎🎉")
