"""Tagged PDF: what a page says, in which language, and what its lines are to one another (ISO 32000-1, 14.7 and 14.8).

Text with a role becomes an element of the document, one after the other, as they were drawn. What has none, such as
drawings, is left for the eye.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from reportlab.pdfbase.pdfdoc import PDFArrayCompact, PDFDictionary, PDFName, PDFObjectReference

from ...ground.drawing import Role

__all__ = ["add_tags", "marked", "text_string"]

TREE, BOOK, PLACES = "Tags", "TagsOfDocument", "TagsByPage"


def text_string(text: str) -> bytes:
    """The digits of a text string (7.9.2.2)."""
    return f"\ufeff{text}".encode("utf-16-be").hex().encode()


def marked(role: Role, number: int) -> bytes:
    """What begins the element of a number on its page (14.6)."""
    return b"/%b<</MCID %d>>BDC" % (role.encode(), number)


def add_tags(document: Any, pages: Sequence[tuple[str, Sequence[Role]]]) -> None:
    """Tell a document what the elements of its pages are: of each its name, and the roles in their order."""
    elements: list[PDFObjectReference] = []
    places: list[Any] = []
    for number, (page, roles) in enumerate(pages):
        mine = []
        for place, role in enumerate(roles):
            element = {
                "Type": PDFName("StructElem"),
                "S": PDFName(role.value),
                "P": PDFObjectReference(BOOK),
                "Pg": PDFObjectReference(page),
                "K": place,
            }
            mine.append(document.Reference(PDFDictionary(element), f"{BOOK}{number}-{place}"))
        places += [number, PDFArrayCompact(mine)]
        elements += mine
    whole = {"Type": PDFName("StructElem"), "S": PDFName("Document"), "P": PDFObjectReference(TREE)}
    document.Reference(PDFDictionary({**whole, "K": PDFArrayCompact(elements)}), BOOK)
    document.Reference(PDFDictionary({"Nums": PDFArrayCompact(places)}), PLACES)
    tree = {"Type": PDFName("StructTreeRoot"), "K": PDFObjectReference(BOOK), "ParentTree": PDFObjectReference(PLACES)}
    document.Catalog.StructTreeRoot = document.Reference(PDFDictionary(tree), TREE)
    document.Catalog.MarkInfo = PDFDictionary({"Marked": "true"})
