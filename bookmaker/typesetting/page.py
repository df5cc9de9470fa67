"""What the inside of every book shares: the page, its margins, its number."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from ..ground.art import NOTHING, Group, Written
from ..ground.drawing import Art
from ..ground.geometry import Point, Rect, Transform
from ..ground.problems import Problem
from ..ground.typefaces import Typeface, across, bundled, set_line
from ..ground.typefaces.strokes import Strokes
from ..ground.units import MM_PER_INCH, from_pt
from .book_type import BookType
from .lines.fount import Style
from .punctuation import Punctuation

__all__ = [
    "NUMBER_SIZE",
    "SMALLEST_BESIDE",
    "BookWords",
    "Heading",
    "Inside",
    "Margins",
    "PageFrame",
    "numbered",
    "page_number",
]

NUMBER_SIZE = 1 / 30
"""Size of a page number (the em) as a share of the page's height: 0.7 mm on a page of 21 mm."""

SMALLEST_BESIDE = from_pt(1.2)
"""What stands beside a text, such as page numbers, is no larger than that, but not for its sake smaller than this."""

WIDEST_NUMBER = 2.5
"""Ems that a number of four figures needs; narrow pages have smaller numbers."""


FINEST_LINE = 0.04
"""Width in mm of the finest line, if the printer's dots are finer than that: about one dot at 600 to the inch."""


@dataclass(frozen=True, slots=True)
class BookWords:
    """What the book is called, for the pages that say so; `shelf` is the name of the shelf it belongs to.

    `language` is a BCP 47 tag, if one was named for the book. All hangs on the `look` and the volume that is left to
    chance; without a look, 0, on title and author.
    """

    title: str = ""
    author: str = ""
    shelf: str = ""
    language: str = ""
    look: int = 0
    volume: str = ""

    @property
    def seed(self) -> str:
        """What settles everything that is left to chance, so that a book looks the same whenever it is made."""
        return f"look {self.look} {self.volume}" if self.look else f"{self.title}\n{self.author}"


@dataclass(frozen=True, slots=True)
class Heading:
    """A line of the table of contents: what begins on a page, and the number of that page in the book.

    `title` is the heading of a whole text; `depth` counts the parts listed before it to which it belongs. A part that
    is not `numbered` begins with a chapter, which is listed under it with the same page.
    """

    text: str
    page: int
    title: bool = False
    depth: int = 0
    numbered: bool = True


class Margins(NamedTuple):
    """The white around the type area in mm; inner is at the spine."""

    inner: float
    top: float
    outer: float
    bottom: float


