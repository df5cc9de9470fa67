"""Pages of other PDF files, copied into this one: vectors stay vectors, and nothing is taken apart.

A page becomes a form (ISO 32000-1, 8.10), which can be placed as often as needed. Its fonts, pictures and
forms come along once for each file, with their bytes as they are.
"""

from __future__ import annotations

import zlib
from collections.abc import Iterable, Iterator
from io import BytesIO
from typing import Any

from pypdf.generic import (
    ArrayObject,
    ByteStringObject,
    DictionaryObject,
    IndirectObject,
    NameObject,
    StreamObject,
    TextStringObject,
)
from reportlab.pdfbase.pdfdoc import PDFObject, PDFObjectReference

from ...ground.geometry import Rect
from ...ground.imported import ImportedPage, opened_again, pages_of
from ...ground.operators.page_streams import Node, content_of
from .kept_keys import Sort, kept
from .numbers import points

__all__ = ["import_pages"]

FRESH = b"0 g 0 G 1 w 0 J 0 j 10 M [] 0 d 0 Tr 0 Ts\n"
"""The state in which a page begins (8.4.1, table 52); a form would begin with what was drawn before it."""

Reference = tuple[IndirectObject, Sort]
"""Another object, and what its keys are if it is a dictionary."""

Part = bytes | Reference


class _Copied(PDFObject):
    """An object as it stood in its file, with its references led to where their objects are now."""

    def __init__(self, parts: Iterable[bytes | PDFObjectReference]) -> None:
        self._parts = tuple(parts)

    def format(self, document: Any) -> bytes:
        return b"".join(part if isinstance(part, bytes) else part.format(document) for part in self._parts)


def import_pages(document: Any, pages: Iterable[tuple[str, ImportedPage]]) -> None:
    """Add pages to reportlab's document, each as a form under the name that pages use.

    Raises:
        ShelfFileError: a file is not what it was when it was read.
    """
    by_file: dict[str, list[tuple[str, ImportedPage]]] = {}
    for name, page in pages:
        by_file.setdefault(page.digest, []).append((name, page))
    for wanted in by_file.values():
        first_name, first = wanted[0]
        with opened_again(first) as reader:
            nodes, copier = pages_of(first.path, reader), _Copier(document, first_name)
            for name, page in wanted:
                node = nodes[page.index]
                document.Reference(copier.copied(_form(node, page.box)), name)
            copier.finish()


def _form(page: Node, box: Rect) -> Iterator[Part]:
    """A form that shows what a page shows inside a box (8.10.2, table 95)."""
    data = zlib.compress(FRESH + content_of(page))
    sides = b" ".join(points(side) for side in (box.x, box.y, box.right, box.top))
    yield b"<</Type/XObject/Subtype/Form/BBox[%b]/Filter/FlateDecode/Length %d" % (sides, len(data))
    yield from _entries(((key, page[key]) for key in ("/Resources", "/Group") if key in page), Sort.OBJECT)
    yield b">>stream\n" + data + b"\nendstream"


class _Copier:
    """Copies the objects of one file, each once; `prefix` keeps its names apart from those of other files."""

    def __init__(self, document: Any, prefix: str) -> None:
        self._document = document
        self._prefix = prefix
        self._names: dict[tuple[int, int, Sort], str] = {}
        self._waiting: list[tuple[str, Reference]] = []

    def copied(self, parts: Iterable[Part]) -> _Copied:
        """An object with its references named; what they refer to is put down to be copied."""
        return _Copied(part if isinstance(part, bytes) else self._named(*part) for part in parts)

    def finish(self) -> None:
        """Copy everything that was referred to, and all that refers to in turn; circles do no harm."""
        while self._waiting:
            name, (reference, sort) = self._waiting.pop()
            self._document.Reference(self.copied(_spelled(reference.get_object(), sort)), name)

    def _named(self, reference: IndirectObject, sort: Sort) -> PDFObjectReference:
        key = (reference.idnum, reference.generation, sort)
        if key not in self._names:
            number = f"{self._prefix}-{reference.idnum}-{reference.generation}"
            self._names[key] = number if sort is Sort.OBJECT else f"{number}-{sort.value}"
            self._waiting.append((self._names[key], (reference, sort)))
        return PDFObjectReference(self._names[key])


def _spelled(found: Any, sort: Sort) -> Iterator[Part]:
    """An object as it is written in a file, its references left open."""
    if isinstance(found, IndirectObject):
        yield found, sort
    elif isinstance(found, StreamObject):
        data: bytes = found._data
        yield b"<</Length %d" % len(data)
        yield from _entries(((key, found.raw_get(key)) for key in found), sort)
        yield b">>stream\n" + data + b"\nendstream"
    elif isinstance(found, DictionaryObject):
        yield b"<<"
        yield from _entries(((key, found.raw_get(key)) for key in found), sort)
        yield b">>"
    elif isinstance(found, ArrayObject):
        yield b"["
        for item in found:
            yield from _spelled(item, sort)
            yield b" "
        yield b"]"
    else:
        yield _plain(found)


def _plain(found: Any) -> bytes:
    """What holds no other objects: a string, a number, a name."""
    if isinstance(found, (TextStringObject, ByteStringObject)):
        return b"<%b>" % found.original_bytes.hex().encode()
    if found is None:
        return b"null"
    written = BytesIO()
    found.write_to_stream(written)
    return written.getvalue()


def _entries(items: Iterable[tuple[str, Any]], sort: Sort) -> Iterator[Part]:
    """Keys and values of a dictionary, as far as they make what it shows."""
    for key, value, under in kept(items, sort):
        written = BytesIO()
        NameObject(key).write_to_stream(written)
        yield written.getvalue() + b" "
        yield from _spelled(value, under)
