"""The inside of a book put together from its parts: where each begins, how long it is, what the contents list.

A part has the pages it asks for, or its natural length, that of its text or its pictures. Of the parts without
one, such as ruled pages, the last takes what is left of the book; else the last pages stay blank, and what is too
long loses its end. Several texts that are fitted share what is left, in type of one size. Page numbers run on.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import PurePath

from ....ground.art import NOTHING
from ....ground.drawing import Art
from ....ground.problems import Problem, Severity
from ....ground.units import from_pt, print_pt
from ....typesetting.lines.fount import Style
from ....typesetting.page import Heading, Inside, PageFrame
from .part import OR_FILLED
from .placed_part import PlacedPart
from .prose.copyfit import largest_size
from .written import marks_of

__all__ = ["bind", "natural_extent"]

NONE: Mapping[int, int] = {}

USUAL = from_pt(2.2)
"""The size, in mm, of a text that would be fitted beside a part which takes whatever is left."""

MOST_ROUNDS = 4
"""So often the parts are set anew because the table of contents became longer."""


def bind(parts: Sequence[PlacedPart], frame: PageFrame) -> Inside:
    """All pages of a book, the parts in order; what finds no room is reported."""
    frame = _with_what_is_shared(parts, frame)
    frames = _frames(parts, frame, frame.pages)
    composed, frames = _compose(parts, frames, frame, frame.pages)
    pages: list[Art] = []
    for inside, own in zip(composed, frames, strict=True):
        pages += (NOTHING,) * (own.first - 1 - len(pages))
        pages += inside.pages
    problems = [problem for inside in composed for problem in inside.problems]
    problems += _competing_parts(parts, replace(frame, fitted=frames[0].fitted))
    problems += _wrong_length(parts, frame, len(pages))
    pages += (NOTHING,) * (frame.pages - len(pages))
    headings = tuple(heading for inside in composed for heading in inside.headings)
    spaces = [inside.widest_space for inside in composed if inside.widest_space is not None]
    face = frame.type.family[Style.ROMAN] if frame.type else None
    smallest = min((inside for inside in composed if inside.x_height), key=_x_height, default=Inside(()))
    return Inside(
        tuple(pages[: frame.pages]),
        tuple(problems),
        headings,
        smallest.x_height,
        face,
        max(spaces, default=None),
        strokes=smallest.strokes,
    )


def _x_height(inside: Inside) -> float:
    return inside.x_height or math.inf


def natural_extent(parts: Sequence[PlacedPart], frame: PageFrame) -> int | None:
    """How many pages the parts need by themselves; None if one of them takes whatever is left."""
    frame = _with_what_is_shared(parts, frame)
    if any(part.length(frame) is None for part in parts):
        return None
    frames = _frames(parts, frame, None)
    listed = any(part.written.lists_the_others for part in parts)
    return _last_page(_compose(parts, frames, frame, None)[1] if listed else frames)


def _with_what_is_shared(parts: Sequence[PlacedPart], frame: PageFrame) -> PageFrame:
    """The frame with what the parts have to know of one another: type and marks of the text, a title page."""
    texts = [(part.written.text_size, part.loaded.type) for part in parts if part.loaded.type]
    titled = any(part.written.is_title_page for part in parts)
    marks = marks_of([part.written for part in parts], frame.book.title, frame.book.language)
    frame = replace(frame, titled=titled, text_size=texts[0][0] if texts else None, marks=marks)
    if not texts:
        return frame
    names = tuple(dict.fromkeys(name for _, type_ in texts for name in type_.names))
    return replace(frame, type=replace(texts[0][1], names=names))


def _compose(
    parts: Sequence[PlacedPart],
    frames: list[PageFrame],
    whole: PageFrame,
    room: int | None,
    given: Mapping[int, int] = NONE,
) -> tuple[list[Inside], list[PageFrame]]:
    """The parts on their pages, tables of contents last, when what they list is known.

    How long a table of contents is depends on what it lists, and on it depends where the parts after it begin: if
    it turns out longer or shorter than thought, all is set once more, and again if page numbers then have more figures.
    """
    composed = _compose_all_others(parts, frames)
    size = _text_size(composed)
    if size and size != whole.text_size:
        whole, frames = replace(whole, text_size=size), [replace(frame, text_size=size) for frame in frames]
        composed = {
            number: inside if inside.size else parts[number].compose(frames[number])
            for number, inside in composed.items()
        }
    if not any(part.written.lists_the_others for part in parts):
        return list(composed.values()), frames
    headings = _headings(composed)
    for _ in range(MOST_ROUNDS):
        again = _frames(parts, replace(whole, contents=headings), room, given)
        if [(own.first, own.pages) for own in again] == [(own.first, own.pages) for own in frames]:
            break
        composed, frames = _compose_all_others(parts, again), again
        headings = _headings(composed)
    for number, part in enumerate(parts):
        if part.written.lists_the_others:
            composed[number] = part.compose(replace(frames[number], contents=headings))
    return [composed[number] for number in range(len(parts))], frames


def _text_size(composed: Mapping[int, Inside]) -> float | None:
    """The size in which the first text was set, in mm."""
    return next((inside.size for inside in composed.values() if inside.size), None)


def _compose_all_others(parts: Sequence[PlacedPart], frames: Sequence[PageFrame]) -> dict[int, Inside]:
    """All parts but tables of contents, composed, by their number."""
    return {
        number: part.compose(own)
        for number, (part, own) in enumerate(zip(parts, frames, strict=True))
        if not part.written.lists_the_others
    }


def _headings(composed: Mapping[int, Inside]) -> tuple[Heading, ...]:
    return tuple(heading for inside in composed.values() for heading in inside.headings)


def _frames(
    parts: Sequence[PlacedPart], whole: PageFrame, room: int | None, given: Mapping[int, int] = NONE
) -> list[PageFrame]:
    """The pages of each part: `room` is how many the book has, None if as many as it needs; some may be given."""
    whole = whole if room is None else _with_one_size(parts, whole, room)
    natural = list(_lay(parts, whole, given))
    loose = _numbers_without_length(parts, whole) or (_numbers_to_fit(parts, whole) if whole.fitted else [])
    last = len(parts) - 1 if parts[-1].written.pages is None else None
    yielding = loose[-1] if loose else last
    if room is None or yielding is None or (not loose and _last_page(natural) <= room):
        return natural
    end = _last_page(list(_lay(parts, whole, {yielding: 1})))
    most = max(1, 1 + room - end)
    # rectos may leave a page blank or not, as the length of the part before them has it
    while most > 1 and _last_page(list(_lay(parts, whole, {yielding: most}))) > room:
        most -= 1
    return list(_lay(parts, whole, {yielding: most}))


def _numbers_without_length(parts: Sequence[PlacedPart], whole: PageFrame) -> list[int]:
    """The parts that have no length of their own; the last of them takes what is left."""
    return [number for number, part in enumerate(parts) if part.length(whole) is None]


def _numbers_to_fit(parts: Sequence[PlacedPart], whole: PageFrame) -> list[int]:
    """The texts that are fitted into what is left."""
    return [number for number, part in enumerate(parts) if part.sizes(whole)]


def _with_one_size(parts: Sequence[PlacedPart], whole: PageFrame, room: int) -> PageFrame:
    """The frame with the size of type that the texts to be fitted share, if what is left is not for one alone.

    It is the largest at which all parts go into `room` pages. What merely takes the rest leaves no measure to fit
    a text to: beside such a part it has the usual size.
    """
    bounds = [sizes for part in parts if (sizes := part.sizes(whole))]
    open_ended = len(_numbers_without_length(parts, whole))
    if not bounds or open_ended < 2 or whole.fitted:
        return whole
    if open_ended > len(bounds):
        return replace(whole, fitted=USUAL)

    def fits(size: float) -> bool:
        return _last_page(list(_lay(parts, replace(whole, fitted=size), NONE))) <= room

    smallest, largest = min(one.smallest for one in bounds), max(one.largest for one in bounds)
    return replace(whole, fitted=largest_size(fits, largest, smallest) or smallest)


def _lay(parts: Sequence[PlacedPart], whole: PageFrame, given: Mapping[int, int]) -> Iterator[PageFrame]:
    """The parts one after the other, some with lengths given; one without any has a page."""
    first = 1
    for number, part in enumerate(parts):
        if part.written.begins_recto and first % 2 == 0:
            first += 1
        own = replace(whole, first=first, pages=0, advice=whole.advice or _advice(parts, whole, number))
        pages = given.get(number) or part.length(own) or 1
        yield replace(own, pages=pages)
        first += pages


def _advice(parts: Sequence[PlacedPart], whole: PageFrame, number: int) -> Callable[[int], str]:
    """For a part what to write so that it has so many pages: in itself, or in the block for the whole book."""
    if parts[number].written.pages is not None:
        return lambda pages: f"pages: {pages} in this part"

    def in_block(pages: int) -> str:
        # what is composed for the sake of an advice asks for none itself
        trial = replace(whole, advice=str)
        frames = list(_lay(parts, trial, {number: pages}))
        # what is listed on pages that are now lost makes the table of contents longer too
        last = _last_page(_compose(parts, frames, trial, None, {number: pages})[1])
        return f"pages: {whole.in_steps(last)} in the block"

    return in_block


def _last_page(frames: Sequence[PageFrame]) -> int:
    return frames[-1].first + frames[-1].pages - 1


def _competing_parts(parts: Sequence[PlacedPart], whole: PageFrame) -> Iterator[Problem]:
    """Parts that cannot have what is left, because another one takes it."""
    loose = _numbers_without_length(parts, whole)
    fitted = (
        [number for number in _numbers_to_fit(parts, whole) if number not in loose] if whole.fitted and loose else []
    )
    several = "two" if len(loose) == 2 else f"{len(loose)}"
    for number in loose[:-1]:
        yield Problem(
            f"{several} parts of the inside would take what is left: this one gets 1 page",
            "write pages: with how many it shall have",
            Severity.WARNING,
            field=parts[number].place,
        )
    for number in fitted:
        sizes = parts[number].sizes(whole)
        assert sizes and whole.fitted
        yield Problem(
            f"this part would be fitted to what is left, and another part takes what is left: "
            f"it is set in {print_pt(sizes.nearest(whole.fitted))} type",
            "write pages: with how many it shall have, or a size: in place of fit",
            Severity.WARNING,
            field=(*parts[number].place, "size"),
        )


def _wrong_length(parts: Sequence[PlacedPart], whole: PageFrame, needed: int) -> Iterator[Problem]:
    """Whether the parts are longer or shorter than the book."""
    pages, enough = whole.pages, whole.in_steps(needed)
    if needed > pages:
        yield Problem(
            f"the parts of the inside need {needed} pages, the block has {pages}: "
            f"{needed - pages} {'page is' if needed - pages == 1 else 'pages are'} lost",
            f"write pages: {enough} in the block, or fewer in a part",
        )
    elif pages - needed > 1 and enough < (whole.asked or pages):
        yield Problem(
            f"{_named(parts)} {needed} of {pages} pages; the others stay empty",
            f"write pages: {enough} in the block{_or_else(parts)}",
            Severity.NOTE,
        )


def _named(parts: Sequence[PlacedPart]) -> str:
    """What fills the book: a file or folder, if it has one part."""
    name = parts[0].written.shows
    return f"{PurePath(name).name} fills" if len(parts) == 1 and name else "the parts of the inside fill"


def _or_else(parts: Sequence[PlacedPart]) -> str:
    """What fills a book besides fewer pages."""
    if any(part.written.pages is not None for part in parts):
        return ", or leave pages out in one part, for what is left"
    larger = ", or a larger size" if len(parts) == 1 and parts[0].written.has_size else ""
    return f" for a thinner book{larger}{OR_FILLED}"
