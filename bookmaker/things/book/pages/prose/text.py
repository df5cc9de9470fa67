"""Pages of running text, from a plain or Markdown file, set like a book."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from .....ground.art import NOTHING, Group
from .....ground.drawing import Art
from .....ground.pictures import Picture
from .....ground.problems import Problem, ShelfFileError
from .....ground.typefaces import Typeface
from .....shelf_file.fields.measures import FIT
from .....typesetting.book_type import BookType
from .....typesetting.chosen_faces import HEAVY, SLANTED, face_of
from .....typesetting.galleys.makeup import MadePage
from .....typesetting.galleys.mottoes import under_next_head
from .....typesetting.galleys.setting import FEWEST_LETTERS, Manner, Setting
from .....typesetting.languages import unparted
from .....typesetting.lines.fount import Fount, Style, as_read
from .....typesetting.lines.hyphens import known_language
from .....typesetting.manuscripts.manuscript import Manuscript, read_manuscript
from .....typesetting.manuscripts.passage import Role
from .....typesetting.manuscripts.ranks import Rank
from .....typesetting.page import Heading, Inside, Margins, PageFrame, numbered
from ..front_matter.phrases import spoken
from ..pictured.text_plates import load_plates
from .copyfit import MOST_PAGES, Bounds, Copy, Proofs
from .loosest import loosest_line
from .running_heads import RunningHeads, running_heads
from .setpage import SetPage
from .text_findings import findings, nothing_fits
from .text_keys import UNPARTED, TextInside
from .text_room import no_room, too_large

__all__ = ["TextInside", "TextSource", "book_type", "bounds", "compose", "extent", "load"]

SAMPLED = 5
"""So many paragraphs tell in which script a text is written."""


@dataclass(frozen=True, slots=True)
class TextSource:
    """What was read for a text: the words, the type to set them in, the pictures between them.

    `proofs` keeps what was set, so that finding the number of pages and drawing them is one work.
    """

    manuscript: Manuscript
    fount: Fount
    plates: Mapping[str, Picture] = field(default_factory=dict)
    proofs: Proofs = field(default_factory=Proofs, compare=False)

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is wrong with the text, whatever it is set on."""
        return self.manuscript.problems


def load(entry: TextInside, folder: Path) -> TextSource:
    """Read the text, its typefaces and its pictures.

    Raises:
        ShelfFileError: one of them cannot be used.
    """
    problems: list[Problem] = []
    faces = _faces(entry, folder, problems)
    file = folder / entry.file
    manuscript = None
    try:
        styled: dict[Style, Typeface] = {style: face for style, face in faces.items() if style != Style.ROMAN}
        manuscript = read_manuscript(file, faces.get(Style.ROMAN), styled, entry.marks, entry.file)
    except ShelfFileError as refusal:
        problems += refusal.problems
    if manuscript is None:
        raise ShelfFileError(problems)
    plates, lost = load_plates(manuscript.name, manuscript.passages, file.parent)
    problems += lost
    if problems:
        raise ShelfFileError([*problems, *manuscript.problems])
    language = None if entry.language == UNPARTED else known_language(entry.language)
    return TextSource(manuscript, Fount(faces, language, right_to_left=manuscript.right_to_left), plates)


def _faces(entry: TextInside, folder: Path, problems: list[Problem]) -> dict[Style, Typeface]:
    """The typeface of each style that the text can be set in."""
    italic = entry.italic_face or SLANTED.get(entry.face)
    bold = entry.bold_face or HEAVY.get(entry.face)
    both = SLANTED.get(bold or "") or bold or italic
    wanted = {Style.ROMAN: ("face", entry.face), Style.TYPEWRITER: ("face", "typewriter")}
    wanted |= {Style.ITALIC: ("italic_face", italic)} if italic else {}
    wanted |= {Style.BOLD: ("bold_face", bold)} if bold else {}
    wanted |= {Style.BOLD_ITALIC: ("bold_face", both)} if both else {}
    faces: dict[Style, Typeface] = {}
    for style, (key, name) in wanted.items():
        try:
            faces[style] = face_of(name, folder, key)
        except ShelfFileError as refusal:
            problems += refusal.problems
    return faces


