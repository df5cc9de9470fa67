"""The drawn styles, and flats dressed in them."""

from __future__ import annotations

from pathlib import Path as FilePath

import pytest

from bookmaker.sheets.flat import Flat, Role
from bookmaker.things.book.designs.design import DrawnDesign, Dress, Words
from bookmaker.things.book.designs.kinds import KINDS
from tests.kit.flats import flat_of, part
from tests.kit.recording import RecordingCanvas, record

__all__ = ["BOOK", "DRAWN", "NO_FILES", "SHAPES", "drawn", "dressed", "every_style", "style_of"]

NO_FILES = FilePath()
DRAWN = [model for model in KINDS if issubclass(model, DrawnDesign)]
BOOK = Words("The Sound of Ice", "Ansel Brook", "II", "1911")
SHAPES = {
    "flush": flat_of(),
    "turned in": flat_of(turn_in="5 mm", head_turn_in="4 mm"),
    "thin": flat_of(1.6, 9.0, 13.0),
    "folio": flat_of(14.0, 30.0, 42.0),
    "spine alone": part(Role.SPINE),
    "front alone": part(Role.FRONT),
    "back alone": part(Role.BACK),
    "no panels": part(),
    "spine piece": part(Role.BACK, Role.SPINE, Role.FRONT, width=4.0),
    "mirrored": part(Role.FRONT, Role.SPINE, Role.BACK),
    "turn-ins only": part(Role.TURN_IN, Role.TURN_IN),
}


def style_of(model: type) -> str:
    """The name a style goes by in the shelf file."""
    return str(model.model_fields["style"].default)  # type: ignore[attr-defined]


every_style = pytest.mark.parametrize("model", DRAWN, ids=style_of)


def dressed(model: type[DrawnDesign], flat: Flat, words: Words = BOOK, **keys: str) -> Dress:
    entry = model.model_validate({"style": style_of(model), **keys})
    return entry.dress(entry.load(NO_FILES), flat, words)


def drawn(model: type[DrawnDesign], flat: Flat, words: Words = BOOK, **keys: str) -> RecordingCanvas:
    return record(dressed(model, flat, words, **keys).art)
