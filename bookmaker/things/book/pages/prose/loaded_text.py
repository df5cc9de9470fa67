"""A text that has been read: it tells how long it is, and is set on its pages."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from .....ground.art import NOTHING, Group
from .....ground.drawing import Art
from .....ground.pictures import Picture
from .....ground.problems import Problem
from .....ground.typefaces.strokes import strokes_of
from .....shelf_file.fields.measures import FIT
from .....typesetting.book_type import BookType
from .....typesetting.chosen_faces import set_across
from .....typesetting.figures import lacking_figures
from .....typesetting.galleys.made_pages import MadePage
from .....typesetting.galleys.setting import FEWEST_LETTERS, Manner, Setting
from .....typesetting.languages import unparted
from .....typesetting.lines.fount import Fount, as_read
from .....typesetting.manuscripts.manuscript import Manuscript
from .....typesetting.manuscripts.passage import Role
from .....typesetting.page import Heading, Inside, Margins, PageFrame, numbered
from ..front_matter.phrases import spoken
from ..part import LoadedPart
from .copyfit import MOST_PAGES, Bounds, Copy, Proof
from .loosest import loosest_line
from .running_heads import RunningHeads, running_heads
from .setpage import SetPage
from .text_findings import findings, nothing_fits
from .text_keys import UNPARTED, TextKeys
from .text_room import no_room, too_large
from .weight import weight_of

__all__ = ["LoadedText", "TextSource"]

SAMPLED = 5
"""So many paragraphs tell in which script a text is written."""


@dataclass(frozen=True, slots=True)
class TextSource:
    """What was read for a text: the words, the type to set them in, the pictures between them."""

    manuscript: Manuscript
    fount: Fount
    plates: Mapping[str, Picture] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class LoadedText(LoadedPart):
    """A text, read: it is set on pages, or fitted into them."""

    written: TextKeys
    source: TextSource

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is wrong with the text, whatever it is set on."""
        return self.source.manuscript.problems

    @property
    def type(self) -> BookType:
        """What the text is set in, for the pages before and after it."""
        beginning = as_read(" ".join(passage.text for passage in self.source.manuscript.passages[:SAMPLED]))
        language = "" if self.written.language == UNPARTED else spoken(self.written.language, beginning)
        vertical = self.written.setting == "vertical"
        return BookType(set_across(self.source.fount).faces, (self.source.fount.roman.name,), language, vertical)

    def extent(self, frame: PageFrame) -> int | None:
        """How many pages the whole text needs; None if its size is still to be found, or has no room.

        `frame.pages` is of no account. A text that no book holds asks for the most there are.
        """
        size, copy = self.written.size, self._copy(frame)
        if not copy.has_room or (size == FIT and frame.fitted is None):
            return None
        if size == FIT:
            size = self._bounds(copy).nearest(frame.fitted or 0.0)
        return None if size > copy.largest_settable else min(MOST_PAGES, copy.extent(size))

    def sizes(self, frame: PageFrame) -> Bounds | None:
        """Between which sizes of type the text is fitted into its pages; None if it is not, or has no room."""
        copy = self._copy(frame)
        if self.written.size != FIT or not copy.has_room:
            return None
        between = self._bounds(copy)
        return between._replace(largest=min(between.largest, copy.largest_settable))

    def why_open(self, frame: PageFrame) -> Problem | None:
        """Why nobody can tell how many pages the text needs; None if its size is still to be found."""
        copy = self._copy(frame)
        if not copy.has_room:
            return no_room(copy)
        return too_large(copy, self.written.size) if self.written.size > copy.largest_settable else None

    def compose(self, frame: PageFrame) -> Inside:
        """Set the text on the pages; what finds no room is counted and reported."""
        written, source, copy = self.written, self.source, self._copy(frame)
        said = (*source.manuscript.problems, *unparted(written.language), *self._figures())
        if not copy.has_room:
            return _empty(written, copy, (*said, no_room(copy)))
        size, between = written.size, None
        if size == FIT:
            between = self._bounds(copy)
            size = _fitted(copy, between)
        if size > copy.largest_settable:
            return _empty(written, copy, (*said, too_large(copy, size)))
        setting = copy.setting(size)
        proof = copy.proof(setting, frame.pages)
        loosest = loosest_line(copy, proof)
        problems = findings(copy, proof, source.plates, between, loosest)
        upright = copy.frame.upright
        heads = RunningHeads(upright)
        if written.running_heads:
            title = source.manuscript.punctuation.set(written.running_title or frame.book.title)
            fount = set_across(copy.fount_at(size))
            lines = Setting.of(fount.roman, size, copy.leading, upright)
            heads = running_heads(proof.pages, title, lines, upright, fount)
        if between:
            problems = nothing_fits(setting, problems)
        problems = (*heads.problems, *problems)
        pages = tuple(_pages(heads, source, copy, proof))
        if written.numbers:
            # titles that stand alone bear no numbers, nor do plates, nor what the text leaves empty
            with_numbers = numbered(pages, replace(upright, text_size=size), setting.typeface)
            bearing = [*map(_bears_number, proof.pages), *[False] * (len(pages) - len(proof.pages))]
            pages = tuple(both[bears] for *both, bears in zip(pages, with_numbers, bearing, strict=True))
        strokes = strokes_of(setting.typeface)
        return Inside(
            pages,
            (*said, *problems),
            tuple(_headings(copy.frame, proof.pages)),
            setting.typeface.x_height * size,
            widest_space=loosest.times if loosest else None,
            size=size,
            strokes=strokes and strokes.times(size),
        )

    def _figures(self) -> Iterator[Problem]:
        """What the typeface of a text with figures lacks of those it is to have."""
        if any(sign.isdigit() for sign in self.source.manuscript.letters):
            yield from lacking_figures(self.source.fount.roman, self.written.figures)

    def _bounds(self, copy: Copy) -> Bounds:
        """Between which sizes a text may be fitted."""
        written, filled = self.written, copy.largest_filled
        smallest = copy.smallest_printed if written.smallest is None else written.smallest
        if written.largest is not None:
            return Bounds(min(smallest, written.largest), written.largest, "the largest allowed")
        if smallest > filled:
            return Bounds(smallest, smallest, "the smallest allowed")
        return Bounds(smallest, filled, f"the largest that leaves {FEWEST_LETTERS} letters to a line")

    def _copy(self, frame: PageFrame) -> Copy:
        written, manuscript = self.written, self.source.manuscript
        given = written.margins
        margins = Margins(given.inner, given.top, given.outer, given.bottom) if given else frame.margins
        rectos = written.chapters == "recto"
        new_pages = (rectos or written.chapters == "new page") and not frame.loose
        manner = Manner(
            written.justified,
            written.hanging,
            written.drop_capital,
            new_pages,
            rectos and new_pages,
            written.notes == "foot",
            written.tracking,
        )
        frame = replace(frame, margins=margins)
        # the book has a page for its title already
        if frame.titled and _bare(manuscript.title) == _bare(frame.book.title):
            manuscript = manuscript.untitled
        frame = frame.on_its_side() if written.setting == "vertical" else frame
        return Copy(manuscript, self.source.fount, written.leading, frame, manner, weight_of(written.weight, frame))