def book_type(entry: TextInside, source: TextSource) -> BookType:
    """What the text is set in, for the pages before and after it."""
    beginning = as_read(" ".join(passage.text for passage in source.manuscript.passages[:SAMPLED]))
    language = "" if entry.language == UNPARTED else spoken(entry.language, beginning)
    return BookType(source.fount.faces, (source.fount.roman.name,), language)


def extent(entry: TextInside, source: TextSource, frame: PageFrame) -> int | None:
    """How many pages the whole text needs; None if its size is still to be found, or has no room.

    `frame.pages` is of no account. A text that no book holds asks for the most there are.
    """
    copy = _copy(entry, source, frame)
    if not _has_room(copy) or (entry.size == FIT and frame.fitted is None):
        return None
    if entry.size == FIT:
        size = _bounds(entry, copy).nearest(frame.fitted or 0.0)
        return None if size > copy.largest_settable else min(MOST_PAGES, copy.extent(size))
    if entry.size > copy.largest_settable:
        return None
    return min(MOST_PAGES, len(copy.proof(copy.setting(entry.size)).first(MOST_PAGES + 1)))


def bounds(entry: TextInside, source: TextSource, frame: PageFrame) -> Bounds | None:
    """Between which sizes of type the text is fitted into its pages; None if it is not, or has no room."""
    copy = _copy(entry, source, frame)
    if entry.size != FIT or not _has_room(copy):
        return None
    between = _bounds(entry, copy)
    return between._replace(largest=min(between.largest, copy.largest_settable))


def _has_room(copy: Copy) -> bool:
    """Whether the margins leave anything between them."""
    area = copy.frame.type_area(1)
    return min(area.width, area.height) > 0


def compose(entry: TextInside, source: TextSource, frame: PageFrame) -> Inside:
    """Set the text on the pages; what finds no room is counted and reported."""
    copy = _copy(entry, source, frame)
    said = (*source.manuscript.problems, *unparted(entry.language))
    if not _has_room(copy):
        return _empty(entry, copy, (*said, no_room(copy)))
    size, between = entry.size, None
    if size == FIT:
        between = _bounds(entry, copy)
        size = _fitted(copy, between)
    if size > copy.largest_settable:
        return _empty(entry, copy, (*said, too_large(copy, size)))
    setting = copy.setting(size)
    made = copy.proof(setting).first(frame.pages)
    loosest = loosest_line(copy, setting, made)
    problems = findings(copy, setting, made, source.plates, between, loosest)
    heads = RunningHeads(copy.frame)
    if entry.running_heads:
        title = source.manuscript.punctuation.set(entry.running_title or frame.book.title)
        heads = running_heads(made, title, setting, copy.frame, source.fount)
    if between:
        problems = nothing_fits(setting, problems)
    problems = (*heads.problems, *problems)
    pages = tuple(_pages(heads, source, copy, setting, made))
    if entry.numbers:
        # titles that stand alone bear no numbers, nor do plates, nor what the text leaves empty
        with_numbers = numbered(pages, replace(copy.frame, text_size=size), source.fount.roman)
        bearing = [*map(_bears_number, made), *[False] * (len(pages) - len(made))]
        pages = tuple(both[bears] for *both, bears in zip(pages, with_numbers, bearing, strict=True))
    return Inside(
        pages,
        (*said, *problems),
        tuple(_headings(copy.frame, made)),
        setting.typeface.x_height * size,
        widest_space=loosest.times if loosest else None,
        size=size,
    )


def _fitted(copy: Copy, between: Bounds) -> float:
    """The size of a text that is fitted into its pages: its own, or the one it shares with others."""
    if copy.frame.fitted is not None:
        return between.nearest(copy.frame.fitted)
    return copy.size_for(copy.frame.pages, between.largest, between.smallest) or between.smallest


def _bounds(entry: TextInside, copy: Copy) -> Bounds:
    """Between which sizes a text may be fitted."""
    if entry.largest is not None:
        return Bounds(entry.smallest, entry.largest, "the largest allowed")
    if entry.smallest > copy.largest_filled:
        return Bounds(entry.smallest, entry.smallest, "the smallest allowed")
    return Bounds(entry.smallest, copy.largest_filled, f"the largest that leaves {FEWEST_LETTERS} letters to a line")


