"""What is printed can be read again: text taken out of the sheets by two other readers is the text that went in."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
from pypdf import PdfReader

from tests.kit.shelves import made
from tests.kit.strokes import POINT

SHELF = """\
shelf: Reading Back
stocks:
  page: {caliper: 75 um, grain: long}
  cover: {caliper: 160 um}
books:
  - title: The Office of Fogs
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page}
    cover: {kind: wrap, stock: cover}
    inside: {kind: text, file: fogs.txt, size: 2.2 pt, numbers: no}
"""

TYPED = """\
'It isn't "fog",' wrote the chief--he meant the sea--'it's the 1890's...' And so it was: 5--7 banks, 6' deep."""

PRINTED = """\
\u2018It isn\u2019t \u201cfog\u201d,\u2019 wrote the chief\u2014he meant the sea\u2014\u2018it\u2019s the \
1890\u2019s\u2026\u2019 And so it was: 5\u20137 banks, 6\u2032 deep."""
"""What print makes of the same, set down by hand."""

TEXT = """\
The first officer of the office of fogs filed a difficult affidavit: five baffled fishermen had found a \
fjord that was not affixed to any official chart. \u201cFind it,\u201d said the chief.

Afterwards the secretary, an unflappable and conscientious stenographer, transcribed it in triplicate; the \
flotilla\u2019s unofficial cartographer, a Miss Fflewellyn, redrew the headlands, offshore reefs and \
sandbanks with extraordinary deliberation and infinitesimal handwriting.

\u201cWe shall require acknowledgement,\u201d he wrote\u2014and waited. Nobody in the neighbouring settlements \
acknowledged anything. The fog, which had been rolling in magnificently since the middle of February, \
suffered no interruption whatever. """


@pytest.fixture(scope="module")
def output(tmp_path_factory: pytest.TempPathFactory) -> tuple[dict[str, Any], Path, str]:
    """The plan, the folder with the sheets, and the text that is to be read on them."""
    folder = tmp_path_factory.mktemp("fogs")
    (folder / "fogs.txt").write_text("\n\n".join([TEXT, TYPED] * 12), encoding="utf-8")
    plan, out = made(SHELF, folder)
    return plan, out, "\n\n".join([TEXT, PRINTED] * 12)


def panels(plan: dict[str, Any]) -> list[tuple[int, str, int, tuple[float, float, float, float]]]:
    """Every printed page in the order of the book: number, file, sheet, and its box in PDF points."""
    found = []
    for sheet in plan["sheets"]:
        for piece in sheet["pieces"]:
            assert piece["turned_deg"] == 0
            for panel in piece["panels"]:
                if panel["page"] is not None:
                    x, y, width, height = (value / POINT for value in panel["rect_mm"])
                    found.append((panel["page"], sheet["file"], sheet["page"], (x, y, x + width, y + height)))
    return sorted(found)


def words_of(lines: str) -> list[str]:
    """The words of lines; a soft hyphen or a dash at the end of one joins it to the next."""
    return re.sub(r"(?<=\u2014)\s*\n\s*|\u00ad\s*\n\s*", "", lines).replace("\n", " ").split()


def test_pdfium_reads_the_text_off_the_refolded_strips(output: tuple[dict[str, Any], Path, str]) -> None:
    plan, out, text = output
    lines = ""
    assert len(panels(plan)) == plan["books"][0]["pages"] > 20
    assert plan["books"][0]["strips"] > 2
    for _, file, sheet, box in panels(plan):
        document = pypdfium2.PdfDocument(out / file)
        page = document[sheet - 1].get_textpage()
        # PDFium marks a hyphen that ends a line as a noncharacter or as a control character
        read = re.sub("[\ufffe\x02\u00ad]", "\u00ad\n", page.get_text_bounded(*box))
        lines += read.replace("\r\n", "\n").strip() + "\n"
        document.close()
    assert words_of(lines) == text.split()


def test_pypdf_reads_the_text_off_the_refolded_strips(output: tuple[dict[str, Any], Path, str]) -> None:
    plan, out, text = output
    names = {file for _, file, _, _ in panels(plan)}
    pages = {name: [_lines(page) for page in PdfReader(out / name).pages] for name in names}
    lines = ""
    for _, file, sheet, (left, bottom, right, top) in panels(plan):
        mine = [line for x, y, line in pages[file][sheet - 1] if left < x < right and bottom < y < top]
        lines += "\n".join(mine) + "\n"
    assert words_of(lines) == text.split()


def _lines(page: Any) -> list[tuple[float, float, str]]:
    """The lines of a page in the order of its content, each with the place where it begins."""
    lines: list[tuple[float, float, str]] = []

    def visit(text: str, cm: list[float], tm: list[float], *_: object) -> None:
        x, y = tm[4] * cm[0] + cm[4], tm[5] * cm[3] + cm[5]
        if text.strip():
            lines.append((x, y, text.strip("\n")))

    page.extract_text(visitor_text=visit)
    return lines


def test_ligatures_are_there_and_are_mapped_back(output: tuple[dict[str, Any], Path, str]) -> None:
    """Noto Serif joins f and i: fewer glyphs than letters, yet each letter comes back."""
    plan, out, _ = output
    file = panels(plan)[0][1]
    font = next(iter(PdfReader(out / file).pages[0]["/Resources"]["/Font"].values())).get_object()  # type: ignore[index]
    said = re.findall(r"> <([0-9A-F]{8,})>", font["/ToUnicode"].get_data().decode())
    assert {bytes.fromhex(code).decode("utf-16-be") for code in said} & {"fi", "ffi", "fl", "ff"}
