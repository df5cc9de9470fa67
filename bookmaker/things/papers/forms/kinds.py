"""The table of the forms of papers: one class a form, one row a form."""

from __future__ import annotations

from ..entry import PaperEntry
from .calendar_sheet import CalendarSheet
from .cards import Cards, Labels
from .game_board import GameBoard
from .newspaper import Newspaper
from .photograph import Photograph
from .plain import FoldedMap, Letter, Poster, Print
from .playing_cards import PlayingCards
from .sheet_music import SheetMusic

__all__ = ["KINDS"]

KINDS: tuple[type[PaperEntry], ...] = (
    Letter,
    Newspaper,
    FoldedMap,
    SheetMusic,
    Poster,
    CalendarSheet,
    Cards,
    Labels,
    PlayingCards,
    Photograph,
    GameBoard,
    Print,
)
"""In the order in which the manual tells of them."""
