"""A shelf of covers: neighbours have different colours, what the maker named stays."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.designs import Words, settled
from bookmaker.designs.cloth import Cloth
from bookmaker.designs.palettes import PALETTES, Material
from bookmaker.designs.paper_boards import PaperBoards
from bookmaker.designs.plain import Plain
from bookmaker.designs.tones import apart
from bookmaker.drawing import Colour
from bookmaker.pipeline import check
from bookmaker.spec.entry import Entry
from bookmaker.wardrobe import dressed

NAMED = [Cloth(), PaperBoards(), Plain(), Cloth(colour=Colour.from_hex("#6e2428")), Cloth(palette="attic")]


@given(st.lists(st.tuples(st.sampled_from(NAMED), st.text(min_size=1, max_size=9)), min_size=2, max_size=30))
@settings(max_examples=60, deadline=None)
def test_no_two_neighbours_have_the_same_colour(row: list[tuple[Entry, str]]) -> None:
    done = list(settled([(entry, Words(title), "shelf") for entry, title in row]))
    for (one, other), ((before, _), (after, _)) in zip(pairwise(done), pairwise(row), strict=True):
        if getattr(before, "colour", None) and getattr(after, "colour", None):
            continue  # the maker named both
        assert apart(one.colour, other.colour) > 0.05  # type: ignore[attr-defined]


def test_a_named_colour_stays() -> None:
    blue = Colour.from_hex("#123456")
    row = [(Cloth(colour=blue), Words("A"), None), (Cloth(colour=blue), Words("B"), None), (Plain(), Words("C"), None)]
    assert [entry.colour for entry in settled(row)] == [blue, blue, Plain().colour]  # type: ignore[attr-defined]


def test_a_book_takes_its_first_colour_where_nobody_minds() -> None:
    """The choice hangs on the book: alone, or first in its space, it is always the same."""
    (alone,) = settled([(Cloth(), Words("Tides"), "upper")])
    *_, moved = settled([(Cloth(), Words("Ropes"), "lower"), (Cloth(), Words("Tides"), "upper")])
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


def test_jackets_are_chosen_beside_what_their_neighbours_show(tmp_path: Path) -> None:
    """Of three books in jackets of one palette no two neighbours are alike, whatever lies under the jackets."""
    row = "".join(f"      - {{title: {title}}}\n" for title in ("Salt", "Rope", "Bees", "Moths", "Clocks", "Rain"))
    (tmp_path / "shelf.yaml").write_text(
        "shelf: Jackets\nstocks:\n  page: {caliper: 80 um}\n  card: {caliper: 160 um}\nbooks:\n"
        "  - size: {height: 22 mm, width: 15 mm}\n"
        "    block: {kind: concertina, stock: page, pages: 40}\n"
        "    cover: {kind: wrap, stock: card}\n"
        "    jacket: {stock: page, design: {style: paperback, palette: attic}}\n"
        f"    design: {{style: cloth}}\n    row:\n{row}",
        encoding="utf-8",
    )
    coats = [book.entry for book, _ in dressed(check(tmp_path / "shelf.yaml").plan.books)]
    jackets = [entry.jacket.design.colour for entry in coats if entry.jacket and entry.jacket.design]  # type: ignore[attr-defined]
    assert len(jackets) == 6
    assert all(colour in PALETTES["attic"].grounds[Material.CLOTH] for colour in jackets)
    assert min(apart(one, other) for one, other in pairwise(jackets)) > 0.05
    assert all(entry.design.colour in PALETTES["library"].grounds[Material.CLOTH] for entry in coats)  # type: ignore[attr-defined]
