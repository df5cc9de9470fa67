"""A shelf of covers: looks hang on nothing beside them, neighbours are kept apart, what the maker named stays."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path
from random import Random

import pytest
from PIL import Image

from bookmaker import check
from bookmaker.ground.drawing import Colour
from bookmaker.ground.geometry import Rect
from bookmaker.ground.problems import Problem
from bookmaker.sheets.flat import Role
from bookmaker.shelf.keeping import edited, looks_kept
from bookmaker.things.book.designs.colouring import coloured
from bookmaker.things.book.designs.design import Words
from bookmaker.things.book.designs.palettes import PALETTES, Material
from bookmaker.things.book.designs.styles.cloth import Cloth
from bookmaker.things.book.designs.styles.plain import Plain
from bookmaker.things.book.designs.tones import apart
from bookmaker.workshop import Checked
from tests.kit.by_kind import books_of, drafts_of, lettering_of
from tests.kit.flats import panel
from tests.kit.recording import Placed, RecordingCanvas, record
from tests.kit.styles import every_style, style_of

ROW = """\
shelf: Neighbours
stocks: {page: {caliper: 80 um}, card: {caliper: 160 um}}
spaces: {left: {width: 900 mm, height: 40 mm, depth: 25 mm}}
defaults:
  size: {height: 22 mm, width: 15 mm}
  block: {kind: accordion, stock: page, pages: 8}
  cover: {kind: wrap, stock: card}
  space: left
