"""How the letters of a cover are cut: in which typeface, how far apart, with which figures."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Protocol

from .....ground.typefaces import Run, Typeface

__all__ = ["Cut", "Letters"]


class Letters(Protocol):
    """What words can be set in; measures are in ems."""

    def __hash__(self) -> int:
        """By what it is made of, for what was set in it to be found again."""

    @property
    def x_height(self) -> float:
        """The height of small letters."""

    @property
    def cap_height(self) -> float:
        """The height of capitals."""

    def shape(self, text: str) -> Run:
        """Set a text."""


@dataclass(frozen=True, slots=True)
class Cut:
    """A typeface whose letters stand `tracking` ems further apart than usual, with OpenType features besides."""

    typeface: Typeface
    tracking: float = 0.0
    features: tuple[str, ...] = ()

    @property
    def x_height(self) -> float:
        """The height of small letters."""
        return self.typeface.x_height

    @property
    def cap_height(self) -> float:
        """The height of capitals."""
        return self.typeface.cap_height

    def shape(self, text: str) -> Run:
        """Set a text; letters that stand apart are not joined to ligatures."""
        return _shaped(self, text)


@lru_cache(maxsize=4096)
def _shaped(cut: Cut, text: str) -> Run:
    apart = ("-liga", "-clig") if cut.tracking else ()
    run = cut.typeface.shape(text, features=(*cut.features, *apart))
    if not cut.tracking:
        return run
    last = len(run.glyphs) - 1
    glyphs = tuple(
        glyph._replace(advance=glyph.advance + cut.tracking) if glyph.advance and number < last else glyph
        for number, glyph in enumerate(run.glyphs)
    )
    return replace(run, glyphs=glyphs, width=sum(glyph.advance for glyph in glyphs))
