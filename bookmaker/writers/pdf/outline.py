"""The outline of a PDF: titles that lead to pages, for whoever looks for something in it (ISO 32000-1, 12.3.3)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from reportlab.pdfbase.pdfdoc import PDFArrayCompact, PDFDictionary, PDFName, PDFObjectReference, PDFString

__all__ = ["add_outline"]

ROOT = "Outline"


class _Outline(PDFDictionary):
    """The root of the outline; reportlab asks it, as its own, whether it is ready."""

    ready = 1

    def prepare(self, document: Any, canvas: Any) -> None:
        """Nothing is left to do."""


def add_outline(document: Any, entries: Sequence[tuple[str, str]]) -> None:
    """Add titles, each with the name of its page; there is at least one."""
    names = [f"{ROOT}{number}" for number in range(1, len(entries) + 1)]
    for number, ((title, page), name) in enumerate(zip(entries, names, strict=True)):
        item = {
            "Title": PDFString(title),
            "Parent": PDFObjectReference(ROOT),
            "Dest": PDFArrayCompact([PDFObjectReference(page), PDFName("Fit")]),
        }
        if number:
            item["Prev"] = PDFObjectReference(names[number - 1])
        if number + 1 < len(names):
            item["Next"] = PDFObjectReference(names[number + 1])
        document.Reference(PDFDictionary(item), name)
    root = {"Type": PDFName("Outlines"), "First": PDFObjectReference(names[0]), "Last": PDFObjectReference(names[-1])}
    outline = _Outline({**root, "Count": len(names)})
    document.Reference(outline, ROOT)
    document.Outlines = document.Catalog.Outlines = outline