def _bare(title: str) -> str:
    """The letters and figures of a title, to compare it with another."""
    return "".join(sign for sign in title.casefold() if sign.isalnum())


def _fitted(copy: Copy, between: Bounds) -> float:
    """The size of a text that is fitted into its pages: its own, or the one it shares with others."""
    if copy.frame.fitted is not None:
        return between.nearest(copy.frame.fitted)
    return copy.size_for(copy.frame.pages, between.largest, between.smallest) or between.smallest


def _empty(entry: TextKeys, copy: Copy, problems: tuple[Problem, ...]) -> Inside:
    """Pages without the text."""
    pages = copy.frame.with_blanks()
    return Inside(numbered(pages, copy.frame.upright, copy.fount.roman) if entry.numbers else pages, problems)


def _bears_number(page: MadePage) -> bool:
    """Whether a page has its number printed: plates have none, nor has the title of a part or of the whole alone."""
    if not page.slots:
        return False
    heads = [slot.matter for slot in page.slots if slot.matter.heading]
    half_title = bool(heads) and all(head.title or head.part for head in heads)
    return not half_title and page.slots[0].matter.role is not Role.PLATE


def _pages(heads: RunningHeads, source: TextSource, copy: Copy, proof: Proof) -> Iterator[Art]:
    frame, fount = copy.frame, copy.fount_at(proof.setting.size)
    for number in range(1, frame.pages + 1):
        page = proof.pages[number - 1] if number <= len(proof.pages) else None
        if page is None or not page.slots:
            yield NOTHING
            continue
        art = frame.stood_up(SetPage(proof.setting, frame, number, fount, page, source.plates))
        head = heads.head(number)
        yield art if head is NOTHING else Group((head, art))


def _headings(frame: PageFrame, made: Sequence[MadePage]) -> Iterator[Heading]:
    for number, page in enumerate(made, start=1):
        for slot in page.slots:
            if slot.matter.heading and slot.start == 0:
                matter, folio = slot.matter, frame.folio(number)
                yield Heading(matter.heading, folio, title=matter.title, depth=int(matter.within))
