"""The title page, set from what the shelf file says of the book."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple

from pydantic import Field

from .....ground.art import Group
from .....ground.drawing import BLACK, Art, Canvas, Colour
from .....ground.geometry import Path, Rect
from .....ground.problems import Problem
from .....ground.typefaces import TextLine
from .....shelf_file.fields.words import Flag, Ink, Title
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_for, missing_glyphs
from .....typesetting.display import LEADING, broken, centred, titled
from .....typesetting.lines.fount import Style, as_read
from .....typesetting.manuscripts.markdown import emphasised
from .....typesetting.page import Inside, PageFrame, numbered
from ..prose.sizes import type_too_small
from .few_lines import flat_emphasis, typed_line_ends
from .lettered import LetteredPart

__all__ = ["SwelledRule", "TitlePage"]

SHRINK = 0.92
"""A page too full is set again so much smaller."""

SMALLEST_TITLE = 0.55
"""The title alone gives way, down to this share of its usual size: it is then a third larger than the author."""

SMALLEST = 0.2
"""Then all becomes smaller, but not under this share of the usual sizes."""


class TitlePage(LetteredPart):
    """Title, author and imprint, as large as suits the page."""

    kind: Literal["title page"] = "title page"
    begins: Literal["new page", "recto"] = Field("recto", description="on which page it begins")
    subtitle: Title | None = Field(None, description="what stands under the title")
    imprint: Title | None = Field(None, description="who brings the book out")
    place: Title | None = Field(None, description="where")
    year: Title | None = Field(None, description="when")
    ink: Ink = Field(BLACK, description="colour of the title and of the rule under it")
    numbers: Flag = Field(False, description="page numbers, yes or no")
    is_title_page = True

    def compose(self, typefaces: Family | None, frame: PageFrame) -> Inside:
        """The title page, and blank ones after it if it has more."""
        texts = (*_upper(self, frame), *_lower(self))
        words = as_read("".join(line.text for line in texts))
        family = family_for(typefaces, frame, words)
        face = family[Style.ROMAN]
        room = frame.type_area(1).height
        smallest = Scale(SMALLEST, SMALLEST)
        scale = next((scale for scale in _scales() if _height(self, family, frame, scale) <= room), smallest)
        pages = frame.with_blanks(_set(self, family, frame, scale))
        problems = (
            *missing_glyphs("title page", face, words),
            *flat_emphasis("title page", [line.text for line in texts], family),
            *(problem for line in texts for problem in typed_line_ends(line.text, line.what)),
            *_small(texts, family, frame, scale),
        )
        return Inside(numbered(pages, frame, face) if self.numbers else pages, problems)


class TitleText(NamedTuple):
    """A text of the title page: the size of its type as a share of the page's height, and its most lines.

    What the maker wrote for this page alone may have signs of styles.
    """

    what: str
    text: str
    size: float
    most_lines: int
    colour: Colour = BLACK


class Scale(NamedTuple):
    """How much smaller than usual the title is set, and everything else."""

    title: float
    others: float


@dataclass(frozen=True, slots=True)
class SwelledRule:
    """A rule that is thick in the middle and ends in points, as old title pages have."""

    place: Rect
    colour: Colour

    def draw(self, canvas: Canvas) -> None:
        """Fill it: two flat curves from end to end."""
        x, y, width, height = self.place
        middle, end, bulge = y + height / 2, x + width, height * 2 / 3
        outline = Path(
            (
                ("M", x, middle),
                ("C", x + width / 3, middle + bulge, end - width / 3, middle + bulge, end, middle),
                ("C", end - width / 3, middle - bulge, x + width / 3, middle - bulge, x, middle),
                ("Z",),
            )
        )
        canvas.fill(outline, self.colour)


def _scales() -> Iterator[Scale]:
    """What is tried, one after the other."""
    title, others = 1.0, 1.0
    while others > SMALLEST:
        yield Scale(title, others)
        if title > SMALLEST_TITLE:
            title *= SHRINK
        else:
            title, others = title * SHRINK, others * SHRINK


def _upper(entry: TitlePage, frame: PageFrame) -> Iterator[TitleText]:
    """What stands at the head: author, title, subtitle."""
    if frame.book.author:
        yield TitleText("author", frame.book.author, 1 / 24, 2)
    yield TitleText("title", frame.book.title, 1 / 10, 5, entry.ink)
    if entry.subtitle:
        yield TitleText("subtitle", emphasised(entry.subtitle)[0], 1 / 26, 3)


def _lower(entry: TitlePage) -> Iterator[TitleText]:
    """What stands at the foot: place, imprint, year."""
    for what, text in (("place", entry.place), ("imprint", entry.imprint), ("year", entry.year)):
        if text:
            yield TitleText(what, emphasised(text)[0], 1 / 30, 2)


def _lines(line: TitleText, family: Family, frame: PageFrame, scale: Scale) -> tuple[TextLine, ...]:
    face = family[Style.ROMAN]
    width, right_to_left = frame.type_area(1).width, frame.right_to_left
    text = frame.printed(line.text, *family.values())
    if line.what == "title":
        size = frame.upright.height * line.size * scale.title
        return titled(face, text, size, width, line.most_lines, right_to_left=right_to_left)
    size = frame.upright.height * line.size * scale.others
    return broken(face, text, size, width, line.most_lines, right_to_left=right_to_left, family=family)


def _small(texts: Sequence[TitleText], family: Family, frame: PageFrame, scale: Scale) -> Iterator[Problem]:
    """The smallest of the texts, if it is too small to be read."""
    sizes = {line.what: min(part.size for part in _lines(line, family, frame, scale)) for line in texts}
    what = min(sizes, key=lambda name: sizes[name])
    field = () if what in ("title", "author") else (what,)
    face = family[Style.ROMAN]
    yield from type_too_small(f"the {what} on the title page", face, sizes[what], frame, "write fewer words", field)


def _deep(lines: tuple[TextLine, ...]) -> float:
    """What lines take of the height, with the space after them, in mm."""
    return sum(line.size * LEADING for line in lines)


def _height(entry: TitlePage, family: Family, frame: PageFrame, scale: Scale) -> float:
    """All that stands on the page with the least space between head and foot, in mm."""
    texts = (*_upper(entry, frame), *_lower(entry))
    gaps = frame.height * scale.others * (len(list(_upper(entry, frame))) / 30 + 1 / 10)
    return sum(_deep(_lines(line, family, frame, scale)) for line in texts) + gaps


def _set(entry: TitlePage, family: Family, frame: PageFrame, scale: Scale) -> Art:
    """Head lines from the top of the type area down, a swelled rule under them, foot lines from its foot up."""
    area, gap, cap_height = frame.type_area(1), frame.height * scale.others / 30, family[Style.ROMAN].cap_height
    layers: list[Art] = []
    top = area.top
    for line in _upper(entry, frame):
        lines = _lines(line, family, frame, scale)
        layers.append(centred(lines, area.centre.x, top - cap_height * lines[0].size, line.colour))
        top -= _deep(lines) + gap
    rule = Rect(area.centre.x - area.width / 6, top - gap / 2, area.width / 3, 3 * frame.line())
    layers.append(SwelledRule(rule, entry.ink))
    below = [_lines(line, family, frame, scale) for line in _lower(entry)]
    foot = area.y + sum(map(_deep, below))
    for lines in below:
        layers.append(centred(lines, area.centre.x, foot - cap_height * lines[0].size))
        foot -= _deep(lines)
    return Group(tuple(layers))
