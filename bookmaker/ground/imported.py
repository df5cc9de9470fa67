"""Pages of PDF files: looked through when the shelf file is read, copied as they are when they are printed."""

from __future__ import annotations

import io
import logging
import math
import re
from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

from .demands import demand
from .files import SAVE_AGAIN, SourceFile, Wanted, read_again, read_file
from .geometry import Point, Rect, Size, Transform
from .operators.page_streams import Node, PageStreams
from .problems import Problem, ShelfFileError
from .units import from_pt

if TYPE_CHECKING:
    from pypdf import PdfReader

__all__ = ["ImportedPage", "PageRange", "load_pages", "opened_again", "pages_of"]

PDF = Wanted(
    "PDF",
    200_000_000,
    "save the pages you need apart",
    instead="write the name of one PDF file",
    empty=SAVE_AGAIN,
)

MOST_PAGES = 2000
"""No book has more."""

PACKED = re.compile(rb"/N\s+(\d+)")
"""How many objects are packed into one stream (ISO 32000-1, 7.5.7); its own dictionary is never packed."""

MOST_PACKED = 100_000
"""Programs pack one or two hundred; a reader looks through all of them for each."""

MOST_NODES = 50_000
"""Nodes of a page tree; a file with more is damaged or means harm."""

START_LENGTH = 1024
"""Readers find the beginning in as many bytes (ISO 32000-1, annex H, note 13)."""

END_MARK, END_LENGTH = b"%%EOF", 2048
"""A whole file has this mark in its last bytes (ISO 32000-1, 7.5.5; readers allow some bytes after it)."""

INHERITED = ("/Resources", "/MediaBox", "/CropBox", "/Rotate")
"""What a page takes from the nodes above it (ISO 32000-1, table 30)."""

# What pypdf remarks about odd files is no message for makers: a file is usable or refused.
logging.getLogger("pypdf").addHandler(logging.NullHandler())

PageRange = tuple[tuple[int, int | None], ...]
"""Stretches of pages, counted from 1, each with its last page, or None for the last one there is."""


@dataclass(frozen=True, slots=True)
class ImportedPage:
    """A page of a PDF file.

    `index` counts from 0; `box` is what viewers show of it, the crop box, in mm in the page's own coordinates;
    `quarter_turns` says how often viewers turn it clockwise; `digest` is the SHA-256 of the file.
    """

    path: Path
    digest: str
    index: int
    box: Rect
    quarter_turns: int = 0

    @property
    def size(self) -> Size:
        """Width and height in mm of the page as it is shown."""
        return self.box.size.turned if self.quarter_turns % 2 else self.box.size

    def onto(self, into: Rect) -> Transform:
        """From the page's own coordinates in mm to those in which it is to fill a rectangle."""
        turned = Transform.quarter_turn(-self.quarter_turns)
        shown = turned.apply_to(self.box)
        to_origin = turned.moved(-shown.x, -shown.y)
        scaled = to_origin.then(Transform.stretch(into.width / shown.width, into.height / shown.height))
        return scaled.moved(into.x, into.y)


def load_pages(
    path: Path, wanted: PageRange | None = None, written: str = ""
) -> tuple[tuple[ImportedPage, ...], tuple[str, ...]]:
    """Look through a PDF file: the pages wanted, and what is left out of them, each a sentence without its subject.

    `written` is the path as the shelf file has it.

    Raises:
        ShelfFileError: the file is missing, no PDF, damaged, protected, or has none of those pages.
    """
    file = read_file(path, PDF, written, ("file",))
    _check_whole(file)
    with _opened(file) as reader:
        nodes = pages_of(path, reader)
        indices = _chosen(path, len(nodes), wanted)
        demand("pages of PDFs", len(indices), name=path.name, field=("file",))
        pages = tuple(_page(path, file.digest, index, nodes[index]) for index in indices)
        streams = PageStreams(path.name)
        for index in dict.fromkeys(indices):
            streams.check(index + 1, nodes[index])
        return pages, tuple(_notes(reader, [nodes[index] for index in indices]))


def opened_again(page: ImportedPage) -> AbstractContextManager[PdfReader]:
    """The file of a page, open for reading once more.

    Raises:
        ShelfFileError: it is not what it was when it was loaded.
    """
    return _opened(read_again(page.path, PDF, page.digest))


@contextmanager
def _opened(file: SourceFile) -> Iterator[PdfReader]:
    """A PDF file, open for reading; whatever goes wrong with it inside the block is a refusal."""
    from pypdf import PdfReader  # a tenth of a second, for the few shelves that have pages of PDF files

    try:
        reader = PdfReader(io.BytesIO(file.data))
        if "/Encrypt" in reader.trailer:
            _refuse(f"{file.name} is protected", "open it, and print or save it as a PDF without protection")
        yield reader
    except ShelfFileError:
        raise
    except Exception:  # a damaged file can make its reader raise anything
        _refuse(f"{file.name} is damaged", SAVE_AGAIN)


