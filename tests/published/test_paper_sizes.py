"""Sizes of papers and photographs in life, each with where it was read."""

from __future__ import annotations

from itertools import pairwise

import pytest

from bookmaker.things.papers.formats import FORMATS
from bookmaker.things.papers.forms.photograph import PRINTS

PAPERS = {
    # ISO 216
    "A2": (420, 594),
    "A3": (297, 420),
    "A4": (210, 297),
    "A5": (148, 210),
    "A6": (105, 148),
    # ANSI/ASME Y14.1, size A (from memory)
    "US letter": (215.9, 279.4),
    # common practice
    "foolscap folio": (203.2, 330.2),
    # "Newspaper format", Wikipedia
    "broadsheet": (600, 750),
    # University of Osnabrück, Language and Media: newspaper formats
    "Berliner": (315, 470),
    "tabloid": (280, 430),
    # "Some Standard Poster Sizes and Formats", before the 1980s
    "one sheet": (685.8, 1041.4),
    # "Some information on poster sizes", a collector's letter of 2008
    "double crown": (508, 762),
    "quad crown": (1016, 762),
    # "Poster Size Guide"
    "lobby card": (355.6, 279.4),
    # derived: 40 km at 1 : 50 000
    "map sheet": (40_000_000 / 50_000, 40_000_000 / 50_000),
    # Universal Postal Union, the smallest card (from memory)
    "postcard": (140, 90),
    # "Index card", Wikipedia
    "index card": (127, 76.2),
    # B. Hjørland, Lifeboat for Knowledge Organization, "Catalog card"
    "catalogue card": (125, 75),
    # common practice
    "business card": (85, 55),
    "poker card": (63.5, 88.9),
    "bridge card": (57.15, 88.9),
    "tarot card": (70, 120),
    # Early Photography, "Studio mounts"
    "carte de visite": (63.5, 104.775),
    # Getty Art & Architecture Thesaurus, "cabinet photographs"
    "cabinet card": (107.95, 165.1),
}

PLATES = {
    # "19th Century Photographic Plate Sizes"
    "whole plate": (165.1, 215.9),
    "half plate": (107.95, 139.7),
    "quarter plate": (82.55, 107.95),
    "sixth plate": (69.85, 82.55),
    # common practice
    "snapshot": (88.9, 127.0),
}


def test_papers_have_the_published_sizes() -> None:
    assert {str(name): tuple(size) for name, size in FORMATS.items()} == {
        name: pytest.approx(size) for name, size in PAPERS.items()
    }


def test_photographs_have_the_published_sizes() -> None:
    mounts = {name: PAPERS[name] for name in ("carte de visite", "cabinet card")}
    assert {str(name): tuple(one.whole) for name, one in PRINTS.items()} == {
        name: pytest.approx(size) for name, size in {**mounts, **PLATES}.items()
    }


def test_sheets_of_the_series_halve() -> None:
    """ISO 216: each is half of the one before, cut across its longer side, less what rounding to 1 mm takes."""
    sizes = [FORMATS[name] for name in ("A2", "A3", "A4", "A5", "A6")]
    for larger, smaller in pairwise(sizes):
        assert smaller.height == larger.width
        assert 0 <= larger.height - 2 * smaller.width <= 1
        assert larger.height / larger.width == pytest.approx(2**0.5, rel=5e-3)
