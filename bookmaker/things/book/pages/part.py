"""What every part of a book's inside has and answers, whatever its kind shows.

A part is what was written; a loaded part knows besides what its files hold. Each kind is a class of its own: its
keys, and what it answers otherwise than here.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar, Literal

from pydantic import Field

from ....ground.problems import Problem, Severity
from ....shelf_file.fields.counts import PartPages
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.words import Title
from ....typesetting.book_type import BookType
from ....typesetting.page import Inside, PageFrame
from ....typesetting.punctuation import Punctuation
from .prose.copyfit import Bounds

__all__ = ["OR_FILLED", "LoadedPart", "Part", "UnreadPart", "some_empty"]


class LoadedPart(ABC):
    """A part with what its files hold: it tells how long it is, and fills its pages."""

    __slots__ = ()

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is wrong with its files, on whatever pages they are shown; fields are relative to the part."""
        return ()

    @property
    def type(self) -> BookType | None:
        """What its text is set in, for the pages before and after it; None if it is no text."""
        return None

    def extent(self, frame: PageFrame) -> int | None:  # noqa: ARG002 (most kinds take any number)
        """How many pages it needs; None if any number will do, or nobody can tell. `frame.pages` is of no account."""
        return None

    def sizes(self, frame: PageFrame) -> Bounds | None:  # noqa: ARG002 (only texts are fitted)
        """Between which sizes of type it is fitted into its pages; None if it is not."""
        return None

    def why_open(self, frame: PageFrame) -> Problem | None:  # noqa: ARG002 (only texts know)
        """What keeps it from telling how many pages it needs, if it knows."""
        return None

    @abstractmethod
    def compose(self, frame: PageFrame) -> Inside:
        """Fill the pages: `frame.pages` of them, and what did not fit; problems are relative to the part."""


class Part(Entry, ABC):
    """The keys all kinds of pages share, and what the parts of a book ask of one another."""

    if TYPE_CHECKING:
        kind: str  # each kind names itself

    pages: PartPages | None = Field(None, description="how many pages this part has")
    begins: Literal["new page", "recto"] = Field("new page", description="on which page it begins")
    listed_as: Title | None = Field(None, description="what the table of contents calls it")

    is_title_page: ClassVar[bool] = False
    """Whether it shows the title of the book, so that a text after it need not."""
    lists_the_others: ClassVar[bool] = False
    """Whether it can be composed only when all other parts are: it is a table of contents."""
    has_size: ClassVar[bool] = False
    """Whether larger type would fill more pages."""

    @property
    def begins_recto(self) -> bool:
        """Whether it begins on a page that lies on the right in a book read from the left."""
        return self.begins == "recto"

    @property
    def shows(self) -> str:
        """The file or the folder that it shows, as the maker wrote it; empty if it needs none."""
        return ""

    @property
    def marks(self) -> Punctuation | None:
        """The marks that its text is punctuated with; None if it is no text."""
        return None

    @property
    def named_language(self) -> str | None:
        """The language of its text, if the maker named one: a BCP 47 tag, or empty for none."""
        return None

    @property
    def text_size(self) -> float | None:
        """The size of its text in mm; None if it is no text, or its size is to be found."""
        return None

    @property
    def is_open(self) -> bool:
        """Whether neither its pages nor the size of its text are settled."""
        return False

    @abstractmethod
    def load(self, folder: Path) -> LoadedPart:
        """Read the files it names, as seen from a folder: the only method that touches any.

        Raises:
            ShelfFileError: files cannot be used; fields are relative to the part.
        """


class UnreadPart(Part, LoadedPart):
    """A part that names no files: as it is written it is loaded."""

    def load(self, folder: Path) -> LoadedPart:  # noqa: ARG002 (there is nothing to read)
        """The part itself."""
        return self


OR_FILLED = ", or add a part that takes what is left, such as dummy text, for a book as thick"
"""What else to do where pages stay empty: their number may be what gives the spine its width."""


def some_empty(name: str, used: int, frame: PageFrame, key: str) -> Problem:
    """A note that what is shown, named under a key, fills fewer pages than there are."""
    return Problem(
        f"{name} fills {used} of {frame.pages} pages; the others stay empty",
        f"write {frame.to_write(used)}" if frame.advice else "",
        Severity.NOTE,
        field=(key,),
    )
