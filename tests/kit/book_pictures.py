"""The pictures of a book that change with its title."""

from __future__ import annotations

from collections.abc import Iterator

from bookmaker.sheets.facsimiles import Facsimile, facsimile_of_piece
from bookmaker.things.draft import Draft

__all__ = ["pictures_of"]


def pictures_of(draft: Draft) -> Iterator[Facsimile]:
    """The parts of the cover as they are cut, front, spine and back, and two pages that face each other."""
    yield from (facsimile_of_piece(piece) for piece in draft.pieces if piece.flat.dressed and not piece.flat.pages)
    yield from draft.faces.values()
    yield from draft.openings[len(draft.openings) // 2 :][:1]