books:
"""


def row_of(folder: Path, titles: Sequence[str], designs: Sequence[str]) -> Checked:
    """Books side by side."""
    books = "".join(
        f"  - {{id: book-{number}, title: {title!r}, design: {{{design}}}}}\n"
        for number, (title, design) in enumerate(zip(titles, designs, strict=True))
    )
    (folder / "shelf.yaml").write_text(ROW + books, encoding="utf-8")
    return check(folder / "shelf.yaml")


DESIGNS = ["style: cloth", "style: paper boards", "style: plain", 'style: cloth, colour: "#6e2428"']


def test_no_two_neighbours_have_the_same_colour_once_they_are_kept_apart(tmp_path: Path) -> None:
    chance = Random(7)
    designs = [chance.choice([*DESIGNS, "style: cloth, palette: attic"]) for _ in range(60)]
    found = row_of(tmp_path, [f"Book {number}" for number in range(60)], designs)
    assert any("neighbours have nearly the same colour" in problem.message for problem in found.problems)
    assert not isinstance(edited(found.shelf, list(looks_kept(found.shelf, found.plan, unlike=True))), Problem)
    after = check(tmp_path / "shelf.yaml")
    assert not any("neighbours have nearly" in problem.message for problem in after.problems)
    grounds = [book.coat.design.ground for book in books_of(after.plan)]
    for (one, other), (before, behind) in zip(pairwise(grounds), pairwise(designs), strict=True):
        settled = ("colour" in before or "plain" in before) and ("colour" in behind or "plain" in behind)
        if one and other and not settled:
            assert apart(one, other) > 0.05


def test_no_scene_comes_twice_in_a_space_once_books_are_kept_apart(tmp_path: Path) -> None:
    found = row_of(tmp_path, [f"Book {number}" for number in range(20)], ["style: picture"] * 20)
    assert any("show one scene" in problem.message for problem in found.problems)
    assert not isinstance(edited(found.shelf, list(looks_kept(found.shelf, found.plan, unlike=True))), Problem)
    after = check(tmp_path / "shelf.yaml")
    assert not any("show one scene" in problem.message for problem in after.problems)
    shown = [book.coat.design.scene_for(book.coat.words) for book in books_of(after.plan)]
    assert len(set(shown)) == len(shown) == 20


def test_scenes_that_were_named_are_no_news(tmp_path: Path) -> None:
    found = row_of(tmp_path, ["One", "Two"], ["style: picture, scene: train", "style: picture, scene: train"])
    assert not any("show one scene" in problem.message for problem in found.problems)


def test_a_look_hangs_on_nothing_that_stands_beside(tmp_path: Path) -> None:
    """Inserted, removed, put in another order, titled anew under its id: each has the colour it had."""
    titles, designs = [f"Book {number}" for number in range(12)], ["style: cloth"] * 12
    first = {book.id: book.coat.design for book in books_of(row_of(tmp_path, titles, designs).plan)}
    titles[4] = "Quite Another"
    again = {book.id: book.coat.design for book in books_of(row_of(tmp_path, titles, designs).plan)}
    assert again == first
    fewer = {book.id: book.coat.design for book in books_of(row_of(tmp_path, titles[:5], designs[:5]).plan)}
    assert fewer.items() <= first.items()
    assert len(set(map(repr, first.values()))) > 3


def test_a_named_colour_stays() -> None:
    blue = Colour.from_hex("#123456")
    row = [(Cloth(colour=blue), Words("A")), (Cloth(colour=blue), Words("B")), (Plain(), Words("C"))]
    assert [entry.colour for entry in coloured(row)] == [blue, blue, Plain().colour]  # type: ignore[attr-defined]


def test_a_book_takes_its_colour_whatever_went_before() -> None:
    """The choice hangs on the book: alone, or behind another, it is always the same."""
    (alone,) = coloured([(Cloth(), Words("Tides"))])
    *_, moved = coloured([(Cloth(), Words("Ropes")), (Cloth(), Words("Tides"))])
    assert alone == moved


@pytest.mark.parametrize("palette", PALETTES)
@pytest.mark.parametrize("material", Material)
def test_a_palette_has_enough_colours_that_differ(palette: str, material: Material) -> None:
    """Two neighbours leave a third something to choose."""
    grounds = PALETTES[palette].grounds[material]  # type: ignore[index]
    assert len(grounds) >= 6
    for one in grounds:
        for other in grounds:
            assert [third for third in grounds if min(apart(third, one), apart(third, other)) >= 0.05]


def test_jackets_are_kept_apart_as_their_neighbours_show(tmp_path: Path) -> None:
    """Of books in jackets of one palette no two neighbours are alike, whatever lies under the jackets."""
    row = "".join(f"      - {{title: {title}}}\n" for title in ("Salt", "Rope", "Bees", "Moths", "Clocks", "Rain"))
    (tmp_path / "shelf.yaml").write_text(
        "shelf: Jackets\nstocks:\n  page: {caliper: 80 um}\n  card: {caliper: 160 um}\nbooks:\n"
        "  - size: {height: 22 mm, width: 15 mm}\n"
        "    block: {kind: accordion, stock: page, pages: 40}\n"
        "    cover: {kind: wrap, stock: card}\n"
        "    jacket: {stock: page, design: {style: paperback, palette: attic}}\n"
        f"    design: {{style: cloth}}\n    space: left\n    row:\n{row}"
        "spaces: {left: {width: 90 mm, height: 40 mm, depth: 25 mm}}\n",
        encoding="utf-8",
    )
    found = check(tmp_path / "shelf.yaml")
    assert not isinstance(edited(found.shelf, list(looks_kept(found.shelf, found.plan, unlike=True))), Problem)
    coats = [book.coat for book in books_of(check(tmp_path / "shelf.yaml").plan)]
    jackets = [coat.jacket.colour for coat in coats if coat.jacket]  # type: ignore[attr-defined]
    assert len(jackets) == 6
    assert all(colour in PALETTES["attic"].grounds[Material.CLOTH] for colour in jackets)
    assert min(apart(one, other) for one, other in pairwise(jackets)) > 0.05
    assert all(coat.design.colour in PALETTES["library"].grounds[Material.CLOTH] for coat in coats)  # type: ignore[attr-defined]


UNLIKE = """\
shelf: Steps
stocks:
  page: {caliper: 80 um}
  card: {caliper: 160 um}
spaces:
  left: {width: 60 mm, height: 40 mm, depth: 25 mm}
  right: {width: 60 mm, height: 40 mm, depth: 25 mm}
defaults:
  size: {height: 22 mm, width: 15 mm}
  block: {kind: accordion, stock: page, pages: 60}
  cover: {kind: wrap, stock: card}
books:
  - title: Annals of Ice
    author: G. Fell
    design: {DESIGN}
    row:
      - {volume: I, size: {height: 22 mm, width: 15 mm}FIRST}
      - {volume: II, size: {height: 28 mm, width: 15 mm}SECOND}
      - {volume: III, size: {height: 20 mm, width: 15 mm}THIRD}
