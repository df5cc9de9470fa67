"""Layers: optional content groups, which viewers list and switch (ISO 32000-1, 8.11)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from reportlab.pdfbase.pdfdoc import PDFArrayCompact, PDFDictionary, PDFName, PDFObjectReference, PDFString

__all__ = ["add_layers", "layer_name", "layer_resources"]


def layer_name(number: int) -> str:
    """The name under which pages know a layer; numbers count from 1."""
    return f"L{number}"


def layer_resources(names: Iterable[str]) -> PDFDictionary:
    """The property list of a page: the groups its content belongs to."""
    return PDFDictionary({name: PDFObjectReference(name) for name in names})


def add_layers(document: Any, layers: Mapping[str, str]) -> None:
    """Tell a document of its layers, titles by the names that pages use; all are shown at first."""
    groups = [
        document.Reference(PDFDictionary({"Type": PDFName("OCG"), "Name": PDFString(title)}), name)
        for name, title in layers.items()
    ]
    usual = PDFDictionary({"Name": PDFString("all"), "ON": PDFArrayCompact(groups), "Order": PDFArrayCompact(groups)})
    document.Catalog.OCProperties = PDFDictionary({"OCGs": PDFArrayCompact(groups), "D": usual})
    # reportlab writes only those entries of the catalogue that it knows
    document.Catalog.__NoDefault__ = [*document.Catalog.__NoDefault__, "OCProperties"]