def pages_of(path: Path, reader: PdfReader) -> list[Node]:
    """The pages of a file in order, each with what it inherits.

    Raises:
        ShelfFileError: there are none, or the tree they hang on is none.
    """
    from pypdf.generic import IndirectObject

    pages: list[Node] = []
    waiting: list[tuple[Any, Node]] = [(_root(reader).raw_get("/Pages"), {})]
    seen: set[tuple[int, int]] = set()
    while waiting:
        reference, inherited = waiting.pop()
        found = reference.get_object()
        own = {key: found.raw_get(key) for key in found}
        if "/Kids" not in own:
            pages.append({**inherited, **own})
            continue
        name = (reference.idnum, reference.generation) if isinstance(reference, IndirectObject) else (-len(seen), 0)
        if name in seen or len(seen) > MOST_NODES:
            _refuse(f"{path.name} is damaged: its pages lead round in a circle", SAVE_AGAIN)
        seen.add(name)
        below = {**inherited, **{key: own[key] for key in INHERITED if key in own}}
        waiting += [(kid, below) for kid in reversed(list(own["/Kids"].get_object()))]
        if len(waiting) > MOST_NODES:
            _refuse(f"{path.name} has more than {MOST_NODES} pages", "take out the pages you need and save them apart")
    if not pages:
        _refuse(f"{path.name} has no pages", "write the name of a PDF with pages in it")
    return pages


def _root(reader: PdfReader) -> Any:
    return reader.trailer["/Root"].get_object()


def _refuse(message: str, remedy: str, field: str = "file") -> NoReturn:
    raise ShelfFileError((Problem(message, remedy, field=(field,)),))


def _check_whole(file: SourceFile) -> None:
    """Refuse what does not look like a PDF with its beginning and its end."""
    if b"%PDF-" not in file.data[:START_LENGTH]:
        _refuse(f"{file.name} is not a PDF", "write the name of a PDF file")
    if END_MARK not in file.data[-END_LENGTH:]:
        _refuse(f"{file.name} is cut short: its end is missing", SAVE_AGAIN)
    if any(len(number) > 6 or int(number) > MOST_PACKED for number in PACKED.findall(file.data)):
        _refuse(f"{file.name} holds more objects than pages need", "print or save it to a PDF again")


def _chosen(path: Path, count: int, wanted: PageRange | None) -> Sequence[int]:
    """The pages wanted, counted from 0."""
    chosen: list[int] = []
    for first, last in wanted or ((1, None),):
        highest = last or first
        if highest > count:
            has = f"{count} pages" if count > 1 else "1 page"
            remedy = f"write a range up to {count}" if count > 1 else "leave the range out"
            _refuse(f"{path.name} has {has}; there is no page {highest}", remedy, "range")
        chosen += range(first - 1, last or count)
    if len(chosen) > MOST_PAGES:
        _refuse(
            f"{len(chosen)} pages of {path.name} are more than the {MOST_PAGES} a book can have",
            "write range: with the pages you need",
            "range" if wanted else "file",
        )
    return chosen


def _page(path: Path, digest: str, index: int, node: Node) -> ImportedPage:
    """Box and turn of a page; the crop box counts as far as it lies in the media box (ISO 32000-1, 14.11.2)."""
    media = _box(node.get("/MediaBox"))
    if media is None:
        _refuse(f"page {index + 1} of {path.name} has no size", "save or print it to a PDF again")
    box = _common(media, _box(node.get("/CropBox")) or media)
    turn = node["/Rotate"].get_object() if "/Rotate" in node else 0
    turns = round(float(turn) / 90) % 4 if isinstance(turn, (int, float)) else 0
    return ImportedPage(path, digest, index, box, turns)


def _box(written: Any) -> Rect | None:
    """A box in mm, whichever corners it is given by; None if it is none or has no area."""
    sides = [from_pt(float(side.get_object())) for side in written.get_object()] if written is not None else []
    if len(sides) != 4 or not all(map(math.isfinite, sides)):
        return None
    box = Rect.around([Point(*sides[:2]), Point(*sides[2:])])
    return box if min(box.size) > 0 else None


def _common(media: Rect, crop: Rect) -> Rect:
    """What both boxes share; the media box if that is nothing."""
    x, y = max(media.x, crop.x), max(media.y, crop.y)
    width, height = min(media.right, crop.right) - x, min(media.top, crop.top) - y
    return Rect(x, y, width, height) if min(width, height) > 0 else media


def _notes(reader: PdfReader, nodes: Sequence[Node]) -> Iterator[str]:
    if any(_has_notes(node) for node in nodes):
        yield "has notes or form fields on its pages: they are left out"
    if "/OCProperties" in _root(reader):
        yield "has layers: all of them are printed"


def _has_notes(node: Node) -> bool:
    from pypdf.generic import ArrayObject, DictionaryObject

    found = node["/Annots"].get_object() if "/Annots" in node else None
    notes = (note.get_object() for note in (found if isinstance(found, ArrayObject) else ()))
    return any(isinstance(note, DictionaryObject) and note.get("/Subtype") != "/Link" for note in notes)
