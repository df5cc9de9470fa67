"""The pictures of a book that change with its title."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bookmaker.sheets.facsimiles import Facsimile, facsimile_of_panel, facsimile_of_piece, side_by_side
from bookmaker.sheets.flat import Role
from bookmaker.sheets.piece import Piece
from bookmaker.things.book.faces_seen import facsimile_of_face

__all__ = ["pictures_of"]


def pictures_of(pieces: Sequence[Piece]) -> Iterator[Facsimile]:
    """The pictures of a book."""
    yield from (facsimile_of_piece(piece) for piece in pieces if piece.flat.dressed and not piece.flat.pages)
    for role in (Role.FRONT, Role.SPINE, Role.BACK):
        face = facsimile_of_face(pieces, role)
        if face:
            yield face
    pages = {panel.page: (piece, panel) for piece in pieces for panel in piece.flat.panels if panel.page}
    if pages:
        verso = len(pages) // 2 // 2 * 2
        yield side_by_side([facsimile_of_panel(*pages[verso]), facsimile_of_panel(*pages[verso + 1])])
