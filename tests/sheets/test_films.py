"""Film over the print: on sheets of its own, in every sum on the same pieces, and nowhere on what is sewn or glued."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from bookmaker import check, make
from bookmaker.guide.materials import papers_needed
from bookmaker.sheets.layout import Layout, lay_out
from tests.kit.by_kind import books_of

SHELF = """\
shelf: Filmed
stocks:
  album: {caliper: 160 um, film: 50 um, grain: longOFFCUTS}
  board: {caliper: 1 mm}
defaults:
  size: {height: 21 mm, width: 15 mm}
  design: {style: cloth}
books:
  - {title: Leaves, block: {kind: leaves, stock: album, pages: 12}, cover: {kind: wrap, stock: album}}
  - title: Cased
    block: {kind: leaves, stock: album, pages: 12}
    cover: {kind: case, stock: album, boards: board, endpapers: album}
"""


def written(folder: Path, off_cuts: str = "") -> Path:
    (folder / "shelf.yaml").write_text(SHELF.replace("OFFCUTS", off_cuts), encoding="utf-8")
    return folder / "shelf.yaml"


def laid_out(path: Path) -> Layout:
    checked = check(path)
    pieces = [piece for draft in checked.drafts.values() for piece in draft.pieces]
    return lay_out(pieces, checked.plan.stocks, 2.0)


def kinds(layout: Layout) -> Iterator[tuple[bool, set[str]]]:
    for sheet in layout.sheets:
        yield sheet.filmed, {placement.piece.flat.kind for placement in sheet.placements}


def test_no_sheet_holds_both(tmp_path: Path) -> None:
    found = list(kinds(laid_out(written(tmp_path))))
    filmed = set().union(*(names for film, names in found if film))
    bare = set().union(*(names for film, names in found if not film))
    assert filmed == {"wrap", "case"} or filmed.isdisjoint(bare)
    assert bare >= {"leaves", "endpaper"}
    assert filmed.isdisjoint(bare)


def test_an_off_cut_is_used_once(tmp_path: Path) -> None:
    layout = laid_out(written(tmp_path, ", off_cuts: [120 x 100 mm, 120 x 100 mm]"))
    assert sum(sheet.stock.off_cut for sheet in layout.sheets) <= 2
    assert layout.tallies[0].off_cuts == sum(sheet.stock.off_cut for sheet in layout.sheets)
    numbers = [(sheet.stock, sheet.number) for sheet in layout.sheets]
    assert len(set(numbers)) == len(numbers)


def test_thickness_counts_film_where_it_is_and_nowhere_else(tmp_path: Path) -> None:
    """By hand: 6 leaves of 0.16; the wrap adds 2 · 0.21; the case 2 · (1 + 0.21) and 4 endpapers without film."""
    wrapped, cased = books_of(check(written(tmp_path)).plan)
    assert round(wrapped.block.thickness.value, 6) == 0.96
    films = {
        layer.what: layer.count * layer.caliper for layer in cased.cover.thickness.layers if "film over" in layer.what
    }
    assert films["film over covering"] == 0.1
    assert not any("endpapers" in what for what in films)
    assert round(sum(layer.total for layer in wrapped.cover.thickness.layers if "film over" in layer.what), 6) == 0.1


def test_the_guide_buys_film_for_the_sheets_that_get_it(tmp_path: Path) -> None:
    layout = laid_out(written(tmp_path))
    (need,) = papers_needed([("album.pdf", number, sheet) for number, sheet in enumerate(layout.sheets)])
    width, height = layout.sheets[0].size
    assert need.film == sum(sheet.filmed for sheet in layout.sheets) * width * height
    assert 0 < need.film < need.sheets * width * height


def test_the_foot_of_a_sheet_says_which_it_is(tmp_path: Path) -> None:
    import pypdfium2

    make(written(tmp_path), tmp_path / "out")
    document = pypdfium2.PdfDocument(tmp_path / "out" / "album.pdf")
    texts = [page.get_textpage().get_text_range() for page in document]
    assert any("film this sheet" in text for text in texts)
    assert any("no film on this sheet" in text for text in texts)
