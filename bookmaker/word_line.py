"""A line of prose: words in one typeface with equal spaces, which a canvas can set at once."""

from __future__ import annotations

from .typefaces import Run, TextLine

__all__ = ["WordLine"]


class WordLine(TextLine):
    """A line of words in one typeface, all spaces between them `gap` mm wider than usual: the line of prose.

    It is a `TextLine` like any other; a canvas that knows it is quicker with it.
    """

    __slots__ = ("gap", "space", "words")
    gap: float
    space: Run
    words: tuple[Run, ...]

    def __init__(self, size: float, words: tuple[Run, ...], space: Run, gap: float) -> None:
        for name, value in (("size", size), ("words", words), ("space", space), ("gap", gap)):
            object.__setattr__(self, name, value)

    @property
    def runs(self) -> tuple[tuple[float, Run], ...]:
        """The words and the spaces between them, from x = 0."""
        x, placed = 0.0, list[tuple[float, Run]]()
        for word in self.words:
            placed += ((x, word), (x := x + word.width * self.size, self.space))
            x += self.space.width * self.size + self.gap
        return tuple(placed[:-1])

    @property
    def width(self) -> float:
        """How far the line reaches, in mm."""
        spaces = len(self.words) - 1
        inked = sum(word.width for word in self.words) + spaces * self.space.width
        return inked * self.size + spaces * self.gap
