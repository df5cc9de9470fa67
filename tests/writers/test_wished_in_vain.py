"""What is wished for where there is nothing for it to show is told, and not just left out."""

from __future__ import annotations

from pathlib import Path

from bookmaker import make
from bookmaker.shelf.wishes import Wishes
from tests.kit.shelves import written

FRAMES = """\
shelf: Over the Stove
stocks:
  photo: {caliper: 200 um}
things:
  - {id: harbour, kind: frame, stock: photo, width: 40 mm, height: 30 mm}
"""

BOOK = """\
books:
  - title: Tides
    size: {height: 20 mm, width: 15 mm}
    block: {kind: leaves, stock: photo, pages: 16}
    cover: {kind: wrap, stock: photo}
"""

BOTH = Wishes(contact_sheet=True, proof=True)


def said(folder: Path, text: str, wishes: Wishes) -> list[str]:
    return [problem.message for problem in make(written(text, folder), folder / "out", wishes=wishes).about]


def test_a_proof_and_a_sheet_of_spines_without_books_are_told(tmp_path: Path) -> None:
    assert said(tmp_path, FRAMES, BOTH) == [
        "there is no sheet of spines, because nothing stands on the shelf",
        "there is no proof, because no book with pages is printed",
    ]
    assert not {"spines.pdf", "proof.pdf"} & {file.name for file in (tmp_path / "out").iterdir()}


def test_nothing_is_said_where_they_are_written_or_not_wished_for(tmp_path: Path) -> None:
    assert not any(one.startswith("there is no") and ", because " in one for one in said(tmp_path, FRAMES + BOOK, BOTH))
    assert {"spines.pdf", "proof.pdf"} <= {file.name for file in (tmp_path / "out").iterdir()}
    assert said(tmp_path, FRAMES, Wishes()) == []
