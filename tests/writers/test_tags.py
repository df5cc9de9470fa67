"""What a PDF says of its text: read back with pypdf, and with PDFium's own reader of tags."""

from __future__ import annotations

import ctypes
import io
import re
from pathlib import Path as FilePath

import pikepdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from pypdf import PageObject, PdfReader

from bookmaker import make
from bookmaker.ground.art import Group, Tagged, Written
from bookmaker.ground.drawing import Art, Canvas, Role, Tag
from bookmaker.ground.geometry import Point, Rect, Size
from bookmaker.ground.typefaces import bundled, set_line
from bookmaker.workshop import Wishes
from bookmaker.writers.pdf import PdfFile

SHELF = """\
shelf: Tags
stocks:
  page: {caliper: 80 um}
  covers: {caliper: 160 um}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: accordion, stock: page, pages: 6}
  cover: {kind: wrap, stock: covers}
books:
  - {title: Ebbe, inside: {kind: text, file: text.txt, language: de}}
  - {title: Tides, inside: {kind: text, file: text.txt, language: en}}
  - {title: Маяк, inside: {kind: ruled}}
"""


def written(text: str, y: float, role: Role) -> Art:
    return Tagged(Written(set_line(bundled("text"), 3.0, text), Point(5, y)), Tag(role, text))


def made(*pages: Art, language: str = "en") -> bytes:
    file = io.BytesIO()
    with PdfFile(file, title="Trial", language=language) as pdf:
        for art in pages:
            with pdf.page(Size(60, 40)) as canvas:
                art.draw(canvas)
    return file.getvalue()


def by_pdfium(data: bytes, page: int) -> list[tuple[str, int]]:
    """The type of each element of a page, and the number of its text there, as PDFium reads them."""
    with pypdfium2.PdfDocument(data) as document:
        opened = document[page]
        tree = pdfium.FPDF_StructTree_GetForPage(opened)
        (whole,) = (
            pdfium.FPDF_StructTree_GetChildAtIndex(tree, index)
            for index in range(pdfium.FPDF_StructTree_CountChildren(tree))
        )
        found = []
        for place in range(pdfium.FPDF_StructElement_CountChildren(whole)):
            element = pdfium.FPDF_StructElement_GetChildAtIndex(whole, place)
            if element:  # those of other pages are none here
                name = ctypes.create_string_buffer(20)
                pdfium.FPDF_StructElement_GetType(element, name, 20)
                kind = name.raw.decode("utf-16-le").partition("\0")[0]
                found.append((kind, pdfium.FPDF_StructElement_GetMarkedContentID(element)))
        pdfium.FPDF_StructTree_Close(tree)
        opened.close()
        return found


TWO_PAGES = (
    Group(
        (
            written("Ropes", 30, Role.TITLE),
            written("Measure", 20, Role.HEADING),
            written("Take a rope.", 10, Role.TEXT),
        )
    ),
    Group((written("Tides", 30, Role.TITLE), written("Wait.", 10, Role.TEXT))),
)


def test_roles_are_elements_in_the_order_they_are_read() -> None:
    data = made(*TWO_PAGES)
    assert by_pdfium(data, 0) == [("H1", 0), ("H2", 1), ("P", 2)]
    assert by_pdfium(data, 1) == [("H1", 0), ("P", 1)]
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert pdf.check_pdf_syntax() == []
        assert pdf.Root.MarkInfo.Marked
        places = pdf.Root.StructTreeRoot.ParentTree.Nums
        for page in pdf.pages:
            # from the text to its element, for whoever points at it (ISO 32000-1, 14.7.4.4)
            elements = places[2 * int(page.StructParents) + 1]
            assert [(element.K, element.Pg.objgen) for element in elements] == [
                (number, page.objgen) for number in range(len(elements))
            ]


def test_headings_of_the_first_level_are_the_outline() -> None:
    reader = PdfReader(io.BytesIO(made(*TWO_PAGES)))
    entries = [(entry.title, reader.get_destination_page_number(entry)) for entry in reader.outline]  # type: ignore[union-attr, arg-type]
    assert entries == [("Ropes", 0), ("Tides", 1)]


def test_a_file_without_roles_says_nothing_of_tags() -> None:
    assert b"StructTree" not in made(Written(set_line(bundled("text"), 3.0, "Ropes"), Point(5, 5)))


def test_text_that_is_repeated_has_no_place_in_a_reading() -> None:
    class Again:
        def draw(self, canvas: Canvas) -> None:
            canvas.repeat(written("Ropes", 5, Role.TEXT), Rect(0, 0, 60, 40), [Point(0, 0), Point(0, 10)])

    assert b"StructTree" not in made(Again())


def languages(page: PageObject) -> list[str]:
    """The languages that stretches of a page are said to be in, in their order."""
    contents = page.get_contents()
    assert contents is not None
    found = re.findall(rb"/Lang<(\w+)>", contents.get_data())
    return [bytes.fromhex(one.decode()).decode("utf-16") for one in found]


def test_only_text_in_another_language_than_that_of_the_file_says_which() -> None:
    word = Written(set_line(bundled("text"), 3.0, "Ebbe"), Point(5, 5))
    told = [Tagged(word, Tag(language=tag)) for tag in ("de", "en", "", "el")]
    for language, others in (("en", ["de", "el"]), ("de", ["en", "el"])):
        reader = PdfReader(io.BytesIO(made(Group((*told,)), language=language)))
        assert reader.trailer["/Root"]["/Lang"] == language
        assert languages(reader.pages[0]) == others


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> FilePath:
    folder = tmp_path_factory.mktemp("tags")
    (folder / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    (folder / "text.txt").write_text("Das Wasser ging, und es kam wieder.\n", encoding="utf-8")
    make(folder / "shelf.yaml", folder / "out", wishes=Wishes(proof=True))
    return folder / "out"


@pytest.mark.parametrize("name", ["page.pdf", "covers.pdf", "proof.pdf"])
def test_books_in_another_language_are_told_apart_on_the_sheets(place: FilePath, name: str) -> None:
    """German by its key, Russian by its letters; the notes around them are English, as the file is."""
    reader = PdfReader(place / name)
    assert reader.trailer["/Root"]["/Lang"] == "en"
    assert {tag for page in reader.pages for tag in languages(page)} == {"de", "ru"}


def test_the_guide_leads_to_its_chapters_and_says_what_its_lines_are(place: FilePath) -> None:
    (file,) = place.glob("*guide*.pdf")
    reader = PdfReader(file)
    assert {"1. Ebbe", "2. Tides", "3. Маяк"} <= {str(entry.title) for entry in reader.outline}  # type: ignore[union-attr]
    data = file.read_bytes()
    for number, page in enumerate(reader.pages):
        told = by_pdfium(data, number)
        assert [at for _, at in told] == list(range(len(told)))
        contents = page.get_contents()
        assert contents is not None
        assert contents.get_data().count(b"/MCID") == len(told) > 2
    kinds = {kind for number in range(len(reader.pages)) for kind, _ in by_pdfium(data, number)}
    assert kinds == {"H1", "H2", "P"}
