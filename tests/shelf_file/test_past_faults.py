"""Everything that is wrong with a shelf is told at once, however much of it there is, and nothing that is not wrong."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.shelf.entries import ShelfSpec
from bookmaker.shelf_file.fields.entry import Entry
from bookmaker.shelf_file.fields.examples import example_of
from bookmaker.shelf_file.past_faults import mended
from bookmaker.things.book.blocks.kinds import KINDS as BLOCKS
from bookmaker.things.book.covers.kinds import KINDS as COVERS
from bookmaker.things.book.designs.kinds import KINDS as STYLES
from bookmaker.things.book.pages.kinds import KINDS as PAGES
from tests.kit.shelves import refused

HEAD = """\
shelf: The Herring Loft
stocks:
  laid: {caliper: 75 um, glue: 15 um}
  card: {caliper: 160 um}
books:
"""

BOOK = "  - {title: Nets, size: {height: 21 mm, width: 15 mm}, block: {kind: accordion, stock: laid, pages: 8}, "
WORN = BOOK + "cover: {kind: wrap, stock: card}, "
FILE = "inside: {{kind: text, file: {}}}}}\n"
ROOM = "{width: 60, height: 27 mm, depth: 22 mm}"

Said = Callable[[str], list[str]]


@pytest.fixture
def said(tmp_path: Path) -> Said:
    """What is told of a shelf file: each message from its line on."""

    return lambda text: [line.removeprefix("loft.yaml:") for line in refused(text, tmp_path, "loft.yaml")]


def parts(lines: list[str]) -> list[str]:
    """The messages without their places and remedies."""
    return [line.split(": ", 1)[1].split(";")[0] for line in lines]


def test_an_unknown_style_hides_nothing_beside_it(said: Said) -> None:
    lines = said(HEAD + WORN + "design: {style: clth, palette: harbor, colour: red, wear: hevy}}\n")
    assert parts(lines) == [
        "Nets: design.style: 'clth' is not known",
        "Nets: design.palette: 'harbor' is not known",
        "Nets: design.colour: red is not a colour",
        "Nets: design.wear: 'hevy' is not known",
    ]
    places = [line.split(":")[1] for line in lines]
    assert places == sorted(set(places), key=int)


def test_a_style_like_no_other_hides_only_what_hangs_on_it(said: Said) -> None:
    """`lustre` might be a key of the style that was meant; a palette is the same for all styles that have one."""
    lines = said(HEAD + WORN + "design: {style: zzzz, palette: harbor, lustre: 4}}\n")
    assert parts(lines) == [
        "Nets: design.style: 'zzzz' is not known",
        "Nets: design.palette: 'harbor' is not known",
    ]


def test_a_bad_value_hides_no_missing_file(said: Said) -> None:
    lines = said(
        HEAD
        + WORN
        + "inside: {kind: text, file: lost.txt, drop_capital: 9, face: garmond}}\n"
        + WORN
        + "design: {front_picture: lost.png}, "
        + "inside: [{kind: pictures, folder: nowhere, spreads: al}, {kind: pdf, file: a.pdf}]}\n"
    )
    assert parts(lines) == [
        "there is no text lost.txt",
        "Nets: inside.drop_capital: '9' cannot be the depth of a drop capital",
        "'garmond' is not a typeface of bookmaker",
        "there is no picture lost.png",
        "there is no folder nowhere",
        "Nets: inside[1].spreads: 'al' is not known",
        "there is no PDF a.pdf",
    ]


def test_a_bad_value_hides_no_unknown_name(said: Said) -> None:
    lines = said(HEAD + BOOK.replace("8", "7").replace("laid", "liad") + "cover: {stock: crd}, space: attic}\n")
    assert parts(lines) == [
        "there is no stock 'liad'",
        "Nets: block.pages: 7 is odd, but a leaf has two pages",
        "there is no stock 'crd'",
        "there is no space 'attic'",
    ]


def test_a_size_left_out_hides_nothing(said: Said) -> None:
    without = WORN.replace("size: {height: 21 mm, width: 15 mm}, ", "")
    lines = said(HEAD + without + "inside: {kind: text, file: a.txt}}\n")
    assert parts(lines) == ["Nets has no size", "there is no text a.txt"]


@pytest.mark.parametrize(
    ("head", "message"),
    [
        (HEAD.replace("stocks:", "stokcs:"), ["the shelf has an unknown key 'stokcs'"]),
        (HEAD.replace("stocks:", "inks:"), ["the shelf has no stocks", "the shelf has an unknown key 'inks'"]),
        (
            HEAD.replace("books:", "default: {space: attic}\nspaecs: {attic: " + ROOM + "}\nbooks:"),
            [
                "the shelf has an unknown key 'default'",
                "the shelf has an unknown key 'spaecs'",
                "spaces.attic.width: 60 has no unit",
            ],
        ),
        (HEAD.replace("shelf: The Herring Loft\n", ""), ["the shelf has no shelf"]),
        (HEAD.replace("caliper: 75 um, ", ""), ["stocks.laid says nothing about its thickness"]),
        (HEAD.replace("  laid:", "  laid: {caliper: 75}\n  wove:"), ["stocks.laid.caliper: 75 has no unit"]),
    ],
)
def test_what_stands_in_for_a_fault_is_not_found_fault_with(said: Said, head: str, message: list[str]) -> None:
    assert parts(said(head + WORN + "}\n")) == message


def test_a_kind_that_can_only_be_guessed_is_not_looked_for_in_files(said: Said) -> None:
    lines = said(HEAD + WORN + "inside: {kind: zzzz, file: lost.txt}}\n")
    assert parts(lines) == ["Nets: inside.kind: 'zzzz' is not known"]


def test_all_that_is_wrong_with_a_text_is_told_at_once(said: Said, tmp_path: Path) -> None:
    (tmp_path / "haul.md").write_text("![](net.png)\n\n<b>⚓</b>\n\n![](net.png) ![](hull.png)\n\n\a", encoding="utf-8")
    (tmp_path / "hull.png").write_bytes(b"no picture")
    lines = said(HEAD + WORN + "inside: {kind: text, file: haul.md, face: garmond}}\n" + WORN + FILE.format("haul.md"))
    assert parts(lines)[:5] == [
        "haul.md names a picture that is not there: net.png in line 1",
        "line 5 of haul.md: hull.png is not a picture",
        "haul.md has 1 control character, left out",
        "haul.md has raw HTML in line 3, left out",
        "'garmond' is not a typeface of bookmaker",
    ]
    assert parts(lines)[-1] == "haul.md: the typeface Noto Serif has no glyph for ⚓ U+2693, line 3"


def test_what_files_of_other_books_lack_is_told_beside_a_fault(said: Said, tmp_path: Path) -> None:
    (tmp_path / "haul.txt").write_text("the ⚓", encoding="utf-8")
    lines = said(HEAD + WORN + FILE.format("haul.txt") + WORN + "space: attic}\n" + WORN + FILE.format("a.txt"))
    assert parts(lines) == [
        "haul.txt: the typeface Noto Serif has no glyph for ⚓ U+2693, line 1",
        "there is no space 'attic'",
        "there is no text a.txt",
    ]


def test_a_profile_that_is_missing_hides_nothing(said: Said) -> None:
    lines = said(HEAD.replace("books:", "printer: {profile: laser.yaml, sheet: A5}\nbooks:") + WORN + "space: attic}\n")
    assert parts(lines) == ["there is no profile laser.yaml", "there is no space 'attic'"]


def test_a_file_that_books_take_from_the_defaults_is_told_once(said: Said) -> None:
    lent = "defaults: {design: {front_picture: lost.png}, inside: {kind: text, face: garmond}}\nbooks:"
    lines = said(HEAD.replace("books:", lent) + 3 * (WORN + "inside: {file: a.txt}}\n"))
    assert [line.split(":")[0] for line in lines] == ["5", "5", "7", "8", "9"]
    assert parts(lines) == [
        "there is no picture lost.png",
        "'garmond' is not a typeface of bookmaker",
        *["there is no text a.txt"] * 3,
    ]


def test_stocks_books_and_boxes_that_cannot_be_made_are_told_together(said: Said) -> None:
    head = HEAD.replace("books:", "  odd: {basis_weight: 7 lb felt}\n  board: {caliper: 2 mm}\nbooks:")
    boxes = "slipcases:\n  pair: {books: [4, 5], stock: board, tab: 16 mm}\n  lost: {books: [1], stock: odd}\n"
    lines = said(
        head
        + WORN.replace("laid", "odd")
        + "}\n"
        + WORN.replace("15 mm", "150 mm")
        + "}\n"
        + WORN.replace("21 mm", "350 mm")
        + "}\n"
        + WORN.replace("Nets", "Ropes")
        + "}\n"
        + WORN.replace("Nets", "Oars")
        + "}\n"
        + boxes
    )
    assert [line.split(":")[0] for line in lines] == ["5", "9", "10", "10", "14"]
    assert [part.split(" is ")[0] for part in parts(lines)[1:4]] == [
        "a strip of two pages",
        "the page",
        "a strip of two pages",
    ]


@pytest.mark.parametrize("model", [*PAGES, *STYLES, *BLOCKS, *COVERS], ids=lambda model: model.__name__)
def test_the_example_of_a_group_agrees_with_its_model(model: type[Entry]) -> None:
    assert isinstance(model.model_validate(example_of(model)), model)


SCRAPS = st.sampled_from(["", "x", "7", "21 mm", "red", "cloth", "text", "accordion", "{", "-3"])
KEYS = st.sampled_from(
    ["title", "size", "life_size", "block", "cover", "inside", "design", "kind", "style", "stock", "file", "pages"]
)
TREES = st.recursive(
    st.none() | SCRAPS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(KEYS, inner, max_size=5),
    max_leaves=25,
)


@settings(max_examples=150, deadline=None)
@given(st.dictionaries(st.sampled_from(["shelf", "stocks", "books", "spaces", "slipcases", "x"]), TREES, max_size=6))
def test_any_file_is_mended_or_given_up_and_never_silently(plain: dict[str, object]) -> None:
    found = mended(plain, ShelfSpec)  # type: ignore[arg-type]
    assert found.problems or found.entry == ShelfSpec.model_validate(plain)  # an empty shelf is sound
    assert len(set(found.problems)) == len(found.problems)
    assert found.entry is not None or () in found.fields


def test_a_list_at_fault_hides_nothing_beside_it(said: Said, tmp_path: Path) -> None:
    (tmp_path / "titles.csv").write_text("title,pages\nNets,8,9\n", encoding="utf-8")
    listed = "  - from titles.csv\n  - from lost.csv\n"
    boxes = "slipcases: {pair: {books: [Nets, Floats], stock: card}}\n"
    lines = said("viewing_distance: 300\n" + HEAD + listed + WORN + "space: attic}\n" + boxes)
    assert parts(lines) == [
        "viewing_distance: 300 has no unit",
        "there is no table lost.csv",
        "there is no space 'attic'",
        "this line has 3 cells, but there are 2 columns",
    ]


def test_a_list_at_fault_that_is_all_there_is_hides_nothing(said: Said) -> None:
    lines = said(HEAD.replace("75 um", "75").replace("books:", "books: from lost.csv"))
    assert parts(lines) == ["stocks.laid.caliper: 75 has no unit", "there is no table lost.csv"]


def test_a_group_on_a_wall_of_no_known_pattern_is_told(said: Said) -> None:
    wall = "{width: 90 mm, height: 80 mm, groups: [{pattern: rwo, things: [a]}, {}]}"
    lines = said(HEAD + WORN + "}\nsurfaces: {wall: " + wall + "}\n")
    told = {"surfaces.wall.groups[1].pattern: 'rwo' is not known", "surfaces.wall.groups[2] has no pattern"}
    assert told <= set(parts(lines))
