"""A PDF file, page by page. It places and draws what it is given; sizes were settled before.

Reportlab keeps the objects of the file; its pages, fonts and pictures are ours, for the sake of glyphs that
are placed one by one, small fonts, and bytes that never change while the input does not.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from hashlib import sha256
from pathlib import Path as FilePath
from threading import Lock
from types import TracebackType
from typing import Any, BinaryIO, Self

from reportlab.pdfbase.pdfdoc import (
    PDFArrayCompact,
    PDFDictionary,
    PDFDocument,
    PDFInfo,
    PDFName,
    PDFObjectReference,
    PDFPage,
    PDFString,
)

from ...ground.drawing import Role
from ...ground.geometry import Rect, Size
from ...ground.imported import ImportedPage
from ...ground.pictures import Picture
from ...ground.typefaces import Typeface
from ...ground.units import to_pt
from .canvas import PageResources, PdfCanvas
from .embedding import compressed, embed
from .fonts import EmbeddedFont
from .layers import add_layers, layer_name, layer_resources
from .outline import add_outline
from .pages import import_pages
from .pictures import PlacedPicture
from .tags import add_tags

__all__ = ["PdfFile"]

MOST_DPI = 600.0
"""Pixels per inch that a home printer can show of a picture."""


class _Info(PDFInfo):
    """What the file says about itself: no dates, for the same input is to give the same bytes."""

    def format(self, document: Any) -> bytes:
        entries = {"Title": PDFString(self.title), "Producer": PDFString(self.producer)}
        formatted: bytes = PDFDictionary(entries).format(document)
        return formatted


DATE = "SOURCE_DATE_EPOCH"
"""Where reportlab and fontTools look for a date, good or bad, and would put it into what they write."""

ONE_AT_A_TIME = Lock()


@contextmanager
def _undated() -> Iterator[None]:
    """The environment without a date: our files have none."""
    with ONE_AT_A_TIME:
        date = os.environ.pop(DATE, None)
        try:
            yield
        finally:
            if date is not None:
                os.environ[DATE] = date


class PdfFile:
    """A PDF file being written; it appears, whole, when the ``with`` block ends well, and else not at all.

    `to` is a path or a stream open for binary writing; `language` is the BCP 47 tag of the text;
    pictures with more than `most_dpi` pixels per inch are thinned to that.
    """

    def __init__(
        self,
        to: FilePath | BinaryIO,
        *,
        title: str,
        producer: str = "bookmaker",
        language: str = "en",
        most_dpi: float = MOST_DPI,
    ) -> None:
        self._to = to
        self._most_dpi = most_dpi
        # Any, for the types that come with reportlab leave out half of what it holds.
        with _undated():
            self._document: Any = PDFDocument(invariant=1, pdfVersion=(1, 7), lang=language)
        self._document.info = _Info()
        self._document.setTitle(title)
        self._document.setProducer(producer)
        self._fonts: dict[Typeface, tuple[str, EmbeddedFont]] = {}
        self._forms: dict[tuple[str, Rect], str] = {}
        self._pictures: dict[tuple[object, ...], tuple[str, PlacedPicture]] = {}
        self._layers: dict[str, str] = {}
        self._covers: dict[float, str] = {}
        self._outline: list[tuple[str, str]] = []
        self._language = language
        self._tags: list[tuple[str, list[Role]]] = []
        self._imported: dict[tuple[str, int], tuple[str, ImportedPage]] = {}

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if error is not None:
            return
        with _undated():
            data = self._data()
        if isinstance(self._to, FilePath):
            self._to.write_bytes(data)
        else:
            self._to.write(data)

    def _data(self) -> bytes:
        for name, font in self._fonts.values():
            embed(self._document, font, name)
        for name, placed in self._pictures.values():
            self._document.Reference(placed.encoded(self._most_dpi), name)
        import_pages(self._document, self._imported.values())
        if self._layers:
            add_layers(self._document, {name: title for title, name in self._layers.items()})
        for cover, name in self._covers.items():
            self._document.Reference(PDFDictionary({"Type": PDFName("ExtGState"), "ca": cover}), name)
        if self._outline:
            add_outline(self._document, self._outline)
        if self._tags:
            add_tags(self._document, self._tags)
        data: bytes = self._document.GetPDFData(None)
        return data

    @contextmanager
    def page(
        self, size: Size, trim: Rect | None = None, bleed: Rect | None = None, *, entries: Sequence[str] = ()
    ) -> Iterator[PdfCanvas]:
        """Draw one page of a size in mm.

        `trim` is the box that is cut out of it, `bleed` the box inked for that (ISO 32000-1, 14.11.2). `entries` are
        titles that lead to it from the outline of the file, besides those of its headings of the first level.
        """
        canvas = PdfCanvas(
            PageResources(self._font, self._picture, self._form, self._import, self._layer, self._cover, self._language)
        )
        yield canvas
        page: Any = PDFPage()
        page.Override_default_compilation = 1
        page.MediaBox = page.CropBox = _box(Rect(0, 0, *size))
        page.TrimBox = _box(trim) if trim else None
        page.BleedBox = _box(bleed) if bleed else None
        page.Parent = self._document.Pages
        page.Resources = _resources(canvas)
        entries = (*entries, *(tag.title for tag in canvas.tags or () if tag.role is Role.TITLE))
        if canvas.tags:
            page.StructParents = len(self._tags)
            page.__NoDefault__ = [*page.__NoDefault__, "StructParents"]
            self._tags.append((self._document.thisPageName(), [tag.role for tag in canvas.tags if tag.role]))
        content = canvas.content()
        self._document.updateSignature(content)
        page.Contents = compressed(content)
        self._outline += [(title, self._document.thisPageName()) for title in entries]
        self._document.addPage(page)

    def _font(self, typeface: Typeface) -> tuple[str, EmbeddedFont]:
        if typeface not in self._fonts:
            self._fonts[typeface] = (f"F{len(self._fonts) + 1}", EmbeddedFont(typeface))
        return self._fonts[typeface]

    def _form(self, canvas: PdfCanvas, bounds: Rect) -> str:
        """Keep a drawing that pages show several times; one that is drawn again is the same form."""
        content = canvas.content()
        key = (sha256(content).hexdigest(), bounds)  # less to keep than the drawing itself
        if key not in self._forms:
            name = self._forms[key] = f"X{len(self._forms) + 1}"
            entries = {
                "Type": PDFName("XObject"),
                "Subtype": PDFName("Form"),
                "BBox": _box(bounds),
                "Resources": _resources(canvas),
            }
            self._document.updateSignature(content)
            self._document.Reference(compressed(content, **entries), name)
        return self._forms[key]

    def _layer(self, title: str) -> str:
        return self._layers.setdefault(title, layer_name(len(self._layers) + 1))

    def _cover(self, cover: float) -> str:
        return self._covers.setdefault(round(cover, 3), f"V{len(self._covers) + 1}")

    def _picture(self, picture: Picture, width: float, height: float) -> str:
        if picture.key not in self._pictures:
            number = len(self._pictures) + 1
            self._pictures[picture.key] = (f"P{number}", PlacedPicture(picture, width, height))
        name, placed = self._pictures[picture.key]
        placed.enlarge(width, height)
        return name

    def _import(self, page: ImportedPage) -> str:
        key = (page.digest, page.index)
        if key not in self._imported:
            self._imported[key] = (f"I{len(self._imported) + 1}", page)
        return self._imported[key][0]


def _resources(canvas: PdfCanvas) -> PDFDictionary:
    """What the operators of a canvas name."""
    fonts = [name for name, _ in canvas.fonts.values()]
    resources = {"Font": _named(fonts), "XObject": _named(sorted(canvas.placed_objects))}
    if canvas.layers:
        resources["Properties"] = layer_resources(canvas.layers)
    if canvas.covers:
        resources["ExtGState"] = _named(canvas.covers)
    return PDFDictionary(resources)


def _box(rect: Rect) -> PDFArrayCompact:
    return PDFArrayCompact([to_pt(side) for side in (rect.x, rect.y, rect.right, rect.top)])


def _named(names: list[str]) -> PDFDictionary:
    """Resources by the names under which the document knows them."""
    return PDFDictionary({name: PDFObjectReference(name) for name in names})