"""


def set_of(folder: Path, design: str, **each: str) -> Checked:
    """Three volumes of unlike heights."""
    text = UNLIKE.replace("DESIGN", design)
    for name in ("FIRST", "SECOND", "THIRD"):
        text = text.replace(name, each.get(name.casefold(), ""))
    Image.new("RGB", (900, 900), "#446688").save(folder / "strip.png")
    (folder / "shelf.yaml").write_text(text, encoding="utf-8")
    return check(folder / "shelf.yaml")


def spines_of(found: Checked) -> list[tuple[Rect, RecordingCanvas]]:
    pieces = [draft.pieces[-1] for draft in drafts_of(found)]
    return [(panel(piece.flat, Role.SPINE), record(piece.art)) for piece in pieces]


def test_a_picture_across_unlike_heights_has_one_scale_and_stands_on_the_tail(tmp_path: Path) -> None:
    spines = spines_of(set_of(tmp_path, "style: picture, spine_picture: strip.png, wear: none"))
    whole = [
        next(mark.transform for mark in canvas.marks if isinstance(mark, Placed) and mark.transform.d > 0)
        for _, canvas in spines
    ]
    assert len({(round(map_.a, 6), round(map_.d, 6)) for map_ in whole}) == 1
    assert len({round(map_.f - spine.y, 6) for map_, (spine, _) in zip(whole, spines, strict=True)}) == 1
    left = [spine.x - map_.e for map_, (spine, _) in zip(whole, spines, strict=True)]
    widths = [spine.width for spine, _ in spines]
    assert [right - start for start, right in pairwise(left)] == pytest.approx(widths[:2])
    tallest = max(spine.height for spine, _ in spines)
    assert whole[0].d >= tallest - 1e-6


@every_style
def test_volumes_of_unlike_heights_are_lettered_in_one_way_and_size(model: type, tmp_path: Path) -> None:
    """Within the few hundredths by which a style's rules take more of a tall spine."""
    found = set_of(tmp_path, f"style: {style_of(model)}, wear: none")
    titles = [
        line for lettering in lettering_of(found) for line in lettering if (line.on, line.what) == ("spine", "title")
    ]
    assert len({line.way for line in titles}) == 1
    assert max(line.x_height for line in titles) == pytest.approx(min(line.x_height for line in titles), rel=0.06)


def test_a_broken_picture_across_a_set_is_told(tmp_path: Path) -> None:
    picture = "style: picture, spine_picture: strip.png, wear: none"

    def told(design: str, **each: str) -> list[str]:
        return [str(p) for p in set_of(tmp_path, design, **each).problems if "across" in p.message]

    here, there = ", space: left", ", space: right"
    assert told(picture, first=here, second=here, third=here) == []
    (gap,) = told(picture, second=", design: {style: cloth}")
    assert "has no picture on its spine" in gap
    assert "spine_picture: strip.png" in gap
    (parted,) = told(picture, first=here, second=here, third=there)
    assert "stand in left and right" in parted
    (drawn,) = told("style: picture", first=here, second=there, third=there)
    assert "stand in left and right" in drawn
    assert told("style: cloth", first=here, second=there, third=there) == []


SET = """\
shelf: The Rope Walk
stocks: {laid: {caliper: 75 um}, card: {caliper: 160 um}}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: accordion, stock: laid, pages: 48}
  cover: {kind: wrap, stock: card}
  series: Hemp
books:
  - {title: Twine, design: {style: cloth, palette: attic%s}}
  - {title: Cable, design: {style: cloth, palette: fairground%s}}
  - {title: Hawser, design: {style: cloth, palette: attic}}
"""


def test_a_palette_that_a_set_overrules_is_told(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(SET % ("", ""), encoding="utf-8")
    told = [problem for problem in check(tmp_path / "shelf.yaml").problems if "palette" in problem.message]
    assert [str(problem).split(": ", 1)[1] for problem in told] == [
        "Cable takes its colour from the attic palette of Twine, the first of the series 'Hemp', for a set is alike: "
        "its own palette, fairground, is not used; write one palette for the whole set, or colour: with one of its own"
    ]


@pytest.mark.parametrize("keys", [("", ', colour: "#803020"'), (", steps: yes", ", steps: yes")])
def test_books_of_a_set_that_choose_for_themselves_are_no_news(tmp_path: Path, keys: tuple[str, str]) -> None:
    (tmp_path / "shelf.yaml").write_text(SET % keys, encoding="utf-8")
    assert not [problem for problem in check(tmp_path / "shelf.yaml").problems if "palette" in problem.message]
