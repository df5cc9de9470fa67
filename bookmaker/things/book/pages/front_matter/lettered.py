"""Parts of a few words, such as a dedication: set in typefaces of their own, or in those of the text."""

from __future__ import annotations

from abc import abstractmethod
from dataclasses import dataclass, replace
from pathlib import Path

from pydantic import Field

from .....shelf_file.fields.words import TypefaceName
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_of
from .....typesetting.page import Inside, PageFrame
from ..part import LoadedPart, Part

__all__ = ["LetteredPart"]


class LetteredPart(Part):
    """A part whose typefaces may be named; it is asked with those, None if none are."""

    face: TypefaceName | None = Field(None, description="name of a bundled typeface, or path of a TTF or OTF file")

    def load(self, folder: Path) -> LoadedPart:
        """Read the typefaces."""
        return _Lettered(self, family_of(self.face, folder))

    def extent(self, typefaces: Family | None, frame: PageFrame) -> int:  # noqa: ARG002 (for those that grow with it)
        """One page, if it does not say otherwise."""
        return 1

    @abstractmethod
    def compose(self, typefaces: Family | None, frame: PageFrame) -> Inside:
        """Fill the pages."""


@dataclass(frozen=True, slots=True)
class _Lettered(LoadedPart):
    """Such a part with its typefaces."""

    written: LetteredPart
    family: Family | None

    def extent(self, frame: PageFrame) -> int:
        return self.written.extent(self.family, _as_its_text(frame))

    def compose(self, frame: PageFrame) -> Inside:
        frame = _as_its_text(frame)
        inside = self.written.compose(self.family, frame)
        return replace(inside, pages=tuple(map(frame.stood_up, inside.pages)))


def _as_its_text(frame: PageFrame) -> PageFrame:
    """The frame, on its side if the lines of the book's text run down the page."""
    return frame.on_its_side() if frame.type and frame.type.vertical else frame
