"""Parts of a few words, such as a dedication: set in typefaces of their own, or in those of the text."""

from __future__ import annotations

from abc import abstractmethod
from dataclasses import dataclass
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
        return self.written.extent(self.family, frame)

    def compose(self, frame: PageFrame) -> Inside:
        return self.written.compose(self.family, frame)
