"""The cutting list by itself: what is cut by hand, by material, with a box to tick for every part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from ..ground.drawing import Art
from ..ground.geometry import Size
from ..ground.told import figure, units_told
from ..sheets.cutting import CutPart, Stick
from .items import Heading, Item, Paragraph
from .pages import lay_out_pages
from .tables import columns, table

__all__ = ["cutting_list_pages"]

NOTES = (
    "All lengths are {units}. The height runs along the spine, and so does the grain of board and card.",
    "Fresh blade, steel rule, cutting mat; cut away from your hand, in several light strokes. Saw and sand wood with "
    "eyes and lungs protected as its supplier and your local rules ask. Small parts are not for small children.",
)

HEAD = ("for", "part", "pieces", "width", "height", "thick")
COLUMNS = columns(0.04, 0.5, 0.64, 0.73, 0.82, 0.91, 1.0, texts=2)

STICK_HEAD = ("for", "part", "ends", "pieces", "length", "shorter side")
STICK_COLUMNS = columns(0.04, 0.36, 0.52, 0.73, 0.82, 0.91, 1.0, texts=3)


def cutting_list_pages(
    shelf: str, parts: Sequence[tuple[str, CutPart]], size: Size, sticks: Sequence[tuple[str, Stick]] = ()
) -> Iterator[Art]:
    """The list on pages of a size; each part and each stick comes with what it is for."""
    items = (*_items(shelf, parts), *_stick_items(sticks))
    return lay_out_pages(lambda _: items, (), (), size, f"{shelf}, cutting list")


def _items(shelf: str, parts: Sequence[tuple[str, CutPart]]) -> Iterator[Item]:
    """By material in alphabetical order, the thickest first."""

    def material(item: tuple[str, CutPart]) -> tuple[str, float]:
        return item[1].material, -item[1].thickness

    yield Heading(f"{shelf}: cutting list", level=1)
    yield from (Paragraph(note.format(units=units_told()), quiet=True) for note in NOTES)
    for (name, thickness), alike in groupby(sorted(parts, key=material), key=material):
        yield Heading(f"{name}, {figure(-thickness)} thick")
        yield from table(COLUMNS, HEAD, [_row(book, part) for book, part in alike], ticked=True)


def _row(book: str, part: CutPart) -> tuple[str, ...]:
    sizes = (figure(side) for side in (part.width, part.height, part.thickness))
    return (book, part.what, str(part.count), *sizes)


def _stick_items(sticks: Sequence[tuple[str, Stick]]) -> Iterator[Item]:
    """By material and section, the longest first."""

    def section(item: tuple[str, Stick]) -> tuple[str, float, float]:
        return item[1].material, -item[1].width, -item[1].thickness

    for (name, width, thickness), alike in groupby(sorted(sticks, key=section), key=section):
        yield Heading(f"{name} strip, {figure(-width)} wide and {figure(-thickness)} thick")
        longest_first = sorted(alike, key=lambda item: -item[1].length)
        yield from table(STICK_COLUMNS, STICK_HEAD, [_stick_row(*item) for item in longest_first], ticked=True)


def _stick_row(owner: str, stick: Stick) -> tuple[str, ...]:
    lengths = figure(stick.length), figure(stick.shorter_side)
    return owner, stick.what, stick.ends, str(stick.count), *lengths
