"""The proof: every opening of every chosen book, once at true size and once at 300 %."""

from __future__ import annotations

from pathlib import Path

import pypdfium2
import pytest
from pypdf import PdfReader

from bookmaker import make
from bookmaker.shelf.choice import Choice
from bookmaker.workshop import Wishes

SHELF = """\
shelf: Proof
stocks:
  page: {caliper: 80 um}
  covers: {caliper: 160 um}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: accordion, stock: page, pages: 6}
  cover: {kind: wrap, stock: covers}
  inside: {kind: text, file: text.txt, size: 2.5 pt, face: old style}
books:
  - {title: Tides}
  - {title: Ropes, direction: right-to-left, inside: {kind: ruled}}
  - {title: Void, inside: {kind: blank}}
"""
TEXT = "Quill went down to the landing and counted the ropes. Nobody had answered him since Tuesday.\n\n" * 6


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("proof")
    (folder / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    (folder / "text.txt").write_text(TEXT, encoding="utf-8")
    make(folder / "shelf.yaml", folder / "out", wishes=Wishes(proof=True))
    return folder


def titles(path: Path) -> list[tuple[str, int]]:
    """The outline: each title with the number of its page."""
    reader = PdfReader(path)
    return [(str(entry.title), reader.get_destination_page_number(entry)) for entry in reader.outline]  # type: ignore[union-attr, misc, arg-type]


def test_every_book_stands_in_the_outline_at_both_sizes_in_order(place: Path) -> None:
    said = titles(place / "out" / "proof.pdf")
    names = [name for name, _ in said]
    assert names == [f"{book}, {size}" for size in ("at true size", "at 300 %") for book in ("Tides", "Ropes", "Void")]
    assert [page for _, page in said] == sorted(page for _, page in said)


def test_openings_are_numbered_as_they_face_each_other(place: Path) -> None:
    pages = [page.extract_text() for page in PdfReader(place / "out" / "proof.pdf").pages]
    for name, numbers in (("Tides", ["2–3", "4–5"]), ("Ropes", ["3–2", "5–4"])):
        for size in ("at true size", "at 300 %"):
            said = "".join(text for text in pages if f"{name}, {size}" in text)
            assert all(number in said for number in numbers)
            assert "6–7" not in said


def widths(path: Path, word: str) -> list[float]:
    """How wide a word is wherever it stands, in mm, as PDFium measures it."""
    found = []
    with pypdfium2.PdfDocument(path) as document:
        for page in document:
            text = page.get_textpage()
            search = text.search(word, match_case=True)
            while hit := search.get_next():
                index, count = hit
                boxes = [text.get_charbox(at) for at in range(index, index + count)]
                found.append((max(box[2] for box in boxes) - min(box[0] for box in boxes)) / 72 * 25.4)
            text.close()
            page.close()
    return found


def test_true_size_is_that_of_the_sheets_and_300_percent_is_three_times_that(place: Path) -> None:
    printed, proof = (widths(place / "out" / name, "Quill") for name in ("page.pdf", "proof.pdf"))
    usual = min(printed)
    true, large = proof[: len(proof) // 2], proof[len(proof) // 2 :]
    assert len(true) == len(large) > 2
    assert min(true) == pytest.approx(usual, rel=0.02)
    for one, other in zip(true, large, strict=True):
        assert other == pytest.approx(3 * one, rel=0.02)


def test_only_the_chosen_books_are_proofed(place: Path) -> None:
    make(place / "shelf.yaml", place / "one", wishes=Wishes(Choice(only=("Tides",)), proof=True))
    assert {name.partition(",")[0] for name, _ in titles(place / "one" / "proof.pdf")} == {"Tides"}


def test_no_proof_is_written_unless_it_is_asked_for(place: Path) -> None:
    make(place / "shelf.yaml", place / "plain")
    assert not (place / "plain" / "proof.pdf").exists()


def test_sheets_have_an_outline_of_books(place: Path) -> None:
    assert {name for name, _ in titles(place / "out" / "covers.pdf")} == {"1. Tides", "2. Ropes", "3. Void"}
