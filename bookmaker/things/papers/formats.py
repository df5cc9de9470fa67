"""Sizes of papers in life, in mm: width and height as they are usually held."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from ...ground.geometry import Size
from ...ground.units import MM_PER_INCH as INCH

__all__ = ["FORMATS", "FormatName"]

FormatName = Literal[
    "A2", "A3", "A4", "A5", "A6", "US letter", "foolscap folio", "broadsheet", "Berliner", "tabloid", "one sheet",
    "double crown", "quad crown", "lobby card", "map sheet", "postcard", "index card", "catalogue card",
    "business card", "poker card", "bridge card", "tarot card", "carte de visite", "cabinet card",
]  # fmt: skip

FORMATS: Mapping[FormatName, Size] = {
    "A2": Size(420, 594),  # ISO 216, and so on down to A6
    "A3": Size(297, 420),
    "A4": Size(210, 297),
    "A5": Size(148, 210),
    "A6": Size(105, 148),
    "US letter": Size(8.5 * INCH, 11 * INCH),  # ANSI/ASME Y14.1, size A, from memory
    "foolscap folio": Size(8 * INCH, 13 * INCH),  # common practice
    "broadsheet": Size(600, 750),  # "Newspaper format", Wikipedia: a page; they vary a lot
    "Berliner": Size(315, 470),  # University of Osnabrück, Language and Media: newspaper formats
    "tabloid": Size(280, 430),  # the same
    "one sheet": Size(27 * INCH, 41 * INCH),  # a restorer's list of poster sizes, before the 1980s
    "double crown": Size(20 * INCH, 30 * INCH),  # crown is 15 × 20 in; a collector's letter of 2008
    "quad crown": Size(40 * INCH, 30 * INCH),  # the same
    "lobby card": Size(14 * INCH, 11 * INCH),  # an appraiser's guide to poster sizes
    "map sheet": Size(800, 800),  # derived: 40 × 40 km at 1 : 50 000
    "postcard": Size(140, 90),  # the smallest of the Universal Postal Union, from memory
    "index card": Size(5 * INCH, 3 * INCH),  # "Index card", Wikipedia
    "catalogue card": Size(125, 75),  # B. Hjørland, Lifeboat for Knowledge Organization, "Catalog card"
    "business card": Size(85, 55),  # common practice in much of Europe
    "poker card": Size(2.5 * INCH, 3.5 * INCH),  # common practice, and so the next two
    "bridge card": Size(2.25 * INCH, 3.5 * INCH),
    "tarot card": Size(70, 120),
    "carte de visite": Size(2.5 * INCH, 4.125 * INCH),  # Early Photography, "Studio mounts"
    "cabinet card": Size(4.25 * INCH, 6.5 * INCH),  # Getty Art & Architecture Thesaurus, "cabinet photographs"
}
