"""Where on paper each part lies: which file, which sheet of it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ..sheets.layout import Sheet
from ..sheets.piece import Piece
from .wording import as_list, numbered

__all__ = ["Prints", "SheetOfFile"]

SheetOfFile = tuple[str, int, Sheet]
"""The file, the page of it that shows the front of the sheet, and the sheet."""


@dataclass(frozen=True, slots=True)
class Prints:
    """The parts of one thing, each with the file and the number of its sheet, in the order of the files."""

    parts: tuple[tuple[str, Sheet, Piece], ...]

    @classmethod
    def by_owner(cls, sheets: Iterable[SheetOfFile]) -> dict[str, Prints]:
        """All parts, by the id of what they belong to."""
        found: dict[str, list[tuple[str, Sheet, Piece]]] = {}
        for file, _, sheet in sheets:
            for placement in sheet.placements:
                found.setdefault(placement.piece.owner, []).append((file, sheet, placement.piece))
        return {owner: cls(tuple(parts)) for owner, parts in found.items()}

    def where(self, *kinds: str) -> str:
        """Where the parts of some kinds of flat lie: "page-paper.pdf, sheets 1 and 2", or nothing if unprinted.

        A printer or a tray that is not the usual one is named with them.
        """
        files: dict[tuple[str, str], list[int]] = {}
        for file, sheet, piece in self.parts:
            if piece.flat.kind in kinds:
                files.setdefault((file, sheet.stock.printed_on), []).append(sheet.number)
        named = (_named(file, sheets) + (f" (on {path})" if path else "") for (file, path), sheets in files.items())
        return as_list(list(named)) if files else ""

    def by_sheet(self) -> Iterable[tuple[str, Sequence[Piece]]]:
        """What to cut out of each sheet."""
        sheets: dict[tuple[str, int], list[Piece]] = {}
        for file, sheet, piece in self.parts:
            sheets.setdefault((file, sheet.number), []).append(piece)
        for (file, number), pieces in sheets.items():
            yield _named(file, [number]), sorted(pieces, key=_natural)


def _named(file: str, sheets: Sequence[int]) -> str:
    return f"{file}, {numbered('sheet', sheets)}"


def _natural(piece: Piece) -> tuple[str, int]:
    """Parts of one kind together, in the order in which they were counted."""
    return piece.flat.kind, int(piece.id.rpartition("-")[2])
