"""A line of prose: words in one typeface with equal spaces, which a canvas can set at once."""

from __future__ import annotations

from ..ground.typefaces import Run, TextLine

__all__ = ["WordLine"]


class WordLine(TextLine):
    """A line of words in one typeface, all spaces between them `gap` mm wider than usual: the line of prose.

    Every glyph but the last, spaces too, is followed by `tracking` mm besides.

    It is a `TextLine` like any other; a canvas that knows it is quicker with it.
    """

    __slots__ = ("gap", "space", "words")
    gap: float
    space: Run
    words: tuple[Run, ...]

    def __init__(self, size: float, words: tuple[Run, ...], space: Run, gap: float, tracking: float = 0.0) -> None:
        given = object.__setattr__
        given(self, "size", size)
        given(self, "words", words)
        given(self, "space", space)
        given(self, "gap", gap)
        given(self, "tracking", tracking)

    @property
    def places(self) -> list[float]:
        """Where each word and each space between two of them begins, from x = 0."""
        size, track = self.size, self.tracking
        x, places = 0.0, list[float]()
        step = self.space.width * size + self.gap + track
        for word in self.words:
            places.append(x)
            x += word.width * size + track * len(word.glyphs)
            places.append(x)
            x += step
        return places[:-1]

    @property
    def runs(self) -> tuple[tuple[float, Run], ...]:
        """The words and the spaces between them, from x = 0."""
        words = [run for word in self.words for run in (word, self.space)]
        return tuple(zip(self.places, words[:-1], strict=True))

    @property
    def width(self) -> float:
        """How far the line reaches, in mm."""
        spaces = len(self.words) - 1
        inked = sum(word.width for word in self.words) + spaces * self.space.width
        glyphs = sum(len(word.glyphs) for word in self.words) + spaces if self.tracking else 1
        return inked * self.size + spaces * self.gap + self.tracking * (glyphs - 1)