def why_open(entry: TextInside, source: TextSource, frame: PageFrame) -> Problem | None:
    """Why nobody can tell how many pages the text needs; None if its size is still to be found."""
    copy = _copy(entry, source, frame)
    if not _has_room(copy):
        return no_room(copy)
    return too_large(copy, entry.size) if entry.size > copy.largest_settable else None


def heft(source: TextSource) -> int:
    """How much work a text is: its words."""
    return source.manuscript.words


def set_ahead(entry: TextInside, source: TextSource, frame: PageFrame, *, open_ended: bool) -> Proofs:
    """Set a text in another process than the one that needs it; what comes back is for `take`."""
    extent(entry, source, frame) if open_ended else compose(entry, source, frame)
    return source.proofs.finished()


def take(source: TextSource, ahead: Proofs) -> None:
    """Keep what was set ahead: from now on it is found, and not set again."""
    source.proofs.take(ahead)


def without_plates(source: TextSource) -> TextSource:
    """All that is needed to set a text, and no more."""
    return TextSource(source.manuscript, source.fount)


def _copy(entry: TextInside, source: TextSource, frame: PageFrame) -> Copy:
    given = entry.margins
    margins = Margins(given.inner, given.top, given.outer, given.bottom) if given else None
    rectos = entry.chapters == "recto"
    new_pages = rectos or entry.chapters == "new page"
    manner = Manner(entry.justified, entry.hanging, entry.drop_capital, new_pages, rectos)
    frame = replace(frame, margins=margins)
    manuscript = _without_title(source.manuscript, frame.book.title) if frame.titled else source.manuscript
    return Copy(manuscript, source.fount, entry.leading, frame, manner, source.proofs)


def _without_title(manuscript: Manuscript, title: str) -> Manuscript:
    """A text without the title that it begins with, if that is the book's: the book has a page for it already."""
    first = manuscript.passages[0]
    is_title = first.role is Role.HEADING and first.level == Rank.TITLE
    if not is_title or _bare(as_read(first.text)) != _bare(title):
        return manuscript
    return replace(manuscript, passages=under_next_head(manuscript.passages[1:]))


def _bare(title: str) -> str:
    """The letters and figures of a title, to compare it with another."""
    return "".join(sign for sign in title.casefold() if sign.isalnum())


def _empty(entry: TextInside, copy: Copy, problems: tuple[Problem, ...]) -> Inside:
    """Pages without the text."""
    pages: tuple[Art, ...] = (NOTHING,) * copy.frame.pages
    return Inside(numbered(pages, copy.frame, copy.fount.roman) if entry.numbers else pages, problems)


def _bears_number(page: MadePage) -> bool:
    """Whether a page has its number printed: plates have none, nor has the title of a part or of the whole alone."""
    if not page.slots:
        return False
    heads = [slot.matter for slot in page.slots if slot.matter.heading]
    half_title = bool(heads) and all(head.title or head.part for head in heads)
    return not half_title and page.slots[0].matter.role is not Role.PLATE


def _pages(
    heads: RunningHeads, source: TextSource, copy: Copy, setting: Setting, made: Sequence[MadePage]
) -> Iterator[Art]:
    frame, fount = copy.frame, source.fount
    for number in range(1, frame.pages + 1):
        page = made[number - 1] if number <= len(made) else None
        if page is None or not page.slots:
            yield NOTHING
            continue
        art = SetPage(setting, frame, number, fount, page, source.plates)
        head = heads.head(number)
        yield art if head is NOTHING else Group((head, art))


def _headings(frame: PageFrame, made: Sequence[MadePage]) -> Iterator[Heading]:
    for number, page in enumerate(made, start=1):
        for slot in page.slots:
            if slot.matter.heading and slot.start == 0:
                matter, folio = slot.matter, frame.folio(number)
                yield Heading(matter.heading, folio, title=matter.title, depth=int(matter.within))
