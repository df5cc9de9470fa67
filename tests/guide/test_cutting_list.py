"""The cutting list, read back from its PDF."""

from __future__ import annotations

import re
from pathlib import Path

import pypdfium2 as pdfium
from pypdf import PdfReader
from pypdf.generic import ContentStream

from bookmaker.ground.geometry import Size
from bookmaker.guide import cutting_list_pages
from bookmaker.sheets.cutting import CutPart, Stick
from bookmaker.writers.leaflet_pdf import write_leaflet

BOARD = CutPart("board", "grey board", 21.8, 14.65, 1.0, 2)
BLOCK = CutPart("block", "lime wood", 20.9, 14.9, 6.125)


def write_cutting_list(path: Path, parts: list[tuple[str, CutPart]], size: Size) -> None:
    write_leaflet(path, "Shelf", cutting_list_pages("Shelf", parts, size), size)


RAIL = Stick("rail", "basswood", 31.25, 4.0, 2.0, (45.0, 45.0), 2)
STRUT = Stick("strut", "basswood", 12.0, 4.0, 2.0, (30.0, -30.0))


def lines_of(path: Path) -> list[str]:
    return [line for page in PdfReader(path).pages for line in page.extract_text().splitlines()]


def test_every_part_is_listed_once_under_its_material(tmp_path: Path) -> None:
    parts = [(f"{number}. Volume {number}", part) for number in range(1, 61) for part in (BOARD, BLOCK)]
    write_cutting_list(tmp_path / "list.pdf", parts, Size(210, 297))
    text = " ".join(lines_of(tmp_path / "list.pdf"))
    assert len(PdfReader(tmp_path / "list.pdf").pages) == 3
    assert text.index("grey board, 1.00 thick") < text.index("lime wood, 6.12 thick")
    for number in range(1, 61):
        assert len(re.findall(rf"\b{number}\. Volume {number} board 2 14\.65 21\.80 1\.00", text)) == 1
        assert len(re.findall(rf"\b{number}\. Volume {number} block 1 14\.90 20\.90 6\.12", text)) == 1


def test_every_part_has_a_box_to_tick(tmp_path: Path) -> None:
    """Closed paths of four corners, stroked: one for each part."""
    write_cutting_list(tmp_path / "list.pdf", [(f"{number}. A Book", BOARD) for number in range(1, 8)], Size(210, 297))
    reader = PdfReader(tmp_path / "list.pdf")
    content = ContentStream(reader.pages[0]["/Contents"], reader)
    assert [operator for _, operator in content.operations].count(b"h") == 7


def test_long_titles_keep_to_their_column(tmp_path: Path) -> None:
    """Measured on the page by PDFium: the title ends before the part begins."""
    write_cutting_list(tmp_path / "list.pdf", [("Q" * 300, BOARD)], Size(148, 210))
    with pdfium.PdfDocument(tmp_path / "list.pdf") as pdf:
        text = pdf[0].get_textpage()
        whole = text.get_text_range()
        letters = [at for at, letter in enumerate(whole) if letter == "Q"]
        title_ends = max(text.get_charbox(at)[2] for at in letters)
        part_begins = text.get_charbox(whole.index("board 2"))[0]
    assert len(letters) == 300
    assert title_ends < part_begins


def test_the_same_list_has_the_same_bytes(tmp_path: Path) -> None:
    for name in ("one.pdf", "two.pdf"):
        write_cutting_list(tmp_path / name, [("1. A Book", BOARD)], Size(210, 297))
    assert (tmp_path / "one.pdf").read_bytes() == (tmp_path / "two.pdf").read_bytes()


def test_sticks_are_listed_by_their_strip_with_length_and_bevels(tmp_path: Path) -> None:
    """A rail mitred at both ends loses two faces on its inner side; a strut of one slant only what one end takes."""
    pages = cutting_list_pages(
        "Shelf", [("1. A Book", BOARD)], Size(210, 297), [("The view", STRUT), ("The view", RAIL)]
    )
    write_leaflet(tmp_path / "list.pdf", "Shelf", pages, Size(210, 297))
    text = " ".join(lines_of(tmp_path / "list.pdf"))
    assert text.count("basswood strip, 4.00 wide and 2.00 thick") == 1
    rail, strut = "The view rail both 45° 2 31.25 23.25", "The view strut both 30°, slanting the same way 1 12.00 9.69"
    assert text.index("board 2 14.65 21.80 1.00") < text.index(rail) < text.index(strut)