@dataclass(frozen=True, slots=True)
class PageFrame:
    """The pages of a part of a book, to be filled: of the whole book, if it has one part only.

    Width and height in mm, the number of pages, the way the book reads, the printer's dots to the inch, and
    how far its ink spreads at every edge, in mm.
    `first` is the number in the book of the part's first page, `contents` what a table of contents can list,
    `bleed` how much paper beyond the page, at head, tail and fore-edge, is trimmed off when the book is bound.
    `step`: the block has a multiple of so many pages; `asked` is how many the maker wrote. `type` is that of the
    book's text, if it has any, `titled` says that it has a title page, `marks` are those of its punctuation.
    `text_size` is the size of the book's text in mm, as far as it is known, `fitted` that which the texts to be
    fitted share, if several are. `advice` is what to write for a part that needs so many pages. `loose` pages
    are of no book: they bear no numbers, and chapters run on. For lines that run down the page a frame lies on its
    side; `standing` is then the page as it stands.
    Wherever a `number` is asked for, pages are counted from 1 in the part.
    """

    width: float
    height: float
    pages: int
    right_to_left: bool = False
    resolution_dpi: float = 600.0
    ink_spread: float = 0.0
    first: int = 1
    book: BookWords = BookWords()
    contents: tuple[Heading, ...] = ()
    margins: Margins | None = None
    bleed: float = 0.0
    step: int = 2
    asked: int | None = None
    type: BookType | None = field(default=None, compare=False)
    titled: bool = False
    fitted: float | None = None
    marks: Punctuation = field(default_factory=Punctuation)
    text_size: float | None = None
    advice: Callable[[int], str] | None = field(default=None, compare=False)
    loose: bool = False
    standing: PageFrame | None = None

    @property
    def upright(self) -> PageFrame:
        """The frame of the page as it stands."""
        return self.standing or self

    def on_its_side(self) -> PageFrame:
        """The frame turned by a quarter, so that lines which run down the page, from the right, are set as all others.

        >>> PageFrame(15, 21, 2).on_its_side().type_area(1).width == PageFrame(15, 21, 2).type_area(1).height
        True
        """
        return replace(self, width=self.height, height=self.width, right_to_left=False, standing=self)

    def stood_up(self, art: Art) -> Art:
        """What was drawn in this frame as it is seen on the page."""
        if self.standing is None or art is NOTHING:
            return art
        return Group((art,), Transform.quarter_turn(-1).moved(0.0, self.standing.height))

    def laid_down(self, art: Art) -> Art:
        """What was drawn on the page as it stands, in this frame."""
        return (
            art if self.standing is None else Group((art,), Transform.quarter_turn().moved(self.standing.height, 0.0))
        )

    def with_blanks(self, *first: Art) -> tuple[Art, ...]:
        """The first pages, and blank ones after them."""
        return (*first, *(NOTHING,) * (self.pages - len(first)))

    @property
    def count(self) -> str:
        """How many pages there are, in words.

        >>> PageFrame(15, 21, 1).count
        '1 page'
        """
        return f"{self.pages} {'page' if self.pages == 1 else 'pages'}"

    def printed(self, text: str, *faces: Typeface) -> str:
        """Something the maker wrote in the shelf file, with the marks of the book, as far as typefaces have them."""
        return self.marks.printed(text, *(face.covers for face in faces))

    def in_steps(self, pages: int) -> int:
        """The fewest pages of a block that hold so many.

        >>> PageFrame(15, 21, 8, step=4).in_steps(5)
        8
        """
        return self.step * max(1, -(-pages // self.step))

    def to_write(self, pages: int) -> str:
        """What the maker writes, and where, so that this part has so many pages."""
        return self.advice(pages) if self.advice else f"pages: {self.in_steps(pages)}"

    def folio(self, number: int) -> int:
        """The number a page bears in the book.

        >>> PageFrame(15, 21, 8, first=5).folio(1)
        5
        """
        return self.first + number - 1

    def spine_on_left(self, number: int) -> bool:
        """Whether a page has the spine on its left.

        Odd pages of the book do, and in books read from right to left the even ones.
        """
        return (self.folio(number) % 2 == 1) is not self.upright.right_to_left

    @property
    def dot(self) -> float:
        """The size of a printer's dot in mm: 0.0423 at 600 to the inch."""
        return MM_PER_INCH / self.resolution_dpi

    def line(self, dots: int = 1) -> float:
        """The width in mm of a line of so many printer's dots, each at least as wide as the finest line."""
        return dots * max(FINEST_LINE, self.dot)

    def type_area(self, number: int) -> Rect:
        """The area for text on page `number`, in page coordinates.

        Its margins are those given, or else by ninths (J. Tschichold's canon): inner, top, outer and bottom margins
        are 2 : 3 : 4 : 6 when the page is 2 : 3. On a page of 6 × 9 in they are 0.667, 1, 1.333 and 2 in, the
        type area 4 × 6 in.
        """
        if self.standing:
            area = self.standing.type_area(number)
            return Rect(self.standing.height - area.top, area.x, area.height, area.width)
        across, up = self.width / 9, self.height / 9
        inner, top, outer, bottom = self.margins or (across, up, 2 * across, 2 * up)
        left = inner if self.spine_on_left(number) else outer
        return Rect(left, bottom, self.width - inner - outer, self.height - top - bottom)

    def number_face(self, typeface: Typeface | None = None) -> Typeface:
        """What page numbers are set in: the typeface, or that of the text; one without figures is stood in for."""
        face = across(typeface) if typeface else (self.type.family[Style.ROMAN] if self.type else bundled("text"))
        return bundled("text") if face.missing("0123456789") else face

    def page(self) -> Rect:
        """The whole page."""
        return Rect(0.0, 0.0, self.width, self.height)

    def inked(self, number: int) -> Rect:
        """The whole page and, at head, tail and fore-edge, the paper beyond it that is trimmed off."""
        at_left, at_right = (0.0, self.bleed) if self.spine_on_left(number) else (self.bleed, 0.0)
        return self.page().grown(at_left, self.bleed, at_right, self.bleed)


@dataclass(frozen=True, slots=True)
class Inside:
    """What the pages of a part show, the first page first, what is wrong with it, and what begins where.

    The fields of problems are relative to the inside. `x_height` is that of its text in mm, `strokes` are those of its
    letters in mm, `face` is its typeface, if it has some, `size` the size of its type in mm; `widest_space` how many
    times as wide as usual the spaces of its loosest line are.
    """

    pages: tuple[Art, ...]
    problems: tuple[Problem, ...] = ()
    headings: tuple[Heading, ...] = ()
    x_height: float | None = None
    face: Typeface | None = None
    widest_space: float | None = None
    size: float | None = None
    strokes: Strokes | None = None


def page_number(frame: PageFrame, number: int, typeface: Typeface, largest: float = math.inf) -> Written:
    """The number of a page, in mm no larger than the `largest`, in the middle of its foot margin."""
    area = frame.type_area(number)
    beside = max(frame.text_size, SMALLEST_BESIDE) if frame.text_size else math.inf
    size = min(frame.height * NUMBER_SIZE, area.width / WIDEST_NUMBER, beside, largest)
    line = set_line(typeface, size, str(frame.folio(number)))
    baseline = area.y / 2 - typeface.cap_height * size / 2
    return Written(line, Point(area.centre.x - line.width / 2, baseline))


def numbered(
    pages: Iterable[Art], frame: PageFrame, typeface: Typeface | None = None, largest: float = math.inf
) -> tuple[Art, ...]:
    """The pages with their numbers, in a typeface or in that of the text, if it has figures, up to the `largest` size.

    Blank pages bear none, and loose ones.
    """
    if frame.loose:
        return tuple(pages)
    face = frame.number_face(typeface)
    upright = frame.upright
    numbers = (frame.laid_down(page_number(upright, number, face, largest)) for number in range(1, frame.pages + 1))
    return tuple(art if art is NOTHING else Group((art, number)) for art, number in zip(pages, numbers, strict=True))
